package screens

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// pressed lets time pass up to times of a round and taps then, as the browser
// stamps it; the last time is only passed.
func (g *testGame) pressed(t *testing.T, page *paper.Page, wall *paper.Wall, number int, times ...time.Duration) {
	t.Helper()
	start := wall.Now() + float64(audio.Rate.Duration(playback.Margin))/1e6
	for i, at := range times {
		stamp := start + float64(at)/1e6
		for wall.Now() < stamp {
			g.Ticks(10)
		}
		if i < len(times)-1 {
			page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: stamp, By: "key", Round: number}})
			g.Update()
		}
	}
}

// changeLink is a link whose round changes, and its round.
func changeLink(t *testing.T, changes bool) (string, *round.Changed) {
	t.Helper()
	for seed := 1; seed < 40; seed++ {
		link := fmt.Sprintf("?screen=change&rhythm=maqsum&answers=3&from=five&eights=4&bpm=100&seed=%d", seed)
		g, _, _ := newTestGame(t, link)
		r := g.Controllers[view.ScreenChange].(*Change).round
		if _, ok := r.Changes(); ok == changes {
			return link, r
		}
	}
	require.Fail(t, "no such seed")
	return "", nil
}

// From Begin to the review: a press too early leaves a mark and nothing else, the
// right one lets it sound to the end of the eight, and what is said is kept with it.
func TestChangeIsHeardAndKept(t *testing.T) {
	link, r := changeLink(t, true)
	g, page, wall := newTestGame(t, link)
	s := g.Use(view.ActBegin, "")
	require.Equal(t, "The drumhead. Press when the rhythm changes.", s.Find("tap").Name)
	differs, _ := r.Differs()
	number := g.Controllers[view.ScreenChange].(*Change).taps.Number
	g.pressed(t, page, wall, number, 4*time.Second, differs+1200*time.Millisecond, differs+1300*time.Millisecond)
	require.Equal(t, round.Playing, g.Controllers[view.ScreenChange].(*Change).round.Phase())
	g.Controller.Draw(view.PlaceHead)
	require.Len(t, g.Controllers[view.ScreenChange].(*Change).blank.Shown.Taps, 2)
	require.False(t, g.Controllers[view.ScreenChange].(*Change).blank.Shown.Turning, "no sweep")
	g.Ticks(9600) // two eights
	s = &page.Shown[len(page.Shown)-1]
	require.Equal(t, "To what?", s.Find("heading").Name)
	require.Empty(t, g.Storage.Rounds())

	require.Equal(t, "To what?", g.Use(view.ActAnswer, "maqsum").Find("heading").Name, "no choice")
	s = g.Use(view.ActAnswer, g.Controllers[view.ScreenChange].(*Change).change.To.ID)
	require.Equal(t, "You heard it after 2 counts, and pressed once too soon.", s.Find("heading").Name)
	require.NotNil(t, s.Find("early-counts"))
	require.NoError(t, g.Shared.Unsaved)
	kept := g.Storage.Rounds()[0]
	require.Equal(t, []any{history.Change, "maqsum", true}, []any{kept.Kind, kept.Rhythm, kept.Right})
	require.Len(t, kept.Taps, 2)
	require.Equal(t, 1, kept.Early)
	require.Nil(t, kept.Taps[0].Offset)
	require.InDelta(t, 1200, *kept.Taps[1].Offset, 0.011)
	require.InDelta(t, 1200, 1000*(kept.Taps[1].Frame/float64(kept.Rate)-kept.Strokes[0]), 0.011)

	for _, id := range []string{kept.Rhythm, kept.To} { // both are heard in turn
		s = g.Use(view.ActHear, id)
		require.Equal(t, view.ActStop, s.Escape)
		g.Ticks(5500)
		require.Equal(t, view.ActChange, page.Shown[len(page.Shown)-1].Escape, "an eight, and it is over")
	}
	again := g.Controllers[view.ScreenChange].(*Change).change
	g.Use(view.ActOnce, "")
	require.Equal(t, again, g.Controllers[view.ScreenChange].(*Change).change)
	g.Use(view.ActStop, view.ByEscape)
	require.Equal(t, round.Ready, g.Controllers[view.ScreenChange].(*Change).round.Phase())
	require.Len(t, g.Storage.Rounds(), 1)
}

// A press every 0.9 s meets the change soon, and is not praised; the record says how many
// came before it.
func TestPressingAllTheTime(t *testing.T) {
	link, r := changeLink(t, true)
	g, page, wall := newTestGame(t, link)
	g.Use(view.ActBegin, "")
	differs, _ := r.Differs()
	var presses []time.Duration
	for at := r.Start() + 500*time.Millisecond; len(presses) == 0 || presses[len(presses)-1] < differs; at += 900 * time.Millisecond {
		presses = append(presses, at)
	}
	g.pressed(t, page, wall, g.Controllers[view.ScreenChange].(*Change).taps.Number, append(presses, differs+time.Second)...)
	g.Ticks(9600)
	s := g.Use(view.ActAnswer, g.Controllers[view.ScreenChange].(*Change).change.To.ID)
	early := len(presses) - 1
	require.Equal(t, fmt.Sprintf("%d presses came too soon, so the one that met the change may be chance.", early),
		s.Find("heading").Name)
	kept := g.Storage.Rounds()[0]
	require.Equal(t, early, kept.Early)
	require.False(t, history.Right(kept), "told rightly, and no hearing")
}

// No change and no press: that is right, and nothing is asked.
func TestNoChangeIsKept(t *testing.T) {
	link, _ := changeLink(t, false)
	g, page, _ := newTestGame(t, link)
	g.Use(view.ActBegin, "")
	g.Ticks(23000)
	require.Equal(t, "It did not change, and you kept still.", page.Shown[len(page.Shown)-1].Find("heading").Name)
	kept := g.Storage.Rounds()[0]
	require.Equal(t, []any{"", "", true}, []any{kept.To, kept.Answer, kept.Right})
}

// A first rhythm that nothing of the pool can follow: a link says so, and offers what
// can; chosen on the page, more is taken into the pool.
func TestChangeOfTooFew(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=change&rhythm=karsilama&from=five")
	g.Update()
	s := &page.Shown[len(page.Shown)-1]
	require.Contains(t, s.Find("problem-1").Text, "from=five: allowed is two rhythms or more")
	s = g.Use(view.ActOpen, "")
	require.Equal(t, []string{"karsilama", "all"}, []string{g.Shared.Address.Rhythm, g.Shared.Address.From})
	require.Equal(t, "Hear when karşılama changes", s.Find("heading").Name)

	g, _, _ = newTestGame(t, "?screen=change")
	s = g.Use(view.ActRhythm, "karsilama")
	require.Equal(t, "Hear when karşılama changes", s.Find("heading").Name)
	require.Equal(t, "all", s.Find("from").Value)
	g, _, _ = newTestGame(t, "?screen=change&from=karsilama.roman-9")
	g.Update()
	g.Use(view.ActOpen, "")
	require.Equal(t, "even", g.Shared.Address.From)
}

// In a round with a stop: the sweep rests in the silence, each of the three is kept,
// and what goes with the figure is set aside.
func TestStopIsCaughtAndKept(t *testing.T) {
	g, page, wall := newTestGame(t, "?screen=stop&rhythm=maqsum&bpm=120&eights=4&seed=3")
	s := g.Use(view.ActBegin, "")
	require.Equal(t, "End", s.Find("stop").Name)
	x := g.Controllers[view.ScreenStop].(*Stop)
	require.Len(t, x.deals.stopped.Stops(), 1)
	stop := x.deals.stopped.Stops()[0]
	at := x.deals.stopped.At
	taps := []time.Duration{at(0), at(4), at(stop.From), at(stop.At) + 15*time.Millisecond}
	g.pressed(t, page, wall, x.tapped.taps.Number, append(taps, at(stop.At)+900*time.Millisecond)...)
	g.Controller.Draw(view.PlaceHead)
	require.False(t, x.tapped.head.Shown.Turning, "the sweep rests in the silence")
	g.Ticks(12000)
	s = &page.Shown[len(page.Shown)-1]
	require.NoError(t, g.Shared.Unsaved)
	require.Equal(t, [][]string{{"eight 2, on 5", "15 ms behind", "4 counts, still", "left out"}}, s.Find("stops").Rows)
	require.True(t, strings.HasPrefix(s.Find("finding").Text, "The 1 after the silence is left out"))
	kept := g.Storage.Rounds()[0]
	require.Equal(t, history.Stop, kept.Kind)
	require.Equal(t, []history.Break{{From: kept.Breaks[0].From, Stop: 4, Counts: 4, Back: 5}}, kept.Breaks)
	require.InDelta(t, 2, kept.Strokes[4]-kept.Breaks[0].From, 1e-4, "four counts")
	require.Len(t, kept.Aside, 1)
	require.Len(t, kept.Taps, 3)
	require.InDelta(t, 15, *kept.Taps[2].Offset, 0.011)
}

// A link whose seed is of the first version brings the question that it always brought;
// otherwise there are as many names as are asked for, or it is said why not.
func TestNamesOfALink(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=change&rhythm=maqsum&answers=4&from=five&eights=4&seed=7")
	g.Update()
	require.Len(t, g.Controllers[view.ScreenChange].(*Change).change.Choices, 3)
	require.Contains(t, page.Shown[len(page.Shown)-1].Find("fewer").Text, "only 3 at a time: baladi and masmudi kabir")
	g, page, _ = newTestGame(t, "?screen=change&rhythm=maqsum&answers=4&from=five&eights=4&seed=7&q=2")
	g.Update()
	require.Len(t, g.Controllers[view.ScreenChange].(*Change).change.Choices, 4)
	require.Nil(t, page.Shown[len(page.Shown)-1].Find("fewer"))
	g, page, _ = newTestGame(t, "?screen=which&answers=4&from=five&seed=7")
	g.Update()
	require.Less(t, len(g.Controllers[view.ScreenWhich].(*Which).question.Choices), 4)
	require.NotNil(t, page.Shown[len(page.Shown)-1].Find("fewer"))
	for _, query := range []string{"", "&seed=7&q=2", "&seed=9&q=2"} {
		g, page, _ = newTestGame(t, "?screen=which&answers=4&from=five"+query)
		g.Update()
		require.Len(t, g.Controllers[view.ScreenWhich].(*Which).question.Choices, 4, query)
		require.Nil(t, page.Shown[len(page.Shown)-1].Find("fewer"))
	}
}
