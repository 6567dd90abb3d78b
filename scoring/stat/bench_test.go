package stat

import (
	"math/rand/v2"
	"testing"
)

// BenchmarkTenThousandRounds measures 10,000 rounds of 16 dums together.
func BenchmarkTenThousandRounds(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	rounds := make([]Played, 10000)
	for i := range rounds {
		rounds[i], _ = tapper{bias: 5, day: 5, spread: 20, alike: .3}.round(r, 16)
	}
	b.ReportAllocs()
	for b.Loop() {
		OfRounds(rounds)
	}
}

// BenchmarkCarried splits clock and hand over twenty spells of two eights.
func BenchmarkCarried(b *testing.B) {
	r := rand.New(rand.NewPCG(1, 2))
	var spells []Spell
	for range 20 {
		spells = append(spells, keeper{spans: saidi, taps: 12, clock: 20, motor: 10}.spell(r))
	}
	b.ReportAllocs()
	for b.Loop() {
		Carried(spells)
	}
}
