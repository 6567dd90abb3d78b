package rhythm_test

import (
	"errors"
	"fmt"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// full has every key, in no order, with the white space
// that people leave.
const full = `# My teacher's rhythm
memory: the fast tempo
memory:   what	it is
name: Sa'idi  of  mine
script: صعيدي
  spelling : saidi
spelling: sayyidi
family: maqsum
quiz: no
core: yes
differ: yes
metre: 4 / 4
grouping: 2 + 2

skeleton: D T - D | D - T -
filled: D-Tk-kD- D-tkT---
variant: heavy = DD-DD-T-
variant: a=b =D-TkkkD-D-tkT-tk
tempo:  about 90  105 125 quarter
role: cane dance
listen: dums on 1, on the & of 2 and on 3
note: see https://example.org/a#b: there
source: Iana, 2020
`

func TestParse(t *testing.T) {
	c, err := rhythm.Parse("folder/my-rhythm2.txt", strings.NewReader(full))
	require.NoError(t, err)
	pattern := func(s string) rhythm.Pattern {
		p, err := rhythm.ParsePattern(s)
		require.NoError(t, err)
		return p
	}
	require.Equal(t, &rhythm.Cycle{
		ID: "my-rhythm2", Name: "Sa'idi of mine", Script: "صعيدي",
		Spellings: []string{"saidi", "sayyidi"}, Family: "maqsum",
		Core: true, Quiz: false, Differ: true,
		Metre: rhythm.Metre{Beats: 4, Unit: 4}, Grouping: []int{2, 2},
		Skeleton: pattern("DT-DD-T-"), Filled: pattern("D-Tk-kD-D-tkT---"),
		Variants: []rhythm.Variant{
			{Name: "heavy", Pattern: pattern("DD-DD-T-")},
			{Name: "a=b", Pattern: pattern("D-TkkkD-D-tkT-tk")},
		},
		Tempo: rhythm.Tempo{Slow: 90, Usual: 105, Fast: 125, Beat: "quarter", About: true},
		Role:  "cane dance", Listen: "dums on 1, on the & of 2 and on 3",
		Notes:   []string{"see https://example.org/a#b: there"},
		Sources: []string{"Iana, 2020"}, Memory: []string{"the fast tempo", "what it is"},
	}, c)
}

func TestParseDefaults(t *testing.T) {
	c := shape(t, "maqsum")
	require.True(t, c.Quiz)
	require.False(t, c.Core || c.Differ || c.Tempo.About)
	require.Nil(t, c.Filled)
	require.Nil(t, c.Grouping)
}

func TestParseLineEnds(t *testing.T) {
	want, err := rhythm.Parse("a.txt", strings.NewReader(full))
	require.NoError(t, err)
	for name, text := range map[string]string{
		"CR LF":           strings.ReplaceAll(full, "\n", "\r\n"),
		"CR":              strings.ReplaceAll(full, "\n", "\r"),
		"byte order mark": "\uFEFF" + full,
		"no last line":    strings.TrimSuffix(full, "\n"),
	} {
		t.Run(name, func(t *testing.T) {
			c, err := rhythm.Parse(`C:\mine\a.txt`, iotest.OneByteReader(strings.NewReader(text)))
			require.NoError(t, err)
			require.Equal(t, want, c)
		})
	}
}

// Each case is a whole file in which § marks the place of the mistake.
const whole = "name: x\nmetre: 4/4\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nsource: y\n"

func TestParseMistakes(t *testing.T) {
	const ( // whole, less one line each
		noName     = "metre: 4/4\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nsource: y\n"
		noMetre    = "name: x\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nsource: y\n"
		noSkeleton = "name: x\nmetre: 4/4\ntempo: 90 105 130 quarter\nsource: y\n"
		noTempo    = "name: x\nmetre: 4/4\nskeleton: DT-TD-T-\nsource: y\n"
	)
	tests := []struct{ name, text, want string }{
		{"unknown key", whole + "  §colour: red", "unknown key 'colour'; the keys are name, script, spelling, family"},
		{"American spelling", "§meter: 4/4\n", "unknown key 'meter'; did you mean 'metre'?"},
		{"capital", "§Name: x\n", "unknown key 'Name'; did you mean 'name'?"},
		{"plural", "§sources: x\n", "unknown key 'sources'; did you mean 'source'?"},
		{"no key", "§: x\n", "unknown key ''; the keys are"},
		{"no colon", whole + "\n  §DT-TD-T-\n", "expected a key, a colon and a value, such as 'name: maqsum'"},
		{"full-width colon", "§name：maqsum\n", "expected a key, a colon and a value"},
		{"no value", "name:§  \nscript: a", "'name' has no value"},
		{"twice", whole + "§metre: 4/4", "a second 'metre'; the first is on line 2"},
		{"missing", "name: x\n§", "missing key 'metre', 'skeleton', 'tempo'"},
		{"missing, empty", "§", "missing key 'name', 'metre', 'skeleton', 'tempo'"},
		{"no source", strings.TrimSuffix(whole, "source: y\n") + "§", "missing key 'source': say where the rhythm is from, or 'memory: all of it'"},
		{"wrong encoding", "name: çiftetelli\nscript: karş§\xfdlama\n", "this is not UTF-8 text; save the file as UTF-8"},
		{"UTF-16", "§\xff\xfen\x00a\x00m\x00e\x00", "this is not UTF-8 text; save the file as UTF-8"},
		{"zero byte", "name: x§\x00\n", "invisible character U+0000; delete it"},
		{"hidden direction", "name: ab§\u202ec\n", "invisible character U+202E; delete it"},
		{"hidden in a comment", "# §\x1b[31m\n", "invisible character U+001B; delete it"},

		{"name without a letter", noName + "name: §?!\n", "a name needs a letter or a digit"},
		{"spelling twice", whole + "spelling: a b\nspelling:  §a  b\n", "'a b' stands on line 6 already"},
		{"spelling as name", whole + "spelling: §x\n", "'x' stands on line 1 already"},
		{"not yes or no", whole + "quiz: §Yes\n", "'quiz' is yes or no, not 'Yes'"},

		{"one number", noMetre + "metre: §4\n", "a metre is two numbers, such as 4/4 or 9/8"},
		{"no beats", noMetre + "metre: §0/4\n", "beats: expected a whole number from 1 to 32, not '0'"},
		{"too many beats", noMetre + "metre: §33/4\n", "beats: expected a whole number from 1 to 32, not '33'"},
		{"beats in a word", noMetre + "metre: §four/4\n", "beats: expected a whole number from 1 to 32, not 'four'"},
		{"unit missing", noMetre + "metre: 4/§\n", "unit: expected a whole number from 2 to 16, not ''"},
		{"odd unit", noMetre + "metre: 4 / §5\n", "the unit of a metre is 2, 4, 8 or 16"},

		{"no grouping", "metre: 9/8\n" + strings.ReplaceAll(noMetre, "DT-TD-T-", "D-T-D-TTT") + "§", "missing key 'grouping': 9/8 is odd"},
		{"wrong sum", "metre: 9/8\ngrouping: §2+2+3\n" + noMetre, "the groups sum to 7, but 9/8 has 9 beats"},
		{"empty group", "metre: 9/8\ngrouping: 2+§+3\n" + noMetre, "group: expected a whole number from 1 to 9, not ''"},
		{"word in grouping", "metre: 9/8\ngrouping: 2 + §two + 3\n" + noMetre, "group: expected a whole number from 1 to 9, not 'two'"},

		{"unknown stroke", noSkeleton + "skeleton: DT-§qD-T-\n", "unknown stroke 'q'; strokes are D, T, S, t, k and - for a rest"},
		{"after wide letters", noSkeleton + "skeleton: \u00a0D T  §– T", "unknown stroke '–'; a rest is written '-', a plain hyphen"},
		{"comment behind", noSkeleton + "skeleton: DT-TD-T- §# eighths\n", "unknown stroke '#'; a comment needs a line of its own"},
		{"light in skeleton", noSkeleton + "skeleton: DT-§tD-T-\n", "'t' is a light stroke: it belongs in 'filled'"},
		{"too short", noSkeleton + "skeleton: §DT-TD-T\n", "a skeleton of length 7 does not fit 4/4, which takes 4 steps (one a beat), 8 or 16"},
		{"one step", noSkeleton + "skeleton: §D\n", "length 1 does not fit 4/4"},
		{"too fine", noSkeleton + "skeleton: §" + strings.Repeat("D-------", 4) + "\n", "length 32 does not fit 4/4"},
		{"eight a beat", "metre: 2/4\n" + strings.ReplaceAll(noMetre, "skeleton: DT-TD-T-", "skeleton: §DT-TD-T-DT-TD-T-"), "length 16 does not fit 2/4, which takes 2 steps (one a beat), 4 or 8"},
		{"three a beat", noSkeleton + "skeleton: §DT-TD-T-T--T\n", "length 12 does not fit 4/4"},
		{"no dum", noSkeleton + "skeleton: §TT-TT-T-\n", "the skeleton has no dum (D)"},

		{"filled too short", whole + "filled: §D-T-kkT-D-kkT-k\n", "a filled form of length 15 does not fit the skeleton, which takes 8 steps or 16"},
		{"dum lost", whole + "filled: D-T-kkT-§--kkT-kk\n", "the skeleton has a dum here: write 'D'"},
		{"dum became light", whole + "filled: §kT-TD-T-\n", "the skeleton has a dum here: write 'D'"},
		{"dum added", whole + "filled: D-T-§DkT-D-kkT-kk\n", "'D' where the skeleton rests: only light strokes, t and k, fill it"},
		{"tek added off the grid", whole + "filled: D-T-k§TT-D-kkT-kk\n", "'T' where the skeleton rests"},
		{"tek became a dum", whole + "filled: D§DkTDkTk\n", "the skeleton has 'T' here: write 'T' or 'S'"},
		{"tek became light", whole + "filled: DT-§tD-T-\n", "the skeleton has 'T' here: write 'T' or 'S'"},

		{"variant without name", whole + "variant: §DD-DD-T-\n", "a variant is a name, '=' and a pattern, such as 'heavy = DD-DD-T-'"},
		{"variant with empty name", whole + "variant: §= DD-DD-T-\n", "a variant is a name, '=' and a pattern"},
		{"variant's stroke", whole + "variant: schwör =  DD§x\n", "unknown stroke 'x'"},
		{"variant too long", whole + "variant: heavy = §DD-DD-T-T\n", "a variant of length 9 does not fit the skeleton, which takes 8 steps or 16"},
		{"variant empty", whole + "variant: heavy =§\n", "a pattern needs at least one stroke"},

		{"tempo of two", noTempo + "tempo: §90 130 quarter\n", "expected slow, usual and fast beats a minute and the beat, such as 'about 90 105 130 quarter'"},
		{"tempo of nothing but about", noTempo + "tempo: §about\n", "expected slow, usual and fast beats a minute"},
		{"tempo down", noTempo + "tempo: about  90 §80 130 quarter\n", "the tempo 80 is out of order: slow, usual, fast"},
		{"fast below usual", noTempo + "tempo: 90 105 §100 quarter\n", "the tempo 100 is out of order: slow, usual, fast"},
		{"tempo too slow", noTempo + "tempo: §19 105 130 quarter\n", "beats a minute: expected a whole number from 20 to 400, not '19'"},
		{"tempo too fast", noTempo + "tempo: 90 105 §401 quarter\n", "beats a minute: expected a whole number from 20 to 400, not '401'"},
		{"other beat", noTempo + "tempo: 90 105 130 §eighth\n", "the beat of 4/4 is the 'quarter', not 'eighth'"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			text, line, column := marked(tt.text)
			c, err := rhythm.Parse("x.txt", strings.NewReader(text))
			require.Nil(t, c)
			var mistake *rhythm.Error
			require.ErrorAs(t, err, &mistake)
			require.Equal(t, [2]int{line, column}, [2]int{mistake.Line, mistake.Column}, err)
			require.Contains(t, mistake.Msg, tt.want)
			require.Equal(t, fmt.Sprintf("x.txt:%d:%d: %s", mistake.Line, mistake.Column, mistake.Msg), err.Error())
		})
	}
}

// marked takes § out of a text and returns its line and its column in runes.
func marked(text string) (rest string, line, column int) {
	before, after, _ := strings.Cut(text, "§")
	last := before[strings.LastIndex(before, "\n")+1:]
	return before + after, 1 + strings.Count(before, "\n"), 1 + len([]rune(last))
}

func TestParseTooLong(t *testing.T) {
	const limit = 65_536
	text := whole + "# " + strings.Repeat("x", limit-len(whole)-3) + "\n"
	require.Len(t, text, limit)
	_, err := rhythm.Parse("x.txt", strings.NewReader(text))
	require.NoError(t, err)
	_, err = rhythm.Parse("x.txt", strings.NewReader(text+"#"))
	require.EqualError(t, err, "x.txt:7:1: the file goes on after 65536 bytes: is it a rhythm?")
}

func TestParseFileName(t *testing.T) {
	for _, name := range []string{"My Rhythm.txt", "sa'idi.txt", ".txt", "", "a--b.txt", "-a.txt", "a.b.txt", "مقسوم.txt"} {
		_, err := rhythm.Parse(name, strings.NewReader(whole))
		var mistake *rhythm.Error
		require.ErrorAs(t, err, &mistake, name)
		require.Zero(t, mistake.Line)
		require.Contains(t, err.Error(), "such as my-rhythm.txt")
	}
}

func TestParseReadError(t *testing.T) {
	broken := errors.New("disc gone")
	_, err := rhythm.Parse("x.txt", iotest.ErrReader(broken))
	require.ErrorIs(t, err, broken)
	require.EqualError(t, err, "x.txt: disc gone")
}

func ExampleParse() {
	c, err := rhythm.Parse("saidi.txt", strings.NewReader(`
# Two dums together in the middle.
name: sa'idi
metre: 4/4
skeleton: DT-DD-T-
tempo: about 90 105 125 quarter
source: Iana, https://www.ianadance.com/blogposts/three-common-rhythms
`))
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, step := range c.Dums() {
		fmt.Println("dum on", c.Spoken(step), "after", c.At(step, c.Tempo.Usual))
	}

	_, err = rhythm.Parse("mine.txt", strings.NewReader("name: mine\nmetre: 4/4\nskeleton: DT-qD-T-\ntempo: 60 80 100 quarter\nsource: me\n"))
	fmt.Println(err)
	// Output:
	// dum on 1 after 0s
	// dum on the & of 2 after 857.142857ms
	// dum on 3 after 1.142857143s
	// mine.txt:3:14: unknown stroke 'q'; strokes are D, T, S, t, k and - for a rest
}

func TestParseTempoAtTheEdges(t *testing.T) {
	for text, tempo := range map[string]rhythm.Tempo{
		"20 20 20 quarter":         {Slow: 20, Usual: 20, Fast: 20, Beat: "quarter"},
		"about 20 400 400 quarter": {Slow: 20, Usual: 400, Fast: 400, Beat: "quarter", About: true},
	} {
		c, err := rhythm.Parse("x.txt", strings.NewReader(strings.ReplaceAll(whole, "90 105 130 quarter", text)))
		require.NoError(t, err)
		require.Equal(t, tempo, c.Tempo)
	}
}
