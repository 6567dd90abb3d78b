package soundview

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/game/view/roundview"
)

func everyRhythm(t testing.TB) []*rhythm.Cycle {
	catalogue, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	var all []*rhythm.Cycle
	for _, id := range catalogue.IDs() {
		c, _ := catalogue.Get(id)
		all = append(all, c)
	}
	return all
}

// Every rhythm can be listened to, bare and filled, on a phone and on a projector.
func TestEveryRhythmCanBeListenedTo(t *testing.T) {
	w := words(t)
	for _, c := range everyRhythm(t) {
		for _, level := range []string{view.LevelBare, view.LevelFilled} {
			for _, board := range []float64{0, 288, 576} {
				l := Listen{Rhythm: c, Level: level, Board: board, BPM: c.Tempo.Usual, Slow: c.Tempo.Slow, Fast: c.Tempo.Fast}
				s := l.Screen(w)
				require.NoError(t, view.Check(s), c.ID)
				require.NotContains(t, text(t, s), "{", c.ID)
				requireInside(t, s.Find("line").Picture)
				head, p := l.Head(), &picture.Picture{}
				head.Draw(p)
				requireInside(t, p)
			}
		}
	}
}

// Every two rhythms can be reviewed side by side, the one right and the other
// said, in whatever metres.
func TestEveryTwoRhythmsCanBeReviewed(t *testing.T) {
	w := words(t)
	for _, a := range everyRhythm(t) {
		for _, b := range everyRhythm(t) {
			q := roundview.Which{Phase: view.Reviewing, Ask: view.AskRhythm, BPM: a.Tempo.Usual, Board: 320,
				Right: view.Option{a.ID, a.Name}, Said: view.Option{b.ID, b.Name}, Sides: []roundview.Side{{ID: a.ID, Rhythm: a}}}
			if a.ID != b.ID {
				q.Sides = append(q.Sides, roundview.Side{ID: b.ID, Rhythm: b})
				q.Differences = rhythm.Differ(a, b)
			}
			s := q.Screen(w)
			require.NoError(t, view.Check(s), "%s, %s", a.ID, b.ID)
			require.NotContains(t, text(t, s), "{")
			if it := s.Find("beside"); it != nil {
				requireInside(t, it.Picture)
				continue
			}
			require.True(t, q.MetresApart())
			for i := range q.Sides {
				requireInside(t, s.Find("line-"+roundview.SideLetters[i]).Picture)
			}
		}
	}
}

// requireInside requires that nothing reaches over a picture's edge.
func requireInside(t *testing.T, p *picture.Picture) {
	t.Helper()
	for i := range p.Shapes {
		x0, y0, x1, y1 := extent(&p.Shapes[i])
		require.True(t, x0 >= -1e-9 && y0 >= -1e-9 && x1 <= 1+1e-9 && y1 <= p.Height+1e-9, "%+v", p.Shapes[i])
	}
}

// The default rhythm of a link is there.
func TestDefaultRhythmIsThere(t *testing.T) {
	var ids []string
	for _, c := range everyRhythm(t) {
		ids = append(ids, c.ID)
	}
	for _, screen := range []string{view.ScreenDums, view.ScreenListen, view.ScreenChange, view.ScreenStop, view.ScreenCarry} {
		require.Contains(t, ids, link.Default(screen).Rhythm)
	}
}
