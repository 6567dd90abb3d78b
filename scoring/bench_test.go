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
	for _, c := range []struct {
		name        string
		gap, spread time.Duration
		w           Window
	}{
		{"capped", 300 * time.Millisecond, 20 * time.Millisecond, Window{Near, true}},
		{"free", 300 * time.Millisecond, 20 * time.Millisecond, Window{Wide, false}},
		{"busy", 60 * time.Millisecond, 60 * time.Millisecond, Window{Wide, false}},
		{"dense", time.Microsecond, 60 * time.Millisecond, Window{Near, false}},
	} {
		b.Run(c.name, func(b *testing.B) {
			r := rand.New(rand.NewPCG(1, 2))
			strokes, taps := make([]time.Duration, n), make([]time.Duration, n)
			for i := range n {
				strokes[i] = time.Duration(i) * c.gap
				taps[i] = strokes[i] + time.Duration(r.NormFloat64()*float64(c.spread))
			}
			slices.Sort(taps)
			b.ReportAllocs()
			for b.Loop() {
				Match(strokes, taps, c.w)
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
		Score(strokes, taps, 5*time.Millisecond, Window{Near, true})
	}
}
