package session_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/paper"
	"groundbeat/game/view"
)

// interruption is something that comes between.
type interruption struct {
	name  string
	comes func(b *paper.Browser) error
	void  bool // the round says that it does not count; else it is left
}

var interruptions = []interruption{
	{name: "gap", comes: func(b *paper.Browser) error { b.Gap(); return nil }, void: true},
	{name: "stall", comes: func(b *paper.Browser) error { b.Stall(1500); b.Frame(); return nil }, void: true},
	{name: "hidden", comes: func(b *paper.Browser) error { b.Hide(true); b.Wait(3000); b.Hide(false); return nil }, void: true},
	{name: "paused", comes: func(b *paper.Browser) error { b.Interrupt(); return nil }, void: true},
	{name: "stop", comes: func(b *paper.Browser) error { return b.Press("stop") }, void: false},
	{name: "escape", comes: func(b *paper.Browser) error { return b.Key("Escape") }, void: false},
	{name: "home", comes: func(b *paper.Browser) error { return b.Press("home") }, void: false},
	{name: "back", comes: (*paper.Browser).Back, void: false},
	{name: "reload", comes: func(b *paper.Browser) error { b.Load(); b.Wait(100); return nil }, void: false},
}

// moments are the phases of a round, by what brings it there from where it is ready.
var moments = []struct {
	name string
	goes func(b *paper.Browser, p *paper.Player)
}{
	{"at the press", func(*paper.Browser, *paper.Player) {}},
	{"before the first step", func(_ *paper.Browser, p *paper.Player) { p.PlayFor(600) }},
	{"while it is played", func(_ *paper.Browser, p *paper.Player) { p.PlayFor(4500) }},
}

// An interruption at any moment of any kind of round: what was begun counts for nothing
// and says so, or is left as one left it, and nothing that was kept before is lost. The
// round after it is played and kept as if nothing had been.
func TestInterruptedRounds(t *testing.T) {
	cut := 0
	for _, link := range roundLinks(t) {
		for _, moment := range moments {
			b := opened(t, short(link), 2)
			for n, i := range interruptions {
				about := link + " " + moment.name + " " + i.name
				require.NoError(t, b.Press("begin"), about)
				b.Wait(600) // a stop at once would be the second press of two in haste
				moment.goes(b, paper.NewPlayer(b, 3))
				if !paper.UnderWay(b.Screen()) || waits(b) {
					break // it is over by then: see TestInterruptedReviews
				}
				cut++
				require.NoError(t, i.comes(b), about)
				require.False(t, paper.UnderWay(b.Screen()), about)
				require.Equal(t, i.void, b.Find("kept") != nil, about+b.Text())
				b.Wait(1000)
				require.Len(t, b.Storage.Rounds(), n, about)
				if b.Screen().ID == view.ScreenHome {
					require.NoError(t, goTo(b, link))
				}
				finish(t, b, "begin", "once", "next-question")
				require.Len(t, b.Storage.Rounds(), n+1, about)
				require.NoError(t, b.Press("change"))
				b.Wait(1000)
			}
		}
	}
	require.Greater(t, cut, 2*len(interruptions)*len(moments))
}

// short is a link of the shortest round of its kind.
func short(link string) string {
	return strings.NewReplacer("eights=4", "eights=1", "eights=6", "eights=4", "eights=8", "eights=4").Replace(link)
}

// waits reports whether all was heard and an answer is waited for: nothing can come
// between any more.
func waits(b *paper.Browser) bool {
	repeat := b.Find("repeat")
	return repeat != nil && !repeat.Disabled
}

// finish begins a round with the first button that there is, and plays it to its end.
func finish(t *testing.T, b *paper.Browser, buttons ...string) {
	t.Helper()
	for _, id := range buttons {
		if b.Find(id) != nil {
			require.NoError(t, b.Press(id))
			require.True(t, paper.NewPlayer(b, 4).Play(), b.Text())
			return
		}
	}
	require.Fail(t, "nothing begins", b.Text())
}

// An interruption in the review, while nothing is heard or while the round is heard once
// more: the review stays, or is come back to, and what was kept is kept once.
func TestInterruptedReviews(t *testing.T) {
	for _, link := range roundLinks(t) {
		for n, i := range interruptions {
			about := link + " " + i.name
			b := opened(t, short(link), 2)
			finish(t, b, "begin")
			review := b.Find("heading").Name
			if n%2 == 0 || i.name == "stop" {
				pressed := b.Wall.Now()
				require.NoError(t, b.Does(view.ActHear, "*"), about)
				b.Wait(300)
				require.NotEmpty(t, b.Sound.Strikes(pressed, b.Wall.Now()+2000), "it is heard once more")
			}
			if i.name == "stop" {
				require.NoError(t, b.Does(view.ActStop, "*"), about)
			} else {
				require.NoError(t, i.comes(b), about)
			}
			b.Wait(300)
			if i.void || i.name == "stop" {
				require.Equal(t, review, b.Find("heading").Name, about)
				require.Empty(t, b.Sound.Strikes(b.Wall.Now(), b.Wall.Now()+3000), "nothing sounds on")
			}
			if i.name == "home" {
				require.NoError(t, b.Back(), about)
				require.Equal(t, review, b.Find("heading").Name, "it lies where it was left")
			}
			require.Len(t, b.Storage.Rounds(), 1, about)
		}
	}
}

// A device that never starts: the round waits for a while, and says that nothing was
// heard; once it is there, the next is a round as any.
func TestSoundThatNeverComes(t *testing.T) {
	for _, link := range roundLinks(t) {
		d := paper.Computer
		d.Wakes = -1
		b := on(t, d, short(link), 2)
		require.NoError(t, b.Press("begin"))
		b.Wait(7000)
		require.Nil(t, b.Find("kept"), "a device may take its time to wake")
		b.Wait(2000)
		require.NotNil(t, b.Find("kept"), b.Text())
		require.Empty(t, b.Storage.Rounds())
		b.Sound.Wakes = 3000
		finish(t, b, "once", "next-question")
		require.Len(t, b.Storage.Rounds(), 1)
	}
}
