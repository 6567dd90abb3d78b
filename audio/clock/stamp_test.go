package clock_test

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio/clock"
)

// browser is a stub of what a browser says of a device's output, read at now: the
// device's truth is what is heard.
type browser func(d *device, now float64) clock.Stamp

// chromium as measured with Chromium 156 (interactive): 32 ms of latency, and a moment
// that is up to a buffer of 20 ms old.
func chromium(d *device, now float64) clock.Stamp {
	const latency, buffer = 32.0, 20.0
	at := math.Floor(now/buffer) * buffer
	return clock.Stamp{
		Reading: d.read(at),
		Current: math.Floor(d.heard(at)+latency) / 1000, Now: now, Output: latency / 1000, Base: .01,
	}
}

// firefox as measured with Firefox 153 and PulseAudio: a latency of 43.08 ms, taken off
// both times, in whole ms of performance time; the noise is that of its current time.
func firefox(latency float64) browser {
	return func(d *device, now float64) clock.Stamp {
		current := d.heard(now) + latency + scattered(d, now)
		now = math.Floor(now)
		return clock.Stamp{
			Reading: clock.Reading{Context: max(0, current-latency) / 1000, Performance: max(0, now-latency), Running: true},
			Current: current / 1000, Now: now, Output: latency / 1000,
		}
	}
}

// webkit as measured with WebKitGTK 2.50: 2,048 frames are rendered at once, and when
// they were, context time (a quantum behind) and now were added up.
func webkit(d *device, now float64) clock.Stamp {
	const batch, quantum = 2048.0 / rate * 1000, 128.0 / rate * 1000
	n := math.Floor(d.heard(now) / batch)
	current, at := n*batch, now-(d.heard(now)-n*batch)
	context := max(0, current-quantum)
	return clock.Stamp{
		Reading: clock.Reading{Context: context / 1000, Performance: math.Floor(at + context), Running: true},
		Current: current / 1000, Now: math.Floor(now), Base: quantum / 1000,
	}
}

// hear reads a browser from one performance time to another, sixty times a second.
func hear(c *clock.Clock, d *device, b browser, from, to float64, each func(now float64)) {
	for now := from; now < to; now += 50.0 / 3 {
		c.Stamp(b(d, now))
		if each != nil {
			each(now)
		}
	}
}

// What each browser says is heard where it is heard, from a second after the sound
// began: a tap's offset is off by what is stated here, and no round is cut.
func TestBrowsers(t *testing.T) {
	for name, tc := range map[string]struct {
		says   browser
		off    float64 // ms
		coarse bool
	}{
		"Chromium":                       {chromium, 0.4, false},
		"Firefox":                        {firefox(43.08), 2.5, false},
		"Firefox with a wireless output": {firefox(280), 2.5, false},
		"Firefox with so short a latency that a shift does not matter": {firefox(2), 5, false},
		"WebKitGTK": {webkit, 2048. / rate * 1000, true},
	} {
		t.Run(name, func(t *testing.T) {
			d := newDevice(1)
			c := clock.New(rate)
			place(c, 1, 4800, 70)
			hear(c, d, tc.says, 5000, 65000, func(now float64) {
				if now < 6000 {
					return
				}
				p, err := c.Heard(now)
				require.NoError(t, err, "at %v", now)
				require.InDelta(t, 0, off(p, d, 4800), tc.off, "at %v", now)
				require.Equal(t, tc.coarse, p.Coarse)
			})
			require.Zero(t, c.Diagnostics().Interruptions)
			require.True(t, c.Whole(1, 0, 50*rate))
		})
	}
}

// The first taps of WebKitGTK: what was believed of its stamps for the first moments is
// forgotten, and what was heard then is known all the same.
func TestSummedFromTheStart(t *testing.T) {
	d := newDevice(2)
	c := clock.New(rate)
	place(c, 1, 0, 10)
	hear(c, d, webkit, 5000, 5600, nil)
	for at := 5100.0; at < 5600; at += 10 {
		p, err := c.Heard(at)
		require.NoError(t, err, "at %v", at)
		require.InDelta(t, 0, off(p, d, 0), 45, "at %v", at)
		require.True(t, p.Coarse)
	}
}

func TestStamp(t *testing.T) {
	good := clock.Stamp{
		Reading: clock.Reading{Context: 10, Performance: 14990, Running: true},
		Current: 10.04, Now: 15000, Output: .03, Base: .01,
	}
	for name, tc := range map[string]struct {
		change func(*clock.Stamp)
		want   clock.Reason
	}{
		"as Chromium's":                  {func(*clock.Stamp) {}, clock.Accepted},
		"no latency is stated":           {func(s *clock.Stamp) { s.Output, s.Base = 0, 0 }, clock.Accepted},
		"a buffer ahead, as on macOS":    {func(s *clock.Stamp) { s.Performance = 15040 }, clock.Accepted},
		"the audio thread was held up":   {func(s *clock.Stamp) { s.Context, s.Performance = 9.4, 14390 }, clock.Accepted},
		"none":                           {func(s *clock.Stamp) { s.Context, s.Performance = 0, 0 }, clock.Unset},
		"none in an old browser":         {func(s *clock.Stamp) { s.Context, s.Performance = math.NaN(), math.NaN() }, clock.Invalid},
		"not running":                    {func(s *clock.Stamp) { s.Running = false }, clock.NotRunning},
		"now plus context time":          {func(s *clock.Stamp) { s.Performance = 24980 }, clock.Summed},
		"the time of another clock":      {func(s *clock.Stamp) { s.Performance = 1.7e9 }, clock.Far},
		"of 1.1 s ago":                   {func(s *clock.Stamp) { s.Performance = 13900 }, clock.Far},
		"0.2 s hence":                    {func(s *clock.Stamp) { s.Performance = 15200 }, clock.Far},
		"heard before it was rendered":   {func(s *clock.Stamp) { s.Context = 10.1 }, clock.Ahead},
		"the latency off both":           {func(s *clock.Stamp) { s.Context, s.Performance = 10.01, 14970 }, clock.Shifted},
		"the latency off the frame only": {func(s *clock.Stamp) { s.Context, s.Performance = 10.01, 15000 }, clock.Accepted},
		"no current time":                {func(s *clock.Stamp) { s.Current = math.NaN() }, clock.Invalid},
	} {
		t.Run(name, func(t *testing.T) {
			c := clock.New(rate)
			s := good
			tc.change(&s)
			require.Equal(t, tc.want == clock.Accepted, c.Stamp(s))
			require.Equal(t, tc.want, c.Diagnostics().Last)
		})
	}
}

// A right stamp may look shifted by chance; and among shifted ones, one that is not is
// left out.
func TestShiftByChance(t *testing.T) {
	d := newDevice(3)
	c := clock.New(rate)
	place(c, 1, 0, 70)
	n := 0
	now := func(d *device, at float64) clock.Stamp {
		s := chromium(d, at)
		if n++; n%9 == 0 {
			s.Current, s.Now = s.Context+s.Output, s.Performance+s.Output*1000
		}
		return s
	}
	hear(c, d, now, 5100, 65000, func(now float64) {
		p, err := c.Heard(now)
		require.NoError(t, err)
		require.InDelta(t, 0, off(p, d, 0), 0.4)
	})
	require.Zero(t, c.Diagnostics().Corrected)

	c = clock.New(rate)
	hear(c, d, firefox(40), 5100, 7000, nil)
	require.Positive(t, c.Diagnostics().Corrected)
	require.False(t, c.Stamp(chromium(d, 7010)))
	require.Equal(t, clock.Shifted, c.Diagnostics().Last)
}

// Where most stamps contradict what was read beside them, the rest is not believed
// either, until a second of them was good.
func TestDoubtful(t *testing.T) {
	d := newDevice(4)
	c := clock.New(rate)
	place(c, 1, 0, 70)
	hear(c, d, chromium, 5100, 7000, nil)
	hear(c, d, webkit, 7000, 8000, nil)
	require.True(t, c.Diagnostics().Coarse)
	require.False(t, c.Stamp(chromium(d, 8010)))
	require.Equal(t, clock.Doubtful, c.Diagnostics().Last)
	hear(c, d, chromium, 8020, 9500, nil)
	p, err := c.Heard(9490)
	require.NoError(t, err)
	require.False(t, p.Coarse)
	require.InDelta(t, 0, off(p, d, 0), 0.4)
}

func TestGoodStampsAllocateNothing(t *testing.T) {
	d := newDevice(5)
	c := clock.New(rate)
	now := 5100.0
	require.Zero(t, testing.AllocsPerRun(1000, func() {
		now += 50.0 / 3
		c.Stamp(chromium(d, now))
	}))
}
