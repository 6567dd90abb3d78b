package view

import (
	"testing"

	"github.com/stretchr/testify/require"
)

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
