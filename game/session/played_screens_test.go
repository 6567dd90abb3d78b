package session_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/paper"
	"groundbeat/game/view"
)

// lows are the times of the dums that were heard in the last ms.
func lows(b *paper.Browser, ms float64) (at []float64) {
	for _, s := range b.Sound.Strikes(b.Wall.Now()-ms, b.Wall.Now()) {
		if s.Low() {
			at = append(at, s.At)
		}
	}
	return at
}

// Listen goes on without a hole while tempo and level change: each is heard from a
// cycle's first step on, and none of the dums before is late or missing.
func TestListenGoesOn(t *testing.T) {
	b := opened(t, "?screen=listen&rhythm=maqsum&bpm=120&riff=bare", 1)
	require.NoError(t, b.Press("play"))
	b.Wait(5000)
	require.NoError(t, b.Slide("tempo", 90))
	b.Wait(6000)
	require.NoError(t, b.Choose("level", view.LevelFilled))
	b.Wait(3500)
	require.NoError(t, b.Choose("level", view.LevelSolo))
	require.NoError(t, b.Choose("hide", "100"))
	require.NoError(t, b.Press("alone"))
	require.NoError(t, b.Press("hands"))
	b.Wait(100)
	dums := lows(b, 15_000)
	slow := 0
	for i := 1; i < len(dums); i++ {
		switch gap := dums[i] - dums[i-1]; {
		case math.Abs(gap-1000) < 1: // two beats at 120
			require.Zero(t, slow, "the tempo changes once")
		case math.Abs(gap-2*60_000/90.) < 1:
			slow++
		default:
			require.Fail(t, "a gap that belongs to neither tempo", "%v ms", gap)
		}
	}
	require.Greater(t, slow, 3)
	require.NoError(t, b.Press("play"), "which is Stop by now")
	b.Wait(100)
	require.False(t, sounds(b))
	require.Empty(t, b.Storage.Rounds(), "nothing of it is a round")
}

// Another rhythm begins at once, and nothing of the one before is heard under it.
func TestAnotherRhythmCutsTheOneBefore(t *testing.T) {
	b := opened(t, "?screen=listen&rhythm=baladi&bpm=100", 1)
	require.NoError(t, b.Press("play"))
	b.Wait(3000)
	require.NoError(t, b.Choose("more-rhythm", "wahda"))
	b.Wait(60)
	require.Equal(t, "wahda", b.Find("heading").Name)
	b.Wait(7000)
	c := b.Cycle("wahda")
	cycle := float64(c.Length(c.Tempo.Usual)) / 1e6
	dums := lows(b, 6900)
	require.NotEmpty(t, dums)
	for i := len(c.Dums()); i < len(dums); i++ {
		require.InDelta(t, cycle, dums[i]-dums[i-len(c.Dums())], 1)
	}
}

// A rhythm of one's own is read from a file, or it is said where the file is wrong; then it
// is played as any other.
func TestOwnRhythm(t *testing.T) {
	b := opened(t, "?screen=listen", 1)
	require.NoError(t, b.OpenFile("file", "mine.txt", "name: mine\nmetre: 4/4\nskeleton: DT-TDq T-\ntempo: 80 100 120 quarter\nsource: own\n"))
	require.Contains(t, b.Find("problem").Text, "mine.txt:3:16: unknown stroke 'q'")
	require.Equal(t, "maqsum", b.Find("heading").Name, "nothing changed")
	require.NoError(t, b.OpenFile("file", "mine.txt",
		"name: mine\nmetre: 4/4\nskeleton: DT-TDDT-\ntempo: 80 100 120 quarter\nrole: practice\nlisten: dums on 1, on 3 and on the & of 3\nsource: own\n"))
	require.Equal(t, "mine", b.Find("heading").Name)
	require.NoError(t, b.Press("nav-dums"))
	require.Contains(t, b.Find("heading").Name, "mine")
	finish(t, b, "begin")
	r := b.Storage.Rounds()[0]
	require.Equal(t, "mine", r.Rhythm)
	require.Equal(t, len(r.Strokes), r.Matched)
}

// What Listen leaves to one drum alone is no matter of other screens.
func TestBalanceStaysInListen(t *testing.T) {
	b := opened(t, "?screen=listen&rhythm=maqsum&bpm=120", 1)
	require.NoError(t, b.Slide("balance", -100))
	require.NoError(t, b.Press("play"))
	b.Wait(1500)
	require.Equal(t, []float64{1, 0}, []float64{b.Sound.Lead, b.Sound.Bass})
	require.NoError(t, b.Press("nav-dums"))
	require.NoError(t, b.Press("begin"))
	require.Equal(t, []float64{1, 1}, []float64{b.Sound.Lead, b.Sound.Bass})
}

// Somebody who has never been here: at one press a dum and a tek, at another her first
// round, and then Home is that of somebody who has.
func TestFirstVisit(t *testing.T) {
	b := opened(t, "", 1)
	require.Equal(t, "Tap your first dums", b.Find("first").Name)
	heard := b.Wall.Now()
	require.NoError(t, b.Press("strike"))
	b.Wait(2500)
	var voices []audio.Voice
	for _, s := range b.Sound.Strikes(heard, b.Wall.Now()) {
		voices = append(voices, s.Voice)
	}
	require.ElementsMatch(t, []audio.Voice{audio.LeadDum, audio.BassDum, audio.LeadTek, audio.BassTek}, voices)
	loud := b.Sound.Loudness
	require.NoError(t, b.Slide("volume", 100))
	require.Greater(t, b.Sound.Loudness, loud, "it begins quietly")

	require.NoError(t, b.Press("first"))
	require.Equal(t, link.FirstRound().String(), b.Query())
	require.True(t, paper.NewPlayer(b, 1).Play())
	require.Len(t, b.Storage.Rounds(), 1)
	home(t, b)
	require.Nil(t, b.Find("first"))
	require.NotNil(t, b.Find("practise-now"))
	require.NoError(t, b.Choose("theme", link.ThemeDark))
	b.Load()
	b.Wait(100)
	require.NotNil(t, b.Find("practise-now"), "it was kept")
	require.Equal(t, link.ThemeDark, b.Page.Colour)
}

// The sound check: what cannot be heard is helped, the picture waits and the drums stand as
// they are set, for this output, and are so after the page was loaded anew.
func TestSoundCheckIsKept(t *testing.T) {
	b := opened(t, "?screen="+view.ScreenCheck, 1)
	for _, stroke := range []string{"strike-dum", "strike-tek"} {
		heard := b.Wall.Now()
		require.NoError(t, b.Press(stroke))
		b.Wait(2000)
		strikes := b.Sound.Strikes(heard, b.Wall.Now())
		require.Len(t, strikes, 2, "one stroke of each drum")
		require.Equal(t, stroke == "strike-dum", strikes[0].Low() || strikes[1].Low())
	}
	require.NoError(t, b.Choose("hears", "no"))
	require.NotNil(t, b.Find("tips"))
	for range 3 {
		require.NoError(t, b.Does(view.ActBass, "*"))
		b.Wait(1000)
	}
	require.Less(t, b.Sound.Lead, 1.0)
	require.Equal(t, 1.0, b.Sound.Bass)
	require.NoError(t, b.Press("play"))
	b.Wait(3000)
	require.NoError(t, b.Slide("later", 180))
	require.NoError(t, b.Tick("mono", false))
	require.Equal(t, audio.Spread, b.Sound.Stands)
	b.Gap()
	require.True(t, b.Until(func() bool { return sounds(b) }), "it plays on after a gap")
	lead := b.Sound.Lead
	b.Load()
	b.Wait(100)
	require.Equal(t, host.Adjustment{Later: 180, Bass: int(math.Round(100 - 100*lead)), Wide: true}, b.Storage.Outputs().List[0].Adjustment)
	require.Equal(t, lead, b.Sound.Lead)
	require.Equal(t, audio.Spread, b.Sound.Stands)
}

// The browser's back and forward buttons: from a round to where it was got ready, from
// elsewhere to where one was, and to a review as it was left, until the page is loaded
// anew; rounds pile up no entries.
func TestBackAndForward(t *testing.T) {
	b := opened(t, "?screen=listen&rhythm=saidi", 1)
	require.NoError(t, b.Press("nav-dums"))
	require.NoError(t, b.Slide("tempo", 100))
	ready := b.Query()
	require.Contains(t, ready, "bpm=100")
	for range 3 {
		require.NoError(t, b.Press("begin"))
		b.Wait(1000)
		require.NoError(t, b.Press("stop"))
		b.Wait(100)
	}
	finish(t, b, "begin")
	review := b.Text()
	require.NoError(t, b.Press("home"))
	require.NoError(t, b.Press("go-set-up"))
	require.NoError(t, b.Back())
	require.Equal(t, view.ScreenHome, b.Screen().ID)
	require.NoError(t, b.Back())
	require.Equal(t, review, b.Text(), "the review that one came from")
	require.NoError(t, b.Back())
	require.NotNil(t, b.Find("begin"))
	require.Equal(t, ready, b.Query())
	require.NoError(t, b.Back())
	require.Equal(t, view.ScreenListen, b.Screen().ID)
	require.Error(t, b.Back(), "before it there was nothing")
	require.NoError(t, b.Forward())
	require.Equal(t, ready, b.Query())
	b.Load()
	b.Wait(100)
	require.NotNil(t, b.Find("begin"))
	require.NoError(t, b.Back())
	require.Equal(t, view.ScreenListen, b.Screen().ID, "entries outlast the page")
	require.Len(t, b.Storage.Rounds(), 1)
}
