package clock_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio/clock"
)

var deviceNoises = map[string]func(*device, float64) float64{"steady": steady, "noisy": scattered}

// warm returns a clock after some seconds of readings and the time reached.
func warm(noise func(*device, float64) float64, seconds float64) (*clock.Clock, *device, float64) {
	d := newDevice(1)
	d.noise = noise
	c := clock.New(rate)
	c.Place(clock.Placement{Epoch: 1, Frames: 1 << 50})
	end := 5100 + seconds*1000
	play(c, d, 5100, end, 13, nil)
	return c, d, end
}

func TestNoAllocation(t *testing.T) {
	for name, noise := range deviceNoises {
		for _, seconds := range []float64{3, 400} { // before and after the windows are full
			c, d, now := warm(noise, seconds)
			c.ReadCoarse(d.read(now), 0)
			frames := int64(1 << 50)
			allocs := testing.AllocsPerRun(2000, func() {
				now += 13
				c.Read(d.read(now))
				c.ReadCoarse(d.read(now), 0.04)
				if _, err := c.Heard(now); err != nil {
					panic(err)
				}
				c.Place(clock.Placement{Epoch: 1, Context: frames, Stream: frames, Frames: 2048})
				frames += 2048
				if frames%(1<<20) == 0 {
					frames += 99 // a gap
				}
				c.Whole(1, 0, 5)
				c.Diagnostics()
			})
			require.Zero(t, allocs, "%s after %v s", name, seconds)
		}
	}
}

func BenchmarkRead(b *testing.B) {
	for name, noise := range deviceNoises {
		b.Run(name, func(b *testing.B) {
			c, d, now := warm(noise, 400)
			readings := make([]clock.Reading, 4096)
			for i := range readings {
				readings[i] = d.read(now + 13*float64(i))
			}
			b.ReportAllocs()
			b.ResetTimer()
			for i := range b.N {
				r := readings[i%4096]
				shift := 13 * 4096 * float64(i/4096)
				r.Context += shift / 1000
				r.Performance += shift
				c.Read(r)
			}
		})
	}
}

func BenchmarkHeard(b *testing.B) {
	for name, noise := range deviceNoises {
		for length, seconds := range map[string]float64{"after5s": 5, "after400s": 400} {
			b.Run(name+"/"+length, func(b *testing.B) {
				c, _, now := warm(noise, seconds)
				b.ReportAllocs()
				for b.Loop() {
					if _, err := c.Heard(now); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
