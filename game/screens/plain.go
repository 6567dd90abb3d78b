// Package screens has a controller for each screen but Class: what is played and shown on
// it, and what becomes of what the player does. It is named after the screen.
//
// What rounds whose strokes are tapped have in common is a part of their controllers
// (tapped), and so are the two sides of a review (sides).
package screens

import (
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Tapped is the screen of a kind of round whose strokes are tapped and that has nothing
// else of its own, such as Dums.
type Tapped struct{ tapped tapped }

// NewTapped is the screen of a kind over what is shared.
func NewTapped(s *control.Shared, kind string) *Tapped { return &Tapped{newTapped(s, kind, plainly{})} }

// plainly deals its rounds.
type plainly struct{}

func (plainly) deal(q round.Setting) (*round.Round, error) { return round.New(q) }

func (plainly) replay(q round.Setting) (*round.Passage, error) {
	r, err := round.Riff(q.Rhythm, q.Level, q.Seed, 0, q.Hide)
	if err != nil {
		return nil, err
	}
	return round.NewPassage(q.BPM, q.Level, q.Seed, false,
		round.Section{Rhythm: q.Rhythm, Cycles: q.Rhythm.CyclesIn(q.Eights), Riff: r})
}

func (plainly) silent(time.Duration) bool    { return false }
func (plainly) note(*history.Round, *tapped) {}

func (x *Tapped) Screen() view.Screen {
	m := x.tapped.model()
	x.tapped.show(m.Head())
	return m.Screen(x.tapped.s.Words)
}

func (x *Tapped) Prepare()                       { x.tapped.prepare() }
func (x *Tapped) Act(action, value string)       { x.tapped.act(action, value) }
func (x *Tapped) Tap(t *host.Tap)                { x.tapped.tap(t) }
func (x *Tapped) Interrupt(why string)           { x.tapped.interrupt(why) }
func (x *Tapped) Tick(now float64) bool          { return x.tapped.tick(now) }
func (x *Tapped) Draw(p string) *picture.Picture { return x.tapped.draw(p) }
func (x *Tapped) Phase() view.Phase              { return x.tapped.phase() }
func (x *Tapped) GoOut()                         { x.tapped.leave() }
