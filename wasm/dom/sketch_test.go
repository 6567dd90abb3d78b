//go:build js

package dom

import (
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// lose lets a canvas of the document's lose its card, and reports whether its own
// listener, the engine's, was told.
func lose(p *Page) (told bool) {
	canvas := p.Document.Call("createElement", "canvas")
	p.Document.Get("body").Call("append", canvas)
	f := js.FuncOf(func(js.Value, []js.Value) any { told = true; return nil })
	defer f.Release()
	canvas.Call("addEventListener", "webglcontextlost", f)
	canvas.Call("dispatchEvent", js.Global().Get("Event").New("webglcontextlost"))
	canvas.Call("remove")
	return told
}

func TestSketch(t *testing.T) {
	p := fresh(t)
	item := view.Item{ID: "head", Role: view.RolePicture, Name: "Drumhead", Text: "a drum", Place: view.PlaceHead, Aspect: 1}
	p.Show(screen(heading("h"), item))
	require.True(t, p.Canvas())
	require.False(t, lose(p), "the engine would load the page again")
	require.False(t, p.Canvas())

	drawn := &picture.Picture{Height: 1}
	drawn.Ring(picture.InkBone, .5, .5, .4, .01)
	drawn.Dot(picture.InkBrass, .5, .2, .03)
	drawn.Text(picture.InkBone, .5, .5, .1, "5")
	all := func() js.Value { return p.Document.Call("querySelectorAll", "#head svg > *") }
	p.Sketch(view.PlaceHead, drawn)
	require.Equal(t, 3, all().Length())
	require.Equal(t, "5", all().Index(2).Get("textContent").String())
	ring, dot := all().Index(0), all().Index(1)

	drawn.Shapes[1].X = .8
	drawn.Shapes = drawn.Shapes[:2]
	p.Sketch(view.PlaceHead, drawn)
	require.Equal(t, 2, all().Length())
	require.True(t, all().Index(0).Equal(ring), "what is as before is left alone")
	require.False(t, all().Index(1).Equal(dot))
	require.Equal(t, "800", all().Index(1).Call("getAttribute", "cx").String())

	item.Text = "another drum" // which empties the place
	p.Show(screen(heading("h"), item))
	p.Sketch(view.PlaceHead, drawn)
	require.Equal(t, 2, all().Length())
	p.Sketch(view.PlaceLine, drawn) // there is no such place
	p.Sketch(view.PlaceHead, nil)
	require.Zero(t, all().Length())
}
