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
			if len(c.values) < LeastSeries {
				return
			}
			require.Equal(t, m, Mean(c.values).Value)
			require.Equal(t, s, Spread(c.values).Value)
			e := Lag(c.values)
			require.Equal(t, r, e.Value)
			require.False(t, e.Excludes(r))
			require.Equal(t, c.lag > .2 || c.lag < -.3, e.Excludes(0), "%+v", e)
		})
	}
}

// TestSlopeNorris: NIST StRD linear regression, Norris (certified slope
// 1.00211681802045 and its standard deviation 4.29796848199937e-4;
// www.itl.nist.gov/div898/strd/lls/data/Norris.shtml), and t(34; 0.975) =
// 2.0322445 of the NIST/SEMATECH e-Handbook's table 1.3.6.7.2 (2.032).
func TestSlopeNorris(t *testing.T) {
	x := []float64{0.2, 337.4, 118.2, 884.6, 10.1, 226.5, 666.3, 996.3, 448.6, 777.0, 558.2, 0.4,
		0.6, 775.5, 666.9, 338.0, 447.5, 11.6, 556.0, 228.1, 995.8, 887.6, 120.2, 0.3,
		0.3, 556.8, 339.1, 887.2, 999.0, 779.0, 11.1, 118.3, 229.2, 669.1, 448.9, 0.5}
	y := []float64{0.1, 338.8, 118.1, 888.0, 9.2, 228.1, 668.5, 998.5, 449.1, 778.9, 559.2, 0.3,
		0.1, 778.1, 668.8, 339.3, 448.9, 10.8, 557.7, 228.3, 998.0, 888.8, 119.6, 0.3,
		0.6, 557.6, 339.3, 888.0, 998.5, 778.9, 10.2, 117.6, 228.9, 668.4, 449.2, 0.2}
	// Places two apart make no neighbours: nothing is widened.
	apart := make([]int, len(x))
	for i := range apart {
		apart[i] = 2 * i
	}
	e := slope(x, y, apart)
	require.InDelta(t, 1.00211681802045, e.Value, 1e-13)
	require.InEpsilon(t, 4.29796848199937e-4*2.0322445, (e.High-e.Low)/2, 1e-6)
	require.Equal(t, 36, e.N)
	// In the order of the file errors of one sign follow one another.
	series := Slope(x, y)
	require.Equal(t, e.Value, series.Value)
	require.Greater(t, series.High, e.High)
}
