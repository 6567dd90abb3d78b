package homeview

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diaryview"
	"groundbeat/game/view"
)

func homeScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, change func(*Home)) {
		h := &Home{Rhythm: cycle(t, "maqsum"), Volume: 60}
		change(h)
		all["home-"+name] = h.Screen(w)
	}
	add("first", func(h *Home) { h.First = true })
	add("first-silent", func(h *Home) { h.First, h.Volume, h.Notes = true, -1, []view.Note{view.NoteNoSound} })
	add("first-nothing-came", func(h *Home) { h.First, h.Silent = true, true })
	add("later", func(h *Home) { h.Volume = 75 })
	add("later-several", func(h *Home) { h.People, h.Who = []diaryview.Person{{ID: "a", Name: ""}, {ID: "b", Name: "Rim"}}, "b" })
	add("later-not-kept", func(h *Home) { h.Notes = []view.Note{view.NoteNotKept} })
	return all
}

// order lists the ids of the screen's items at the top, in order.
func order(s view.Screen) (ids []string) {
	for _, it := range s.Items {
		ids = append(ids, it.ID)
	}
	return ids
}

// The first time: what this is in two sentences, how loud it is, one press, and
// only then the doors. Later ten minutes of practice come first, and nothing is told twice.
func TestHomeFirstAndLater(t *testing.T) {
	all := homeScreens(t)
	first, later := all["home-first"], all["home-later"]
	require.Equal(t, []string{"heading", "what", "head", "level", "loud", "bar", "how", "door-practise", "door-class", "door-sound", "theme", "care"}, order(first))
	require.Equal(t, []string{"heading", "head", "bar", "door-practise", "door-class", "door-sound", "level", "theme", "care"}, order(later))
	require.Equal(t, "Groundbeat", first.Title)
	require.Equal(t, "Groundbeat", first.Find("heading").Name)
	require.Equal(t, 2, strings.Count(first.Find("what").Text, "."), "sentences")
	require.Equal(t, 1, strings.Count(first.Find("loud").Text, "."))
	require.Contains(t, first.Find("loud").Text, "harm your hearing")

	for name, s := range all {
		var primary []string
		s.Each(func(it *view.Item) {
			if it.Look == view.LookPrimary {
				primary = append(primary, it.Action)
			}
		})
		if strings.Contains(name, "first") {
			require.Equal(t, []string{view.ActFirst}, primary, name)
		} else {
			require.Equal(t, []string{view.ActDiaryPractise}, primary, name)
		}
		require.Empty(t, s.Escape, "%s: nowhere else to go", name)
	}
}

// Without sound there is nothing to turn up, and the round can be begun all the same.
func TestHomeWithoutSound(t *testing.T) {
	s := homeScreens(t)["home-first-silent"]
	require.Nil(t, s.Find("level"))
	require.Nil(t, s.Find("loud"))
	require.NotNil(t, s.Find("first"))
	require.Equal(t, "There is no sound here. Rounds are played in pictures only.", s.Find("note-1").Text)
}

// Every screen is reached from Home, by its door, and Home by Escape from where nothing
// plays.
func TestHomeAndBack(t *testing.T) {
	home := homeScreens(t)["home-later"]
	for _, screen := range view.Screens()[1:] {
		to := home.Find("go-" + screen)
		require.NotNil(t, to, screen)
		require.Equal(t, []string{view.ActGo, screen, view.SayScreen(words(t), screen)}, []string{to.Action, to.Value, to.Name})
		require.NotEmpty(t, to.Text)
	}
}
