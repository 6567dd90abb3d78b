package screenproof

import (
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestCheckFinds(t *testing.T) {
	for _, c := range []struct {
		name string
		item view.Item
		want string
	}{
		{"no id", view.Item{Role: view.RoleText, Text: "a"}, "no id"},
		{"twice", view.Item{ID: "h", Role: view.RoleText, Text: "a"}, "id used twice"},
		{"no role", view.Item{ID: "a"}, "no role"},
		{"look", view.Item{ID: "a", Role: view.RoleText, Text: "a", Look: "loud"}, `look "loud"`},
		{"dir", view.Item{ID: "a", Role: view.RoleText, Text: "a", Dir: "up"}, `direction "up"`},
		{"live", view.Item{ID: "a", Role: view.RoleStatus, Live: "loud"}, `live "loud"`},
		{"heading", view.Item{ID: "a", Role: view.RoleHeading, Name: "a"}, "heading of level 0"},
		{"text", view.Item{ID: "a", Role: view.RoleText}, "text without text"},
		{"figure", view.Item{ID: "a", Role: view.RoleText, Text: "a", Look: view.LookFigure}, "figure without a value"},
		{"button name", view.Item{ID: "a", Role: view.RoleButton, Action: "a"}, "button without a name"},
		{"button action", view.Item{ID: "a", Role: view.RoleButton, Name: "a"}, "button without an action"},
		{"choice", view.Item{ID: "a", Role: view.RoleChoice, Name: "a", Action: "a", Value: "2", Options: []view.Option{{Value: "1", Label: "one"}}}, `value "2" is none`},
		{"option", view.Item{ID: "a", Role: view.RoleChoice, Name: "a", Action: "a", Value: "1", Options: []view.Option{{Value: "1", Label: ""}}}, "without a label"},
		{"choice of nothing", view.Item{ID: "a", Role: view.RoleChoice, Name: "a", Action: "a"}, "choice of nothing"},
		{"file", view.Item{ID: "a", Role: view.RoleFile, Name: "a"}, "file without an action"},
		{"one end", view.Item{ID: "a", Role: view.RoleSlider, Name: "a", Action: "a", Max: 2, Step: 1, Ends: [2]string{"x"}}, "only one end"},
		{"slider", view.Item{ID: "a", Role: view.RoleSlider, Name: "a", Action: "a", Min: 1, Max: 2, Num: 3, Step: 1}, "3 is not from 1 to 2"},
		{"slider step", view.Item{ID: "a", Role: view.RoleSlider, Name: "a", Action: "a", Min: 1, Max: 2, Num: 1}, "step 0"},
		{"progress", view.Item{ID: "a", Role: view.RoleProgress, Name: "a"}, "from 0 to 0"},
		{"list", view.Item{ID: "a", Role: view.RoleList}, "empty list"},
		{"list of texts", view.Item{ID: "a", Role: view.RoleList, Children: []view.Item{{ID: "b", Role: view.RoleText, Text: "b"}}}, "no list item"},
		{"list item", view.Item{ID: "a", Role: view.RoleListItem}, "empty list item"},
		{"table", view.Item{ID: "a", Role: view.RoleTable, Name: "a", Columns: []string{"a"}, Rows: [][]string{{"a", "b"}}}, "not as long"},
		{"picture", view.Item{ID: "a", Role: view.RolePicture, Name: "a", Aspect: 1, Place: "a"}, "without a text twin"},
		{"picture of nothing", view.Item{ID: "a", Role: view.RolePicture, Name: "a", Text: "a", Aspect: 1}, "shapes or a place"},
		{"status", view.Item{ID: "a", Role: view.RoleStatus}, "never announced"},
		{"group", view.Item{ID: "a", Role: view.RoleGroup}, "empty group"},
		{"dialog", view.Item{ID: "a", Role: view.RoleDialog, Name: "a", Action: "a"}, "empty dialog"},
		{"details", view.Item{ID: "a", Role: view.RoleDetails, Name: "a"}, "empty details"},
		{"link", view.Item{ID: "a", Role: view.RoleLink, Name: "a"}, "link to nowhere"},
		{"tap area", view.Item{ID: "a", Role: view.RoleTapArea, Name: "a"}, "taparea without an action"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := view.Screen{ID: "s", Title: "t", Lang: "en", Dir: "ltr", Items: []view.Item{view.Heading("h", "h"), c.item}}
			require.ErrorContains(t, Check(s), c.want)
		})
	}
	require.ErrorContains(t, Check(view.Screen{}), "nothing to focus")
	require.ErrorContains(t, Check(view.Screen{ID: "s", Title: "t", Lang: "en", Dir: "ltr", Focus: "x"}), `focus "x" is not`)
}
