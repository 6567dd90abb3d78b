package classview

import (
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"
)

// movedIn is a rhythm with two of its steps in each other's place.
func movedIn(c *rhythm.Cycle, a, b int) *rhythm.Cycle {
	other := *c
	other.Skeleton = slices.Clone(c.Skeleton)
	other.Skeleton[a], other.Skeleton[b] = c.Skeleton[b], c.Skeleton[a]
	return &other
}

// soloOver is a cycle of a lead drum that plays off the base.
func soloOver(t testing.TB, c *rhythm.Cycle) picture.RiffCycle {
	r, err := riff.New(c, riff.Solo, 5)
	require.NoError(t, err)
	part, err := r.At(100).Cycles(0, 1)
	require.NoError(t, err)
	return picture.RiffOf(part, c.Steps(), 0)
}

// Once it is told what changed, both versions stand one above the other, and the stroke
// that moved is ringed in both, with a line from where it was to where it is.
func TestWhatChangedShowsBoth(t *testing.T) {
	w := words(t)
	saidi := supplied(t, "saidi")
	r := toldRoom(t, warmup.WhatChanged, view.Option{Value: "2", Label: "2"}, view.Option{})
	r.Told.Sides[1] = movedIn(saidi, 3, 2)
	l := r.ShownWall(w)
	require.Equal(t, []rhythm.Pattern{saidi.Skeleton, r.Told.Sides[1].Skeleton}, []rhythm.Pattern{l.Rows[0].Base, l.Rows[1].Base})
	require.Equal(t, [][]int{{3}, {2}}, [][]int{l.Rows[0].Circled, l.Rows[1].Circled})
	require.Equal(t, [2]int{3, 2}, l.Moved)
	s := r.Screen(w)
	require.Equal(t, "The dum moved from the & of 2 to 2.", s.Find("reason-1").Text)
	require.Contains(t, s.Find("line").Text, "First: ")
	require.Contains(t, s.Find("line").Text, "Then: ")
	for i := range 2 { // while it is heard, the row that sounds is marked
		r.Sounds, r.Rhythm = true, r.Told.Sides[i]
		l = r.ShownWall(w)
		require.Equal(t, [2]bool{i == 0, i == 1}, [2]bool{l.Rows[0].Heard, l.Rows[1].Heard})
		require.Equal(t, saidi.Skeleton, l.Rows[0].Base, "the first stays above")
	}
	asked := roomTask(t, warmup.Counting, warmup.WhatChanged)
	asked.Told = r.Told
	require.Nil(t, find(asked.Screen(w), "line"), "and nothing of it before")
}

// Once it is told, the lead drum's strokes stand under the bass drum's, each at its true
// place.
func TestOffTheBaseShowsTheLead(t *testing.T) {
	r := toldRoom(t, warmup.BaseOrRiff, view.Option{Value: warmup.OffBase, Label: "off"}, view.Option{})
	r.Lead = soloOver(t, r.Rhythm)
	l := r.ShownWall(words(t))
	require.Len(t, l.Rows, 2)
	require.Equal(t, r.Lead.Strokes, l.Rows[1].Lead)
	require.Equal(t, r.Lead, r.Head().Riff, "on the drum as well")
	for _, stage := range []warmup.Stage{warmup.Asking, warmup.Counting} {
		r.Stage = stage
		require.True(t, r.Head().Hidden)
		require.Nil(t, find(r.Screen(words(t)), "line"), "not before it is told")
	}
}

// The line is as wide as its picture, whatever stands on it, and its letters are no
// smaller than can be read from the back; nothing on it lies over its edges.
func TestWallFillsItsWidth(t *testing.T) {
	for name, s := range classScreens(t) {
		it := s.Find("line")
		if !s.Room || it == nil || it.Picture == nil {
			continue
		}
		left, right := 1.0, 0.0
		for _, sh := range it.Picture.Shapes {
			switch sh.Kind {
			case picture.KindText:
				if sh.Anchor == picture.AnchorStart {
					left = min(left, sh.X)
				}
				require.GreaterOrEqual(t, sh.Size, 0.0425, name)
			case picture.KindLine:
				left, right = min(left, sh.X, sh.X2), max(right, sh.X, sh.X2)
			case picture.KindDot, picture.KindRing:
				require.GreaterOrEqual(t, sh.X-sh.R, 0.0, name)
				require.LessOrEqual(t, sh.X+sh.R, 1.0, name)
				left = min(left, sh.X-sh.R)
			}
		}
		require.Less(t, left, 0.05, name)
		require.Greater(t, right, 0.95, name)
	}
}

// What plays is said to play; the same whatever it is.
func TestPlayingIsShown(t *testing.T) {
	w := words(t)
	for _, k := range warmup.Kinds() {
		r := roomTask(t, warmup.Asking, k)
		require.Nil(t, find(r.Screen(w), "plays"), k)
		r.Sounds = true
		require.Equal(t, "It plays. Listen.", find(r.Screen(w), "plays").Text, k)
	}
}

// A clicker's two buttons lead in and out: on comes back to a warm-up that was left, back
// leaves the walk-in, and both leave the page after it.
func TestClickerLeadsInAndOut(t *testing.T) {
	all := classScreens(t)
	for _, key := range []string{"PageDown", "ArrowRight"} {
		require.Contains(t, all["class-ready-later"].Keys, view.Key{Key: key, Action: view.ActClassResume, Value: ""})
		require.Empty(t, all["class-ready"].Keys, "there is nothing to come back to")
		require.Contains(t, all["class-after"].Keys, view.Key{Key: key, Action: view.ActClassLeave, Value: ""})
	}
	for _, back := range []string{"PageUp", "ArrowLeft"} {
		require.Contains(t, all["class-walk-in"].Keys, view.Key{Key: back, Action: view.ActClassLeave, Value: ""})
		require.Contains(t, all["class-asking-hands-up"].Keys, view.Key{Key: back, Action: view.ActClassBack, Value: ""})
		require.Contains(t, all["class-after"].Keys, view.Key{Key: back, Action: view.ActClassBack, Value: ""})
	}
}

func find(s view.Screen, id string) *view.Item { return s.Find(id) }
