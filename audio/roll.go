package audio

import "math"

// rollDensity is how many strokes a roll has in a second if nobody says: what
// two hands play with ease (from memory, no source).
const rollDensity = 16

// A Roll is a roll of the lead drum: teks and kas in turn, too fast to count.
// It is one stroke of the player's and many hits of the stream: expand it
// with Hits and schedule those.
type Roll struct {
	Frame   int64   // of its first stroke, which is exact
	Length  int64   // frames from its first stroke to what follows it
	Strokes int     // how many, evenly; 0: as many as two hands play with ease
	From    float32 // strength of its first stroke, above 0, up to 1
	To      float32 // strength at its end; less than From: it fades
	Seed    uint64  // small variation; the same seed sounds the same
}

// Hits returns the strokes of the roll at a rate, the first a tek. Each time
// is calculated from the stroke's number; all but the first then stray by up
// to a twentieth of the interval either way, as hands do, and stay in order.
// None lies at or after the end. A roll that is too short for a stroke has
// none. Strengths are passed on as they are: Schedule refuses the wrong ones.
func (r Roll) Hits(rate SampleRate) []Hit {
	n := r.count(rate)
	hits := make([]Hit, n)
	rng := random(r.Seed)
	for i := range hits {
		part := float64(i) / float64(n)
		at := part
		if i > 0 {
			at += 0.05 * rng.signed() / float64(n)
		}
		hits[i] = Hit{
			Frame:    r.Frame + int64(math.Round(at*float64(r.Length))),
			Voice:    [2]Voice{LeadRollTek, LeadRollKa}[i%2],
			Strength: r.From + float32(part)*(r.To-r.From),
			Seed:     rng.next(),
		}
	}
	return hits
}

// count returns how many strokes the roll has: left to itself an even number,
// so that the strong hand is free for what follows.
func (r Roll) count(rate SampleRate) int {
	switch {
	case r.Length <= 0:
		return 0
	case r.Strokes > 0:
		return int(min(int64(r.Strokes), r.Length))
	}
	seconds := float64(r.Length) / float64(rate)
	return 2 * int(math.Round(seconds*rollDensity/2))
}
