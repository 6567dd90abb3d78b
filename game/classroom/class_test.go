package classroom

import (
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/classview"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// newClass is the game where a warm-up is got ready, with the text of the page.
func newClass(t *testing.T, query string, date time.Time, seed uint64) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	g, page, wall := newTestGame(t, "?screen=class")
	wall.Reseed(seed)
	wall.Set(date)
	page.Add(host.Event{Kind: host.Visited, Value: query})
	g.Update()
	return g, page, wall
}

// does uses a control and lets the game answer.
func (g *testGame) does(t *testing.T, page *paper.Page, action, value string) *view.Screen {
	t.Helper()
	page.Add(host.Event{Kind: host.Used, Action: action, Value: value})
	g.Update()
	return &page.Shown[len(page.Shown)-1]
}

// What the list promises of a set is what the walk-in says and what the run holds: so
// many questions, so long, and when it is over. At every opening, of every set that is
// supplied, at any minute.
func TestListIsWhatTheRunHolds(t *testing.T) {
	evening := time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC)
	differ := map[string]bool{}
	for seed := range uint64(12) {
		date := evening.Add(time.Duration(seed) * 7 * time.Minute)
		for _, id := range warmup.Presets() {
			g, page, wall := newClass(t, "?screen=class", date, 1000*seed)
			said := ""
			list := page.Shown[len(page.Shown)-1]
			list.Each(func(it *view.Item) {
				if it.Action == view.ActClassBegin && it.Value == id {
					said = it.Text
				}
			})
			in := g.does(t, page, view.ActClassBegin, id).Find("length").Text
			require.True(t, strings.HasSuffix(said, in), "%q is not in %q", in, said)
			differ[in[:strings.Index(in, ":")]] = true

			first := g.does(t, page, view.ActClassNext, "").Find("where").Text
			ends := in[strings.LastIndex(in, " ")+1:]
			require.Contains(t, first, strings.TrimSuffix(ends, "."))
			run := g.Controllers[view.ScreenClass].(*Class).run
			require.Contains(t, in, strconv.Itoa(len(run.Warmup.Tasks))+"\u00a0question")
			require.Contains(t, first, "of "+strconv.Itoa(len(run.Warmup.Tasks)))
			wall.Set(date.Add(run.Warmup.Lasts() - time.Minute))
			for range len(run.Warmup.Tasks) - 1 {
				g.does(t, page, view.ActClassSkip, "")
			}
			_, at := run.Task()
			require.Equal(t, len(run.Warmup.Tasks)-1, at, "none is left out of a run that is on time")
		}
	}
	require.Greater(t, len(differ), 4, "the sets do differ from one another")
}

// The next opening of the same set brings other questions.
func TestNextOpeningIsAnother(t *testing.T) {
	g, page, _ := newClass(t, "?screen=class", time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC), 1)
	link := func() string {
		g.does(t, page, view.ActClassBegin, "ears")
		defer g.does(t, page, view.ActClassLeave, "")
		return g.Controllers[view.ScreenClass].(*Class).run.Warmup.Link()
	}
	require.NotEqual(t, link(), link())
}

// Two windows that keep a set each keep both, and each shows what the other has kept.
func TestSetsOfTwoWindows(t *testing.T) {
	var classes host.Classes
	window := func() (*testGame, *paper.Page) {
		g, page, _ := newTestGame(t, "?screen=class")
		if classes == nil {
			classes = g.Shared.Classes
		}
		g.Shared.Classes = classes
		g.Use(view.ActGo, view.ScreenClass)
		return g, page
	}
	one, onePage := window()
	other, otherPage := window()
	named := func(g *testGame, page *paper.Page, name string) {
		g.Use(view.ActClassSetName, name)
		g.Use(view.ActClassSave, "")
	}
	named(one, onePage, "Monday")
	named(other, otherPage, "Friday")
	onePage.Add(host.Event{Kind: host.Told, Value: host.Things})
	one.Update()
	for _, g := range []*testGame{one, other} {
		var names []string
		for _, s := range g.Controllers[view.ScreenClass].(*Class).ready.saved {
			names = append(names, s.Name)
		}
		require.Equal(t, []string{"Friday", "Monday"}, names)
	}
	one.Use(view.ActClassForget, "")
	require.Len(t, classes.KeptUnder(host.KeptSet), 1)
	require.Len(t, one.Controllers[view.ScreenClass].(*Class).ready.saved, 1)
}

// While a question plays, the rim shines, on a drum that shows nothing else; before and
// after, it does not.
func TestQuestionShowsThatItPlays(t *testing.T) {
	g, page, _ := newClass(t, "?screen=class&set=five_bare_hands-up_2_5", time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC), 1)
	shines := func() bool {
		g.Controller.Draw(view.PlaceHead)
		return g.Controllers[view.ScreenClass].(*Class).head.Shown.Glow > 0
	}
	g.does(t, page, view.ActClassBegin, classview.PutSet)
	g.does(t, page, view.ActClassNext, "")
	require.False(t, shines())
	g.does(t, page, view.ActClassNext, "")
	g.Ticks(2000)
	require.True(t, shines())
	require.True(t, g.Controllers[view.ScreenClass].(*Class).head.Shown.Hidden)
	require.False(t, g.Controllers[view.ScreenClass].(*Class).head.Shown.Turning)
	g.does(t, page, view.ActClassNext, "")
	require.False(t, shines(), "hands are counted")
}

// Once it is told, the lead drum's strokes of the cycle that is heard stand below the bass
// drum's.
func TestLeadIsShownOffTheBase(t *testing.T) {
	g, page, _ := newClass(t, "?screen=class&set=five_bare_base-or-riff_2_5", time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC), 1)
	for _, action := range []string{view.ActClassBegin, view.ActClassNext, view.ActClassNext, view.ActClassNext, view.ActClassNext} {
		g.does(t, page, action, map[bool]string{true: classview.PutSet}[action == view.ActClassBegin])
		require.Less(t, len(g.Controllers[view.ScreenClass].(*Class).line.Shown.Rows), 2, "not before it is told")
	}
	g.does(t, page, view.ActClassNext, "")
	require.Equal(t, warmup.Telling, g.Controllers[view.ScreenClass].(*Class).run.Stage())
	require.Len(t, g.Controllers[view.ScreenClass].(*Class).line.Shown.Rows, 2)
	heard, said := map[int]bool{}, map[string]bool{}
	for range 30 {
		g.Ticks(500)
		require.NotEmpty(t, g.Controllers[view.ScreenClass].(*Class).line.Shown.Rows[1].Lead)
		heard[g.Controllers[view.ScreenClass].(*Class).cycle] = true
		said[strings.SplitAfter(page.Shown[len(page.Shown)-1].Find("reason-1").Text, ":")[0]] = true
	}
	require.Greater(t, len(heard), 1, "cycle by cycle")
	require.True(t, said["You hear it on the base:"] && said["You hear it off the base:"], said)
}
