package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// carryLink is a link whose second eight is silent: maqsum at 120, dums a second apart
// from 2 s on, and silence from 6 to 10 s.
const carryLink = "?screen=carry&rhythm=maqsum&bpm=120&eights=4&seed=4"

// In a round with a silence: the drumhead tells nothing of the time in it, whatever is
// tapped and whoever wants to see the drummer's hands; the dums in it are scored, and
// which they are is kept.
func TestCarryIsKept(t *testing.T) {
	g, page, wall := newTestGame(t, carryLink)
	g.Use(view.ActBegin, "")
	x := g.Controllers[view.ScreenCarry].(*Carry)
	require.Equal(t, []round.Silence{{From: 16, To: 32}}, x.deals.carried.Silences())
	g.Use(view.ActHands, "yes")
	start := wall.Now()
	s := func(ms int) time.Duration { return time.Duration(ms) * time.Millisecond }
	g.pressed(t, page, wall, x.tapped.taps.Number, s(2000), s(5010), s(5300))
	h := g.head(x)
	require.True(t, h.Turning && h.ShowHands)
	require.Len(t, h.Taps, 2)
	require.Equal(t, []int{4, 0}, []int{h.Beads, h.Gone})

	at := func(ms int) { // of the round
		for wall.Now() < start+float64(ms) {
			g.Ticks(10)
		}
	}
	at(5560) // the count before the silence
	was := g.shapes(x)
	for ms := 5700; ms < 9950; ms += 250 {
		at(ms)
		if ms == 7200 || ms == 9200 {
			page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: wall.Now(), By: "key", Round: x.tapped.taps.Number}})
		}
		require.Equal(t, was, g.shapes(x), "at %d ms", ms)
	}
	h = g.head(x)
	require.False(t, h.Turning || h.ShowHands)
	require.Empty(t, h.Taps)
	require.Equal(t, 0, h.Gone, "the bead of the eight before it waits")
	at(10300)
	h = g.head(x)
	require.True(t, h.Turning && h.ShowHands)
	require.Len(t, h.Taps, 4)
	require.Equal(t, 2, h.Gone)

	g.Ticks(12000)
	shown := &page.Shown[len(page.Shown)-1]
	require.NoError(t, g.Shared.Unsaved)
	require.Equal(t, "2", shown.Find("silences").Rows[0][0])
	require.Equal(t, "left out", shown.Find("silences").Rows[0][2])
	kept := g.Storage.Rounds()[0]
	require.Equal(t, []any{history.Carry, 200.0, 16, 1}, []any{kept.Kind, kept.Window, len(kept.Strokes), len(kept.Silences)})
	silence := kept.Silences[0]
	require.Equal(t, []int{4, 7}, []int{silence.First, silence.Last})
	require.Equal(t, []float64{kept.Strokes[4], kept.Strokes[8]}, []float64{silence.From, silence.To})
}

// head is the drumhead of the exercise as it is to be seen now.
func (g *testGame) head(x *Carry) picture.Head {
	x.tapped.draw(view.PlaceHead)
	return x.tapped.head.Shown
}

// shapes is what is drawn of it.
func (g *testGame) shapes(x *Carry) []picture.Shape {
	return append([]picture.Shape(nil), x.tapped.draw(view.PlaceHead).Shapes...)
}

// Rounds of one rhythm at one tempo on one output count together. What was cut does
// not count.
func TestCarriedRoundsCountTogether(t *testing.T) {
	g, page, wall := newTestGame(t, carryLink)
	x := g.Controllers[view.ScreenCarry].(*Carry)
	play := func() string {
		g.Use(view.ActOnce, "")
		start, strokes := wall.Now(), x.tapped.round.Strokes()
		for _, at := range strokes {
			for wall.Now() < start+float64(at)/1e6+25 {
				g.Ticks(10)
			}
			page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: wall.Now(), By: "key", Round: x.tapped.taps.Number}})
		}
		g.Ticks(3000)
		return page.Shown[len(page.Shown)-1].Find("own").Text
	}
	const few = "can be told from 40 gaps between dums in silence. There are "
	require.Contains(t, play(), few+"4 so far;")
	require.Contains(t, play(), few+"8 so far;")
	g.Use(view.ActOnce, "")
	g.Ticks(3000)
	g.Use(view.ActStop, "")
	require.Contains(t, play(), few+"12 so far;")
	g.Use(view.ActSlower, "")
	require.Contains(t, play(), few+"4 so far;")
	g.Use(view.ActTempo, "120")
	require.Contains(t, play(), few+"16 so far;", "those before are not forgotten")
	require.Len(t, g.Storage.Rounds(), 5)
}

// An eight of wahda has but two dums: nothing can be told of clock and hand, ever.
func TestCarryOfTooFewDums(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=carry&rhythm=wahda&bpm=90&eights=4&seed=4")
	g.Use(view.ActBegin, "")
	g.Ticks(26000)
	s := &page.Shown[len(page.Shown)-1]
	require.Contains(t, s.Find("own").Text, "An eight of wahda has too few dums")
	require.Equal(t, "No taps came. Tap each dum: space, any letter, or the drumhead.", s.Find("finding").Text)
}
