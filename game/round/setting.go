package round

import (
	"errors"
	"fmt"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// Bounds of a setting. The tempo is in beats per minute of the rhythm's own
// beat; the length is in eights (eight counts of a dancer).
const (
	MinBPM, MaxBPM       = 40, 220
	MinEights, MaxEights = 1, 32
	MaxHide              = 100
)

// A Setting says what is played and asked. The same setting sounds the same
// for ever.
type Setting struct {
	Kind   string        // what is asked: Dums, Stops or Carries
	Rhythm *rhythm.Cycle // what the bass drum holds
	BPM    int           // beats per minute, MinBPM to MaxBPM
	Eights int           // length, MinEights to MaxEights
	Level  riff.Level    // how much the lead drum ornaments
	Hide   int           // how far the riff hides the base, to MaxHide, as predicted; 0: as it comes
	Seed   uint64        // decides the riff and the small variation of strokes
}

// Check reports what is wrong with the setting, or nil.
func (q Setting) Check() error {
	k, known := kindOf(q.Kind)
	switch {
	case !known:
		return fmt.Errorf("round: unknown kind %q", q.Kind)
	case q.Rhythm == nil:
		return errors.New("round: no rhythm")
	case q.BPM < MinBPM || q.BPM > MaxBPM:
		return fmt.Errorf("round: %d beats a minute; allowed is %d to %d", q.BPM, MinBPM, MaxBPM)
	case k.check(q.Eights) != nil:
		return k.check(q.Eights)
	case q.Hide < 0 || q.Hide > MaxHide:
		return fmt.Errorf("round: hide %d; allowed is 0 to %d", q.Hide, MaxHide)
	case !riff.Available(q.Level):
		return fmt.Errorf("round: riff level %v is not available", q.Level)
	}
	return nil
}

// passage is what a setting of a kind sounds like before its own is done to it, with
// a count-in or without one; or what is wrong with it.
func (q Setting) passage(kind string, countIn bool) (*Passage, error) {
	if q.Kind != kind {
		return nil, fmt.Errorf("round: kind %q; these are of kind %q", q.Kind, kind)
	}
	if err := q.Check(); err != nil {
		return nil, err
	}
	return NewPassage(q.BPM, q.Level, q.Seed, countIn, eightsOf(q.Rhythm, 0, q.Eights))
}
