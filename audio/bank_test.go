package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestModes(t *testing.T) {
	for name, d := range map[string]*drumhead{"darbuka": &darbuka, "dohola": &dohola} {
		modes := d.list(0.45 * float64(Rate))
		require.Len(t, modes, d.modes, name)
		require.LessOrEqual(t, d.modes, maxModes)
		require.Zero(t, d.modes%lanes)
		for i, m := range modes {
			require.Positive(t, m.hz)
			require.NotZero(t, m.gain)
			require.LessOrEqual(t, math.Abs(m.gain), 3.0)
			require.Less(t, decay60/m.decay, 0.8)
			require.Greater(t, decay60/m.decay, 0.03)
			if i > 0 {
				require.GreaterOrEqual(t, m.decay, modes[i-1].decay)
			}
		}
		for _, m := range d.list(1000) {
			require.LessOrEqual(t, m.hz, 1000.0)
		}
	}
}

// The lowest modes are all there, the others every second, in order.
func TestThinned(t *testing.T) {
	const count = 46
	all, got := zeros(2*count), thinned(count)
	require.Len(t, got, count)
	require.Equal(t, all[:sparse+1], got[:sparse+1])
	require.Equal(t, all[sparse+2], got[sparse+1])
	require.Equal(t, all[2*(count-1)-sparse], got[count-1])
	require.Equal(t, all[:5], thinned(5))
}

// Air makes the low modes lower than the ideal membrane's, and so spreads
// the ratios: Rossing's head in free air has (2,1) at 1.48 of (1,1), the
// ideal one at 1.340. A darbuka's head is small and moves less air.
func TestAirLoading(t *testing.T) {
	ratio := func(d *drumhead, m int) float64 {
		var hz [2]float64
		for _, mode := range d.list(math.Inf(1)) {
			switch {
			case mode.m == 1 && mode.n == 1:
				hz[0] = mode.hz
			case mode.m == m && mode.n == 1:
				hz[1] = mode.hz
			}
		}
		return hz[1] / hz[0]
	}
	require.InDelta(t, 392, darbuka.mode(zero{1, 1, 3.831705970207512}).hz, 1e-9)
	for m, ideal := range map[int]float64{2: 1.340, 3: 1.665, 4: 1.980, 5: 2.289} {
		require.Greater(t, ratio(&darbuka, m), ideal)
		require.Greater(t, ratio(&dohola, m), ratio(&darbuka, m), "the larger head moves more air")
		require.Less(t, ratio(&dohola, m), ideal*1.11)
	}
}

func bankOf(modes ...mode) bank { return newBank(modes, Rate) }

// The impulse response is that of the formula: rⁿ sin nθ. Calculated.
func TestBankRings(t *testing.T) {
	for _, m := range []mode{
		{hz: 75, decay: decay60 / 0.6, gain: 1},
		{hz: 100, decay: decay60 / 0.4, gain: 0.5},
		{hz: 3000, decay: decay60 / 0.05, gain: -1},
	} {
		b := bankOf(m)
		b.wake()
		x := [block][lanes]float64{{b.groups[0].drive[0]}}
		out := make([]float64, 4800)
		b.groups[0].push(out[:block], &x)
		for i := block; i < len(out); i += block {
			b.groups[0].ring(out[i : i+block])
		}
		theta, r := 2*math.Pi*m.hz/float64(Rate), math.Exp(-m.decay/float64(Rate))
		for i, got := range out {
			n := float64(i + 1)
			require.InDelta(t, m.gain*math.Pow(r, n)*math.Sin(n*theta), got, 1e-9, "%v Hz, frame %d", m.hz, i)
		}
	}
}

// Coefficients at 48 kHz, calculated from the formula in double precision.
func TestBankCoefficients(t *testing.T) {
	b := bankOf(
		mode{hz: 100, decay: decay60 / 0.4, gain: 1},
		mode{hz: 400, decay: decay60 / 0.15, gain: 1},
		mode{hz: 3000, decay: decay60 / 0.05, gain: 1},
	)
	g := &b.groups[0]
	for k, want := range [][2]float64{{1.9991092884, .9992807010}, {1.9953437972, .9980830188}, {1.8424484332, .9942600740}} {
		require.InDelta(t, want[0], g.a1[k], 1e-9)
		require.InDelta(t, want[1], g.a2[k], 1e-9)
	}
	// tuned up by 5 %, and twice the decay of the last
	b.tune(0.05, b.groups[0].r[2])
	require.InDelta(t, 2*g.r[2]*g.r[2]*math.Cos(1.05*g.theta[2]), g.a1[2], 1e-6)
	require.InDelta(t, math.Pow(g.r[2], 4), g.a2[2], 1e-12)
	require.Zero(t, g.a1[3], "no mode, no sound")
}

func TestPushWithoutForceIsRing(t *testing.T) {
	b := newBank(darbuka.list(20000), Rate)
	b.wake()
	for i := range b.n {
		a, c := b.groups[i], b.groups[i]
		for k := range lanes {
			a.y1[k], a.y2[k] = 0.1*float64(k), 0.3-0.2*float64(k)
		}
		c.y1, c.y2 = a.y1, a.y2
		one, two := make([]float64, block), make([]float64, block)
		a.ring(one)
		c.push(two, new([block][lanes]float64))
		require.Equal(t, one, two)
		require.Equal(t, a, c)
	}
}

func TestBankComesToRest(t *testing.T) {
	b := bankOf(mode{hz: 100, decay: decay60 / 0.4, gain: 1})
	b.wake()
	g := &b.groups[0]
	g.push(make([]float64, 1), &[block][lanes]float64{{g.drive[0]}})
	energy, ringing := b.rest()
	require.True(t, ringing)
	require.InDelta(t, 1, energy, 0.01, "the squared amplitude")
	// −120 dB takes twice T60
	for range int(0.79 * float64(second) / block) {
		g.ring(make([]float64, block))
	}
	_, ringing = b.rest()
	require.True(t, ringing)
	for range int(0.02 * float64(second) / block) {
		g.ring(make([]float64, block))
	}
	energy, ringing = b.rest()
	require.False(t, ringing)
	require.Zero(t, energy)
	require.Zero(t, g.y1)
}
