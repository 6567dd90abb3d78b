//go:build js

package dom

import (
	"syscall/js"

	"groundbeat/game/picture"
)

// sketches are the live pictures once the graphics card is lost (a driver that starts
// anew, a laptop that changes cards, a telephone short of memory): drawn in their places
// on the page, as still ones are. The engine would load the page again, with which a
// round, a practice and a file that was opened were gone; and what it had made on the
// card it cannot make again. So the card is not asked for any more until the page is
// loaded by itself.
type sketches struct {
	page *Page
	lost bool
	all  map[string]*sketch // by place
}

// A sketch is a picture whose marks are elements, of which only those are made anew
// that have changed.
type sketch struct {
	svg   js.Value
	marks []mark
}

type mark struct {
	shape picture.Shape
	el    js.Value
}

// newSketches listens for the loss of the card before the engine does.
func newSketches(p *Page) *sketches {
	s := &sketches{page: p, all: map[string]*sketch{}}
	p.Listen(js.Global(), "webglcontextlost", func(event js.Value) {
		event.Call("stopPropagation")
		event.Get("target").Get("style").Set("visibility", "hidden")
		s.lost = true
	})
	return s
}

// Canvas implements [game.Page].
func (p *Page) Canvas() bool { return !p.sketches.lost }

// Sketch implements [game.Page].
func (p *Page) Sketch(place string, drawn *picture.Picture) {
	el := p.root.Call("querySelector", `[data-place="`+place+`"]`)
	switch {
	case el.IsNull():
	case drawn == nil:
		el.Call("replaceChildren")
	default:
		p.sketches.of(place, el, drawn).draw(p, drawn)
	}
}

// of is the sketch in a place, which the page may have emptied meanwhile.
func (s *sketches) of(place string, el js.Value, drawn *picture.Picture) *sketch {
	old := s.all[place]
	if old == nil || !old.svg.Get("parentNode").Equal(el) {
		old = &sketch{svg: s.page.paper(drawn)}
		s.all[place] = old
		el.Call("replaceChildren", old.svg)
	}
	return old
}

func (s *sketch) draw(p *Page, drawn *picture.Picture) {
	palette := picture.Dark()
	for i := range drawn.Shapes {
		shape := &drawn.Shapes[i]
		if i < len(s.marks) && s.marks[i].shape == *shape {
			continue
		}
		made := mark{*shape, p.mark(shape, &palette)}
		if i < len(s.marks) {
			s.marks[i].el.Call("replaceWith", made.el)
			s.marks[i] = made
		} else {
			s.svg.Call("append", made.el)
			s.marks = append(s.marks, made)
		}
	}
	for n := len(drawn.Shapes); len(s.marks) > n; s.marks = s.marks[:len(s.marks)-1] {
		s.marks[len(s.marks)-1].el.Call("remove")
	}
}
