package scoring

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"
)

// BenchmarkMatch1e6 matches 10⁶ strokes with 10⁶ taps: played well, and in the
// worst way, where every window holds a hundred thousand taps.
func BenchmarkMatch1e6(b *testing.B) {
	const n = 1_000_000
	for name, gap := range map[string]time.Duration{"played": 300 * time.Millisecond, "dense": time.Microsecond} {
		b.Run(name, func(b *testing.B) {
			r := rand.New(rand.NewPCG(1, 2))
			strokes, taps := make([]time.Duration, n), make([]time.Duration, n)
			for i := range n {
				strokes[i] = time.Duration(i) * gap
				taps[i] = strokes[i] + time.Duration(r.NormFloat64()*2e7)
			}
			slices.Sort(taps)
			b.ReportAllocs()
			for b.Loop() {
				Match(strokes, taps, Wide)
			}
		})
	}
}

// BenchmarkScoreRound scores a round as played: 24 dums, three of them left
// out and one tap added.
func BenchmarkScoreRound(b *testing.B) {
	strokes, taps := make([]time.Duration, 24), []time.Duration(nil)
	for i := range strokes {
		strokes[i] = time.Duration(i) * 625 * time.Millisecond
		if i%8 != 7 {
			taps = append(taps, strokes[i]+time.Duration(i%5)*10*time.Millisecond)
		}
	}
	taps = append(taps, time.Minute)
	b.ReportAllocs()
	for b.Loop() {
		Score(strokes, taps, 5*time.Millisecond, 50*millisecond)
	}
}
