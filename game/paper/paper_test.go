package paper_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// desk is a game that shows one screen and notes what happened.
type desk struct {
	h        *host.Host
	screen   view.Screen
	happened []host.Event
}

func (d *desk) Happened(e *host.Event)              { d.happened = append(d.happened, *e) }
func (d *desk) Tick(float64)                        { d.h.Page.Show(d.screen) }
func (d *desk) Picture(host.Place) *picture.Picture { return nil }

// shown is a browser on a device that shows some items.
func shown(device paper.Device, items ...view.Item) (*paper.Browser, *desk) {
	b := paper.New(device, 1)
	d := &desk{screen: view.Screen{ID: view.ScreenHome, Title: "t", Lang: "en", Dir: "ltr", Items: append([]view.Item{
		{ID: "heading", Role: view.RoleHeading, Level: 1, Name: "A"}}, items...)}}
	b.Open("?a", func(h *host.Host) paper.Game { d.h = h; return d })
	b.Wait(50)
	d.happened = nil
	return b, d
}

func button(id, action string) view.Item {
	return view.Item{ID: id, Role: view.RoleButton, Name: id, Action: action}
}

// What is not on the screen, or rests, or lies behind a dialog, cannot be used; what is
// there tells its action and its value, once.
func TestOnlyWhatIsShownIsPressed(t *testing.T) {
	rests := button("rests", "rest")
	rests.Disabled = true
	b, d := shown(paper.Ideal, button("go", "walk"), rests, view.Item{ID: "n", Role: view.RoleSlider, Action: "n", Max: 10, Step: 1},
		view.Item{ID: "c", Role: view.RoleChoice, Action: "c", Options: []view.Option{{Value: "x", Label: "x"}}})
	require.NoError(t, b.Press("go"))
	require.NoError(t, b.Slide("n", 7))
	require.NoError(t, b.Choose("c", "x"))
	require.Equal(t, []host.Event{{Kind: host.Used, Action: "walk"}, {Kind: host.Used, Action: "n", Value: "7"}, {Kind: host.Used, Action: "c", Value: "x"}}, d.happened)
	for _, err := range []error{
		b.Press("rests"), b.Press("gone"), b.Press("n"), b.Slide("n", 11), b.Choose("c", "y"), b.Type("go", ""),
		b.Tick("go", true), b.Key("a"), b.Key("Escape"), b.Tap(0), b.Back(), b.Forward(),
	} {
		require.Error(t, err)
	}
	require.Len(t, d.happened, 3)
	d.screen.Items = append(d.screen.Items, view.Item{ID: "ask", Role: view.RoleDialog, Name: "?", Action: "no", Children: []view.Item{button("yes", "yes")}})
	b.Frame()
	require.Error(t, b.Press("go"))
	require.NoError(t, b.Press("yes"))
}

// A screen that is wrong is found to be, for each thing that can be.
func TestLookFindsWhatIsWrong(t *testing.T) {
	filled := button("a", "a")
	filled.Look = view.LookPrimary
	again := filled
	again.ID = "b"
	_, d := shown(paper.Ideal, filled)
	require.NoError(t, paper.Look(&d.screen))
	for name, spoil := range map[string]func(s *view.Screen){
		"two filled buttons": func(s *view.Screen) { s.Items = append(s.Items, again) },
		"two of an id":       func(s *view.Screen) { s.Items = append(s.Items, filled) },
		"no heading":         func(s *view.Screen) { s.Items = s.Items[1:] },
		"no way home":        func(s *view.Screen) { s.ID = "far" },
	} {
		s := d.screen
		s.Items = append([]view.Item(nil), s.Items...)
		spoil(&s)
		require.Error(t, paper.Look(&s), name)
	}
}

// hit is a dum of the bass drum some ms from a frame on.
func hit(from int64, ms float64) audio.Hit {
	return audio.Hit{Frame: from + int64(ms*48), Voice: audio.BassDum, Strength: 1}
}

// The device does as the bridge: it starts at a press and not before, places blocks ahead,
// and the clock hears each stroke when it is heard; what is past is refused.
func TestDeviceAndClockAgree(t *testing.T) {
	d := paper.Computer
	d.Wireless = 150
	b, _ := shown(d, button("go", "walk"))
	s := b.Sound
	play := func(after float64) int64 {
		base := s.Next() + 1024
		require.NoError(t, s.Schedule(hit(base, after), hit(base, after+500)))
		s.Play(base)
		return base
	}
	base := play(200)
	b.Wait(2000)
	require.Empty(t, s.Strikes(0, 5000), "nobody has pressed anything")
	require.NoError(t, b.Press("go"))
	b.Wait(2000)
	strikes := s.Strikes(0, 10_000)
	require.Len(t, strikes, 2)
	require.InDelta(t, 500, strikes[1].At-strikes[0].At, 0.01)
	p, err := s.Heard(strikes[0].At)
	require.NoError(t, err)
	require.InDelta(t, 200+d.Wireless, (p.Frame-float64(base))/48, 0.2, "of the wireless delay it does not know")
	require.True(t, s.Whole(p.Epoch, base, base+48*700))
	require.ErrorIs(t, s.Schedule(hit(base, 0)), audio.ErrPast)
}

// A page that is held up for longer than the device looks ahead tears the sound: another
// epoch begins, what was queued is cut, and the page is told; a shorter time is not heard.
func TestStallsTearTheSound(t *testing.T) {
	for ms, torn := range map[float64]bool{500: false, 1500: true} {
		b, d := shown(paper.Computer, button("go", "walk"))
		require.NoError(t, b.Press("go"))
		base := b.Sound.Next() + 1024
		require.NoError(t, b.Sound.Schedule(hit(base, 100), hit(base, 3000)))
		b.Sound.Play(base)
		b.Wait(1000)
		before, err := b.Sound.Heard(b.Wall.Now())
		require.NoError(t, err)
		b.Stall(ms)
		b.Wait(3000)
		after, err := b.Sound.Heard(b.Wall.Now())
		require.NoError(t, err)
		require.Equal(t, torn, after.Epoch != before.Epoch)
		require.Equal(t, !torn, b.Sound.Whole(before.Epoch, base, base+48*3000))
		told := 0
		for _, e := range d.happened {
			if e.Kind == host.Stopped && e.Reason == host.WhyGap {
				told++
			}
		}
		require.Equal(t, map[bool]int{true: 1}[torn], told)
	}
}

// Going back takes until the next frame, and what is linked meanwhile waits; entries
// outlast the page, and what is visited anew cuts those ahead.
func TestHistory(t *testing.T) {
	b, d := shown(paper.Ideal)
	b.Page.Link("?a", "1", false)
	b.Page.Link("?b", "2", true)
	b.Page.Link("?c", "3", true)
	b.Page.Back("2")
	b.Frame()
	require.Equal(t, "?c", b.Query(), "it is not there")
	b.Page.Back("3")
	b.Page.Link("?d", "4", true)
	require.Equal(t, "?c", b.Query())
	b.Frame()
	require.Equal(t, "?d", b.Query())
	require.Empty(t, d.happened, "it has gone on meanwhile")
	require.NoError(t, b.Back())
	require.Equal(t, []host.Event{{Kind: host.Visited, Value: "?b", Mark: "2"}}, d.happened)
	b.Load()
	require.NoError(t, b.Forward())
	require.Equal(t, "?d", b.Query())
	require.Error(t, b.Forward())
}

// What is kept is kept as it is written, answers come between frames and never at once,
// and what is refused waits.
func TestStorageAnswersLater(t *testing.T) {
	b, _ := shown(paper.Ideal)
	answered := 0
	b.Storage.People(func(all []host.Person, who host.Person, err error) {
		require.NoError(t, err)
		require.Equal(t, []host.Person{who}, all)
		answered++
	})
	require.Zero(t, answered)
	b.Frame()
	require.Equal(t, 1, answered)
	b.Storage.Frames = 3
	b.Storage.Rename("nobody", "x", func(err error) { require.ErrorIs(t, err, host.ErrNobody); answered++ })
	b.Wait(3 * b.Pace)
	require.Equal(t, 1, answered)
	b.Frame()
	require.Equal(t, 2, answered)
	b.Storage.Full = true
	require.Error(t, b.Storage.KeepOutputs(host.Outputs{}))
}
