package scoring

import (
	"bufio"
	"math"
	"os"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// secs turns seconds into durations, rounded to the nanosecond.
func secs(s ...float64) []time.Duration {
	out := make([]time.Duration, len(s))
	for i, v := range s {
		out[i] = time.Duration(math.Round(v * 1e9))
	}
	return out
}

// offsets lists the offsets of pairs.
func offsets(pairs []Pair) []time.Duration {
	out := make([]time.Duration, len(pairs))
	for i, p := range pairs {
		out[i] = p.Offset
	}
	return out
}

// TestMirEvalOnsets: mir_eval, tests/data/onset, output00/02/03/05.json,
// window 50 ms (Raffel et al., mir_eval: a transparent implementation of
// common MIR metrics, ISMIR 2014).
func TestMirEvalOnsets(t *testing.T) {
	lists := readFixtures(t)
	for _, c := range []struct {
		name              string
		ref, est, matched int
		precise, recall   float64
	}{
		{"00", 22, 27, 13, .48148148148148145, .5909090909090909},
		{"02", 55, 36, 8, .2222222222222222, .14545454545454545},
		{"03", 15, 25, 10, .4, .6666666666666666},
		// Offsets of 49.3, 61.4, 63.0 and 50.5 ms.
		{"05", 4, 5, 1, .2, .25},
	} {
		t.Run(c.name, func(t *testing.T) {
			ref, est := lists[c.name+" ref"], lists[c.name+" est"]
			require.Len(t, ref, c.ref)
			require.Len(t, est, c.est)
			m := Match(ref, est, 50*millisecond)
			checkWhole(t, ref, est, 50*millisecond, m)
			require.Len(t, m.Pairs, c.matched)
			require.InDelta(t, c.precise, float64(len(m.Pairs))/float64(len(est)), 1e-15)
			require.InDelta(t, c.recall, float64(len(m.Pairs))/float64(len(ref)), 1e-15)
		})
	}
	require.Equal(t, []time.Duration{49342404}, offsets(Match(lists["05 ref"], lists["05 est"], 50*millisecond).Pairs))
}

func readFixtures(t *testing.T) map[string][]time.Duration {
	file, err := os.Open("testdata/mir_eval_onsets.txt")
	require.NoError(t, err)
	defer file.Close()
	lists := map[string][]time.Duration{}
	for s := bufio.NewScanner(file); s.Scan(); {
		if strings.HasPrefix(s.Text(), "#") {
			continue
		}
		words := strings.Fields(s.Text())
		for _, w := range words[2:] {
			v, err := strconv.ParseFloat(w, 64)
			require.NoError(t, err)
			lists[words[0]+" "+words[1]] = append(lists[words[0]+" "+words[1]], secs(v)...)
		}
	}
	return lists
}

// TestMadmomOnsets: madmom (BSD-2), tests/test_evaluation_onsets.py.
func TestMadmomOnsets(t *testing.T) {
	ann := secs(1, 1.02, 1.5, 2.0, 2.03, 2.05, 2.5, 3)
	det := secs(0.99999999, 1.02999999, 1.45, 2.01, 2.02, 2.5, 3.025000001)
	for _, c := range []struct {
		within     time.Duration
		tp, fp, fn int
	}{
		{10 * time.Millisecond, 5, 2, 3},
		{25 * time.Millisecond, 5, 2, 3},
		{40 * time.Millisecond, 6, 1, 2}, // re-use of a tap would find 7 strokes
	} {
		m := Match(ann, det, c.within)
		require.Len(t, m.Pairs, c.tp, c.within)
		require.Len(t, m.Added, c.fp, c.within)
		require.Len(t, m.Out, c.fn, c.within)
	}
	m := Match(ann, det, 10*time.Millisecond)
	require.Equal(t, []time.Duration{-10, 9999990, 1e7, -1e7, 0}, offsets(m.Pairs))
	require.Equal(t, []int{2, 6}, m.Added)
	require.Equal(t, []int{2, 5, 7}, m.Out)
}

// TestMadmomBeats: madmom (BSD-2), tests/test_evaluation_beats.py,
// TestCemgilFunction.
func TestMadmomBeats(t *testing.T) {
	ann := secs(1, 2, 3, 4, 5, 6, 7, 8, 9, 10)
	det := secs(1.01, 2, 2.95, 4, 6, 7, 8, 9.1, 10, 11)
	const want = 0.74710035298713695
	r := Score(ann, det, 0, Wide)
	require.InDelta(t, want, r.Accuracy, 1e-15)
	require.Equal(t, []int{4}, r.Out)
	require.Equal(t, []int{9}, r.Added)
	require.InDelta(t, want, nearestTap(ann, det), 1e-15, "mir_eval's rule coincides")
	require.InDelta(t, want, nearestTap(det, ann), 1e-15, "madmom's rule coincides")
	require.Equal(t, 1., Score(nil, nil, 0, Wide).Accuracy)
	require.Equal(t, 0., Score(ann, nil, 0, Wide).Accuracy)
	require.Equal(t, 0., Score(nil, det, 0, Wide).Accuracy)
}

// nearestTap is the accuracy that is not one to one: of each of a, to the
// nearest of b, however far (mir_eval.beat.cemgil, without its variations).
func nearestTap(a, b []time.Duration) (sum float64) {
	for _, s := range a {
		near := math.Inf(1)
		for _, p := range b {
			near = min(near, (p-s).Abs().Seconds()/Sigma.Seconds())
		}
		sum += math.Exp(-near * near / 2)
	}
	return sum / (float64(len(a)+len(b)) / 2)
}

// TestAccuracyDiffers shows where one-to-one matching parts from both rules:
// worked by hand.
func TestAccuracyDiffers(t *testing.T) {
	one, two := secs(1), secs(1, 1)
	require.InDelta(t, 2./3, Score(one, two, 0, Wide).Accuracy, 1e-15)
	require.InDelta(t, 2./3, Score(two, one, 0, Wide).Accuracy, 1e-15)
	require.InDelta(t, 2./3, nearestTap(one, two), 1e-15, "mir_eval: a tap added costs")
	require.InDelta(t, 4./3, nearestTap(two, one), 1e-15, "mir_eval: one tap serves two strokes, above 1")
	far := Score(secs(1), secs(1.12), 0, Wide)
	require.Zero(t, far.Accuracy)
	require.InDelta(t, math.Exp(-4.5), nearestTap(secs(1), secs(1.12)), 1e-15)
}

// TestGaussianCredit: exp(−d²/2σ²) at σ = 40 ms, the formula of Cemgil et al.
// 2000 worked out to six places.
func TestGaussianCredit(t *testing.T) {
	for d, want := range map[time.Duration]float64{
		0: 1, 10: .969233, 20: .882497, 30: .754840, 40: .606531, 50: .457833, 70: .216265, 80: .135335, 100: .043937,
	} {
		for _, sign := range []time.Duration{1, -1} {
			for _, setup := range []time.Duration{0, 180 * time.Millisecond} {
				tap := time.Second + sign*d*time.Millisecond + setup
				r := Score(secs(1), []time.Duration{tap}, setup, Wide)
				require.InDelta(t, want, r.Accuracy, 5e-7, d)
				require.Equal(t, sign*d*time.Millisecond+setup, r.Pairs[0].Offset, "raw")
			}
		}
	}
}
