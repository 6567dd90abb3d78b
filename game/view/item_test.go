package view

import (
	"go/ast"
	"go/parser"
	"go/token"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// texts are the constants of a file of this package that are text, by name.
func texts(t *testing.T, file string) map[string]string {
	read, err := parser.ParseFile(token.NewFileSet(), file, nil, 0)
	require.NoError(t, err)
	all := map[string]string{}
	ast.Inspect(read, func(n ast.Node) bool {
		spec, ok := n.(*ast.ValueSpec)
		if !ok {
			return true
		}
		for i, value := range spec.Values {
			if is, ok := value.(*ast.BasicLit); ok && is.Kind == token.STRING {
				all[spec.Names[i].Name], err = strconv.Unquote(is.Value)
				require.NoError(t, err)
			}
		}
		return true
	})
	return all
}

// Two things that can be done are never told by one id, nor two screens or places.
func TestIDsAreTold(t *testing.T) {
	for _, kind := range []string{"Act", "Screen", "Place", "Level", "From"} {
		by := map[string]string{}
		for name, id := range texts(t, "act.go") {
			if strings.HasPrefix(name, kind) {
				require.Empty(t, by[id], "%s says %q, too", name, id)
				require.NotEmpty(t, id)
				by[id] = name
			}
		}
		require.Greater(t, len(by), 1, kind)
	}
}

// The ids stand in links, records and the page's attributes: no capitals, no blanks.
func TestIDsAreSafe(t *testing.T) {
	for name, id := range texts(t, "act.go") {
		require.Regexp(t, `^[a-z]+(-[a-z]+)*-?$`, id, name)
	}
}

// Looks has every look that is declared, each once.
func TestLooksAreAll(t *testing.T) {
	declared := []string{""}
	for name, look := range texts(t, "item.go") {
		if strings.HasPrefix(name, "Look") {
			declared = append(declared, look)
		}
	}
	require.ElementsMatch(t, declared, Looks)
}

// Every role has a name of its own; what is none says so.
func TestRoleNames(t *testing.T) {
	by := map[string]Role{}
	for r := range Roles {
		require.NotEmpty(t, r.String())
		require.NotContains(t, by, r.String())
		by[r.String()] = r
	}
	require.NotContains(t, by, Roles.String())
}

// A screen is gone through in the order in which it is read, however deep it is.
func TestEachGoesInOrder(t *testing.T) {
	s := Screen{Items: []Item{group("a", group("b", Item{ID: "c"}), Item{ID: "d"}), {ID: "e"}}}
	var order []string
	s.Each(func(it *Item) { order = append(order, it.ID) })
	require.Equal(t, []string{"a", "b", "c", "d", "e"}, order)
	for _, id := range order {
		require.Equal(t, id, s.Find(id).ID)
	}
	require.Nil(t, s.Find("f"))
	s.Find("c").Text = "changed"
	require.Equal(t, "changed", s.Items[0].Children[0].Children[0].Text, "it is the item itself")
}

// On arrival the focus is where the screen says, or else at its first heading.
func TestFocusID(t *testing.T) {
	s := Screen{Items: []Item{{ID: "text", Role: RoleText}, group("a", Heading("first", "x")), Heading("second", "y")}}
	require.Equal(t, "first", s.FocusID())
	s.Focus = "text"
	require.Equal(t, "text", s.FocusID())
	require.Empty(t, (&Screen{Items: s.Items[:1]}).FocusID())
}
