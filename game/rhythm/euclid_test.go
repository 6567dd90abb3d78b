package rhythm_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// euclid spreads onsets over pulses as evenly as can be, by Bjorklund's
// algorithm. It pairs at least once: with a plain while-loop E(2,3) comes out as
// xx. instead of the x.x that is printed.
func euclid(onsets, pulses int) string {
	heads := strings.Split(strings.TrimSuffix(strings.Repeat("x,", onsets), ","), ",")
	tails := strings.Split(strings.Repeat(".,", pulses-onsets), ",")[:pulses-onsets]
	for first := true; first || len(tails) > 1; first = false {
		pairs := min(len(heads), len(tails))
		rest := append(heads[pairs:len(heads):len(heads)], tails[pairs:]...)
		for i := range pairs {
			heads[i] += tails[i]
		}
		heads, tails = heads[:pairs], rest
	}
	return strings.Join(heads, "") + strings.Join(tails, "")
}

// The strings printed by Toussaint 2005, The Euclidean algorithm generates
// traditional musical rhythms, BRIDGES. Many transcriptions print E(5,16) with 17
// pulses; its intervals 3-3-3-3-4 sum to 16.
func TestEuclid(t *testing.T) {
	tests := []struct {
		onsets, pulses int
		want           string
	}{
		{2, 3, "x.x"}, {2, 5, "x.x.."}, {3, 4, "x.xx"}, {3, 5, "x.x.x"}, {3, 7, "x.x.x.."}, {3, 8, "x..x..x."},
		{4, 7, "x.x.x.x"}, {4, 9, "x.x.x.x.."}, {4, 11, "x..x..x..x."}, {4, 12, "x..x..x..x.."}, {4, 16, "x...x...x...x..."},
		{5, 6, "x.xxxx"}, {5, 7, "x.xx.xx"}, {5, 8, "x.xx.xx."}, {5, 9, "x.x.x.x.x"}, {5, 11, "x.x.x.x.x.."},
		{5, 12, "x..x.x..x.x."}, {5, 13, "x..x.x..x.x.."}, {5, 16, "x..x..x..x..x..."},
		{7, 8, "x.xxxxxx"}, {7, 12, "x.xx.x.xx.x."}, {7, 16, "x..x.x.x..x.x.x."}, {9, 16, "x.xx.x.x.xx.x.x."},
		{11, 24, "x..x.x.x.x.x..x.x.x.x.x."}, {13, 24, "x.xx.x.x.x.x.xx.x.x.x.x."},
	}
	for _, tt := range tests {
		require.Equal(t, tt.want, euclid(tt.onsets, tt.pulses), "E(%d,%d)", tt.onsets, tt.pulses)
	}
}

// What the same paper says of the bembé and the bossa nova, and of supplied rhythms.
func TestEuclidRotated(t *testing.T) {
	rotated := func(s string, left int) string { return s[left:] + s[:left] }
	require.Equal(t, "x.x.xx.x.x.x", rotated(euclid(7, 12), 3), "bembé")
	require.Equal(t, "x..x..x...x..x..", rotated(euclid(5, 16), 6), "bossa nova")

	onsets := func(id string) string {
		var b strings.Builder
		for _, s := range get(t, id).Skeleton {
			b.WriteString(map[bool]string{true: "x", false: "."}[s.Sounds()])
		}
		return b.String()
	}
	require.Equal(t, euclid(3, 8), onsets("malfuf"), "3 of 8, the tresillo")
	require.Equal(t, euclid(5, 7), onsets("nawakht"), "named nawakhat in the paper")
}
