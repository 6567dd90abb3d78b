package audio

import (
	"cmp"
	"errors"
	"fmt"
)

// A Voice is one kind of stroke on one of the two drums.
type Voice uint8

// The voices. The lead drum's sound on the left channel, the others on the
// right.
const (
	LeadDum     Voice = iota // low open stroke of the darbuka
	LeadTek                  // high rim stroke, strong hand
	LeadKa                   // high rim stroke, other hand: softer, duller
	LeadSak                  // slap: hand stays on the head
	LeadRollTek              // one finger of a roll, strong hand: see [Roll]
	LeadRollKa               // one finger of a roll, other hand
	BassDum                  // low open stroke of the dohola
	BassTek                  // high rim stroke of the dohola

	voices // how many there are
)

var voiceNames = [voices]string{"lead dum", "lead tek", "lead ka", "lead sak", "lead roll tek", "lead roll ka", "bass dum", "bass tek"}

// String returns the name of the voice, such as "lead dum".
func (v Voice) String() string {
	if v >= voices {
		return fmt.Sprintf("voice %d", uint8(v))
	}
	return voiceNames[v]
}

// A Hit is one stroke to be played.
type Hit struct {
	Frame    int64   // frame of the stream at which the hand meets the skin
	Voice    Voice   // what is struck, and how
	Strength float32 // above 0, up to 1: a firm stroke
	Seed     uint64  // small variation; the same seed sounds the same
}

// Why a hit is refused. They are wrapped in a [*HitError].
var (
	ErrPast     = errors.New("the frame has been read already")
	ErrVoice    = errors.New("unknown voice")
	ErrStrength = errors.New("the strength is not above 0 and up to 1")
)

// A HitError reports a hit that cannot be scheduled.
type HitError struct {
	Hit Hit
	Err error // ErrPast, ErrVoice or ErrStrength
}

// Error names the hit's frame, its voice and the reason.
func (e *HitError) Error() string {
	return fmt.Sprintf("audio: hit at frame %d (%v, strength %v): %v", e.Hit.Frame, e.Hit.Voice, e.Hit.Strength, e.Err)
}

// Unwrap returns the reason.
func (e *HitError) Unwrap() error { return e.Err }

// check reports why the hit cannot be played by a stream whose next frame
// is next.
func (h Hit) check(next int64) error {
	switch {
	case h.Frame < next:
		return &HitError{h, ErrPast}
	case h.Voice >= voices:
		return &HitError{h, ErrVoice}
	case !(h.Strength > 0 && h.Strength <= 1): // false for NaN too
		return &HitError{h, ErrStrength}
	}
	return nil
}

// compareHits orders hits by frame; hits of one frame by their other fields,
// so that the order in which they were scheduled cannot be heard.
func compareHits(a, b Hit) int {
	return cmp.Or(
		cmp.Compare(a.Frame, b.Frame),
		cmp.Compare(a.Voice, b.Voice),
		cmp.Compare(a.Seed, b.Seed),
		cmp.Compare(a.Strength, b.Strength),
	)
}
