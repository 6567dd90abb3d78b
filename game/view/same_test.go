package view

import (
	"groundbeat/game/picture"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestSame(t *testing.T) {
	base := Item{ID: "a", Role: RoleTable, Rows: [][]string{{"1"}}, Options: []Option{{"a", "b"}}, Picture: &picture.Picture{}}
	for i, change := range []func(*Item){
		func(it *Item) { it.Rows = [][]string{{"2"}} }, func(it *Item) { it.Columns = []string{"a"} },
		func(it *Item) { it.Options = nil }, func(it *Item) { it.Picture = nil },
		func(it *Item) { it.Picture = &picture.Picture{Shapes: make([]picture.Shape, 1)} }, func(it *Item) { it.Disabled = true },
		func(it *Item) { it.Ends[1] = "a" },
		func(it *Item) { it.Num = 1 }, func(it *Item) { it.Aspect = 2 }, func(it *Item) { it.Text = "a" },
	} {
		other := base
		change(&other)
		require.False(t, Same(&base, &other), i)
	}
}
