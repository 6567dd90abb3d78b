package diaryview

import (
	"math"
	"slices"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// Whatever is known, a diary is a whole screen under one heading, and every word of it is
// filled in.
func TestEveryDiaryIsWhole(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		s := d.Screen(w)
		require.NoError(t, screenproof.Check(s))
		ones, level := 0, 0
		s.Each(func(it *view.Item) {
			if it.Role == view.RoleHeading {
				require.LessOrEqual(t, it.Level, level+1, "%s leaves a level out", it.ID)
				if level = it.Level; level == 1 {
					ones++
				}
			}
			for _, text := range append(slices.Concat(it.Rows...), it.Name, it.Text) {
				require.NotContains(t, text, "{")
				require.NotContains(t, text, "NaN")
			}
		})
		require.Equal(t, 1, ones)
		requireAgreement(t, w, d)
	})
}

// Every control of a diary has a value that its action understands.
func TestEveryControlIsUnderstood(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		for _, erasing := range []Erase{EraseNothing, EraseOne, EraseEverybody} {
			d.Erasing = erasing
			requireUnderstood(t, d, d.Screen(w))
		}
		d.Merging = d.People[len(d.People)-1].ID
		requireUnderstood(t, d, d.Screen(w))
	})
}

func requireUnderstood(t *testing.T, d *Diary, s view.Screen) {
	person := func(v string) bool { return slices.ContainsFunc(d.People, func(p Person) bool { return p.ID == v }) }
	whose := func(v string) bool {
		return v == d.Who || v == "" && len(d.People) > 1 || v == "" && d.Erasing == EraseEverybody
	}
	minutes := func(v string) bool {
		n, err := strconv.Atoi(v)
		return err == nil && slices.Contains(PracticeMinutes(), n)
	}
	next := func(v string) bool { n, err := strconv.Atoi(v); return err == nil && n >= 0 && n < len(d.Next) }
	understood := map[string]func(string) bool{
		view.ActDiaryWho: person, view.ActDiaryMerge: person, view.ActDiaryMergeYes: person, view.ActDiaryExport: whose, view.ActDiaryCSV: whose,
		view.ActDiaryErase: whose, view.ActDiaryEraseYes: whose, view.ActDiaryMinutes: minutes, view.ActDiaryPractise: minutes, view.ActDiaryNext: next,
		view.ActDiaryOutput: func(v string) bool { return slices.Contains(d.Outputs, v) },
		view.ActDiaryName:   func(v string) bool { return v == d.Typed },
	}
	var taken []string
	s.Each(func(it *view.Item) {
		is := understood[it.Action]
		if is == nil {
			require.True(t, !strings.HasPrefix(it.Action, "diary-") || it.Value == "", "%s needs no value", it.ID)
			return
		}
		taken = append(taken, it.Action+" "+it.Value)
		for _, o := range it.Options {
			require.True(t, is(o.Value), "%s: %q", it.ID, o.Value)
		}
		require.True(t, is(it.Value) || it.Role == view.RoleChoice && it.Value == "", "%s: %q", it.ID, it.Value)
	})
	slices.Sort(taken)
	require.Equal(t, slices.Compact(slices.Clone(taken)), taken, "no two controls do the same")
}

// Every picture of a diary stays inside its frame, and all its measures are numbers that
// can be drawn.
func TestEveryPictureIsDrawn(t *testing.T) {
	w, drawn := words(t), map[string]int{}
	everyScreen(t, func(t *testing.T, d *Diary) {
		for id, it := range picturesOf(d.Screen(w)) {
			drawn[strings.Split(id, "-")[0]]++
			screenproof.RequireInside(t, it.Picture)
			require.Equal(t, it.Text, it.Picture.Twin)
			require.InDelta(t, 1, it.Aspect*it.Picture.Height, 1e-9)
			for _, s := range it.Picture.Shapes {
				requireDrawable(t, id, s)
			}
		}
	})
	for _, matter := range []string{"named", "tapped", "fingers", "round", "mixed", "reach", "days"} {
		require.Greater(t, drawn[matter], 5, matter)
	}
}

func requireDrawable(t *testing.T, id string, s picture.Shape) {
	for _, x := range []float64{s.X, s.Y, s.X2, s.Y2, s.R, s.Tip, s.From, s.To, s.Width, s.Size} {
		require.False(t, math.IsNaN(x) || math.IsInf(x, 0), "%s: %+v", id, s)
	}
	require.True(t, s.R >= 0 && s.Width >= 0 && s.Size >= 0, "%s: %+v", id, s)
	require.True(t, s.Opacity > 0 && s.Opacity <= 1, "%s: %+v", id, s)
	if s.Kind == picture.KindArc {
		require.True(t, s.From < s.To && s.To < s.From+1, "%s: %+v", id, s)
	}
}

// The same diary gives the same screen each time, and making it changes nothing of it.
func TestDiaryIsLeftAsItWas(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		before := screenproof.Text(t, d.Screen(w))
		require.Equal(t, before, screenproof.Text(t, d.Screen(w)))
	})
}

// What is being read is not told, and what went wrong is told alone.
func TestOneStateIsTold(t *testing.T) {
	w := words(t)
	for want, change := range map[string]func(*Diary){
		"reading": func(d *Diary) { d.Reading, d.Failed, d.Behind = true, true, 3 },
		"failed":  func(d *Diary) { d.Failed, d.Behind, d.Rounds = true, 3, 0 },
		"behind":  func(d *Diary) { d.Behind, d.Rounds = 3, 0 },
		"empty":   func(d *Diary) { d.Rounds = 0 },
		"":        func(*Diary) {},
	} {
		d := mira(t)
		change(d)
		s := d.Screen(w)
		for _, id := range []string{"reading", "failed", "behind", "empty"} {
			require.Equal(t, id == want, s.Find(id) != nil, "%s beside %s", id, want)
		}
		require.Equal(t, !d.Reading, s.Find("practise") != nil, want)
		require.Equal(t, !d.Reading, len(picturesOf(s)) > 0, want)
		require.Equal(t, d.Rounds > 0, s.Find("export") != nil, "of nothing there is no file")
	}
}
