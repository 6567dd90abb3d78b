package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// sines adds a tone to a meter: for each part, so many seconds at so many
// dBFS of peak in the left and in the right channel.
func sines(rate SampleRate, hz float64, parts ...[3]float64) *Meter {
	m := NewMeter(rate)
	n := 0
	for _, part := range parts {
		left, right := math.Pow(10, part[1]/20), math.Pow(10, part[2]/20)
		frames := make([]float32, channels*int(part[0]*float64(rate)))
		for i := 0; i < len(frames); i += channels {
			s := math.Sin(2 * math.Pi * hz * float64(n) / float64(rate))
			frames[i], frames[i+1] = float32(left*s), float32(right*s)
			n++
		}
		m.Add(frames)
	}
	return m
}

// Both channels alike.
func both(seconds, dB float64) [3]float64 { return [3]float64{seconds, dB, dB} }

var none = math.Inf(-1) // dB

func TestLoudness(t *testing.T) {
	for _, c := range []struct {
		name   string
		hz     float64
		parts  [][3]float64
		want   float64
		within float64
	}{
		// ITU-R BS.1770-4, annex 1: a sine of 997 Hz at 0 dBFS in one of the
		// front channels reads −3.01 LKFS.
		{"left alone", 997, [][3]float64{{1.5, 0, none}}, -3.01, 0.005},
		{"right alone", 997, [][3]float64{{1.5, none, 0}}, -3.01, 0.005},
		// EBU Tech 3341 (2016), table 1, cases 1 to 5, 1 kHz; tolerance there.
		// (The steady ones are 20 s long there.)
		{"case 1", 1000, [][3]float64{both(1.5, -23)}, -23, 0.1},
		{"case 2", 1000, [][3]float64{both(1.5, -33)}, -33, 0.1},
		{"case 3", 1000, [][3]float64{both(10, -36), both(60, -23), both(10, -36)}, -23, 0.1},
		{"case 4", 1000, [][3]float64{both(10, -72), both(10, -36), both(60, -23), both(10, -36), both(10, -72)}, -23, 0.1},
		{"case 5", 1000, [][3]float64{both(20, -26), both(20.1, -20), both(20, -26)}, -23, 0.1},
		// The two channels' powers add up (calculated: −23 + 3.01).
		{"half", 1000, [][3]float64{{1.5, -20, none}}, -23.0, 0.1},
		// The K curve: gain at f less that at 997 Hz (calculated from the
		// published coefficients at 48 kHz: −1.13, +3.97 and +0.69 dB).
		{"100 Hz", 100, [][3]float64{both(1.5, -20)}, -20.0 - 0.69 - 1.13, 0.02},
		{"4 kHz", 4000, [][3]float64{both(1.5, -20)}, -20.0 - 0.69 + 3.97, 0.02},
	} {
		t.Run(c.name, func(t *testing.T) {
			for _, rate := range []SampleRate{44100, 48000, 88200} {
				if rate != Rate && len(c.parts) > 1 || testing.Short() && (rate != Rate || len(c.parts) > 1) {
					continue // long
				}
				within := c.within
				if rate != Rate {
					within = max(within, 0.04) // the transform bends other rates a little otherwise
				}
				require.InDelta(t, c.want, sines(rate, c.hz, c.parts...).Loudness(), within, "%d", rate)
			}
		})
	}
}

func TestLoudnessOfNothing(t *testing.T) {
	require.Equal(t, none, NewMeter(Rate).Loudness())
	require.Equal(t, none, NewMeter(Rate).Peak())
	require.Equal(t, none, sines(Rate, 1000, both(1, none)).Loudness())
	require.Equal(t, none, sines(Rate, 1000, both(1, -72)).Loudness(), "below the absolute gate")
	require.Equal(t, none, sines(Rate, 1000, both(0.39, -20)).Loudness(), "shorter than a block")
	require.InDelta(t, -20, sines(Rate, 1000, both(0.4, -20)).Loudness(), 0.1)
	require.Panics(t, func() { NewMeter(0) })
}

// The coefficients of ITU-R BS.1770-4, annex 1, tables 1 and 2, at 48 kHz.
func TestKWeighting(t *testing.T) {
	k := kWeighting(Rate)
	near := func(want, got float64) { require.InDelta(t, want, got, 1e-12) }
	near(1.53512485958697, k[0].b0)
	near(-2.69169618940638, k[0].b1)
	near(1.19839281085285, k[0].b2)
	near(-1.69065929318241, k[0].a1)
	near(0.73248077421585, k[0].a2)
	require.Equal(t, [3]float64{1, -2, 1}, [3]float64{k[1].b0, k[1].b1, k[1].b2})
	near(-1.99004745483398, k[1].a1)
	near(0.99007225036621, k[1].a2)
}

func TestMeterTakesAnyPieces(t *testing.T) {
	frames := make([]float32, channels*second)
	rng := random(7)
	for i := range frames {
		frames[i] = float32(rng.signed()) / 4
	}
	whole, parts := NewMeter(Rate), NewMeter(Rate)
	whole.Add(frames)
	for rest := frames; len(rest) > 0; {
		n := min(len(rest), 2*int(1+rng.next()%5000))
		parts.Add(rest[:n])
		rest = rest[n:]
	}
	require.Equal(t, whole.Loudness(), parts.Loudness())
	require.Equal(t, whole.Peak(), parts.Peak())
}

// EBU Tech 3341 (2016), table 1, cases 15 to 19: a sine of a fraction of the
// rate, its amplitude and phase, the true peak in dBTP. Tolerance there:
// +0.2, −0.4 dB.
func TestTruePeak(t *testing.T) {
	for _, c := range []struct {
		fraction, amplitude, degrees, want float64
	}{
		{4, 0.5, 0, -6}, {4, 0.5, 45, -6}, {6, 0.5, 60, -6}, {8, 0.5, 67.5, -6}, {4, 1.41, 45, 3},
	} {
		m := NewMeter(Rate)
		frames := make([]float32, 2*4800)
		for i := range 4800 {
			// it fades in, as the published signals do
			fade := min(float64(i)/1000, 1)
			v := float32(fade * c.amplitude * math.Sin(2*math.Pi*float64(i)/c.fraction+c.degrees*math.Pi/180))
			frames[2*i+1] = v
		}
		m.Add(frames)
		require.LessOrEqual(t, m.Peak(), c.want+0.2, "%+v", c)
		require.GreaterOrEqual(t, m.Peak(), c.want-0.4, "%+v", c)
	}
}

// The filter passes what does not move: the sums of the phases, calculated
// from the published table.
func TestTruePeakPhases(t *testing.T) {
	for i, want := range []float64{1.001587, 0.973022, 0.973022, 1.001587} {
		var sum float64
		for _, b := range between[i] {
			sum += b
		}
		require.InDelta(t, want, sum, 1e-6)
		for k := range taps {
			require.Equal(t, between[i][k], between[3-i][taps-1-k], "phases mirror each other")
		}
	}
}

func BenchmarkMeter(b *testing.B) {
	frames := make([]float32, channels*second)
	b.SetBytes(int64(4 * len(frames)))
	for b.Loop() {
		NewMeter(Rate).Add(frames)
	}
	b.ReportMetric(float64(b.N)/b.Elapsed().Seconds(), "×real-time")
}
