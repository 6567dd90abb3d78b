package session_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/paper"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Where the browser has no sound, every screen opens and says so; what is tapped is
// played in pictures, is right for who follows them, and says that its times are coarse;
// what is heard and answered does not begin, and does not pretend to.
func TestWithoutSound(t *testing.T) {
	none := paper.Device{None: true}
	for _, screen := range view.Screens() {
		b := on(t, none, "?screen="+screen, 1)
		require.Nil(t, b.Find("volume"), screen)
		require.Contains(t, b.Text(), "sound", screen)
	}
	inPictures := 0
	for _, link := range roundLinks(t) {
		b := on(t, none, link, 2)
		if b.Find("begin").Disabled {
			require.Error(t, b.Press("begin"), link)
			continue
		}
		inPictures++
		finish(t, b, "begin")
		r := b.Storage.Rounds()[0]
		require.True(t, r.Coarse)
		require.True(t, history.Right(r), "%s %+v", link, r)
		require.Equal(t, len(r.Strokes), r.Matched, link)

		require.NoError(t, b.Press("once"))
		b.Wait(4000)
		b.Hide(true)
		b.Wait(1000)
		b.Hide(false)
		require.NotNil(t, b.Find("kept"), "hidden, it counts for nothing here too")
		require.Len(t, b.Storage.Rounds(), 1)
	}
	require.Positive(t, inPictures)
}

// A browser that gives no output time stamps: its rounds are timed all the same, and say
// that they are coarse.
func TestWithoutTimeStamps(t *testing.T) {
	d := paper.Computer
	d.Unsaid = true
	for _, link := range tapLinks(t) {
		b := on(t, d, short(link), 2)
		finish(t, b, "begin")
		r := b.Storage.Rounds()[0]
		require.True(t, r.Coarse)
		require.Equal(t, len(r.Strokes), r.Matched)
		require.InDelta(t, 0, *r.Bias, 1, "the latency is stated")
	}
}

// A device whose readings scatter as Firefox's do is straightened out while a round is
// played: the bias is found nearly as well.
func TestScatteredReadings(t *testing.T) {
	d := paper.Computer
	d.Scatter = 13 // ms to either side: 26 in all, as measured with Firefox 153
	for _, link := range tapLinks(t) {
		b := on(t, d, link, 2)
		p := paper.NewPlayer(b, 2)
		p.Bias = 20
		require.NoError(t, b.Press("begin"))
		require.True(t, p.Play())
		r := b.Storage.Rounds()[0]
		require.Equal(t, len(r.Strokes), r.Matched)
		require.InDelta(t, 20, *r.Bias, 2, link)
		require.Less(t, *r.Spread, 3.0, link)
	}
}
