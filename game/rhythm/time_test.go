package rhythm_test

import (
	"fmt"
	"math"
	"math/big"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestAt(t *testing.T) {
	tests := []struct {
		id        string
		step, bpm int
		want      time.Duration
	}{
		// 60 s / (96 · 2) = 312.5 ms a step.
		{"maqsum", 0, 96, 0},
		{"maqsum", 1, 96, 312_500 * time.Microsecond},
		{"maqsum", 8, 96, 2500 * time.Millisecond},
		{"maqsum", -1, 96, -312_500 * time.Microsecond},
		// 60 s / (110 · 2) = 272,727,272.72… ns: rounded from the whole, not added up.
		{"maqsum", 1, 110, 272_727_273},
		{"maqsum", 2, 110, 545_454_545},
		{"maqsum", 11, 110, 3 * time.Second},
		{"maqsum", 220_000_001, 110, 60_000_000*time.Second + 272_727_273},
		{"maqsum", -2, 110, -545_454_545},
		{"malfuf", 1, 120, 125 * time.Millisecond},
		{"masmudi-kabir", 16, 80, 6 * time.Second},
		{"karsilama", 9, 144, 3750 * time.Millisecond},
		// 60·10⁹ / (2¹⁶ · 2) = 457,763.671875 ns, 16 of it 7,324,218.75, 32 of it …437.5.
		{"maqsum", 1, 1 << 16, 457_764},
		{"maqsum", 32, 1 << 16, 14_648_438},   // half away from zero
		{"maqsum", -32, 1 << 16, -14_648_438}, // and alike before step 0
	}
	for _, tt := range tests {
		t.Run(fmt.Sprint(tt.id, tt.step, "at", tt.bpm), func(t *testing.T) {
			require.Equal(t, tt.want, shape(t, tt.id).At(tt.step, tt.bpm))
		})
	}
}

// At against exact fractions of any size.
func TestAtIsExact(t *testing.T) {
	random := rand.New(rand.NewPCG(1, 2))
	for id := range shapes {
		c := shape(t, id)
		for range 300 {
			bpm := 1 + random.IntN(500)
			step := random.IntN(1<<(1+random.IntN(28))) - 1000
			require.Equal(t, exactly(step, bpm*c.StepsPerBeat()), int64(c.At(step, bpm)), "%s step %d bpm %d", id, step, bpm)
		}
	}
}

// exactly rounds step·60·10⁹/rate half away from zero.
func exactly(step, rate int) int64 {
	exact := new(big.Rat).SetFrac(
		new(big.Int).Mul(big.NewInt(int64(step)), big.NewInt(60_000_000_000)), big.NewInt(int64(rate)))
	n, _ := new(big.Int).SetString(exact.FloatString(0), 10) // rounds half away from zero
	return n.Int64()
}

func TestAtLimits(t *testing.T) {
	c := shape(t, "maqsum")
	year := 365 * 24 * time.Hour
	require.Greater(t, c.At(292*365*24*60*2, 1), 291*year, "the product is above 64 bits")
	require.Panics(t, func() { c.At(293*365*24*60*2, 1) })
	require.Panics(t, func() { c.At(math.MaxInt, 1) })
	require.Panics(t, func() { c.At(math.MinInt, 400) })
	require.NotPanics(t, func() { c.At(1_000_000_000, 1_000_000) })
	for _, bpm := range []int{0, -1, 1_000_001, math.MaxInt} {
		require.Panics(t, func() { c.At(1, bpm) }, "%d beats a minute", bpm)
	}
}

func TestLength(t *testing.T) {
	require.Equal(t, 2500*time.Millisecond, shape(t, "maqsum").Length(96))
	require.Equal(t, time.Second, shape(t, "malfuf").Length(120))
	require.Equal(t, 5*time.Second, shape(t, "samai-thaqil").Length(120))
	require.Equal(t, 2_181_818_182*time.Nanosecond, shape(t, "maqsum").Length(110)) // 4 · 60/110 s
}
