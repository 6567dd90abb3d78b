package clock_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio/clock"
)

func TestSuspension(t *testing.T) {
	d := newDevice(1)
	c := clock.New(rate)
	c.Read(clock.Reading{}) // suspended before it was ever started
	place(c, 1, 0, 4)       // scheduled meanwhile: valid after
	play(c, d, 5100, 7000, 15, nil)
	before, err := c.Heard(6500)
	require.NoError(t, err)

	require.True(t, c.Whole(1, 0, 90000))
	for range 3 {
		require.False(t, c.Read(clock.Reading{Context: 2, Performance: 7010}))
	}
	require.Equal(t, 1, c.Diagnostics().Interruptions)
	require.False(t, c.Whole(1, 0, 120000), "scheduled, never heard")
	require.True(t, c.Whole(1, 0, 90000), "heard before")

	// Five seconds later it goes on; context time stood still.
	d.steps = []stepAt{{at: 7010, by: -5000}}
	play(c, d, 12010, 12500, 15, nil)
	_, err = c.Heard(12400)
	require.ErrorIs(t, err, clock.ErrGap, "blocks of before are not used after")
	place(c, 2, 3*rate, 3)
	play(c, d, 12500, 15000, 15, nil)

	for _, at := range []float64{7001, 9000, 12009} {
		_, err = c.Heard(at)
		require.ErrorIs(t, err, clock.ErrInterrupted, "at %v", at)
	}
	p, err := c.Heard(14000)
	require.NoError(t, err)
	require.Equal(t, 2, p.Epoch)
	require.InDelta(t, 0, off(p, d, 3*rate), 0.2)
	again, err := c.Heard(6500)
	require.NoError(t, err)
	require.Equal(t, before, again, "what was heard before stays")
}

func TestSuspensionWithinAnEpoch(t *testing.T) {
	d := newDevice(2)
	c := clock.New(rate)
	c.Place(clock.Placement{Epoch: 1, Context: 0, Stream: 0, Frames: 4 * rate})
	play(c, d, 5100, 7000, 15, nil)
	c.Read(clock.Reading{})
	c.Place(clock.Placement{Epoch: 1, Context: 4 * rate, Stream: 4 * rate, Frames: 4 * rate})
	play(c, d, 7500, 10000, 15, nil)
	_, err := c.Heard(8500)
	require.ErrorIs(t, err, clock.ErrGap)
	p, err := c.Heard(9500)
	require.NoError(t, err)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
	require.False(t, c.Whole(1, rate, 5*rate))
	require.True(t, c.Whole(1, 4*rate, 8*rate))
}

func TestEpochs(t *testing.T) {
	d := newDevice(3)
	c := clock.New(rate)
	place(c, 7, 0, 10)
	play(c, d, 5100, 8000, 15, nil)
	place(c, 8, 3*rate+4800, 10) // stream frame 0 again
	_, err := c.Heard(8001)
	require.ErrorIs(t, err, clock.ErrGap, "what was scheduled and not heard is cut off")
	play(c, d, 8010, 9000, 15, nil)

	p, err := c.Heard(7500)
	require.NoError(t, err)
	require.Equal(t, 7, p.Epoch)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
	_, err = c.Heard(8050)
	require.ErrorIs(t, err, clock.ErrGap, "nothing of epoch 8 sounds yet")
	p, err = c.Heard(8900)
	require.NoError(t, err)
	require.Equal(t, 8, p.Epoch)
	require.InDelta(t, 0, off(p, d, 3*rate+4800), 0.2)

	place(c, 7, 20*rate, 1)
	require.Positive(t, c.Diagnostics().RefusedPlacements)
	require.Zero(t, c.Diagnostics().Interruptions, "the device goes on")
}

// A new context begins at 0 again; its performance time goes on. The old one is
// told to have stopped.
func TestNewContext(t *testing.T) {
	d := newDevice(4)
	c := clock.New(rate)
	place(c, 1, 0, 10)
	play(c, d, 5100, 9000, 15, nil)
	d.zero = 9500
	c.Read(clock.Reading{})
	place(c, 2, 0, 10)
	play(c, d, 9600, 11000, 15, nil)
	p, err := c.Heard(10500)
	require.NoError(t, err)
	require.Equal(t, 2, p.Epoch)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
}

func TestSilentRestart(t *testing.T) {
	for name, zero := range map[string]float64{"context begins anew": 9500, "computer slept": 20000} {
		t.Run(name, func(t *testing.T) {
			d := newDevice(4)
			c := clock.New(rate)
			place(c, 1, 0, 10)
			play(c, d, 5100, 9000, 15, nil)
			d.zero = zero
			play(c, d, zero+5, zero+1000, 15, nil)
			require.Equal(t, 1, c.Diagnostics().Interruptions)
			refused := c.Diagnostics().RefusedTotal()
			require.InDelta(t, 7, refused, 1)
			_, err := c.Heard(zero - 100)
			require.ErrorIs(t, err, clock.ErrInterrupted)
			_, err = c.Heard(zero + 900)
			require.ErrorIs(t, err, clock.ErrGap)
		})
	}
}

// One wild reading neither answers nor shuts out those after it.
func TestWildFirstReading(t *testing.T) {
	d := newDevice(6)
	c := clock.New(rate)
	require.True(t, c.Read(clock.Reading{Context: 5000, Performance: 5090, Running: true}))
	play(c, d, 5100, 6000, 15, nil)
	place(c, 1, 0, 10)
	p, err := c.Heard(5900)
	require.NoError(t, err)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
}

func TestGap(t *testing.T) {
	d := newDevice(7)
	c := clock.New(rate)
	c.Place(clock.Placement{Epoch: 1, Context: 0, Stream: 0, Frames: rate})
	c.Place(clock.Placement{Epoch: 1, Context: rate, Stream: rate, Frames: rate})              // joins
	c.Place(clock.Placement{Epoch: 1, Context: 2*rate + 4800, Stream: 2 * rate, Frames: rate}) // 0.1 s late
	play(c, d, 5100, 9000, 15, nil)

	p, err := c.Heard(6900)
	require.NoError(t, err)
	require.InDelta(t, 0, off(p, d, 0), 0.2)
	_, err = c.Heard(7050)
	require.ErrorIs(t, err, clock.ErrGap)
	p, err = c.Heard(7200)
	require.NoError(t, err)
	require.InDelta(t, 0, off(p, d, 4800), 0.2)
	_, err = c.Heard(8200)
	require.ErrorIs(t, err, clock.ErrGap, "beyond the last block")

	for _, tc := range []struct {
		epoch    int
		from, to int64
		want     bool
	}{
		{1, 0, 2 * rate, true},
		{1, rate - 1, rate + 1, true},
		{1, 2*rate - 1, 2*rate + 1, false},
		{1, 2 * rate, 3 * rate, true},
		{1, 2 * rate, 3*rate + 1, false},
		{2, 0, rate, false},
		{1, 5, 5, false},
		{1, 6, 5, false},
		{1, -1, 5, false},
	} {
		require.Equal(t, tc.want, c.Whole(tc.epoch, tc.from, tc.to), "%+v", tc)
	}
}

func TestLostStreamFrames(t *testing.T) {
	// Context frames join, stream frames do not: frames were dropped.
	c := clock.New(rate)
	c.Place(clock.Placement{Epoch: 1, Context: 0, Stream: 0, Frames: 2048})
	c.Place(clock.Placement{Epoch: 1, Context: 2048, Stream: 4096, Frames: 2048})
	require.False(t, c.Whole(1, 0, 6144))
	require.True(t, c.Whole(1, 4096, 6144))
}

func TestOverlapReplaces(t *testing.T) {
	d := newDevice(8)
	c := clock.New(rate)
	place(c, 1, 0, 10)
	c.Place(clock.Placement{Epoch: 1, Context: 2 * rate, Stream: 900000, Frames: rate})
	play(c, d, 5100, 9000, 15, nil)
	p, err := c.Heard(7500)
	require.NoError(t, err)
	require.InDelta(t, 924000, p.Frame, 0.2*rate/1000)
	_, err = c.Heard(8500)
	require.ErrorIs(t, err, clock.ErrGap)
}

func TestBadPlacements(t *testing.T) {
	c := clock.New(rate)
	for _, p := range []clock.Placement{
		{Epoch: 1, Context: -1, Frames: 5},
		{Epoch: 1, Stream: -1, Frames: 5},
		{Epoch: 1},
		{Epoch: 1, Frames: -5},
		{Epoch: 1, Context: 1 << 60, Frames: 1},
	} {
		c.Place(p)
	}
	require.Equal(t, 5, c.Diagnostics().RefusedPlacements)
}

// Five minutes of gaps are kept, and never more than 256 runs.
func TestPlacementsPruned(t *testing.T) {
	c := clock.New(rate)
	const blocks = 500
	for i := range int64(blocks) { // a block of 1 s and a gap of 1 s
		c.Place(clock.Placement{Epoch: 1, Context: i * 2 * rate, Stream: i * rate, Frames: rate})
	}
	kept := 0
	for i := range int64(blocks) {
		if c.Whole(1, i*rate, (i+1)*rate) {
			kept++
		}
	}
	require.InDelta(t, 150, kept, 1)
	for i := range int64(blocks) { // 0.1 s apart
		c.Place(clock.Placement{Epoch: 2, Context: i * rate / 10, Stream: i * rate, Frames: 100})
	}
	kept = 0
	for i := range int64(blocks) {
		if c.Whole(2, i*rate, i*rate+100) {
			kept++
		}
	}
	require.Equal(t, 256, kept)
	// Unbroken sound is one run.
	place(c, 3, 0, 2000)
	require.True(t, c.Whole(3, 0, 2000*rate))
}
