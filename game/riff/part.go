package riff

import "groundbeat/game/rhythm"

// A Part is what the two drums play: their strokes, each drum's in the order of
// time, never two of one drum at one tick.
type Part struct {
	Lead []Stroke
	Bass []Stroke
	Open []Span // in order, apart from each other; usually none
}

// A Span is a run of steps, half open, counted as [Stroke.Step]: a declared break
// or roll. Both drums follow it, the bass drum leaves the base, and no stroke
// inside it is ever scored.
type Span struct {
	From, To int
	Kind     Kind
}

// A Kind is what happens in a [Span].
type Kind uint8

// The kinds.
const (
	Break Kind = iota // accents of both drums, the last of them the stop; then silence
	Roll              // a roll of the lead drum from one stroke of both
)

// String returns "break" or "roll".
func (k Kind) String() string { return [...]string{"break", "roll"}[k] }

// Contains reports whether a step lies in the span.
func (s Span) Contains(step int) bool { return s.From <= step && step < s.To }

// Base are the strokes of the bass drum that lie outside the open spans: the
// rhythm itself, all that may be asked for.
func (p Part) Base() []Stroke {
	var base []Stroke
	spans := p.Open
	for _, s := range p.Bass {
		for len(spans) > 0 && spans[0].To <= s.Step {
			spans = spans[1:]
		}
		if len(spans) == 0 || !spans[0].Contains(s.Step) {
			base = append(base, s)
		}
	}
	return base
}

// A Stroke is one sounding stroke of one drum, or one roll.
type Stroke struct {
	Step     int           // from the start of the part, counted through its cycles; from 0
	Sub      int           // ticks after the step, from 0 to TicksPerStep−1; 0 at level Bare
	Sound    rhythm.Stroke // never a rest; a roll is a tek
	Strength float64       // above 0, to 1 for the firmest; of a roll, where it begins
	Roll     int           // of the lead drum only: for how many ticks it rolls; 0: it strikes once
	Swell    float64       // of a roll: how firm it has become at its end, above 0, to 1; else 0
}

// tick is the stroke's place in ticks from step 0.
func (s Stroke) tick() int { return s.Step*TicksPerStep + s.Sub }

// End returns the place where a roll ends, as a stroke; that of a single stroke
// is the stroke's own.
func (s Stroke) End() Stroke {
	end := s.tick() + s.Roll
	s.Step, s.Sub, s.Roll = end/TicksPerStep, end%TicksPerStep, 0
	return s
}
