package round

import (
	"errors"
	"fmt"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// ErrRecalled is of records that cannot be played once more.
var ErrRecalled = errors.New("round: this record cannot be played once more")

// Recalled is a round of kind carry, of the rhythm c, played once more from its record
// to its review. The error is ErrRecalled, wrapped, where the record is of another kind
// or rhythm, or of riffs that are no longer what they were.
func Recalled(h history.Round, c *rhythm.Cycle) (*Carried, error) {
	level, err := riff.ParseLevel(h.Riff)
	if err != nil || h.Rhythm != c.ID || h.RiffVersion != 0 && h.RiffVersion != riff.Version {
		return nil, fmt.Errorf("%w: %s, %s, riff %s", ErrRecalled, h.Kind, h.Rhythm, h.Riff)
	}
	r, err := NewCarried(Setting{Kind: h.Kind, Rhythm: c, BPM: h.BPM, Eights: h.Eights, Level: level, Seed: h.Seed})
	if err != nil || len(r.strokes) != len(h.Strokes) {
		return nil, fmt.Errorf("%w: %d dums", ErrRecalled, len(h.Strokes))
	}
	zero := seconds(h.Strokes[0]) - r.strokes[0]
	setup := time.Duration(h.Setup * float64(time.Millisecond))
	r.Begin()
	for _, t := range h.Taps {
		r.Tap(Tap{At: seconds(t.Frame/float64(h.Rate)) - zero}, setup)
	}
	r.Hear(r.End()+Grace+max(0, setup), setup)
	return r, nil
}

func seconds(s float64) time.Duration { return time.Duration(s * float64(time.Second)) }
