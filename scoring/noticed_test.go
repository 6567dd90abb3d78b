package scoring

import (
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func TestNoticed(t *testing.T) {
	const s = time.Second
	for _, c := range []struct {
		what    string
		presses []time.Duration
		noticed bool
	}{
		{"no press", nil, false},
		{"a patient listener, at once", []time.Duration{300 * time.Millisecond}, true},
		{"at the very stroke", []time.Duration{0}, true},
		{"a patient listener, late", []time.Duration{9 * s}, true},
		{"one false alarm, then heard", []time.Duration{-6 * s, 1200 * time.Millisecond}, true},
		{"as far before as after", []time.Duration{-s, s}, true},
		{"one press just before, one later", []time.Duration{-s, s + 1}, false},
		{"two false alarms", []time.Duration{-6 * s, -5 * s, 300 * time.Millisecond}, false},
	} {
		require.Equal(t, c.noticed, Noticed(c.presses), c.what)
	}
}

// pressesOf are the presses from the start of a round up to the first one at or after a
// time, as times from it; none if that comes after the end. The first comes after a part
// of a gap, 0 to 1; next returns each gap.
func pressesOf(first float64, differs, end time.Duration, next func() time.Duration) []time.Duration {
	var all []time.Duration
	for at := time.Duration(first * float64(next())); at < end; at += next() {
		all = append(all, at-differs)
		if at >= differs {
			return all
		}
	}
	return nil
}

// hits is in how much of 4,000 rounds of so many eights, each of 4.8 s (100 counts a
// minute), a change is taken to be noticed by presses with gaps of a mean. It comes
// after a quarter of the eights, rounded up, at the earliest, two before the end at the
// latest, and half a second later it can be heard.
func hits(r *rand.Rand, eights int, gap time.Duration, evenly bool) float64 {
	const eight, rounds = 4800 * time.Millisecond, 4000
	n, earliest := 0, (eights+3)/4
	for range rounds {
		at := earliest + r.IntN(eights-2-earliest+1)
		next, first := func() time.Duration { return gap }, r.Float64()
		if !evenly {
			next, first = func() time.Duration { return time.Duration(r.ExpFloat64() * float64(gap)) }, 1
		}
		if Noticed(pressesOf(first, time.Duration(at)*eight+eight/10, time.Duration(eights)*eight, next)) {
			n++
		}
	}
	return float64(n) / rounds
}

// Whoever presses without listening is taken to have noticed a change in half of the
// rounds at the most, however often she presses: in 6 of 10 of the shortest. Who presses
// every 0.9 s, as fast as that or faster, never is; three standard errors of 4,000
// rounds are 0.024.
func TestPressingWithoutListening(t *testing.T) {
	r := rand.New(rand.NewPCG(9, 9))
	for _, eights := range []int{4, 6, 8} {
		most, often := .5, 0.
		if eights == 4 {
			most = .6
		}
		for gap := 300 * time.Millisecond; gap < 80*time.Second; gap += gap / 5 {
			for _, evenly := range []bool{true, false} {
				got := hits(r, eights, gap, evenly)
				require.LessOrEqual(t, got, most+.024, "%d eights, every %v, evenly: %t", eights, gap, evenly)
				often = max(often, got)
			}
		}
		t.Logf("%d eights: pressing without listening hits in %.2f of the rounds at the most", eights, often)
		for _, gap := range []time.Duration{150, 450, 900} {
			require.Zero(t, hits(r, eights, gap*time.Millisecond, true))
		}
	}
}
