//go:build js

package dom

import (
	"syscall/js"

	"groundbeat/game/host"
)

// trail is the browser's history. The state of each entry is its mark.
type trail struct {
	history js.Value
	going   bool     // on the way back, which the browser takes its time for
	after   []func() // what is to be done then
}

func newTrail(p *Page) *trail {
	t := &trail{history: js.Global().Get("history")}
	p.Listen(js.Global(), "popstate", func(js.Value) {
		if !t.arrived() {
			query := js.Global().Get("location").Get("search").String()
			p.Pending = append(p.Pending, host.Event{Kind: host.Visited, Value: query, Mark: t.mark()})
		}
	})
	return t
}

// mark is that of the entry where the browser is; "" if it has none.
func (t *trail) mark() string {
	if state := t.history.Get("state"); state.Type() == js.TypeString {
		return state.String()
	}
	return ""
}

// arrived ends the way back, and reports whether the player has gone on meanwhile.
func (t *trail) arrived() bool {
	after := t.after
	t.going, t.after = false, nil
	for _, do := range after {
		do()
	}
	return len(after) > 0
}

// Link implements [host.Page]. Browsers allow only so many changes in so many
// seconds and throw beyond (Safari: 100 in 30). Then the address lags behind and
// follows with a later change: that must not end the program.
func (p *Page) Link(query, mark string, visit bool) {
	switch t := p.trail; {
	case t.going && (visit || len(t.after) > 0):
		t.after = append(t.after, func() { t.link(query, mark, visit) })
	case !t.going: // else it is linked on arrival
		t.link(query, mark, visit)
	}
}

func (t *trail) link(query, mark string, visit bool) {
	defer func() { _ = recover() }()
	call := "replaceState"
	if visit {
		call = "pushState"
	}
	if query == "" {
		t.history.Call(call, mark, "")
	} else {
		t.history.Call(call, mark, "", query)
	}
}

// Back implements [host.Page].
func (p *Page) Back(mark string) {
	if t := p.trail; t.mark() == mark && !t.going {
		t.going = true
		t.history.Call("back")
	}
}
