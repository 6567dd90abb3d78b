package session_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// The keys of a presenter's clicker.
const (
	forth = "PageDown"
	backw = "PageUp"
)

// sounds reports whether anything is heard, or will be soon.
func sounds(b *paper.Browser) bool {
	now := b.Wall.Now()
	return len(b.Sound.Strikes(now, now+700)) > 0
}

// hears waits until what a stage plays has been heard, or for a minute.
func hears(b *paper.Browser) {
	quiet := 0
	b.Until(func() bool {
		if quiet++; sounds(b) {
			quiet = 0
		}
		return quiet > 200 // frames: an eight in which a room goes on by itself is over sooner
	})
}

// A class with a clicker: from each supplied set, by nothing but its keys, to the page
// after it and out again. What is asked sounds, hands are counted, and in the middle the
// page is loaded anew and stands where it stood. The class's diary has it, once.
func TestClassWithAClicker(t *testing.T) {
	for n, set := range warmup.Presets() {
		b := opened(t, "?screen="+view.ScreenClass, uint64(n))
		require.NoError(t, b.Does(view.ActClassBegin, set))
		require.True(t, b.Until(func() bool { return sounds(b) }), "the walk-in")
		questions, heard, counted, reloaded, presses := 0, 0, 0, false, 0
		for b.Screen().ID != "class-after" {
			presses++
			require.Less(t, presses, 200, b.Text())
			before, pressed := b.Text(), b.Wall.Now()
			require.NoError(t, b.Key(forth))
			if b.Wait(1000); len(b.Sound.Strikes(pressed, b.Wall.Now())) > 0 {
				heard++
				hears(b)
			}
			if b.Find("hands-most") != nil {
				counted++
				require.NoError(t, b.Key([]string{"m", "s", "f", "n"}[counted%4]))
			}
			require.NotEqual(t, before, b.Text(), "each press does something")
			if where := b.Find("where"); !reloaded && where != nil && strings.HasPrefix(where.Text, "4 of") {
				reloaded = true
				_, err := fmt.Sscanf(where.Text, "4 of %d", &questions)
				require.NoError(t, err)
				stood := b.Find("where").Text + b.Screen().FocusID()
				b.Load()
				b.Wait(100)
				require.Equal(t, stood, b.Find("where").Text+b.Screen().FocusID())
				require.False(t, sounds(b), "nothing sounds by itself")
			}
		}
		require.True(t, reloaded)
		require.GreaterOrEqual(t, heard, questions, "each of them sounds")
		require.Len(t, b.Storage.KeptUnder(host.KeptDiary), 1)
		require.NoError(t, b.Key(backw))
		require.NoError(t, b.Key(forth))
		require.Equal(t, "class-after", b.Screen().ID)
		require.NoError(t, b.Press("csv"))
		require.NoError(t, b.Press("json"))
		require.Len(t, b.Storage.Files, 2)
		require.NoError(t, b.Key(forth))
		require.Equal(t, view.ScreenClass, b.Screen().ID, "and out")
		entries, err := warmup.ParseDiary(strings.Join(b.Storage.KeptUnder(host.KeptDiary), "\n"))
		require.Empty(t, err)
		require.Len(t, entries, 1)
		require.Empty(t, b.Storage.Rounds(), "it is nobody's practice")
		require.NoError(t, b.Press("home"))
	}
}

// A warm-up that is left is come back to: by its button, by the clicker, and by the back
// button and forward again; a new one can be begun beside it.
func TestClassIsLeftAndComeBackTo(t *testing.T) {
	b := opened(t, "?screen="+view.ScreenClass, 3)
	require.NoError(t, b.Does(view.ActClassBegin, warmup.Presets()[0]))
	for range 3 {
		require.NoError(t, b.Key(forth))
		hears(b)
	}
	stood := b.Find("where").Text
	for _, out := range []func() error{
		func() error { return b.Key("Escape") }, b.Back,
	} {
		require.NoError(t, out())
		b.Wait(100)
		require.Equal(t, view.ScreenClass, b.Screen().ID)
		require.False(t, sounds(b))
		require.NoError(t, b.Does(view.ActClassResume, "*"))
		require.Equal(t, stood, b.Find("where").Text)
		b.Wait(100)
	}
	require.NoError(t, b.Key("Escape"))
	b.Wait(100)
	require.NoError(t, b.Does(view.ActClassBegin, warmup.Presets()[1]))
	require.NotNil(t, b.Find("heading-in"))
}

// The sound is torn, taken away or hidden while a room listens: after a gap what sounded
// begins anew, and else it is at one press; no press is lost, and no hand.
func TestClassInterrupted(t *testing.T) {
	b := opened(t, "?screen="+view.ScreenClass, 5)
	require.NoError(t, b.Does(view.ActClassBegin, warmup.Presets()[0]))
	b.Wait(4000)
	b.Gap()
	require.True(t, b.Until(func() bool { return sounds(b) }), "the walk-in goes on")
	b.Interrupt()
	require.False(t, sounds(b))
	require.NoError(t, b.Key(forth))
	require.NoError(t, b.Key(forth))
	require.True(t, b.Until(func() bool { return sounds(b) }), "the first question")
	stood := b.Screen().FocusID()
	b.Wait(1000)
	b.Gap()
	require.True(t, b.Until(func() bool { return sounds(b) }))
	b.Hide(true)
	b.Wait(5000)
	b.Hide(false)
	b.Wait(200)
	require.False(t, sounds(b))
	require.Equal(t, stood, b.Screen().FocusID())
	require.NoError(t, b.Key(forth))
	require.True(t, b.Until(func() bool { return sounds(b) }), "at one press")
	require.Equal(t, stood, b.Screen().FocusID(), "the same question")
}

// A class is put together, kept under a name and handed on as a file, and another page
// takes the file; what cannot be put together says why.
func TestClassIsPutTogether(t *testing.T) {
	b := opened(t, "?screen="+view.ScreenClass, 6)
	require.NoError(t, b.Type("class-name", "Tuesdays"))
	require.NoError(t, b.Slide("class-minutes", 5))
	require.NoError(t, b.Choose("level", view.LevelFilled))
	require.NoError(t, b.Press("class-save"))
	require.Empty(t, b.Storage.KeptUnder(host.KeptSet), "it has no name")
	require.NoError(t, b.Type("class-set-name", "Slow"))
	require.NoError(t, b.Press("class-save"))
	require.Len(t, b.Storage.KeptUnder(host.KeptSet), 1)
	require.NoError(t, b.Press("class-file"))
	link := b.Find("class-link").Value
	require.Contains(t, b.Query(), strings.TrimPrefix(link, "?"), "the address is the link")

	other := opened(t, "?screen="+view.ScreenClass, 7)
	require.NoError(t, other.OpenFile("class-open", "set.txt", "no set"))
	require.Empty(t, other.Storage.KeptUnder(host.KeptSet))
	require.NoError(t, other.OpenFile("class-open", "set.txt", b.Storage.Files[0].Text))
	require.Equal(t, b.Storage.KeptUnder(host.KeptSet), other.Storage.KeptUnder(host.KeptSet))
	require.Equal(t, link, other.Find("class-link").Value)
	require.NoError(t, other.Press("class-begin"))
	require.NotNil(t, other.Find("heading-in"))
}
