package say

import (
	"maps"
	"os"
	"path/filepath"
	"regexp"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
)

func words(t testing.TB) Words {
	w, err := Load(assets.Words)
	require.NoError(t, err)
	return w
}

func TestSay(t *testing.T) {
	w, err := Load("# a comment\n\nof: {n} of {of}\neights.one: {n} eight\r\neights.other: {n} eights\n")
	require.NoError(t, err)
	require.Equal(t, "3 of 8", w.Say("of", "n", 3, "of", 8))
	require.Equal(t, "1 eight", w.Say("eights", "n", 1))
	require.Equal(t, "0 eights", w.Say("eights", "n", 0))
	require.Equal(t, "4 eights", w.Say("eights", "n", 4))
	require.Equal(t, "{of} of 2", w.Say("of", "n", "{of}", "of", 2), "a value is not filled in again")
	require.Equal(t, "{n} of {of}", w.Say("of"))
	require.Equal(t, "{nothing}", w.Say("nothing"))
}

func TestLoadWordsErrors(t *testing.T) {
	for _, c := range []struct{ name, text, want string }{
		{"no colon", "a: b\n\nhello", "words:3: no colon"},
		{"capital", "Hello: a", `words:1: key "Hello"`},
		{"no key", ": a", `words:1: key ""`},
		{"no text", "a:  ", "words:1: a has no text"},
		{"twice", "a: b\na: c", "words:2: a stands here twice"},
		{"open", "a: {n", "words:1: a: placeholder {n"},
		{"close", "a: n}", "words:1: a: } without {"},
		{"empty", "a: {}", "words:1: a: placeholder {"},
		{"one form", "a.one: b", "words: a.one without its other form"},
		{"other form", "a.other: b", "words: a.other without its other form"},
	} {
		t.Run(c.name, func(t *testing.T) {
			_, err := Load(c.text)
			require.EqualError(t, err, c.want)
		})
	}
}

func FuzzLoadWords(f *testing.F) {
	f.Add(assets.Words)
	f.Add("a: {b}\nc.one: 1\nc.other: 2")
	f.Fuzz(func(t *testing.T, text string) {
		w, err := Load(text)
		if err != nil {
			return
		}
		for key, text := range w {
			require.NotEmpty(t, text)
			require.NoError(t, braces(text), key)
		}
	})
}

var (
	said   = regexp.MustCompile(`\.Say\("([^"]*)"`)
	unsaid = regexp.MustCompile(`\.Say\([^"]`)
	// What other words would mean the same as ours (count, cycle, stroke, dum, offset), or
	// what one of ours might also mean; "note" only as a length.
	strays  = regexp.MustCompile(`(?i)\b(beats?|bars?|steps?|hits?|errors?|samples?|loops?|patterns?|tracks?|pads?|clicks?|latency|accuracy|deep strokes?|low notes?)\b`)
	lengths = regexp.MustCompile(`(?i)(\w+) notes?\b`)
	holder  = regexp.MustCompile(`\{([a-z0-9-]+)\}`)
	arcades = regexp.MustCompile(`(?i)\b(perfect|great|awesome|miss(ed)?|combo|streak|score|level up|game over|wrong|fail(ed)?|easy|hard|again|hips? don)\b`)
)

// Every key that the code says is in the file, and every key of the file is said.
func TestWordsAndCodeAgree(t *testing.T) {
	w, used := words(t), map[string]bool{}
	require.NoError(t, filepath.WalkDir("../..", func(path string, d os.DirEntry, err error) error {
		if err != nil || d.IsDir() || !strings.HasSuffix(path, ".go") || strings.HasSuffix(path, "_test.go") {
			return err
		}
		code, err := os.ReadFile(path)
		require.NoError(t, err)
		require.False(t, unsaid.Match(code), "%s: a key must be a literal, so that this test sees it", path)
		for _, m := range said.FindAllStringSubmatch(string(code), -1) {
			used[m[1]] = true
		}
		return nil
	}))
	has := map[string]bool{}
	for key := range w {
		has[strings.TrimSuffix(strings.TrimSuffix(key, ".one"), ".other")] = true
	}
	require.Equal(t, slices.Sorted(maps.Keys(has)), slices.Sorted(maps.Keys(used)))
}

// Two forms of a sentence have the same placeholders.
func TestFormsHaveTheSamePlaceholders(t *testing.T) {
	w := words(t)
	for key, text := range w {
		if one, ok := strings.CutSuffix(key, ".one"); ok {
			require.ElementsMatch(t, holder.FindAllString(text, -1), holder.FindAllString(w[one+".other"], -1), key)
		}
	}
}

// The tone is a teacher's: no verdicts of arcade games or flash cards.
func TestWordsOfATeacher(t *testing.T) {
	for key, text := range words(t) {
		// Of dums it is said how many are not missed: no verdict, and in the diary alone.
		require.NotRegexp(t, arcades, strings.ReplaceAll(strings.ToLower(text), "not missed", ""), key)
		require.NotContains(t, text, "!", key)
	}
}

// One word for a thing, and one thing for a word.
func TestOneWordForOneThing(t *testing.T) {
	for key, text := range words(t) {
		require.NotRegexp(t, strays, holder.ReplaceAllString(text, ""), key)
		for _, m := range lengths.FindAllStringSubmatch(text, -1) {
			require.Contains(t, []string{"half", "quarter", "eighth", "sixteenth"}, m[1], key)
		}
	}
}

// Where there is no keyboard, no sentence speaks of its keys, but those on the keys of a
// presenter's clicker; and where there is one, none is the poorer.
func TestWhereToPress(t *testing.T) {
	w := words(t)
	touch, keys := w.ForTouch(true), w.ForTouch(true).ForTouch(false)
	told := 0
	for key, text := range w {
		if strings.HasPrefix(key, "where-") || strings.HasPrefix(key, "class-keys") {
			continue
		}
		if strings.Contains(text, "{where-to-press}") {
			told++
			require.Contains(t, touch.Say(key), "anywhere on the drum", key)
			require.Contains(t, keys.Say(key), "space, any letter, or the drumhead", key)
			require.Equal(t, w.Say(key), keys.Say(key), key)
		}
		require.NotRegexp(t, `(?i)\b(space,|any letter)`, touch.Say(key), key)
	}
	require.GreaterOrEqual(t, told, 6)
}
