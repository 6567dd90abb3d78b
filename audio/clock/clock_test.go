package clock_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio/clock"
)

// Every expected position in this file is the stub device's own truth.

func TestSteadyReadings(t *testing.T) {
	cases := map[string]func(*device){
		"as measured":      func(*device) {},
		"fast by 100 ppm":  func(d *device) { d.drift = 100 },
		"slow by 100 ppm":  func(d *device) { d.drift = -100 },
		"slow by 500 ppm":  func(d *device) { d.drift = -500 },
		"isolated page":    func(d *device) { d.grain = 0.005 },
		"Gaussian 0.04 ms": func(d *device) { d.noise = gaussian(0.04) },
		"steps": func(d *device) {
			d.steps = []stepAt{{at: 20000, by: 10}, {at: 31000, by: -10}, {at: 45000, by: 2}, {at: 45500, by: -2.5}, {at: 60000, by: 5}}
		},
		"steps and drift": func(d *device) { d.drift, d.steps = 100, []stepAt{{at: 20000, by: -7}, {at: 50000, by: 2}} },
	}
	for name, change := range cases {
		t.Run(name, func(t *testing.T) {
			for seed := range uint64(10) {
				d := newDevice(seed)
				change(d)
				c := clock.New(rate)
				place(c, 1, 0, 100)
				// A tap a third of a poll after the reading, answered at once.
				play(c, d, 5100, 80000, 15, func(now float64) {
					if tap := now + 5; !stepBetween(d, now-1, tap) {
						p, err := c.Heard(tap)
						require.NoError(t, err)
						require.InDelta(t, 0, off(p, d, 0), 0.2, "at %v", tap)
					}
				})
				require.False(t, c.Diagnostics().Noisy)
				// And all of them again, looked up afterwards.
				for at := 5100.0; at < 80000; at += 977 {
					if !stepBetween(d, at-30, at) {
						p, err := c.Heard(at)
						require.NoError(t, err)
						require.InDelta(t, 0, off(p, d, 0), 0.2, "at %v", at)
						require.LessOrEqual(t, p.Reading.Performance, at)
					}
				}
				require.Equal(t, len(d.steps), c.Diagnostics().Steps)
			}
		})
	}
}

func stepBetween(d *device, from, to float64) bool {
	for _, s := range d.steps {
		if s.at > from && s.at <= to {
			return true
		}
	}
	return false
}

func TestRateAndDrift(t *testing.T) {
	for _, ppm := range []float64{-100, 0, 37, 100} {
		for name, noise := range map[string]func(*device, float64) float64{"steady": steady, "noisy": gaussian(1)} {
			d := newDevice(3)
			d.drift, d.noise = ppm, noise
			c := clock.New(rate)
			place(c, 1, 0, 200)
			play(c, d, 5100, 125000, 15, nil)
			p, err := c.Heard(124990)
			require.NoError(t, err)
			require.InDelta(t, rate*(1+ppm*1e-6), p.Rate, rate*5e-6, name)
			require.InDelta(t, ppm, c.Diagnostics().Drift, 5, name)
		}
	}
}

func TestLargeTimes(t *testing.T) {
	// A page open for a day, a context of 10⁵ s.
	d := newDevice(1)
	d.zero, d.grain = 0, 0.005
	d.noise = func(*device, float64) float64 { return 0 }
	c := clock.New(rate)
	place(c, 1, 100_000*rate, 10)
	play(c, d, 1e8, 1e8+5000, 15, nil)
	p, err := c.Heard(1e8 + 4321.5)
	require.NoError(t, err)
	require.InDelta(t, 4.3215*rate, p.Frame, 0.005*rate/1000) // one grain
	require.Equal(t, 1e8+4321.5, p.At)
}

func TestRefusedReadings(t *testing.T) {
	good := clock.Reading{Context: 2, Performance: 7000, Running: true}
	cases := []struct {
		name    string
		reading clock.Reading
		want    clock.Reason
	}{
		{"zeros", clock.Reading{Running: true}, clock.Unset},
		{"no context time yet", clock.Reading{Performance: 7016, Running: true}, clock.Unset},
		{"no performance time yet", clock.Reading{Context: 2.016, Running: true}, clock.Unset},
		{"negative", clock.Reading{Context: -1, Performance: 7016, Running: true}, clock.Unset},
		{"absent", clock.Reading{Context: math.NaN(), Performance: math.NaN(), Running: true}, clock.Invalid},
		{"NaN context", clock.Reading{Context: math.NaN(), Performance: 7016, Running: true}, clock.Invalid},
		{"infinite", clock.Reading{Context: 2.016, Performance: math.Inf(1), Running: true}, clock.Invalid},
		{"minus infinite", clock.Reading{Context: math.Inf(-1), Performance: 7016, Running: true}, clock.Invalid},
		{"absurd", clock.Reading{Context: 1e12, Performance: 7016, Running: true}, clock.Invalid},
		{"the same", good, clock.Repeated},
		{"frozen", clock.Reading{Context: 2, Performance: 7016, Running: true}, clock.Frozen},
		{"context back", clock.Reading{Context: 1.9, Performance: 7016, Running: true}, clock.Backwards},
		{"performance back", clock.Reading{Context: 2.016, Performance: 6990, Running: true}, clock.Backwards},
		{"performance stands", clock.Reading{Context: 2.016, Performance: 7000, Running: true}, clock.Backwards},
		{"wild", clock.Reading{Context: 3.1, Performance: 7016, Running: true}, clock.Wild},
		{"suspended", clock.Reading{Context: 2.016, Performance: 7016}, clock.NotRunning},
	}
	for _, tc := range cases {
		t.Run(tc.name, func(t *testing.T) {
			c := clock.New(rate)
			require.True(t, c.Read(good))
			require.False(t, c.Read(tc.reading))
			d := c.Diagnostics()
			require.Equal(t, tc.want, d.Last, "%v", d.Last)
			require.Equal(t, 1, d.Accepted)
			require.Equal(t, 1, d.Refused[tc.want])
			require.Equal(t, 1, d.RefusedTotal())
		})
	}
}

func TestAbsence(t *testing.T) {
	c := clock.New(rate)
	place(c, 1, 0, 10)
	_, err := c.Heard(1000)
	require.ErrorIs(t, err, clock.ErrNoReading)
	for _, at := range []float64{math.NaN(), math.Inf(1), math.Inf(-1), 1e300} {
		_, err = c.Heard(at)
		require.ErrorIs(t, err, clock.ErrTime)
	}

	d := newDevice(1)
	play(c, d, 8000, 9000, 15, nil)
	p, err := c.Heard(7600) // up to 0.5 s before the very first reading
	require.NoError(t, err)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
	_, err = c.Heard(7400)
	require.ErrorIs(t, err, clock.ErrNoReading)
	p, err = c.Heard(10900) // up to 2 s after the last
	require.NoError(t, err)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
	_, err = c.Heard(11010)
	require.ErrorIs(t, err, clock.ErrStale)
}

func TestFrozenDevice(t *testing.T) {
	d := newDevice(1)
	c := clock.New(rate)
	place(c, 1, 0, 10)
	play(c, d, 5100, 7000, 15, nil)
	last, err := c.Heard(7000)
	require.NoError(t, err)
	for i := range 30 {
		require.False(t, c.Read(clock.Reading{Context: last.Reading.Context, Performance: 7010 + 15*float64(i), Running: true}))
	}
	_, err = c.Heard(7100)
	require.NoError(t, err)
	_, err = c.Heard(7400)
	require.ErrorIs(t, err, clock.ErrStale, "frozen readings are known for what they are before 2 s have passed")
	require.Equal(t, 30, c.Diagnostics().Refused[clock.Frozen])

	// It thaws 450 ms behind: a step, followed at once.
	d.steps = []stepAt{{at: 7450, by: -450}}
	play(c, d, 7460, 8000, 15, func(now float64) {
		p, err := c.Heard(now)
		require.NoError(t, err)
		require.InDelta(t, 0, off(p, d, 0), 0.2)
	})
}

func TestCoarse(t *testing.T) {
	d := newDevice(1)
	c := clock.New(rate)
	place(c, 1, 0, 20)
	const latency = 0.035
	now := func(at float64) clock.Reading {
		r := d.read(at)
		r.Context += latency
		return r
	}
	require.False(t, c.ReadCoarse(now(5990), -1))
	require.False(t, c.ReadCoarse(now(5990), math.NaN()))
	require.Equal(t, 2, c.Diagnostics().RefusedCoarse[clock.Invalid])
	for at := 6000.0; at < 7000; at += 15 {
		require.False(t, c.Read(clock.Reading{Running: true})) // zeros
		require.True(t, c.ReadCoarse(now(at), latency))
	}
	p, err := c.Heard(6800)
	require.NoError(t, err)
	require.True(t, p.Coarse)
	require.True(t, c.Diagnostics().Coarse)
	require.InDelta(t, 0, off(p, d, 0), 0.2)

	play(c, d, 7000, 8000, 15, func(at float64) { c.ReadCoarse(now(at+1), 0) })
	p, err = c.Heard(7900)
	require.NoError(t, err)
	require.False(t, p.Coarse)
	require.False(t, c.Diagnostics().Coarse)
	require.InDelta(t, 0, off(p, d, 0), 0.2)

	// The good readings freeze, the context's own time goes on.
	for at := 8000.0; at < 12000; at += 15 {
		c.Read(clock.Reading{Context: p.Reading.Context, Performance: at, Running: true})
		c.ReadCoarse(now(at), latency)
	}
	p, err = c.Heard(11000)
	require.NoError(t, err)
	require.True(t, p.Coarse)
	require.InDelta(t, 0, off(p, d, 0), 0.2)

	// Coarse ones tell of a suspension too.
	require.False(t, c.ReadCoarse(clock.Reading{Context: 7, Performance: 12010}, latency))
	_, err = c.Heard(12020)
	require.ErrorIs(t, err, clock.ErrInterrupted)
}

func TestReasonString(t *testing.T) {
	require.Equal(t, "frozen", clock.Frozen.String())
	require.Equal(t, "unknown", clock.Reason(200).String())
}

func TestNewPanics(t *testing.T) { require.Panics(t, func() { clock.New(0) }) }
