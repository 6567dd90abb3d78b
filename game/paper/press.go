package paper

import (
	"fmt"
	"io"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

// What a person does on the page. Each is answered in the frame after it, and is an
// error where what is meant is not on the screen, or cannot be used.

// find is the one control on the screen for which is says so.
func (b *Browser) find(what string, is func(*view.Item) bool) (*view.Item, error) {
	all := slices.DeleteFunc(controls(b.Page.Screen()), func(it *view.Item) bool { return !is(it) })
	if len(all) == 0 {
		return nil, fmt.Errorf("no %s can be used on\n%s", what, dump(b.Page.Screen()))
	}
	return all[0], nil
}

// control is the control of an id, of one of some roles.
func (b *Browser) control(id string, roles ...view.Role) (*view.Item, error) {
	return b.find(id, func(it *view.Item) bool { return it.ID == id && slices.Contains(roles, it.Role) })
}

// act lets a control be used in the next frame. Whatever is pressed lets the sound run,
// and what silences it does so at once.
func (b *Browser) act(it *view.Item, value string) {
	b.Sound.resume()
	switch {
	case it.Action == view.ActStop:
		b.Sound.Stop()
	case it.Action == view.ActAlone && value != "":
		b.Sound.Balance(0, 1)
	}
	b.Page.Add(host.Event{Kind: host.Used, Action: it.Action, Value: value})
}

// Queue presses a button, whose answer waits for the next frame.
func (b *Browser) Queue(id string) error {
	it, err := b.control(id, view.RoleButton)
	if err == nil {
		b.act(it, it.Value)
	}
	return err
}

// Press presses a button.
func (b *Browser) Press(id string) error { return b.framed(b.Queue(id)) }

// framed lets a frame pass if all is well.
func (b *Browser) framed(err error) error {
	if err == nil {
		b.Frame()
	}
	return err
}

// Does presses the first button that does something, with a value; any where that is "*".
func (b *Browser) Does(action, value string) error {
	it, err := b.find(action+" "+value, func(it *view.Item) bool {
		return it.Role == view.RoleButton && it.Action == action && (value == "*" || it.Value == value)
	})
	if err == nil {
		b.act(it, it.Value)
	}
	return b.framed(err)
}

// Choose takes one of the options of a choice.
func (b *Browser) Choose(id, value string) error {
	it, err := b.control(id, view.RoleChoice)
	if err == nil && !slices.ContainsFunc(it.Options, func(o view.Option) bool { return o.Value == value }) {
		err = fmt.Errorf("%s does not offer %q", id, value)
	}
	if err == nil {
		b.act(it, value)
	}
	return b.framed(err)
}

// Slide moves a slider to where it can stand.
func (b *Browser) Slide(id string, to float64) error {
	it, err := b.control(id, view.RoleSlider)
	if err == nil && (to < it.Min || to > it.Max) {
		err = fmt.Errorf("%s goes from %g to %g, not to %g", id, it.Min, it.Max, to)
	}
	if err == nil {
		b.act(it, strconv.FormatFloat(to, 'f', -1, 64))
	}
	return b.framed(err)
}

// Type types into a field, in place of what is in it.
func (b *Browser) Type(id, text string) error {
	it, err := b.control(id, view.RoleField)
	if err == nil {
		b.act(it, text)
	}
	return b.framed(err)
}

// Tick ticks a check box, or takes the tick away.
func (b *Browser) Tick(id string, on bool) error {
	it, err := b.control(id, view.RoleCheckBox)
	if err == nil {
		b.act(it, map[bool]string{true: "yes"}[on])
	}
	return b.framed(err)
}

// OpenFile opens a file of a text.
func (b *Browser) OpenFile(id, name, text string) error {
	it, err := b.control(id, view.RoleFile)
	if err == nil {
		b.Sound.resume()
		var file io.Reader = strings.NewReader(text)
		b.Page.Add(host.Event{Kind: host.Used, Action: it.Action, Value: name + "\n" + text, File: file})
	}
	return b.framed(err)
}

// Key presses a key that the screen answers wherever the focus is, or Escape.
func (b *Browser) Key(key string) error {
	s := b.Page.Screen()
	b.Sound.resume()
	if key == "Escape" && s.Escape != "" {
		b.act(&view.Item{Action: s.Escape}, view.ByEscape)
		return b.framed(nil)
	}
	for _, k := range s.Keys {
		if k.Key == key {
			b.act(&view.Item{Action: k.Action}, k.Value)
			return b.framed(nil)
		}
	}
	return fmt.Errorf("no key %q on\n%s", key, dump(s))
}

// Tap presses the tap area at a performance time in ms; the page hears of it in the
// next frame.
func (b *Browser) Tap(at float64) error {
	it, err := b.find("tap area", func(it *view.Item) bool { return it.Role == view.RoleTapArea })
	if err != nil {
		return err
	}
	b.Sound.resume()
	number, err := strconv.Atoi(it.Value)
	b.Page.Add(host.Event{Kind: host.Tapped, Tap: host.Tap{At: at, X: .5, Y: .5, By: "key", Round: number}})
	return err
}

// Back presses the browser's own back button; Forward the other one.
func (b *Browser) Back() error    { return b.walk(-1) }
func (b *Browser) Forward() error { return b.walk(1) }

func (b *Browser) walk(by int) error {
	if t := &b.Page.trail; t.going || !t.step(by) {
		return fmt.Errorf("no entry to go to from %q", b.Query())
	}
	b.came()
	return b.framed(nil)
}

// came tells the page where the browser has come.
func (b *Browser) came() {
	here := b.Page.trail.here()
	b.Page.Add(host.Event{Kind: host.Visited, Value: here.query, Mark: here.mark})
}
