package session_test

import (
	"fmt"
	"math"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/paper"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// tapLinks are the links of rounds whose dums are tapped, found by playing them.
func tapLinks(t *testing.T) (links []string) {
	t.Helper()
	for _, link := range roundLinks(t) {
		if k, _ := history.KindOf(played(t, short(link), paper.Listens, 1).Kind); k.Play == history.Tapped {
			links = append(links, link)
		}
	}
	require.NotEmpty(t, links)
	return links
}

// within is how far the mean of n values may lie from what it is the mean of: four
// times the standard uncertainty of a mean, σ/√n (JCGM 100:2008, Guide to the expression
// of uncertainty in measurement, 4.2.3), which chance passes once in 16,000 times; and
// the 0.1 ms of the device's readings.
func within(sigma float64, n int) float64 { return 4*sigma/math.Sqrt(float64(n)) + 0.1 }

// spreadWithin is the same for their standard deviation, whose standard uncertainty is
// σ/√(2(n−1)) (the same guide, E.4.3).
func spreadWithin(sigma float64, n int) float64 { return 4*sigma/math.Sqrt(2*float64(n-1)) + 0.1 }

// A player's bias and spread are in her record, on every kind of round that is tapped,
// behind as well as ahead; what she leaves out and adds is there too.
func TestBiasIsFound(t *testing.T) {
	for _, link := range tapLinks(t) {
		for i, bias := range []float64{-38, 0, 27} {
			const spread = 12
			b := opened(t, link, uint64(i))
			require.NoError(t, b.Press("begin"))
			p := paper.NewPlayer(b, uint64(i))
			p.Bias, p.Spread = bias, spread
			require.True(t, p.Play())
			r := b.Storage.Rounds()[0]
			require.Equal(t, len(r.Strokes), r.Matched, link)
			require.InDelta(t, bias, *r.Bias, within(spread, r.Matched), link)
			require.InDelta(t, spread, *r.Spread, spreadWithin(spread, r.Matched), link)
			require.Zero(t, r.Setup)
		}
	}
}

// What is forgotten is left out, and what is added is added: no tap is lost or made up.
func TestTapsAreCounted(t *testing.T) {
	for i, link := range tapLinks(t) {
		b := opened(t, link, uint64(i))
		require.NoError(t, b.Press("begin"))
		p := paper.NewPlayer(b, uint64(i))
		p.Forgets, p.Adds = 0.3, 0.5
		require.True(t, p.Play())
		r := b.Storage.Rounds()[0]
		require.Equal(t, len(r.Strokes), r.Matched+r.Out, link)
		require.Equal(t, len(r.Taps), r.Matched+r.Added, link)
		require.Positive(t, r.Out, link)
		require.Positive(t, r.Added, link)
	}
}

// Set-up measures what a wireless loudspeaker and a hand are late together, as long as
// nobody else knows of it; from then on it is taken off, also after the page was loaded
// anew, and the picture can wait as long.
func TestSetUpIsMeasuredAndTakenOff(t *testing.T) {
	const wireless, hand, spread = 170, 25, 14
	d := paper.Computer
	d.Wireless = wireless
	b := on(t, d, "?screen="+view.ScreenSetUp, 5)
	require.NoError(t, b.Type("name", "the hall"))
	require.NoError(t, b.Press("begin"))
	p := paper.NewPlayer(b, 5)
	p.Bias, p.Spread = hand, spread
	require.True(t, p.Play())
	require.NoError(t, b.Press("keep"))
	kept := b.Storage.Outputs()
	require.Equal(t, "the hall", kept.Chosen)
	require.Len(t, kept.List, 1)
	taps := 7 // at least: of eight dums, the first may be taken for what it is tapped after
	require.InDelta(t, wireless+hand, kept.List[0].Mean, within(spread, taps))

	for i, link := range tapLinks(t) {
		b.Load()
		b.Wait(100)
		require.NoError(t, goTo(b, link))
		require.NoError(t, b.Press("begin"))
		require.True(t, p.Play())
		all := b.Storage.Rounds()
		require.Len(t, all, i+1)
		r := all[i]
		require.Equal(t, "the hall", r.Output)
		require.InDelta(t, kept.List[0].Mean, r.Setup, 0.001)
		require.Equal(t, len(r.Strokes), r.Matched, "%s: of %v", link, r.Setup)
		require.InDelta(t, wireless+hand-r.Setup, *r.Bias, within(spread, r.Matched), link)
	}
}

// Without set-up a round over such a loudspeaker is a round of misses: nothing is taken
// off that was not measured.
func TestNothingIsTakenOffUnmeasured(t *testing.T) {
	d := paper.Computer
	d.Wireless = 170
	b := on(t, d, "?screen="+view.ScreenDums, 1)
	require.NoError(t, b.Press("begin"))
	require.True(t, paper.NewPlayer(b, 1).Play())
	r := b.Storage.Rounds()[0]
	require.Zero(t, r.Matched)
	require.Equal(t, history.Dums, r.Kind)
	beat := 60_000 / float64(r.BPM)
	require.InDelta(t, max(25, beat/25), r.Close, .001, "how near was asked, at this tempo")
	require.NoError(t, b.Press("to-set-up"), "and the review says where to measure it")
}

// goTo goes to the screen of a link by the ways that the page offers.
func goTo(b *paper.Browser, link string) error {
	if b.Screen().ID != view.ScreenHome {
		if err := b.Press("home"); err != nil {
			return err
		}
	}
	screen := strings.TrimPrefix(strings.Split(link, "&")[0], "?screen=")
	if err := b.Press("go-" + screen); err != nil {
		return err
	}
	if b.Screen().ID != screen {
		return fmt.Errorf("came to %s, not to %s", b.Screen().ID, screen)
	}
	return nil
}
