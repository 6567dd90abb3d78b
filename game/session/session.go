// Package session is what is going on: the screen that is shown, the round that is
// played, and what came of it. It decides what happens next, and knows nothing of
// engine and browser.
//
// Words and controls are not here: a screen is made by package view and shown by the
// page.
package session

import (
	"groundbeat/game/host"
	"groundbeat/game/view"
)

// Session is what is going on.
type Session struct{ desk desk }

// New begins a session with the link that opened the page.
func New(o *host.Host) *Session {
	s := &Session{}
	s.desk.open(o)
	return s
}

// Happened answers one event.
func (s *Session) Happened(e *host.Event) { s.desk.happened(e) }

// Tick moves on to what is heard at a performance time, in ms, and shows what changed.
func (s *Session) Tick(now float64) { s.desk.tick(now) }

// Picture is what lives in a place on the page; nil where nothing does.
func (s *Session) Picture(place host.Place) *view.Picture { return s.desk.picture(place) }
