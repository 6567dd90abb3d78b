package view

import "slices"

// Same reports whether two items would make the same element, their children
// not looked at. A still picture is the same if it is the same list of shapes.
// It allocates nothing, so that an unchanged screen costs nothing.
func Same(a, b *Item) bool {
	return sameWords(a, b) && sameState(a, b) && samePicture(a, b) &&
		slices.Equal(a.Options, b.Options) &&
		slices.Equal(a.Columns, b.Columns) &&
		slices.EqualFunc(a.Rows, b.Rows, slices.Equal[[]string])
}

func sameWords(a, b *Item) bool {
	return a.ID == b.ID && a.Role == b.Role && a.Name == b.Name && a.Text == b.Text &&
		a.Value == b.Value && a.Lang == b.Lang && a.Dir == b.Dir && a.Look == b.Look &&
		a.Live == b.Live && a.Level == b.Level
}

func sameState(a, b *Item) bool {
	return a.Min == b.Min && a.Max == b.Max && a.Step == b.Step && a.Num == b.Num && a.Ends == b.Ends &&
		a.Action == b.Action && a.Disabled == b.Disabled && a.Pressed == b.Pressed &&
		a.Checked == b.Checked
}

func samePicture(a, b *Item) bool {
	if a.Place != b.Place || a.Aspect != b.Aspect || (a.Picture == nil) != (b.Picture == nil) {
		return false
	}
	return a.Picture == b.Picture || slices.Equal(a.Picture.Shapes, b.Picture.Shapes)
}
