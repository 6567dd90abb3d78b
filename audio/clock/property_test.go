package clock_test

import (
	"encoding/binary"
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio/clock"
)

// Heard never falls while its time grows, in a run without steps.
func TestHeardIsMonotone(t *testing.T) {
	noises := map[string]func(*device, float64) float64{
		"steady": steady, "Gaussian": gaussian(0.05), "noisy": gaussian(2), "scattered": scattered,
	}
	for name, noise := range noises {
		for seed := range uint64(8) {
			d := newDevice(seed)
			d.noise, d.drift = noise, float64(seed)*30-100
			c := clock.New(rate)
			place(c, 1, 0, 30)
			play(c, d, 5500, 20000, 4+float64(seed), nil)
			last := 0.0
			for at := 5400.0; at < 20500; at += d.rng.Float64() * 3 {
				p, err := c.Heard(at)
				require.NoError(t, err)
				require.GreaterOrEqual(t, p.Frame, last, "%s, seed %d, at %v", name, seed, at)
				last = p.Frame
			}
		}
	}
}

// apply runs a sequence of calls read from bytes, and checks what must hold
// whatever happens.
func apply(t *testing.T, data []byte) {
	c := clock.New(rate)
	context, performance, stream, frames := 1.0, 1000.0, int64(0), int64(0)
	for len(data) >= 4 {
		op, a, b := data[0], float64(data[1]), float64(int16(binary.LittleEndian.Uint16(data[2:])))
		data = data[4:]
		switch op % 12 {
		case 0, 1, 2, 3:
			context += a / 1000
			performance += a + b/65536*float64(op)
			c.Read(clock.Reading{Context: context, Performance: performance, Running: true})
		case 4:
			c.Read(clock.Reading{Context: b, Performance: a * b, Running: a > 10})
		case 5:
			c.Read(clock.Reading{Context: math.Float64frombits(uint64(data0(data)) << 48), Performance: b, Running: true})
		case 6:
			c.ReadCoarse(clock.Reading{Context: context, Performance: performance, Running: a < 250}, b/1000)
		case 7, 8:
			n := int64(a) * 64
			c.Place(clock.Placement{Epoch: 1, Context: frames, Stream: stream, Frames: n})
			frames, stream = frames+n, stream+n
		case 9:
			c.Place(clock.Placement{Epoch: int(a), Context: int64(b) * 99, Stream: int64(b) * 7, Frames: int64(a) * 512})
		case 10:
			context, performance = context+b, performance+a*10
		case 11:
			c.Whole(1, int64(a), int64(b))
		}
		check(t, c, performance+b/100)
	}
	check(t, c, math.NaN())
}

func data0(data []byte) uint16 {
	if len(data) < 2 {
		return 0x7ff8
	}
	return binary.LittleEndian.Uint16(data)
}

func check(t *testing.T, c *clock.Clock, at float64) {
	p, err := c.Heard(at)
	if err != nil {
		require.Zero(t, p)
		return
	}
	require.GreaterOrEqual(t, p.Frame, 0.0)
	require.False(t, math.IsNaN(p.Frame) || math.IsInf(p.Frame, 0))
	require.InDelta(t, rate, p.Rate, rate*501e-6)
	require.Equal(t, at, p.At)
	d := c.Diagnostics()
	require.GreaterOrEqual(t, d.Steps, 0)
	require.False(t, math.IsNaN(d.Drift+d.Scatter+d.LastStep))
}

func TestRandomSequences(t *testing.T) {
	for seed := range uint64(300) {
		rng := rand.New(rand.NewPCG(seed, 2))
		data := make([]byte, 4*400)
		for i := range data {
			data[i] = byte(rng.Uint32())
			if i%4 == 0 && rng.IntN(4) > 0 {
				data[i] = byte(rng.IntN(4) + 12*rng.IntN(2) + 4*rng.IntN(2)) // mostly readings
			}
		}
		apply(t, data)
	}
}

func FuzzClock(f *testing.F) {
	f.Add([]byte{7, 255, 0, 0, 7, 255, 0, 0, 0, 16, 0, 0, 0, 16, 1, 0, 0, 16, 0, 0})
	f.Add([]byte{9, 1, 0, 0, 0, 16, 0, 0, 4, 0, 0, 0, 0, 16, 0, 0, 9, 2, 3, 0, 0, 16, 0, 0})
	f.Add([]byte{6, 16, 30, 0, 6, 16, 30, 0, 5, 1, 1, 1, 10, 1, 1, 1})
	f.Fuzz(apply)
}
