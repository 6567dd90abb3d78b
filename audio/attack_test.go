package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// The push has unit area, begins and ends near zero, and its spectrum is 6 dB
// down at 1/length (the Hann window's; calculated).
func TestPush(t *testing.T) {
	for _, length := range []float64{2, 19.2, 38.7, 163.2, 240} {
		a := attack{length: length, pulse: int(math.Ceil(length))}
		x := make(sound, 1000)
		a.push(x)
		var area, re, im float64
		for i, v := range x {
			require.GreaterOrEqual(t, v, 0.0)
			area += v
			s, c := math.Sincos(2 * math.Pi * float64(i) / length)
			re, im = re+v*c, im+v*s
		}
		require.InDelta(t, 1, area, 0.01, "length %v", length)
		require.Zero(t, x[a.pulse])
		if length > 10 {
			require.InDelta(t, -6.02, 20*math.Log10(math.Hypot(re, im)), 0.2)
			require.Less(t, x[0], x.peak()/50)
		}
	}
}

// The slap is one more such pulse, from the same frame on: its area comes on
// top, and is over sooner.
func TestPushWithSlap(t *testing.T) {
	a := attack{length: 160, pulse: 160, slap: 0.25, quick: 40}
	plain, slapped := a, make(sound, 200)
	plain.slap = 0
	without := make(sound, 200)
	a.push(slapped)
	plain.push(without)
	for i := range slapped {
		slapped[i] -= without[i]
		require.GreaterOrEqual(t, slapped[i], 0.0)
	}
	require.InDelta(t, 0.25, 200*slapped.mean(), 0.0025)
	require.InDelta(t, 0.125, 20*slapped[:20].mean(), 0.0025, "half of it by half its time")
	require.Zero(t, slapped[40])
}

func TestNoise(t *testing.T) {
	for v := range voices {
		var a attack
		b := newBank(nil, Rate)
		a.start(Hit{Voice: v, Strength: 1, Seed: 5}, nil, &b, float64(Rate))
		x := make(sound, 8192)
		a.sound(x)
		require.Less(t, math.Abs(x[0]), 0.1*x.peak(), "%v: no click", v)
		require.Less(t, x[a.hiss-50:].peak(), 1e-4*x.peak(), "%v: no cut", v)
		require.Less(t, x.lasts(), 12.0)
		hz := strokes[v].hz
		spectrum, bin := x.power()
		var in, all float64
		for i, p := range spectrum {
			all += p
			if f := float64(i) * bin; f > hz/3 && f < hz*3 {
				in += p
			}
		}
		require.Greater(t, in, 0.7*all, "%v: within its band", v)
	}
}

func TestRandom(t *testing.T) {
	// The first numbers for seed 1234567, as in the test of several public
	// implementations of SplitMix64 (Rosetta Code, "Pseudo-random
	// numbers/Splitmix64").
	r := random(1234567)
	for _, want := range []uint64{6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821} {
		require.Equal(t, want, r.next())
	}
	var sum float64
	for range 10000 {
		v := r.signed()
		require.True(t, v >= -1 && v < 1)
		sum += v
	}
	require.InDelta(t, 0, sum/10000, 0.03)
}
