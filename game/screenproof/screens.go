// Package screenproof is what the tests of all screens share: what must hold of every
// stage of every screen, screens as text, and what is shown on them. Tests alone import
// it.
package screenproof

import (
	"bytes"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/view"
)

// Screens checks every stage of some screens, by name: that it is whole, as its golden
// has it, framed, and leads on.
func Screens(t *testing.T, all map[string]view.Screen) {
	t.Helper()
	for name, s := range all {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, Check(s))
			text := Text(t, s)
			require.NotContains(t, text, "{", "a placeholder was not filled")
			proof.Golden(t, name+".txt", []byte(Text(t, footless(s))))
			requireFramed(t, s)
			requireLeadsOn(t, name, s)
			requireOneBegin(t, name, s)
			requireSame(t, s)
		})
	}
	requireFeet(t, all)
}

// footless is a screen without the way to the others, which is the same at the foot of
// all, and has a golden of its own: so a screen that comes to be changes no other's.
func footless(s view.Screen) view.Screen {
	s.Items = slices.DeleteFunc(slices.Clone(s.Items), func(it view.Item) bool { return it.ID == "nav" })
	return s
}

// requireSame: each item is the same as itself, and another once its name is.
func requireSame(t *testing.T, s view.Screen) {
	s.Each(func(it *view.Item) {
		changed := *it
		require.True(t, view.Same(it, &changed), it.ID)
		require.Zero(t, testing.AllocsPerRun(10, func() { view.Same(it, &changed) }))
		changed.Name += "x"
		require.False(t, view.Same(it, &changed), it.ID)
	})
}

// requireFeet: every screen but Home has, where nothing plays, a foot from which one goes
// to every other, and Home by Escape; without it Escape does not lead Home.
func requireFeet(t *testing.T, all map[string]view.Screen) {
	foot := map[string]bool{}
	for name, s := range all {
		if !strings.HasPrefix(name, s.ID) {
			continue // within a practice, say
		}
		has := s.Find("nav") != nil
		foot[s.ID] = foot[s.ID] || has
		if has {
			require.Contains(t, []string{view.ActHome, view.ActStop, view.ActDiaryEraseNo, view.ActDiaryMergeNo}, s.Escape, name)
		} else if s.ID != "link" {
			require.NotEqual(t, view.ActHome, s.Escape, name)
		}
	}
	for _, id := range view.Screens()[1:] {
		if has, shown := foot[id]; shown {
			require.True(t, has, id)
		}
	}
}

// Files are the goldens of some screens.
func Files(all map[string]view.Screen) (files []string) {
	for name := range all {
		files = append(files, name+".txt")
	}
	return files
}

// Text is a screen as text.
func Text(t testing.TB, s view.Screen) string {
	var b bytes.Buffer
	require.NoError(t, Dump(&b, s))
	return b.String()
}

// requireFramed: there is a heading of the first level, the way home in the bar, and at
// most one filled button, in the bar too. What a room sees has a frame of its own.
func requireFramed(t *testing.T, s view.Screen) {
	headings, filled := 0, []string(nil)
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleHeading && it.Level == 1 {
			headings++
		}
		if it.Look == view.LookPrimary && s.ID != "class-room" && s.ID != "class-blank" && !inDialog(s, it.ID) {
			filled = append(filled, it.ID)
		}
	})
	require.Equal(t, 1, headings)
	bar := s.Find("bar")
	if s.Room || bar == nil {
		require.True(t, s.Room || s.ID == view.ScreenHome, "no bar")
		return
	}
	require.Equal(t, s.ID != view.ScreenHome, holds(bar, "home"), "the way home")
	require.LessOrEqual(t, len(filled), 1)
	if len(filled) > 0 {
		require.Equal(t, filled[0], bar.Children[len(bar.Children)-1].ID, "the next step ends the bar")
	}
}

func holds(group *view.Item, id string) bool {
	return slices.ContainsFunc(group.Children, func(c view.Item) bool { return c.ID == id })
}

func inDialog(s view.Screen, id string) bool {
	found := false
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleDialog {
			dialog := view.Screen{Items: it.Children}
			found = found || dialog.Find(id) != nil
		}
	})
	return found
}

// requireLeadsOn: ready, after a round, when one does not count, and where a link cannot
// be opened, there is a next step; and while something plays there is the way out of it.
func requireLeadsOn(t *testing.T, name string, s view.Screen) {
	heard := strings.HasPrefix(name, "listen") || strings.HasPrefix(name, "sound-check") || strings.HasPrefix(name, "practice-meet")
	switch {
	case s.Room || strings.HasPrefix(name, "class") || strings.HasPrefix(name, "diary") || name == "practice-plan-reading":
	case strings.HasPrefix(name, "which-count-in"):
	case strings.Contains(name, "-waiting"), strings.Contains(name, "-playing") && !heard:
		require.True(t, holds(s.Find("bar"), "stop"))
	case strings.Contains(name, "silent") && !strings.HasPrefix(name, "home-first") && !strings.HasPrefix(name, "listen"): // nothing to be heard there
	default:
		bar := s.Find("bar")
		require.NotNil(t, bar)
		require.Equal(t, view.LookPrimary, bar.Children[len(bar.Children)-1].Look)
	}
}

// requireOneBegin: one button is named Begin, before a round or a practice and nowhere
// else.
func requireOneBegin(t *testing.T, name string, s view.Screen) {
	n := 0
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleButton && it.Name == "Begin" {
			n++
		}
	})
	before := strings.Contains(name, "-ready") || name == "practice-plan" || name == "practice-plan-first"
	require.Equal(t, before && !strings.HasPrefix(name, "listen"), n == 1)
}
