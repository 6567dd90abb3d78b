package stat

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"groundbeat/scoring"
)

// tapped returns a spell with strokes and taps at such intervals, in ms.
func tapped(expected, between []float64) Spell {
	s := Spell{Strokes: []time.Duration{0}, Pairs: []scoring.Pair{{}}}
	var stroke, tap float64
	for i := range expected {
		stroke, tap = stroke+expected[i], tap+between[i]
		s.Strokes = append(s.Strokes, time.Duration(math.Round(stroke*1e6)))
		s.Pairs = append(s.Pairs, scoring.Pair{Stroke: i + 1, Tap: i + 1, Offset: time.Duration(math.Round((tap - stroke) * 1e6))})
	}
	return s
}

// TestWingKristoffersonVectors: intervals of ten taps, worked by hand from the
// formulas of Wing and Kristofferson 1973 (no published example was found).
// With g0 and g1 the autocovariances, divided by n, their estimates of the
// hand's and the clock's variance are −g1 and g0+2g1.
func TestWingKristoffersonVectors(t *testing.T) {
	for _, c := range []struct {
		between              []float64
		g0, g1, motor, clock float64
	}{
		{[]float64{500, 510, 495, 505, 490, 515, 500, 505, 485, 495}, 75, -27.5, 27.5, 20},
		{[]float64{500, 520, 480, 510, 490, 505, 495, 500, 515, 485}, 150, -100, 100, -50},
		{[]float64{512, 498, 505, 488, 496, 509, 515, 503, 492, 482}, 103.6, 21.8, -21.8, 147.2},
	} {
		expected := make([]float64, 10)
		for i := range expected {
			expected[i] = 480 // a player slower than asked
		}
		s := tapped(expected, c.between)
		p, ok := newPart(s, 480)
		require.True(t, ok)
		q := p.found()
		require.InDelta(t, c.g0, q[0]/10, 1e-9)
		require.InDelta(t, c.g1, q[1]/10, 1e-9)
		require.InDelta(t, c.motor, -q[1]/10, 1e-9)
		require.InDelta(t, c.clock, q[0]/10+2*q[1]/10, 1e-9)

		got := Carried([]Spell{s})
		require.Equal(t, TooFew, got.Fault)
		require.Equal(t, 30, got.Clock.Missing())
	}
}

// TestManyEqualIntervals: for many of them the estimates are the model's own.
func TestManyEqualIntervals(t *testing.T) {
	r := rand.New(rand.NewPCG(19, 73))
	p := keeper{spans: []float64{600}, taps: 1200, clock: 20, motor: 10}
	s := p.spell(r)
	got := Carried([]Spell{s})
	part, _ := newPart(s, 600)
	q := part.found()
	require.InEpsilon(t, math.Sqrt(-q[1]/1200), got.Motor.Value, .005)
	require.InEpsilon(t, math.Sqrt(q[0]/1200+2*q[1]/1200), got.Clock.Value, .005)
}

// keeper is a player, made up, who carries on as the model says.
type keeper struct {
	spans         []float64 // expected intervals, in ms, over and over
	taps          int       // intervals in a spell
	clock, motor  float64   // standard deviations in ms; clock for the root mean square interval
	tempo         float64   // how much slower
	drift         float64   // tempo changes by this much from the first interval to the last
	wander        float64   // and by steps of this standard deviation from one to the next
	correction    float64   // of each tap towards where it should be
	left          float64   // share of strokes left out
	clockByLength float64   // power of the interval with which the clock's deviation grows; 0 is 1
}

func (k keeper) spell(r *rand.Rand) Spell {
	var squares float64
	for i := range k.taps {
		squares += math.Pow(k.spans[i%len(k.spans)], 2)
	}
	reference, power := math.Sqrt(squares/float64(k.taps)), 1.
	if k.clockByLength != 0 {
		power = k.clockByLength
	}
	tempo, stroke, off := 1+k.tempo, 0., 0.
	motor := k.motor * r.NormFloat64()
	s := Spell{Strokes: []time.Duration{0}, Pairs: []scoring.Pair{{Offset: time.Duration(motor * 1e6)}}}
	for i := range k.taps {
		e := k.spans[i%len(k.spans)]
		tempo += k.wander * r.NormFloat64()
		now := tempo + k.drift*(float64(i)/float64(k.taps)-.5)
		off = (1-k.correction)*off - k.correction*motor + (now-1)*e + k.clock*math.Pow(e/reference, power)*r.NormFloat64()
		motor = k.motor * r.NormFloat64()
		stroke += e
		s.Strokes = append(s.Strokes, time.Duration(stroke*1e6))
		if r.Float64() >= k.left || i == k.taps-1 {
			s.Pairs = append(s.Pairs, scoring.Pair{Stroke: i + 1, Tap: len(s.Pairs), Offset: time.Duration((off + motor) * 1e6)})
		}
	}
	return s
}

// recovery is what [Carried] finds in many samples.
type recovery struct {
	clock, motor         []float64  // variances, those below 0 too
	faults               [5]float64 // share of each
	clockHeld, motorHeld float64    // shares of the intervals, where the model holds, that hold the true deviation
}

// carried plays many samples of so many spells.
func (k keeper) carried(r *rand.Rand, spells, runs int) recovery {
	var found recovery
	for range runs {
		var all []Spell
		for range spells {
			all = append(all, k.spell(r))
		}
		var m, q sums
		for _, s := range all {
			p, _ := newPart(s, reference(all))
			m.add(p.expected())
			q.add(p.found())
		}
		det := m[0]*m[3] - m[1]*m[2]
		found.clock = append(found.clock, (m[3]*q[0]-m[1]*q[1])/det)
		found.motor = append(found.motor, (m[0]*q[1]-m[2]*q[0])/det)
		c := Carried(all)
		found.faults[c.Fault] += 1 / float64(runs)
		if c.Fault == Holds && !c.Clock.Excludes(k.clock) {
			found.clockHeld++
		}
		if c.Fault == Holds && !c.Motor.Excludes(k.motor) {
			found.motorHeld++
		}
	}
	holds := found.faults[Holds] * float64(runs)
	found.clockHeld /= holds
	found.motorHeld /= holds
	return found
}

// maqsum and saidi are the intervals between their dums at 96 counts a minute,
// saidi's being 1, the & of 2 and 3; half is a dum on every other count.
var (
	half  = []float64{1250}
	saidi = []float64{937.5, 312.5, 1250}
)

// TestCarriedRecovers: simulated players of known clock and hand are recovered:
// the variances without bias, whatever the length of the spells and the
// intervals, and the intervals hold. clear is the share of samples in which
// clock and hand can be told apart.
func TestCarriedRecovers(t *testing.T) {
	runs := 1000
	if testing.Short() {
		runs = 200
	}
	for _, c := range []struct {
		name   string
		k      keeper
		spells int
		clear  float64
	}{
		{"one long spell", keeper{spans: half, taps: 60, clock: 20, motor: 10}, 1, .85},
		{"spells of an eight", keeper{spans: half, taps: 4, clock: 20, motor: 10, tempo: .02}, 30, .60},
		{"spells of two eights", keeper{spans: half, taps: 7, clock: 20, motor: 10, tempo: -.03}, 16, .80},
		{"uneven dums", keeper{spans: saidi, taps: 11, clock: 20, motor: 10, tempo: .02}, 8, .90},
		{"a steady hand", keeper{spans: saidi, taps: 11, clock: 20, motor: 5}, 16, .70},
		{"clock and hand alike", keeper{spans: saidi, taps: 11, clock: 10, motor: 10}, 8, .75},
		{"a steady change of tempo", keeper{spans: half, taps: 40, clock: 20, motor: 10, drift: .1}, 2, .85},
		{"dums left out", keeper{spans: saidi, taps: 16, clock: 20, motor: 10, left: .1}, 8, .85},
	} {
		t.Run(c.name, func(t *testing.T) {
			got := c.k.carried(rand.New(rand.NewPCG(5, 6)), c.spells, runs)
			clock, clockSD := stat.MeanStdDev(got.clock, nil)
			motor, motorSD := stat.MeanStdDev(got.motor, nil)
			t.Logf("√mean variances %.2f %.2f, deviations of the variances %.0f %.0f, holds %.3f, intervals %.3f %.3f",
				math.Sqrt(clock), math.Sqrt(max(0, motor)), clockSD, motorSD, got.faults[Holds], got.clockHeld, got.motorHeld)
			// Four standard errors of a mean of so many runs.
			within := 4 / math.Sqrt(float64(runs))
			require.InDelta(t, c.k.motor*c.k.motor, motor, within*motorSD)
			if c.k.left == 0 { // else the clock's reference is longer
				require.InDelta(t, c.k.clock*c.k.clock, clock, within*clockSD)
				require.Greater(t, got.clockHeld, .9)
			}
			require.Greater(t, got.motorHeld, .9)
			require.Greater(t, got.faults[Holds], c.clear)
			require.Less(t, got.faults[Drifts]+got.faults[Corrects], .03)
		})
	}
}

// TestCarriedOtherClock: if the variance of the clock grew with the interval, and
// not with its square, clock and hand would come out 7 % wrong at most.
func TestCarriedOtherClock(t *testing.T) {
	k := keeper{spans: saidi, taps: 11, clock: 20, motor: 10, clockByLength: .5}
	got := k.carried(rand.New(rand.NewPCG(5, 7)), 8, 2000)
	clock, motor := math.Sqrt(stat.Mean(got.clock, nil)), math.Sqrt(stat.Mean(got.motor, nil))
	t.Logf("clock %.2f, hand %.2f", clock, motor)
	require.InEpsilon(t, 20, clock, .07)
	require.InEpsilon(t, 10, motor, .07)
}

// TestCarriedContradicted: players who do not follow the model are found out.
func TestCarriedContradicted(t *testing.T) {
	runs := 300
	if testing.Short() {
		runs = 100
	}
	wandering := keeper{spans: half, taps: 60, clock: 10, motor: 5, wander: .012}
	faults := wandering.carried(rand.New(rand.NewPCG(1, 2)), 2, runs).faults
	t.Logf("a tempo that wanders: %.2f", faults)
	require.Greater(t, faults[Drifts], .8)

	correcting := keeper{spans: half, taps: 60, clock: 20, motor: 10, correction: 1.6}
	faults = correcting.carried(rand.New(rand.NewPCG(3, 4)), 2, runs).faults
	t.Logf("each tap corrected too much: %.2f", faults)
	require.Greater(t, faults[Corrects], .8)
}

// TestCarriedTempo: a player 3 % slower is told so, whatever the intervals.
func TestCarriedTempo(t *testing.T) {
	r := rand.New(rand.NewPCG(8, 8))
	k := keeper{spans: saidi, taps: 11, clock: 15, motor: 8, tempo: .03}
	var all []Spell
	for range 12 {
		all = append(all, k.spell(r))
	}
	got := Carried(all)
	require.InDelta(t, .03, got.Slower.Value, .004)
	require.True(t, got.Slower.Excludes(0))
	require.Equal(t, 12, got.Slower.N)
}

func TestCarriedNothing(t *testing.T) {
	require.Equal(t, TooFew, Carried(nil).Fault)
	none := Carried([]Spell{{}, {Strokes: []time.Duration{5}, Pairs: []scoring.Pair{{}}},
		{Strokes: make([]time.Duration, 5), Pairs: []scoring.Pair{{}, {Stroke: 1}, {Stroke: 2}, {Stroke: 3}}}})
	require.Equal(t, 0, none.Clock.N)
	require.Equal(t, LeastIntervals, none.Motor.Missing())
}
