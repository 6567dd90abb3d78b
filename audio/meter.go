package audio

import (
	"fmt"
	"math"
)

const (
	gateSteps    = 4     // a gating block is 4 steps of 100 ms long
	absoluteGate = -70.0 // LUFS
	relativeGate = -10.0 // LU below the loudness of what passes the first gate
)

// A Meter measures how loud a programme of two channels is and how high it
// peaks, after ITU-R BS.1770-4 (2015): K-weighted power in blocks of 400 ms
// that overlap by three quarters, an absolute gate at −70 LUFS and a relative
// one at −10 LU; true peak by the four-fold oversampling of its annex 2.
//
// Both channels weigh alike, as left and right do; there are no surrounds.
// The loudness of less than 400 ms is not defined.
type Meter struct {
	step     int // frames of 100 ms
	channels [channels]struct {
		weight [2]section
		peak   truePeak
	}
	frames int                // of the step under way
	sum    float64            // its power so far, both channels
	steps  [gateSteps]float64 // the last steps' powers, in turn
	count  int                // steps so far
	blocks []float64          // mean power of each block
}

// NewMeter returns a meter that has heard nothing. It panics if the rate is
// not between 8000 and 192000 frames per second.
func NewMeter(rate SampleRate) *Meter {
	if rate < 8000 || rate > 192000 {
		panic(fmt.Sprintf("audio: sample rate %d is not between 8000 and 192000", rate))
	}
	m := &Meter{step: int(rate+5) / 10}
	for i := range m.channels {
		m.channels[i].weight = kWeighting(rate)
	}
	return m
}

// Add measures frames of two samples each, left first; full scale is 1. It
// may be called again with what follows. Half a frame at the end is left out.
func (m *Meter) Add(frames []float32) {
	for ; len(frames) >= channels; frames = frames[channels:] {
		for i := range m.channels {
			c := &m.channels[i]
			x := float64(frames[i])
			c.peak.add(x)
			y := c.weight[1].next(c.weight[0].next(x))
			m.sum += y * y
		}
		if m.frames++; m.frames == m.step {
			m.endStep()
		}
	}
}

// endStep closes a step and the block that ends with it.
func (m *Meter) endStep() {
	m.steps[m.count%gateSteps] = m.sum
	m.frames, m.sum = 0, 0
	if m.count++; m.count < gateSteps {
		return
	}
	var sum float64
	for _, s := range m.steps {
		sum += s
	}
	m.blocks = append(m.blocks, sum/float64(gateSteps*m.step))
}

// Loudness returns the loudness of all that was added, in LUFS (1 LU is
// 1 dB): −∞ if no block of it passes the gates, as in silence.
func (m *Meter) Loudness() float64 {
	over := func(gate float64) float64 {
		var sum, n float64
		for _, p := range m.blocks {
			if lufs(p) > gate {
				sum += p
				n++
			}
		}
		return lufs(sum / max(n, 1))
	}
	return over(max(absoluteGate, over(absoluteGate)+relativeGate))
}

// lufs returns the loudness of a K-weighted mean power.
func lufs(power float64) float64 { return -0.691 + 10*math.Log10(power) }

// Peak returns the true peak of all that was added, in dBTP: decibels of full
// scale, above 0 where a converter would clip; −∞ in silence. The filter of
// the recommendation reads up to 0.5 dB low at its worst, for tones near half
// the sample rate, and rises about 0.15 dB above the truth in others.
func (m *Meter) Peak() float64 {
	var peak float64
	for i := range m.channels {
		peak = max(peak, m.channels[i].peak.greatest)
	}
	return 20 * math.Log10(peak)
}
