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

// Dums is the screen Dums: a round whose low strokes are tapped.
type Dums struct{ tapped tapped }

// NewDums is the screen over what is shared.
func NewDums(s *control.Shared) *Dums { return &Dums{newTapped(s, plainly{})} }

// plainly deals the rounds of Dums.
type plainly struct{}

func (plainly) deal(q round.Question) (*round.Round, error) { return round.New(q) }

func (plainly) replay(q round.Question) (*round.Passage, error) {
	r, err := round.Riff(q.Rhythm, q.Level, q.Seed, 0, q.Hide)
	if err != nil {
		return nil, err
	}
	return round.NewPassage(q.BPM, q.Level, q.Seed, false,
		round.Section{Rhythm: q.Rhythm, Cycles: q.Rhythm.CyclesIn(q.Eights), Riff: r})
}

func (plainly) silent(time.Duration) bool    { return false }
func (plainly) note(*history.Round, *tapped) {}

func (x *Dums) Screen() view.Screen {
	m := x.tapped.model()
	x.tapped.show(m.Head())
	return m.Screen(x.tapped.s.Words)
}

func (x *Dums) Prepare()                       { x.tapped.prepare() }
func (x *Dums) Act(action, value string)       { x.tapped.act(action, value) }
func (x *Dums) Tap(t *host.Tap)                { x.tapped.tap(t) }
func (x *Dums) Interrupt(why string)           { x.tapped.interrupt(why) }
func (x *Dums) Tick(now float64) bool          { return x.tapped.tick(now) }
func (x *Dums) Draw(p string) *picture.Picture { return x.tapped.draw(p) }
func (x *Dums) Phase() view.Phase              { return x.tapped.phase() }
func (x *Dums) GoOut()                         { x.tapped.leave() }
