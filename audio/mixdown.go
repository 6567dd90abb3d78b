package audio

import (
	"encoding/binary"
	"fmt"
	"math"
)

// A Stage is where the two drums stand between the left and the right ear.
type Stage uint8

// The stages.
const (
	Centre Stage = iota // both drums in both ears alike: safe in mono
	Spread              // the lead drum somewhat right, the bass drum somewhat left
	Apart               // the lead drum left, the bass drum right, each alone

	stages // how many there are
)

var stageNames = [stages]string{"centre", "spread", "apart"}

// String returns the name of the stage, such as "centre".
func (s Stage) String() string {
	if s >= stages {
		return fmt.Sprintf("stage %d", uint8(s))
	}
	return stageNames[s]
}

// pans are the gains of each stage: lead left, lead right, bass left, bass
// right. The squares of a drum's two gains add up to 1 within 0.1 dB, so that
// it stays as loud wherever it stands.
var pans = [stages][4]float64{
	Centre: {0.71, 0.71, 0.71, 0.71},
	Spread: {0.83, 0.56, 0.56, 0.83},
	Apart:  {1, 0, 0, 1},
}

// A Mix says how loud each drum is heard, and where. Gains are factors: 1
// leaves a drum as it is, 0 silences it. The zero Mix is silent.
type Mix struct {
	Lead, Bass float64
	Stage      Stage
	Volume     float64 // of both
}

// Full is both drums as they are, at the centre.
func Full() Mix { return Mix{Lead: 1, Bass: 1, Volume: 1} }

// Apply turns frames of the two drums, lead and bass, into frames of the two
// ears, left and right, in place. Half a frame at the end is left alone. It
// panics if the stage is unknown.
func (m Mix) Apply(frames []float32) {
	pan := pans[m.Stage]
	lead, bass := m.Lead*m.Volume, m.Bass*m.Volume
	for ; len(frames) >= channels; frames = frames[channels:] {
		l, b := lead*float64(frames[0]), bass*float64(frames[1])
		frames[0] = float32(float64(l*pan[0]) + float64(b*pan[2]))
		frames[1] = float32(float64(l*pan[1]) + float64(b*pan[3]))
	}
}

// Render returns the first frames of a stream of its own that plays the hits:
// two values for each frame, lead and bass. Hits after the last frame are not
// heard; what still rings is cut. The error is a [*HitError] for a hit that
// cannot be played. It panics if frames is negative, or for a rate for which
// NewStream does.
func Render(rate SampleRate, frames int64, hits ...Hit) ([]float32, error) {
	s := NewStream(rate)
	if err := s.Schedule(hits...); err != nil {
		return nil, err
	}
	out := make([]float32, channels*frames)
	p := make([]byte, 1024*frameSize)
	for rest := out; len(rest) > 0; {
		n, err := s.Read(p[:min(len(p), 4*len(rest))])
		if err != nil {
			return nil, err
		}
		for i := range n / 4 {
			rest[i] = math.Float32frombits(binary.LittleEndian.Uint32(p[4*i:]))
		}
		rest = rest[n/4:]
	}
	return out, nil
}
