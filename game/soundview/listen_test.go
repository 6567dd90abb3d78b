package soundview

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/roundview"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

func listen(t testing.TB, id string) *Listen {
	return &Listen{
		Rhythm: cycle(t, id), Core: core(t), More: more(t), BPM: 105, Slow: 60, Fast: 140,
		Level: view.LevelBare, Levels: []string{view.LevelBare, view.LevelFilled}, Volume: 60,
	}
}

func listenScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name, id string, change func(*Listen)) {
		l := listen(t, id)
		change(l)
		all["listen-"+name] = l.Screen(w)
	}
	add("ready", "maqsum", func(l *Listen) { l.Notes = []view.Note{view.NoteQuiet} })
	add("playing", "maqsum", func(l *Listen) { l.Playing, l.Level, l.Balance, l.Board = true, view.LevelFilled, -40, 320 })
	add("riff", "maqsum", func(l *Listen) {
		l.Playing, l.Level, l.Levels, l.Hide, l.Help = true, view.LevelRiffing, allLevels, 60, view.Help{Alone: true, Hands: true}
		l.Riff, l.Hides = picture.RiffOf(proof.Riffed(), 8, 1), new(0.3)
	})
	add("odd", "samai-thaqil", func(l *Listen) { l.Level, l.Balance = view.LevelFilled, 100 })
	add("problem", "maqsum", func(l *Listen) { l.Problem = "mine.txt:3:14: unknown stroke 'q'" })
	add("silent", "baladi", func(l *Listen) { l.Volume, l.Notes = -1, []view.Note{view.NoteNoSound} })
	return all
}

// Playing changes its own button, what Escape does, whether there is something to
// hear alone, and who draws the line, and nothing else: the focus stays on the button.
func TestPlayingChangesLittle(t *testing.T) {
	l := listen(t, "maqsum")
	before := l.Screen(words(t))
	l.Playing = true
	after := l.Screen(words(t))
	var changed []string
	before.Each(func(it *view.Item) {
		if !view.Same(it, after.Find(it.ID)) {
			changed = append(changed, it.ID)
		}
	})
	require.Equal(t, []string{"line", "play", "alone"}, changed)
	require.Equal(t, before.FocusID(), after.FocusID())
	require.Equal(t, view.ActHome, before.Escape)
	require.Equal(t, view.ActStop, after.Escape)
	require.Equal(t, []string{"Play", "Stop"}, []string{before.Find("play").Name, after.Find("play").Name})
}

// A broken file says where, and changes nothing else.
func TestProblemChangesOneText(t *testing.T) {
	l := listen(t, "maqsum")
	before := l.Screen(words(t))
	l.Problem = "mine.txt:3:14: unknown stroke 'q'"
	after := l.Screen(words(t))
	before.Each(func(it *view.Item) {
		require.Equal(t, it.ID != "problem", view.Same(it, after.Find(it.ID)), it.ID)
	})
	require.Equal(t, "This file was not opened. mine.txt:3:14: unknown stroke 'q'", after.Find("problem").Text)
	require.Equal(t, view.LivePolite, after.Find("problem").Live)
}

func TestBalanceInWords(t *testing.T) {
	w := words(t)
	for n, want := range map[int]string{-100: "lead drum alone", -30: "30 % towards the lead drum", 0: "both drums alike",
		70: "70 % towards the bass drum", 100: "bass drum alone"} {
		require.Equal(t, want, view.SayBalance(w, n))
	}
}

// Whatever plays shows as chosen beside the most used rhythms, also one of the others,
// whose own list is closed.
func TestWhatPlaysShowsAsChosen(t *testing.T) {
	w := words(t)
	for _, id := range []string{"maqsum", "baladi", "masmudi-kabir", "samai-thaqil"} {
		s := listen(t, id).Screen(w)
		row := s.Find("rhythm")
		require.Equal(t, id, row.Value)
		require.Equal(t, id, view.Chosen(row.Options, id))
		require.LessOrEqual(t, len(row.Options), len(core(t))+1)
		require.Len(t, s.Find("more-rhythm").Options, len(more(t)), "and the others stay where they are")
	}
}

// The file that Listen describes can be opened as it stands, and no line of it can be
// left out.
func TestOwnFileIsAsDescribed(t *testing.T) {
	shown := listen(t, "maqsum").Screen(words(t))
	require.Contains(t, shown.Find("own-how").Text, ownLines)
	lines := strings.Split(ownLines, " · ")
	c, err := rhythm.Parse("mine.txt", strings.NewReader(strings.Join(lines, "\n")))
	require.NoError(t, err)
	require.Equal(t, "DT-TD-T-", c.Skeleton.String())
	for i := range lines {
		_, err := rhythm.Parse("mine.txt", strings.NewReader(strings.Join(slices.Delete(slices.Clone(lines), i, i+1), "\n")))
		require.Error(t, err, lines[i])
	}
}

func TestRhythmOption(t *testing.T) {
	require.Equal(t, view.Option{Value: "maqsum", Label: "maqsum"}, core(t)[1])
	require.Equal(t, view.Option{Value: "samai-thaqil", Label: "sama'i thaqil, 10/8 (sources differ)"}, more(t)[1])
	require.Equal(t, view.Option{Value: view.Any, Label: "any of them"}, roundview.AnyOption(words(t)))
	require.Equal(t, view.Option{Value: "roman-9", Label: "Roman 9/8"}, view.RhythmOption(supplied(t, "roman-9"), words(t)), "the metre once")
}

func TestNameOf(t *testing.T) {
	require.Equal(t, view.RhythmName{ID: "maqsum", Name: "maqsum", Script: "مقسوم", Lang: "ar", Dir: "rtl"}, view.NameOf(cycle(t, "maqsum")))
	require.Equal(t, view.RhythmName{ID: "baladi", Name: "baladi (masmudi saghir)"}, view.NameOf(cycle(t, "baladi")))
	require.Equal(t, "baladi", view.Plain("baladi (masmudi saghir)"))
	require.Equal(t, "sa'idi", view.Plain("sa'idi"))
}

func TestSentence(t *testing.T) {
	require.Equal(t, "Entrances.", say.Sentence("entrances"))
	require.Equal(t, "Şarkı.", say.Sentence("şarkı"))
}

// The tempo names its beat, whatever it is.
func TestTempoNamesItsBeat(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	for _, beat := range []string{"half", "quarter", "eighth", "sixteenth", ""} {
		name := sayTempoOf(w, beat)
		require.Contains(t, name, beat)
		require.False(t, seen[name], name)
		seen[name] = true
	}
}
