package host

import (
	"groundbeat/audio"
	"groundbeat/audio/clock"
)

// Sound is the way to the loudspeaker.
type Sound interface {
	// Play cuts what was queued and begins a new epoch, in which frames from
	// base on, and none before, will be heard as soon as possible.
	Play(base int64)
	// Stop silences the sound within 30 ms.
	Stop()
	// Next is the next frame of the stream to be rendered.
	Next() int64
	// Schedule adds hits to the stream; see [audio.Stream].
	Schedule(hits ...audio.Hit) error
	// Drop forgets the hits from a frame on.
	Drop(from int64)
	// Heard tells which frame is heard at a performance time in ms.
	Heard(at float64) (clock.Position, error)
	// Whole reports whether the frames were placed without a gap.
	Whole(epoch int, from, to int64) bool
	// Balance sets the levels of the drums, 0 to 1.
	Balance(lead, bass float64)
	// Stage sets where the drums stand.
	Stage(s audio.Stage)
	// Volume sets the loudness, 0 to 1 of the full level.
	Volume(v float64)
	// Audible is false where there is no sound at all and rounds are played on
	// in pictures.
	Audible() bool
}
