package view

import (
	"reflect"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
)

// An item that differs in any field, but for its children, makes another element: also in
// a field that is yet to come.
func TestSameLooksAtEveryField(t *testing.T) {
	for i := range reflect.TypeFor[Item]().NumField() {
		field := reflect.TypeFor[Item]().Field(i)
		t.Run(field.Name, func(t *testing.T) {
			var a, b Item
			fill(t, reflect.ValueOf(&b).Elem().Field(i))
			require.Equal(t, field.Name == "Children", Same(&a, &b))
			require.Equal(t, field.Name == "Children", Same(&b, &a))
			require.True(t, Same(&b, &b))
		})
	}
}

// fill makes a value other than its zero.
func fill(t *testing.T, v reflect.Value) {
	switch v.Kind() {
	case reflect.String:
		v.SetString("a")
	case reflect.Bool:
		v.SetBool(true)
	case reflect.Int:
		v.SetInt(1)
	case reflect.Uint8:
		v.SetUint(1)
	case reflect.Float64:
		v.SetFloat(1)
	case reflect.Array:
		fill(t, v.Index(v.Len()-1))
	case reflect.Slice:
		v.Set(reflect.MakeSlice(v.Type(), 1, 1))
	case reflect.Pointer:
		v.Set(reflect.New(v.Type().Elem()))
	default:
		t.Fatalf("a %s: say here what another one is", v.Kind())
	}
}

// What lies within a slice counts, and not where it lies in memory.
func TestSameLooksInside(t *testing.T) {
	made := func() *Item {
		return &Item{ID: "a", Role: RoleTable, Columns: []string{"1", "2"}, Rows: [][]string{{"1", "2"}, {"3", "4"}},
			Options: []Option{{"a", "b"}}, Picture: &picture.Picture{Shapes: make([]picture.Shape, 2)}}
	}
	require.True(t, Same(made(), made()))
	for name, change := range map[string]func(*Item){
		"cell":   func(it *Item) { it.Rows[1][1] = "5" },
		"row":    func(it *Item) { it.Rows = it.Rows[:1] },
		"column": func(it *Item) { it.Columns[1] = "5" },
		"value":  func(it *Item) { it.Options[0].Value = "c" },
		"label":  func(it *Item) { it.Options[0].Label = "c" },
		"shapes": func(it *Item) { it.Picture.Shapes = it.Picture.Shapes[:1] },
		"shape":  func(it *Item) { it.Picture.Shapes[1].Kind++ },
		"end":    func(it *Item) { it.Ends[0] = "a" },
	} {
		other := made()
		change(other)
		require.False(t, Same(made(), other), name)
	}
}

// An unchanged screen is looked through at every frame: that costs no memory.
func TestSameAllocatesNothing(t *testing.T) {
	a := &Item{ID: "a", Columns: []string{"1"}, Rows: [][]string{{"1"}}, Options: []Option{{"a", "b"}},
		Picture: &picture.Picture{Shapes: make([]picture.Shape, 8)}}
	b := *a
	b.Picture = &picture.Picture{Shapes: make([]picture.Shape, 8)}
	same := false
	require.Zero(t, testing.AllocsPerRun(100, func() { same = Same(a, &b) }))
	require.True(t, same)
}
