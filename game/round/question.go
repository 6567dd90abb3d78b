package round

import (
	"errors"
	"fmt"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// Bounds of a question. The tempo is in beats per minute of the rhythm's own
// beat; the length is in eights (eight counts of a dancer).
const (
	MinBPM, MaxBPM       = 40, 220
	MinEights, MaxEights = 1, 32
)

// Dums is the kind of round in which the player taps the low strokes.
const Dums = "dums"

// A Question says what is played and asked. The same question sounds the same
// for ever.
type Question struct {
	Kind   string        // what is asked: Dums
	Rhythm *rhythm.Cycle // what the bass drum holds
	BPM    int           // beats per minute, MinBPM to MaxBPM
	Eights int           // length, MinEights to MaxEights
	Level  riff.Level    // how much the lead drum ornaments
	Seed   uint64        // decides the riff and the small variation of strokes
}

// Check reports what is wrong with the question, or nil.
func (q Question) Check() error {
	switch {
	case q.Kind != Dums:
		return fmt.Errorf("round: unknown kind %q", q.Kind)
	case q.Rhythm == nil:
		return errors.New("round: no rhythm")
	case q.BPM < MinBPM || q.BPM > MaxBPM:
		return fmt.Errorf("round: %d beats a minute; allowed is %d to %d", q.BPM, MinBPM, MaxBPM)
	case q.Eights < MinEights || q.Eights > MaxEights:
		return fmt.Errorf("round: %d eights; allowed is %d to %d", q.Eights, MinEights, MaxEights)
	case !riff.Available(q.Level):
		return fmt.Errorf("round: riff level %v is not available", q.Level)
	}
	return nil
}
