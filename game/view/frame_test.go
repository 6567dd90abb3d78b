package view

import (
	"groundbeat/game/view/diaryview"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// In every stage of every screen there is a heading of the first level, the way home in
// the bar, and at most one filled button, in the bar too. What a room sees has a frame of
// its own.
func TestEveryStageIsFramed(t *testing.T) {
	for name, s := range screens(t) {
		headings, filled := 0, []string(nil)
		s.Each(func(it *Item) {
			if it.Role == RoleHeading && it.Level == 1 {
				headings++
			}
			if it.Look == LookPrimary && s.ID != "class-room" && s.ID != "class-blank" && !inDialog(s, it.ID) {
				filled = append(filled, it.ID)
			}
		})
		require.Equal(t, 1, headings, name)
		if s.Room {
			continue
		}
		bar := s.Find("bar")
		if bar == nil {
			require.Equal(t, ScreenHome, s.ID, "%s has no bar", name)
			continue
		}
		require.Equal(t, s.ID != ScreenHome, holds(bar, "home"), "%s: the way home", name)
		require.LessOrEqual(t, len(filled), 1, name)
		if len(filled) > 0 {
			require.Equal(t, filled[0], bar.Children[len(bar.Children)-1].ID, "%s: the next step ends the bar", name)
		}
	}
}

func holds(group *Item, id string) bool {
	return slices.ContainsFunc(group.Children, func(c Item) bool { return c.ID == id })
}

func inDialog(s Screen, id string) bool {
	found := false
	s.Each(func(it *Item) {
		if it.Role == RoleDialog {
			each(it.Children, func(c *Item) { found = found || c.ID == id })
		}
	})
	return found
}

// Ready, after a round, when one does not count, and where a link cannot be opened, there
// is a next step; and while something plays there is the way out of it.
func TestEveryStageLeadsOn(t *testing.T) {
	for name, s := range screens(t) {
		switch {
		case s.Room || strings.HasPrefix(name, "class") || strings.HasPrefix(name, "diary") || name == "practice-plan-reading":
		case strings.HasPrefix(name, "which-count-in"):
		case strings.Contains(name, "-waiting"), strings.Contains(name, "-playing") && !strings.HasPrefix(name, "listen") && !strings.HasPrefix(name, "sound-check") && !strings.HasPrefix(name, "practice-meet"):
			require.True(t, holds(s.Find("bar"), "stop"), name)
		case strings.Contains(name, "silent") && !strings.HasPrefix(name, "home-first") && !strings.HasPrefix(name, "listen"): // nothing to be heard there
		default:
			bar := s.Find("bar")
			require.NotNil(t, bar, name)
			require.Equal(t, LookPrimary, bar.Children[len(bar.Children)-1].Look, name)
		}
	}
}

// What to do stands over the drum while a round is played, and never names a rhythm that
// must not be told.
func TestRoundSaysWhatToDo(t *testing.T) {
	all := screens(t)
	for name, want := range map[string]string{
		"dums-playing":     "Tap each dum · maqsum",
		"dums-any-playing": "Tap each dum",
		"stop-playing":     "Tap each dum, and stop with the drums · maqsum",
		"carry-playing":    "Tap each dum, on through the silence · maqsum",
		"change-playing":   "Press when the rhythm changes",
		"set-up-playing":   "Tap along with each dum",
	} {
		s := all[name]
		require.Equal(t, want, s.Find("heading").Name, name)
	}
}

// A screen that is framed once more keeps its bar; a next step that was put before it
// becomes the filled one, and the one before stays beside it.
func TestFramedOnceMore(t *testing.T) {
	w := words(t)
	d := dums(t, Reviewing)
	d.Review = played()
	d.Result = result(t, d.Review)
	s := d.Screen(w)
	require.Equal(t, []string{"home", "once"}, idsOf(s.Find("bar").Children))
	require.Equal(t, s.Items, Framed(w, s.ID, s.Items))
	s = diaryview.Practice{Part: 1, Parts: 3, Done: true}.On(s, w)
	require.Equal(t, []string{"home", "once", "practice-on"}, idsOf(s.Find("bar").Children))
	require.Equal(t, []string{"", LookPrimary}, []string{s.Find("once").Look, s.Find("practice-on").Look})
	require.NoError(t, Check(s))
}

func idsOf(items []Item) (ids []string) {
	for _, it := range items {
		ids = append(ids, it.ID)
	}
	return ids
}

// At the foot of a screen stand those of its own door, the screen itself marked, and the
// other doors; all from the list that Home has.
func TestFootHasItsOwnGroupAndTheDoors(t *testing.T) {
	w := words(t)
	for _, d := range Doors(w) {
		for _, here := range d.ways {
			foot := nav(w, here.screen)
			require.Len(t, foot.Children, 2)
			var own []string
			for _, c := range foot.Children[0].Children[1:] {
				own = append(own, c.Value)
				require.Equal(t, c.Value == here.screen, c.Pressed)
			}
			require.Len(t, own, len(d.ways))
			require.Len(t, foot.Children[1].Children, len(Doors(w))-1)
			for _, c := range foot.Children[1].Children {
				require.NotContains(t, own, c.Value, "another door leads elsewhere")
			}
		}
	}
}
