package screens

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/view"
)

// centreOf is the figure in the middle of a picture of a drumhead.
func centreOf(p *picture.Picture) string {
	for _, s := range p.Shapes {
		if s.Kind == picture.KindText && s.X == picture.Middle && s.Y == picture.Middle {
			return s.Text
		}
	}
	return ""
}

// Any rhythm is one of those that were asked for, the same for the same seed whoever opens
// the link, and in time each of them.
func TestAnyRhythmIsOneOfThePool(t *testing.T) {
	for _, from := range []string{"five", "even", "saidi.maqsum"} {
		met := map[string]int{}
		var pool []string
		for seed := range 60 {
			g, _, _ := newTestGame(t, fmt.Sprintf("?screen=dums&rhythm=any&from=%s&seed=%d", from, seed+1))
			c := g.dums().round.Setting.Rhythm
			met[c.ID]++
			cycles, err := quiz.From(g.Shared.Rhythms(), from)
			require.NoError(t, err)
			require.Contains(t, cycles, c)
			require.Equal(t, c.Tempo.Usual, g.dums().round.BPM(), "at its own tempo")
			require.Equal(t, c, g.dums().chosen(uint64(seed+1)), "the same once more")
			if pool = nil; seed == 59 {
				for _, c := range cycles {
					pool = append(pool, c.ID)
				}
			}
		}
		for _, id := range pool {
			require.Positive(t, met[id], "%s from %s", id, from)
		}
		if from == "saidi.maqsum" {
			require.Less(t, max(met["saidi"], met["maqsum"]), 45, "as often the one as the other")
		}
	}
}

// Where a pool has gone, a rhythm of the five is played; where the address names one, that.
func TestAPoolThatHasGone(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=any&from=five")
	five, err := quiz.From(g.Shared.Rhythms(), quiz.Five)
	require.NoError(t, err)
	g.Shared.Address.From = "nothing-of-the-kind"
	for seed := range uint64(20) {
		require.Contains(t, five, g.dums().chosen(seed))
	}
	g.Shared.Address.Rhythm = "karsilama"
	for seed := range uint64(5) {
		require.Equal(t, "karsilama", g.dums().chosen(seed).ID)
	}
}

// Any rhythm is not named by the tempo before it is played: the screen has no tempo of its
// own then.
func TestAnyRhythmHasNoTempoBeforeItIsPlayed(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=any&from=five&seed=3")
	require.Zero(t, g.dums().model().BPM)
	g.Use(view.ActBegin, "")
	require.Equal(t, g.dums().round.BPM(), g.dums().model().BPM)
	g, _, _ = newTestGame(t, readyLink)
	require.Equal(t, 120, g.dums().model().BPM)
}

// The count-in stands in the middle, 5 6 7 8, and then the sweep is where the stroke is that
// is heard: at each stroke of the base it lies on a step that has one.
func TestTheSweepMeetsTheStrokes(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=saidi&bpm=100&eights=1&riff=bare&seed=7")
	g.Use(view.ActBegin, "")
	base := g.dums().round.Setting.Rhythm.Skeleton
	since, strokes := g.Wall.Now(), 0
	var figures []string
	for g.dums().round.UnderWay() {
		g.Ticks(10)
		if figure := centreOf(g.Controller.Draw(view.PlaceHead)); figure != "" && !slices.Contains(figures, figure) {
			figures = append(figures, figure)
		}
		h := &g.dums().head.Shown
		require.False(t, h.Turning && h.Centre != "")
		for _, s := range g.Sound.Strikes(since, g.Wall.Now()) {
			if !s.Base() || !h.Turning {
				continue
			}
			step := wrapped(h.Turn-float64(int(h.Turn))) * float64(len(base))
			i := int(step)
			require.True(t, base[i].Sounds(), "at %.2f", step)
			require.Equal(t, s.Low(), base[i].Low(), "at %.2f", step)
			require.Less(t, step-float64(i), 0.1, "just passed")
			strokes++
		}
		since = g.Wall.Now()
	}
	require.Equal(t, []string{"5", "6", "7", "8"}, figures)
	require.GreaterOrEqual(t, strokes, 8)
}

// A bead for each eight, one more gone at the end of each; none in the count-in.
func TestABeadForEachEight(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=maqsum&bpm=120&eights=4&seed=7")
	g.Use(view.ActBegin, "")
	x := g.dums()
	eight := playback.Eight(x.round.Setting.Rhythm, 120)
	require.Equal(t, 4*time.Second, eight)
	for x.round.Heard() < x.round.End()-eight/2 {
		g.Ticks(50)
		x.draw(view.PlaceHead)
		h := &x.head.Shown
		if into := x.round.Heard() - x.round.Start(); into < 0 {
			require.Zero(t, h.Beads)
		} else {
			require.Equal(t, []int{4, int(into / eight)}, []int{h.Beads, h.Gone})
		}
	}
	require.Equal(t, 3, x.head.Shown.Gone)
}

// Each tap leaves a mark where it came, an age older with every cycle, until the review
// tells more of it.
func TestMarksAgeWithEachCycle(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=bare&seed=7")
	g.Use(view.ActBegin, "")
	x := g.dums()
	start := x.round.Start()
	g.pressed(t, g.Page, g.Wall, x.taps.Number, start+500*time.Millisecond, start+1500*time.Millisecond, start+1700*time.Millisecond)
	x.draw(view.PlaceHead)
	require.Len(t, x.head.Shown.Taps, 2)
	for i, turn := range []float64{0.25, 0.75} {
		mark := x.head.Shown.Taps[i]
		require.InDelta(t, turn, mark.Turn, 0.01)
		require.Zero(t, mark.Age)
	}
	g.Ticks(1000) // 2.7 s into the round: the first is a cycle old, and the second not yet
	x.draw(view.PlaceHead)
	require.Equal(t, []int{1, 0}, []int{x.head.Shown.Taps[0].Age, x.head.Shown.Taps[1].Age})
	g.Ticks(4000)
	require.Equal(t, view.Reviewing, x.phase())
	x.draw(view.PlaceHead)
	require.Empty(t, x.head.Shown.Taps)
	require.NotNil(t, x.head.Shown.Review)
	require.Nil(t, x.draw(view.PlaceLine), "no other picture lives here")
}

// What is told beside a round: to be quiet, before it and where it sounds; afterwards, that
// nothing was measured on the output, and how far off the set-up is where it was.
func TestWhatIsToldBesideARound(t *testing.T) {
	for _, mean := range []float64{0, 35} {
		g, _, _ := newTestGame(t, readyLink)
		if mean != 0 {
			g.Shared.Outputs.Put(host.Output{Name: "studio", Mean: mean, When: someDay})
		}
		require.Contains(t, g.dums().notes(), view.NoteQuiet)
		g.Use(view.ActBegin, "")
		require.NotContains(t, g.dums().notes(), view.NoteQuiet)
		g.Ticks(7000)
		require.Equal(t, mean == 0, slices.Contains(g.dums().notes(), view.NoteNoSetUp))
		m := g.dums().model()
		require.Equal(t, mean != 0, m.Result.Measured)
		if mean == 0 {
			require.Nil(t, m.Result.SetUp)
			continue
		}
		require.Equal(t, 35*time.Millisecond, *m.Result.SetUp)
	}
	g, _, _ := newTestGame(t, readyLink)
	g.Sound.None = true
	g.Ticks(50)
	g.Use(view.ActBegin, "")
	g.Use(view.ActStop, "")
	require.NotContains(t, g.dums().notes(), view.NoteQuiet, "there is nothing to be loud")
}

// A round that is cut says why, keeps nothing and can be left.
func TestARoundThatIsCut(t *testing.T) {
	for why, said := range map[string]string{
		host.WhyHidden: "out of sight", host.WhyGap: "was interrupted", host.WhyPaused: "was paused by the browser",
	} {
		for _, link := range []string{readyLink, "?screen=stop&rhythm=maqsum&eights=4&seed=3", carryLink, "?screen=change&rhythm=maqsum&from=five&seed=3", whichLink} {
			g, _, _ := newTestGame(t, link)
			g.Use(view.ActBegin, "")
			g.Ticks(2500)
			g.Page.Add(host.Event{Kind: host.Stopped, Reason: why})
			g.Update()
			phaser := g.Controller.(interface {
				Phase() view.Phase
				GoOut()
			})
			require.Equal(t, view.Voided, phaser.Phase(), link)
			require.Contains(t, texts(g.Screen()), said, link)
			require.Empty(t, g.Storage.Rounds())
			phaser.GoOut()
			require.Equal(t, view.Ready, phaser.Phase(), link)
			g.Ticks(3000)
			require.Empty(t, g.Sound.Strikes(g.Wall.Now()-2000, g.Wall.Now()), "nothing sounds on")
		}
	}
}

// texts are all that a screen says.
func texts(s view.Screen) (all string) {
	s.Each(func(it *view.Item) { all += it.Name + "\n" + it.Text + "\n" })
	return all
}
