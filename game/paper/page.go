package paper

import (
	"fmt"

	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// A Page shows screens, and tells what was done on them.
type Page struct {
	Window               // what of it a test sets
	Shown  []view.Screen // all that was shown, if it is kept; else the last alone
	Keeps  bool
	Shows  int     // how often a screen was shown
	Wrong  []error // what is wrong with what was shown
	Colour string  // the theme that is used

	events []host.Event
	trail  trail
}

// A Window is what a page is looked at through.
type Window struct {
	Across   float64 // width in CSS pixels
	Bright   bool    // the light palette is in use
	Still    bool    // the system asks for less motion
	Finger   bool    // what is pressed is pressed with a finger
	OneBelow bool    // there is no room for the drumhead beside the words
	Lost     bool    // live pictures are drawn on the page
	Scrolled float64 // how far down the page was scrolled, CSS pixels
}

// Show shows a screen, and looks at it.
func (p *Page) Show(s view.Screen) {
	if p.Shows++; !p.Keeps {
		p.Shown = p.Shown[:0]
	}
	p.Shown = append(p.Shown, s)
	if err := Look(&s); err != nil && len(p.Wrong) < 5 {
		p.Wrong = append(p.Wrong, fmt.Errorf("%w\n%s", err, dump(&s)))
	}
}

// Screen is what is shown.
func (p *Page) Screen() *view.Screen {
	if len(p.Shown) == 0 {
		return &view.Screen{}
	}
	return &p.Shown[len(p.Shown)-1]
}

// Events hands over what was done.
func (p *Page) Events(into []host.Event) []host.Event {
	into = append(into, p.events...)
	p.events = p.events[:0]
	return into
}

// Add lets something happen in the next frame.
func (p *Page) Add(some ...host.Event) { p.events = append(p.events, some...) }

// tell adds one.
func (p *Page) tell(e host.Event) { p.Add(e) }

// Places are those of the pictures on the screen, one below another.
func (p *Page) Places(into []host.Place) []host.Place {
	y := 10 - p.Scrolled
	p.Screen().Each(func(it *view.Item) {
		if it.Place != "" {
			into = append(into, host.Place{Picture: it.Place, X: 10, Y: y, W: p.Across - 20, H: (p.Across - 20) / it.Aspect})
			y += 400
		}
	})
	return into
}

// Canvas reports whether live pictures can be drawn on one.
func (p *Page) Canvas() bool { return !p.Lost }

// Sketch draws nothing.
func (p *Page) Sketch(string, *picture.Picture) {}

// Light reports whether the light palette is in use.
func (p *Page) Light() bool { return p.Bright }

// Calm reports whether less motion is asked for.
func (p *Page) Calm() bool { return p.Still }

// Theme notes the theme.
func (p *Page) Theme(theme string) { p.Colour = theme }

// Width is that of the window.
func (p *Page) Width() float64 { return p.Across }

// TwoColumns reports whether there is room for two.
func (p *Page) TwoColumns() bool { return !p.OneBelow }

// Touch reports whether a finger presses.
func (p *Page) Touch() bool { return p.Finger }

// Link writes an entry of the history.
func (p *Page) Link(query, mark string, visit bool) { p.trail.link(query, mark, visit) }

// Back goes back from an entry.
func (p *Page) Back(mark string) { p.trail.back(mark) }
