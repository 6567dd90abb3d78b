package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/playback"
	"groundbeat/game/view"
)

// tappedOf is what a screen has in common with others whose strokes are tapped.
func (g *testGame) tappedOf(t *testing.T) *tapped {
	t.Helper()
	switch x := g.Controller.(type) {
	case *Tapped:
		return &x.tapped
	case *Stop:
		return &x.tapped
	case *Carry:
		return &x.tapped
	}
	require.Fail(t, "its strokes are not tapped")
	return nil
}

// A beat is a stroke as it is heard: when, from the first of what was played, and which.
type beat struct {
	ms    float64
	voice audio.Voice
}

// heardIn are the strokes of so many ms from one performance time on.
func (g *testGame) heardIn(from, lasts float64) (all []beat) {
	for _, s := range g.Sound.Strikes(from-1, from+lasts-1) {
		all = append(all, beat{s.At - from, s.Voice})
	}
	return all
}

// begins is when what is begun now is heard.
func (g *testGame) begins() float64 {
	return g.Wall.Now() + float64(audio.Rate.Duration(playback.Margin))/1e6
}

// What is heard once more in a review is the round as it was played, stroke for stroke,
// silences and stops and all, without its count-in; slowly it is as many strokes, further
// apart by a half.
func TestWhatIsHeardOnceMoreIsWhatWasPlayed(t *testing.T) {
	for _, link := range []string{
		"?screen=dums&rhythm=maqsum&bpm=120&eights=2&riff=riffing&hide=40&seed=7",
		"?screen=stop&rhythm=saidi&bpm=120&eights=4&riff=filled&seed=3",
		carryLink + "&riff=ornamented",
	} {
		g, _, _ := newTestGame(t, link)
		from := g.begins()
		g.Use(view.ActBegin, "")
		x := g.tappedOf(t)
		lasts := float64(x.round.End()-x.round.Start()) / 1e6
		g.Ticks(int(x.round.End().Milliseconds()) + 1500)
		require.Equal(t, view.Reviewing, x.phase())
		played := g.heardIn(from+float64(x.round.Start())/1e6, lasts)
		require.NotEmpty(t, played)
		for slowly, factor := range map[string]float64{"": 1, "yes": 1.5} {
			g.Use(view.ActSlowly, slowly)
			from = g.begins()
			g.Use(view.ActHear, "")
			g.Ticks(int(lasts*factor) + 500)
			require.False(t, x.hears, "it is over")
			again := g.heardIn(from, lasts*factor)
			require.Len(t, again, len(played), "%s, slowly: %q", link, slowly)
			for i, b := range played {
				require.Equal(t, b.voice, again[i].voice)
				require.InDelta(t, b.ms*factor, again[i].ms, 1, "stroke %d", i)
			}
		}
		require.Len(t, g.Storage.Rounds(), 1, "nothing is kept of it")
	}
}

// In the replay the sweep goes round with what is heard, and once it is over the review
// stands there again.
func TestTheSweepOfAReplay(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.tapsAll(t, view.ActBegin, 0)
	x := g.dums()
	x.draw(view.PlaceHead)
	require.NotNil(t, x.head.Shown.Review)
	g.Use(view.ActHear, "")
	x.draw(view.PlaceHead)
	require.False(t, x.head.Shown.Turning && x.head.Shown.Turn > 0, "nothing is heard yet")
	begins := g.begins()
	for _, ms := range []float64{250, 900, 1400, 2600} {
		for g.Wall.Now() < begins+ms {
			g.Ticks(10)
		}
		x.draw(view.PlaceHead)
		require.True(t, x.head.Shown.Turning)
		turn := (g.Wall.Now() - begins) / 2000
		require.InDelta(t, turn-float64(int(turn)), x.head.Shown.Turn-float64(int(x.head.Shown.Turn)), 0.03, "%g ms", ms)
		require.Nil(t, x.head.Shown.Review)
	}
	g.Ticks(3000)
	x.draw(view.PlaceHead)
	require.False(t, x.head.Shown.Turning)
	require.NotNil(t, x.head.Shown.Review)
}

// The marks of a replay lie where the taps lay, less what the set-up says that the output is
// behind, each in its own cycle.
func TestTheMarksOfAReplay(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.Shared.Outputs.Put(outputOf("studio", 40))
	g.tapsAll(t, view.ActBegin, 60*time.Millisecond) // of which 40 are the output's
	x := g.dums()
	want := x.round.Steps()
	steps := x.round.Setting.Rhythm.Steps()
	g.Use(view.ActHear, "")
	for cycle := range 2 {
		g.Ticks(1000)
		x.draw(view.PlaceHead)
		var turns []float64
		for _, s := range want {
			if s/steps == cycle {
				turns = append(turns, float64(s%steps)/float64(steps)+0.010)
			}
		}
		require.Len(t, x.head.Shown.Taps, len(turns), "cycle %d", cycle)
		for i, turn := range turns {
			require.InDelta(t, turn, x.head.Shown.Taps[i].Turn, 0.001)
		}
		g.Ticks(1000)
	}
}

// Whatever cuts the replay, the review stays, and a round begun from it is the next.
func TestAReplayIsCut(t *testing.T) {
	g, _, _ := newTestGame(t, readyLink)
	g.tapsAll(t, view.ActBegin, 0)
	x := g.dums()
	for _, why := range []string{"gap", "hidden"} {
		g.Use(view.ActHear, "")
		g.Ticks(700)
		g.Controller.Interrupt(why)
		require.False(t, x.hears)
		require.Equal(t, view.Reviewing, x.phase())
	}
	g.Use(view.ActHear, "")
	g.Ticks(700)
	g.Use(view.ActNext, "")
	require.False(t, x.hears)
	require.Equal(t, view.Playing, x.phase())
	require.Len(t, g.Storage.Rounds(), 1)
}
