// Package rig is for tests: a session of no more than is needed to try one controller after
// the other, in a browser on paper.
package rig

import (
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/paper"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Controllers are those of some screens, by the screens.
type Controllers map[string]control.Controller

// Rig shows the screen of an address, and hands its controller what happens.
type Rig struct {
	*paper.Browser
	Shared      control.Shared
	Controllers Controllers
	Controller  control.Controller // of the screen that is shown
}

// New is a rig at a link, on a device that plays at once, with the same seed each time.
func New(query string, controllers func(s *control.Shared) Controllers) *Rig {
	r := &Rig{Browser: paper.New(paper.Ideal, 1)}
	r.Wall.Fixed, r.Page.Keeps = 7, true
	r.Wall.Set(time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC))
	r.Open(query, func(h *host.Host) paper.Game {
		s := &r.Shared
		s.Host, s.Ear = h, playback.NewEar(h.Sound)
		s.Practice = control.Practice{Finished: func(history.Round) {}, Meeting: func() bool { return false }}
		s.Learner = control.Learner{Host: h, Redraw: func() {}, Recount: func() {}}
		s.Volume, s.Width, s.Outputs = 60, h.Page.Width(), h.Store.Outputs()
		r.Controllers = controllers(s)
		r.visit(query)
		return (*game)(r)
	})
	r.Wall.Pass(1000)
	return r
}

// Screen is what the page shows, or is to.
func (r *Rig) Screen() view.Screen { return (*game)(r).screen() }

// visit opens a link.
func (r *Rig) visit(query string) {
	r.Shared.Address, _ = link.Parse(query, r.Shared.Allowed)
	r.turn()
}

// turn shows what the address says.
func (r *Rig) turn() {
	s := &r.Shared
	if r.Controller != nil {
		r.Controller.Interrupt(host.WhyStop)
	}
	r.Controller, s.Nth, s.Problems = r.Controllers[s.Address.Screen], 0, nil
	s.Ear.Reset(s.Outputs.Adjustment().Bass)
	r.Controller.Prepare()
	s.Stale = true
}

// game is a rig as its browser sees it.
type game Rig

// Happened answers one event.
func (g *game) Happened(e *host.Event) {
	r, s := (*Rig)(g), &g.Shared
	s.Stale = true
	switch e.Kind {
	case host.Used:
		r.used(e.Action, e.Value)
	case host.Tapped:
		r.Controller.(control.Tapper).Tap(&e.Tap)
	case host.Stopped:
		r.Controller.Interrupt(e.Reason)
	case host.Visited:
		r.visit(e.Value)
	case host.Told:
		s.Outputs = s.Store.Outputs()
		if c, ok := r.Controller.(control.Refresher); ok {
			c.Refresh()
		}
	}
}

// used answers a control: it leads elsewhere, or is the controller's.
func (r *Rig) used(action, value string) {
	s := &r.Shared
	switch action {
	case view.ActGo:
		s.Address = s.Address.To(value)
		r.turn()
	case view.ActHome:
		s.Address = s.Address.To(view.ScreenHome)
		r.turn()
	case view.ActOpen:
		r.turn()
	default:
		s.Set(action, value)
		r.Controller.Act(action, value)
	}
}

// Tick moves on to what is heard, and shows what changed.
func (g *game) Tick(now float64) {
	if g.Controller.Tick(now) {
		g.Shared.Stale = true
	}
	if g.Shared.Stale {
		g.Shared.Stale = false
		g.Shared.Page.Show(g.screen())
	}
}

// Picture is what lives in a place on the page.
func (g *game) Picture(place host.Place) *picture.Picture { return g.Controller.Draw(place.Picture) }

func (g *game) screen() view.Screen {
	s := &g.Shared
	if s.Problems != nil {
		wrong := link.WrongLink{Problems: s.Problems, Nearest: s.Address}
		if c := s.Cycle(); c != nil {
			wrong.Rhythm = c.Name
		}
		return wrong.Screen(s.Words)
	}
	return g.Controller.Screen()
}
