package view

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What is said of what is kept: nothing if all is well; else what is wrong, how many
// rounds wait, and what can be done.
func TestStorageItems(t *testing.T) {
	w := words(t)
	for name, c := range map[string]struct {
		is       Storage
		says     []string
		controls []string
	}{
		"all is well": {Storage{Aside: true}, nil, nil},
		"one waits": {Storage{Waiting: 1, Aside: true},
			[]string{"1 round could not be kept yet."}, []string{ActSaveWaiting}},
		"some wait, and would be lost": {Storage{Waiting: 3},
			[]string{"3 rounds could not be kept yet. Groundbeat goes on trying, but they are lost if you close the page before: save them as a file."},
			[]string{ActSaveWaiting}},
		"no storage": {Storage{None: true, Aside: true},
			[]string{"This browser keeps nothing for this page."}, nil},
		"no storage, and all are laid aside": {Storage{None: true, Waiting: 2, Aside: true},
			[]string{"2 rounds could not be kept yet."}, []string{ActSaveWaiting}},
		"no storage at all": {Storage{None: true, Waiting: 2},
			[]string{"This browser keeps nothing for this page.", "2 rounds could not be kept yet."}, []string{ActSaveWaiting}},
		"older": {Storage{Older: true, Aside: true}, []string{"Reload the page to get the newer one."}, []string{ActReload}},
		"older, and one waits": {Storage{Older: true, Aside: true, Waiting: 1},
			[]string{"Reload the page to get the newer one.", "The newer page takes it over."}, []string{ActReload, ActSaveWaiting}},
		"blocked": {Storage{Blocked: true, Aside: true}, []string{"Close it or reload it"}, nil},
	} {
		t.Run(name, func(t *testing.T) {
			var says, controls []string
			each(c.is.Items(w), func(it *Item) {
				if it.Text != "" {
					says = append(says, it.Text)
				}
				if it.Action != "" {
					controls = append(controls, it.Action)
				}
			})
			require.Len(t, says, len(c.says))
			for i, part := range c.says {
				require.Contains(t, says[i], part)
			}
			require.Equal(t, c.controls, controls)
		})
	}
}

// It stands above the way to the other screens, and disturbs neither a round nor a room.
func TestStorageOnScreens(t *testing.T) {
	w := words(t)
	is := Storage{Waiting: 1}
	nav := Item{ID: "nav", Look: LookNav, Role: RoleGroup}
	some := Screen{Items: []Item{Heading("heading", "x"), nav}}
	s := is.On(some, w)
	require.Equal(t, []string{"heading", "keeping", "nav"}, ids(s.Items))
	require.Equal(t, []string{"heading", "nav"}, ids(some.Items), "the screen that was given stays as it was")
	require.Equal(t, []string{"heading", "keeping"}, ids(is.On(Screen{Items: some.Items[:1]}, w).Items))
	require.Equal(t, some, Storage{Aside: true}.On(some, w))
	room := Screen{Room: true, Items: some.Items}
	require.Equal(t, room, is.On(room, w))
	round := Screen{Items: []Item{{ID: "tap", Role: RoleTapArea}}}
	require.Equal(t, round, is.On(round, w))
}

func ids(items []Item) (all []string) {
	for _, it := range items {
		all = append(all, it.ID)
	}
	return all
}
