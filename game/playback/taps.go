package playback

import (
	"time"

	"groundbeat/audio/clock"
	"groundbeat/game/host"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// heardTap is a tap that the round took, with what was heard at it.
type heardTap struct {
	host.Tap
	position clock.Position
}

// Taps are those that a round took, in the order in which they came; their place
// here is the mark by which the round knows them.
type Taps struct {
	Number int // of the round on the page; taps carry it
	all    []heardTap
	Coarse bool // was any tap placed by a coarse clock?
}

// Renew begins another round.
func (s *Taps) Renew() {
	s.Number++
	s.all, s.Coarse = s.all[:0], false
}

// Take places a tap in the stream by the browser's own stamp, and hands it to the
// round if it was meant for it.
func (s *Taps) Take(p *Track, t *host.Tap, setup time.Duration, into func(t round.Tap, setup time.Duration) bool) {
	if t.Round != s.Number {
		return
	}
	at, position, why := p.Heard(t.At)
	if at < 0 || why != "" {
		return
	}
	if into(round.Tap{At: at, Mark: len(s.all)}, setup) {
		s.all = append(s.all, heardTap{*t, position})
		s.Coarse = s.Coarse || position.Coarse
	}
}

// Settled asks the clock once more for a tap of a round that is over: where readings
// are noisy, it has learnt meanwhile.
func (s *Taps) Settled(p *Track, t round.Tap) time.Duration {
	tap := &s.all[t.Mark]
	if again, ok := p.Settled(tap.At); ok {
		tap.position = again
	}
	return p.Span(tap.position)
}

// Recorded is a tap as it is kept, but for what it belongs to.
func (s *Taps) Recorded(t round.Tap) history.Tap {
	tap := &s.all[t.Mark]
	return history.Tap{
		At: tap.At, Frame: tap.position.Frame, By: tap.By,
		Reading: history.Reading{Context: tap.position.Reading.Context, Performance: tap.position.Reading.Performance},
	}
}
