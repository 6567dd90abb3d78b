// Package session is what is going on: the screen that is shown, the round that is
// played, and what came of it. It decides what happens next, and knows nothing of
// engine and browser.
//
// Words and controls are not here: a screen is made by package view and shown by the
// page.
package session

import (
	"errors"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/screens"
	"groundbeat/game/view"
)

// Session is what is going on: what its controllers share, and the one whose screen is
// shown.
type Session struct {
	shared control.Shared

	began    float64 // when the round did, performance time in ms
	underWay bool    // something is, on the screen that is shown
	news     news
	rest     playback.Head // the drum beside a link that cannot be opened

	controllers controllers
	controller  control.Controller // of the screen that is shown
	trail       *link.Trail
	latest      map[string]link.Address // by screens: as each was left
	touch       bool

	practice *practice // that is under way, or nil
}

// New begins a session with the link that opened the page.
func New(o *host.Host) *Session {
	x := &Session{}
	x.open(o)
	return x
}

func (x *Session) open(o *host.Host) {
	x.shared.Host = o
	x.shared.Practice = control.Practice{Begin: x.begin, Finished: x.roundOver, Meeting: x.meeting}
	x.shared.Ear = playback.NewEar(o.Sound)
	x.shared.SetVolume(x.firstVolume())
	x.shared.Outputs = o.Store.Outputs()
	diary := screens.NewDiary(&x.shared)
	x.controllers = newControllers(&x.shared, diary)
	x.latest = map[string]link.Address{}
	x.shared.Learner = control.Learner{Host: o, Redraw: x.learnt, Recount: diary.Count}
	x.shared.Finished = o.Store.Begun()
	x.shared.SetOutput()
	x.shared.Page.Theme(x.shared.Theme())
	x.trail = link.NewTrail(x.shared.Wall.ID())
	x.shared.Page.Link("", x.trail.At(), false)
	x.visit(o.Query)
}

// turn shows what the address says.
func (x *Session) turn() {
	x.controller = x.controllers.of(x.shared.Address.Screen)
	x.trail.Clear(x.shared.Address.Screen)
	x.shared.Nth = 0
	x.shared.Ear.Reset(x.shared.Outputs.Adjustment().Bass)
	x.controller.Prepare()
	x.shared.Stale = true
}

// Happened answers one event.
func (x *Session) Happened(e *host.Event) {
	switch e.Kind {
	case host.Used:
		x.shared.File = e.File
		x.act(e.Action, e.Value)
	case host.Tapped:
		if c, ok := x.controller.(control.Tapper); ok {
			c.Tap(&e.Tap)
		}
	case host.Visited:
		x.came(e.Value, e.Mark)
	case host.ExportFailed:
		x.shared.Unmade, x.shared.Stale = errors.New(e.Reason), true
	case host.Stored:
		x.shared.Stale = true
	case host.Told:
		x.told(e.Value)
	case host.Stopped:
		x.controller.Interrupt(e.Reason)
		x.shared.Stale = true
	case host.Running:
		x.shared.Stale = true
	}
}

// Tick moves on to what is heard at a performance time, in ms, and shows what changed.
func (x *Session) Tick(now float64) {
	if x.shared.Learner.Times == 0 && x.shared.Width != 0 { // the first screen is on the page
		x.shared.Learner.Read()
	}
	if x.controller.Tick(now) {
		x.shared.Stale = true
	}
	x.catchUp()
	if w := x.shared.Page.Width(); w != x.shared.Width {
		x.shared.Width, x.shared.Stale = w, true
	}
	x.keepStep()
	if on := x.shared.Page.Touch(); on != x.touch {
		x.touch, x.shared.Words, x.shared.Stale = on, x.shared.Words.ForTouch(on), true
	}
	if x.shared.Stale {
		x.shared.Stale = false
		s := x.screen()
		x.underWay = goesOn(&s)
		x.shared.Page.Show(s)
	}
}

// screen is what the page shows now.
func (x *Session) screen() view.Screen {
	if x.shared.Problems != nil {
		link := link.WrongLink{Problems: x.shared.Problems, Nearest: x.shared.Address}
		if c := x.shared.Cycle(); c != nil {
			link.Rhythm = c.Name
		}
		x.rest.Set(link.Head())
		return link.Screen(x.shared.Words)
	}
	s := x.controller.Screen()
	if x.practice != nil {
		s = x.practice.shown().On(s, x.shared.Words)
	}
	return x.shared.Store.Storage().On(s, x.shared.Words)
}

// Picture is what lives in a place on the page; nil where nothing does.
func (x *Session) Picture(place host.Place) *picture.Picture {
	if x.shared.Problems != nil {
		return x.rest.Draw(x.shared.Calm())
	}
	return x.controller.Draw(place.Picture)
}
