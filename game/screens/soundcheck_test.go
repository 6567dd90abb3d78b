package screens

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
)

// checked is the game at a link, with a picture that waits so many ms on the
// output in use.
func checked(t *testing.T, query string, later int) (*testGame, *paper.Page, *paper.Wall) {
	t.Helper()
	g, page, wall := newTestGame(t, query)
	g.Shared.Outputs = host.Outputs{Chosen: "x", List: []host.Output{{Name: "x", Mean: 30, When: someDay, Adjustment: host.Adjustment{Later: later}}}}
	return g, page, wall
}

// Wherever something turns, it shows what was heard so much earlier: by the
// setting, to the nanosecond, and by nothing else.
func TestPicturesWait(t *testing.T) {
	const later = 180
	for name, c := range map[string]struct {
		query  string
		begin  []host.Event
		length time.Duration // of a cycle
		head   func(d *testGame) *playback.Head
	}{
		"Dums": {"?screen=dums&rhythm=maqsum&bpm=120&eights=4", []host.Event{{Kind: host.Used, Action: view.ActBegin}}, 2 * time.Second,
			func(d *testGame) *playback.Head {
				d.Controllers[view.ScreenDums].(*Tapped).tapped.draw(view.PlaceHead)
				return &d.Controllers[view.ScreenDums].(*Tapped).tapped.head
			}},
		"Listen": {"?screen=listen&rhythm=maqsum&bpm=120", []host.Event{{Kind: host.Used, Action: view.ActPlay}}, 2 * time.Second,
			func(d *testGame) *playback.Head {
				d.Controllers[view.ScreenListen].(*Listen).Draw(view.PlaceHead)
				return &d.Controllers[view.ScreenListen].(*Listen).head
			}},
		"Which, reviewed": {"?screen=which&ask=how-many&from=maqsum&bpm=120&seed=1", []host.Event{
			{Kind: host.Used, Action: view.ActBegin}, {}, {Kind: host.Used, Action: view.ActAnswer, Value: "2"}, {Kind: host.Used, Action: view.ActHear, Value: "maqsum"}},
			2 * time.Second, func(d *testGame) *playback.Head {
				d.Controllers[view.ScreenWhich].(*Which).Draw(view.PlaceHeadA)
				return &d.Controllers[view.ScreenWhich].(*Which).sides.heads[0]
			}},
		"Sound check": {"?screen=sound-check", []host.Event{{Kind: host.Used, Action: view.ActPlay}}, 2500 * time.Millisecond,
			func(d *testGame) *playback.Head {
				d.Controllers[view.ScreenCheck].(*SoundCheck).Draw(view.PlaceHead)
				return &d.Controllers[view.ScreenCheck].(*SoundCheck).head
			}},
	} {
		t.Run(name, func(t *testing.T) {
			turn := func(later int) float64 {
				g, page, _ := checked(t, c.query, later)
				for _, e := range c.begin {
					if e == (host.Event{}) { // past the count-in
						g.Ticks(2200)
						continue
					}
					page.Add(e)
					g.Update()
				}
				g.Ticks(2900)
				h := c.head(g)
				require.True(t, h.Shown.Turning)
				return h.Shown.Turn
			}
			at := turn(0)
			shift := float64(later*time.Millisecond) / float64(c.length)
			require.InDelta(t, shift, wrapped(at-turn(later)), 1e-6)
			require.InDelta(t, 0.05*2/c.length.Seconds(), wrapped(turn(-100)-at), 1e-6, "and earlier")
		})
	}
}

func wrapped(turn float64) float64 {
	if turn < 0 {
		return turn + 1
	}
	return turn
}

// The count-in waits too, the sweep for it, and nothing is shown before anything
// is heard.
func TestCountInWaits(t *testing.T) {
	for _, link := range []string{readyLink, "?screen=set-up", "?screen=which&ask=same&seed=3&bpm=120"} {
		g, page, _ := checked(t, link, 200)
		centre := func() string {
			for _, s := range g.Controller.Draw(view.PlaceHead).Shapes {
				if s.Kind == picture.KindText && s.X == 0.5 && s.Y == 0.5 {
					return s.Text
				}
			}
			return ""
		}
		page.Add(host.Event{Kind: host.Used, Action: view.ActBegin})
		g.Update()
		require.Empty(t, centre())
		g.Ticks(190)
		require.Empty(t, centre(), "5 is heard already")
		g.Ticks(50)
		require.Equal(t, "5", centre(), link)
		g.Ticks(560)
		require.Equal(t, "6", centre(), link)
	}
}

// The same taps bring the same offsets and the same record, however long the
// picture waits; the marks lie where the sweep was.
func TestTapsDoNotWait(t *testing.T) {
	type outcome struct {
		taps  []time.Duration
		score float64
		mark  float64
	}
	play := func(later int) (o outcome) {
		g, page, wall := checked(t, readyLink, later)
		page.Add(host.Event{Kind: host.Used, Action: view.ActBegin})
		g.Update()
		start := wall.Now() + float64(audio.Rate.Duration(playback.Margin))/1e6
		g.Ticks(2100)
		for _, dum := range g.Controllers[view.ScreenDums].(*Tapped).tapped.round.Strokes() {
			page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: start + float64(dum)/1e6 + 37, By: "key", Round: 1}})
			g.Ticks(1000)
			if o.mark == 0 {
				g.Controllers[view.ScreenDums].(*Tapped).tapped.draw(view.PlaceHead)
				o.mark = g.Controllers[view.ScreenDums].(*Tapped).tapped.head.Shown.Taps[0].Turn
			}
		}
		g.Ticks(2000)
		r := g.Controllers[view.ScreenDums].(*Tapped).tapped.round
		require.Equal(t, round.Review, r.Phase())
		for _, tap := range r.Taps() {
			o.taps = append(o.taps, tap.At)
		}
		require.NoError(t, g.Shared.Unsaved)
		o.score = g.Storage.Rounds()[0].Score
		return o
	}
	without, with := play(0), play(180)
	require.Len(t, without.taps, 4)
	require.Greater(t, without.score, 0.9)
	require.Equal(t, without.taps, with.taps)
	require.Equal(t, without.score, with.score)
	require.InDelta(t, 0.09, wrapped(without.mark-with.mark), 1e-6, "180 ms of 2 s")
}

// No more than three strokes light up within any second (WCAG 2.2, 2.3.1).
func TestCheckDoesNotFlash(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=sound-check")
	p := g.Controllers[view.ScreenCheck].(*SoundCheck).watched(0)
	var frames []int64 // of strokes in three cycles
	for cycle := range 3 {
		for _, h := range p.Hits(audio.Rate, int64(cycle)*audio.Rate.Frame(p.End())) {
			if len(frames) == 0 || h.Frame > frames[len(frames)-1] {
				frames = append(frames, h.Frame)
			}
		}
	}
	require.GreaterOrEqual(t, len(frames), 15)
	for i := 3; i < len(frames); i++ {
		require.Greater(t, frames[i]-frames[i-3], int64(audio.Rate), "a fourth within a second")
	}
}

// What is set at the sound check is kept for the output in use, and shown; another
// output has its own.
func TestCheckIsKept(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=sound-check")
	act := func(action, value string) *view.Screen {
		page.Add(host.Event{Kind: host.Used, Action: action, Value: value})
		g.Update()
		return &page.Shown[len(page.Shown)-1]
	}
	require.Equal(t, "180 ms later", act(view.ActLater, "180").Find("later").Value)
	require.False(t, act(view.ActMono, "").Find("mono").Checked)
	require.Equal(t, "20", act(view.ActHears, soundview.CheckNo).Find("more-bass").Value)
	require.Equal(t, "40", act(view.ActBass, "20").Find("more-bass").Value)
	want := host.Outputs{Chosen: "this device", List: []host.Output{{Name: "this device", Adjustment: host.Adjustment{Later: 180, Bass: 20, Wide: true}}}}
	require.Equal(t, want, g.Shared.Outputs)

	g.Shared.Outputs.List = append(g.Shared.Outputs.List, host.Output{Name: "headphones", Mean: 212, When: someDay})
	s := act(view.ActSetUpUse, "headphones")
	require.Equal(t, "as it comes", s.Find("later").Value)
	require.True(t, s.Find("mono").Checked)
	require.Equal(t, "As measured: 210 ms later", s.Find("measured").Name)
	require.Equal(t, "180 ms later", act(view.ActSetUpUse, "this device").Find("later").Value)
}

// One stroke that was cut is played once more, and one that has sounded is over;
// where nothing comes the screen says so.
func TestCheckStrikes(t *testing.T) {
	g, page, _ := newTestGame(t, "?screen=sound-check")
	x := g.Controllers[view.ScreenCheck].(*SoundCheck)
	page.Add(host.Event{Kind: host.Used, Action: view.ActStrike, Value: "dum"})
	g.Update()
	require.True(t, x.struck)
	lasts := int(x.loop.Passage.End() / time.Millisecond)
	g.Ticks(100)
	page.Add(host.Event{Kind: host.Stopped, Reason: host.WhyGap})
	g.Ticks(lasts - 100)
	require.True(t, x.struck, "begun anew")
	g.Ticks(200)
	require.False(t, x.struck)
	require.False(t, x.silent)

	x.Interrupt(host.WhySilent)
	s := g.Screen()
	require.NotNil(t, s.Find("silent"))
	page.Add(host.Event{Kind: host.Used, Action: view.ActPlay})
	g.Update()
	s = g.Screen()
	require.Nil(t, s.Find("silent"))
	require.True(t, x.loop.On)
	page.Add(host.Event{Kind: host.Used, Action: view.ActStrike, Value: "tek"})
	g.Update()
	require.False(t, x.loop.On, "one stroke ends the loop")
}
