package session

import (
	"time"

	"groundbeat/audio/clock"
	"groundbeat/game/host"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// heardTap is a tap that the round took, with what was heard at it.
type heardTap struct {
	host.Tap
	position clock.Position
}

// taps are those that a round took, in the order in which they came; their place
// here is the mark by which the round knows them.
type taps struct {
	number int // of the round on the page; taps carry it
	all    []heardTap
	coarse bool // was any tap placed by a coarse clock?
}

// renew begins another round.
func (s *taps) renew() {
	s.number++
	s.all, s.coarse = s.all[:0], false
}

// take places a tap in the stream by the browser's own stamp, and hands it to the
// round if it was meant for it.
func (s *taps) take(p *player, t *host.Tap, setup time.Duration, into func(t round.Tap, setup time.Duration) bool) {
	if t.Round != s.number {
		return
	}
	at, position, why := p.heard(t.At)
	if at < 0 || why != "" {
		return
	}
	if into(round.Tap{At: at, Mark: len(s.all)}, setup) {
		s.all = append(s.all, heardTap{*t, position})
		s.coarse = s.coarse || position.Coarse
	}
}

// settled asks the clock once more for a tap of a round that is over: where readings
// are noisy, it has learnt meanwhile.
func (s *taps) settled(p *player, t round.Tap) time.Duration {
	tap := &s.all[t.Mark]
	if again, err := p.sound.Heard(tap.At); err == nil && again.Epoch == p.epoch {
		tap.position = again
	}
	return p.span(tap.position)
}

// recorded is a tap as it is kept, but for what it belongs to.
func (s *taps) recorded(t round.Tap) history.Tap {
	tap := &s.all[t.Mark]
	return history.Tap{
		At: tap.At, Frame: tap.position.Frame, By: tap.By,
		Reading: history.Reading{Context: tap.position.Reading.Context, Performance: tap.position.Reading.Performance},
	}
}

// placed adds the notes on how the taps of a round in review were placed.
func (d *desk) placed(notes []view.Note, s *taps) []view.Note {
	if s.coarse {
		notes = append(notes, view.NoteCoarse)
	}
	if d.outputs.Measured() == nil {
		notes = append(notes, view.NoteNoSetUp)
	}
	return notes
}
