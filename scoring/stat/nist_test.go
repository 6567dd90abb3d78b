package stat

import (
	"bufio"
	"os"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// certified is one of the Statistical Reference Datasets of the National
// Institute of Standards and Technology.
type certified struct {
	name               string
	mean, sd, lag, off float64 // off is the tolerance of lag
	values             []float64
}

func readNIST(t *testing.T) []certified {
	t.Helper()
	f, err := os.Open("testdata/nist.txt")
	require.NoError(t, err)
	defer f.Close()
	numbers := func(words []string) []float64 {
		x := make([]float64, len(words))
		for i, w := range words {
			x[i], err = strconv.ParseFloat(w, 64)
			require.NoError(t, err)
		}
		return x
	}
	var all []certified
	for s := bufio.NewScanner(f); s.Scan(); {
		words := strings.Fields(s.Text())
		switch {
		case words[0] == "#":
		case len(words) == 4:
			n := numbers(words[1:])
			all = append(all, certified{name: words[0], mean: n[0], sd: n[1], lag: n[2], off: 1e-12})
		default:
			all[len(all)-1].values = numbers(words)
		}
	}
	return all
}

// numAcc are the sets that show lost digits: event times in ms since a page was
// opened look like the last.
func numAcc() []certified {
	alternating := func(first, a, b float64) []float64 {
		x := []float64{first}
		for range 500 {
			x = append(x, a, b)
		}
		return x
	}
	return []certified{
		{"NumAcc1", 10000002, 1, -.5, 1e-15, []float64{10000001, 10000003, 10000002}},
		{"NumAcc2", 1.2, .1, -.999, 1e-13, alternating(1.2, 1.1, 1.3)},
		{"NumAcc3", 1000000.2, .1, -.999, 1e-8, alternating(1000000.2, 1000000.1, 1000000.3)},
		{"NumAcc4", 10000000.2, .1, -.999, 1e-7, alternating(10000000.2, 10000000.1, 10000000.3)},
	}
}

// TestNIST: certified mean, standard deviation and autocorrelation at lag 1.
func TestNIST(t *testing.T) {
	sizes := map[string]int{"Lew": 200, "Lottery": 218, "Mavro": 50, "Michelso": 100, "NumAcc1": 3, "NumAcc2": 1001, "NumAcc3": 1001, "NumAcc4": 1001}
	for _, c := range append(readNIST(t), numAcc()...) {
		t.Run(c.name, func(t *testing.T) {
			require.Len(t, c.values, sizes[c.name])
			m, s := meanDeviation(c.values)
			require.InEpsilon(t, c.mean, m, 1e-14)
			require.InEpsilon(t, c.sd, s, max(1e-12, c.off))
			r, ok := correlation(deviations(c.values, m), nil)
			require.True(t, ok)
			require.InDelta(t, c.lag, r, c.off)
			if len(c.values) >= LeastTaps {
				require.Equal(t, m, mean(c.values, nil).Value)
				require.Equal(t, s, Spread(c.values).Value)
			}
		})
	}
}
