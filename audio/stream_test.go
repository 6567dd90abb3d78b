package audio

import (
	"bytes"
	"flag"
	"io"
	"math"
	"math/rand/v2"
	"os"
	"path/filepath"
	"slices"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"
)

var update = flag.Bool("update", false, "write the golden files anew")

// busy returns sixteenths at 160 quarters a minute on both drums, for so
// many frames: the busiest a solo gets.
func busy(frames int64) (hits []Hit) {
	const sixteenth = 4500
	lead := []Voice{LeadDum, LeadKa, LeadTek, LeadKa, LeadSak, LeadKa, LeadTek, LeadTek}
	for i := int64(0); i*sixteenth < frames; i++ {
		hits = append(hits, Hit{i*sixteenth + i%7, lead[i%8], 0.5 + float32(i%6)/10, uint64(i)})
		if i%2 == 0 {
			hits = append(hits, Hit{i * sixteenth, []Voice{BassDum, BassTek}[i/2%2], 0.9, uint64(i)})
		}
	}
	return hits
}

// inPieces reads n frames in pieces of the sizes next gives.
func inPieces(t testing.TB, s *Stream, n int, next func() int) []byte {
	var all []byte
	for n > 0 {
		k := min(n, next())
		all = append(all, read(t, s, k)...)
		n -= k
	}
	return all
}

func TestReadSizeIsNotHeard(t *testing.T) {
	n := 1000 * int(4+seeds(36))
	hits := busy(int64(n))
	whole := NewStream(Rate)
	require.NoError(t, whole.Schedule(hits...))
	want := read(t, whole, n)
	rng := rand.New(rand.NewPCG(3, 4))
	for name, next := range map[string]func() int{
		"1":      func() int { return 1 },
		"7":      func() int { return 7 },
		"32":     func() int { return 32 },
		"479":    func() int { return 479 },
		"4096":   func() int { return 4096 },
		"random": func() int { return 1 + rng.IntN(200) },
	} {
		t.Run(name, func(t *testing.T) {
			s := NewStream(Rate)
			require.NoError(t, s.Schedule(hits...))
			require.True(t, bytes.Equal(want, inPieces(t, s, n, next)))
			require.Equal(t, int64(n), s.Frame())
		})
	}
	t.Run("scheduled late, backwards", func(t *testing.T) {
		s := NewStream(Rate)
		var got []byte
		slices.SortFunc(hits, compareHits)
		for i := len(hits) - 1; i >= 0; i-- {
			if hits[i].Frame >= int64(n/2) {
				require.NoError(t, s.Schedule(hits[i]))
			}
		}
		for _, h := range hits {
			if h.Frame < int64(n/2) {
				got = append(got, read(t, s, max(0, int(h.Frame-s.Frame())))...)
				require.NoError(t, s.Schedule(h))
			}
		}
		got = append(got, read(t, s, n-int(s.Frame()))...)
		require.True(t, bytes.Equal(want, got))
	})
}

func FuzzReadSizes(f *testing.F) {
	f.Add([]byte{1, 7, 32, 33, 255}, uint16(100), uint16(131), uint64(1))
	f.Add([]byte{0}, uint16(0), uint16(0), uint64(2))
	f.Add([]byte{31, 1, 32}, uint16(32), uint16(63), uint64(3))
	f.Fuzz(func(t *testing.T, sizes []byte, a, b uint16, seed uint64) {
		const n = 4000
		var hits []Hit
		for i, at := range []uint16{a, b, a, a + 1} {
			v := Voice(seed>>(8*i)) % voices
			hits = append(hits, Hit{int64(at % n), v, float32(1+seed%100) / 100, seed + uint64(i)})
		}
		one, two := NewStream(Rate), NewStream(Rate)
		require.NoError(t, one.Schedule(hits...))
		require.NoError(t, two.Schedule(hits[1], hits[3], hits[0], hits[2]))
		i := 0
		got := inPieces(t, two, n, func() int {
			if i++; len(sizes) == 0 {
				return 64
			}
			return 1 + int(sizes[i%len(sizes)])
		})
		require.True(t, bytes.Equal(read(t, one, n), got))
	})
}

func TestReadOfOddLengths(t *testing.T) {
	s := NewStream(Rate)
	for _, c := range []struct {
		bytes, read int
		err         error
	}{{0, 0, nil}, {1, 0, io.ErrShortBuffer}, {7, 0, io.ErrShortBuffer}, {8, 8, nil}, {15, 8, nil}, {4097, 4096, nil}} {
		p := bytes.Repeat([]byte{0xAA}, c.bytes)
		before := s.Frame()
		n, err := s.Read(p)
		require.Equal(t, c.read, n)
		require.Equal(t, c.err, err)
		require.Equal(t, before+int64(n/8), s.Frame())
		require.Equal(t, bytes.Repeat([]byte{0xAA}, c.bytes-n), p[n:], "the rest is left alone")
	}
	// The stream is as if read whole.
	odd, even := NewStream(Rate), NewStream(Rate)
	p := make([]byte, 8*100+3)
	_, err := io.ReadFull(odd, p[:8*50])
	require.NoError(t, err)
	_, err = odd.Read(p[8*50:])
	require.NoError(t, err)
	require.Equal(t, read(t, even, 100), p[:800])
}

func TestNeverZero(t *testing.T) {
	check := func(t *testing.T, s *Stream, frames int) {
		for range frames / 1000 {
			left, right := split(read(t, s, 1000))
			for i := range left {
				if left[i] == 0 || right[i] == 0 {
					require.Fail(t, "zero", "frame %d", i)
				}
			}
		}
	}
	t.Run("at rest", func(t *testing.T) {
		s := NewStream(Rate)
		check(t, s, 1000*int(seeds(200)))
		left, right := split(read(t, s, 5))
		want := sound{0x1p-24, -0x1p-24, 0x1p-24, -0x1p-24, 0x1p-24}
		require.Equal(t, want, left)
		require.Equal(t, want, right)
	})
	t.Run("playing", func(t *testing.T) {
		s := NewStream(Rate)
		require.NoError(t, s.Schedule(busy(900_000)...))
		check(t, s, 1000*int(seeds(1000)))
	})
	t.Run("the sum is zero", func(t *testing.T) {
		require.Equal(t, math.Float32bits(floor), lift(-0x1p-24, floor))
		require.Equal(t, math.Float32bits(-floor), lift(0x1p-24, -floor))
		require.Equal(t, math.Float32bits(0.5+floor), lift(0.5, floor))
	})
}

func TestReadDoesNotAllocate(t *testing.T) {
	p := make([]byte, 2048*frameSize)
	s := NewStream(Rate)
	require.NoError(t, s.Schedule(busy(500_000)...))
	require.Zero(t, testing.AllocsPerRun(int(seeds(600)), func() {
		if _, err := s.Read(p); err != nil {
			panic(err)
		}
	}))
}

// Hits take hold at their frame: hits of one moment on both drums begin
// together, and the second hit of a flam changes nothing before its frame.
func TestOnsetsAreExact(t *testing.T) {
	for _, at := range []int64{0, 1, 31, 32, 33, 47999} {
		first := Hit{at, LeadDum, 1, 1}
		with, without := NewStream(Rate), NewStream(Rate)
		require.NoError(t, without.Schedule(first))
		require.NoError(t, with.Schedule(first, Hit{at + 1000, LeadTek, 0.3, 2}, Hit{at + 1000, BassTek, 0.3, 2}))
		n := int(at) + 2000
		a, b := read(t, with, n), read(t, without, n)
		cut := (n - 1000) * frameSize
		require.Equal(t, b[:cut], a[:cut])
		require.NotEqual(t, b[cut:cut+4], a[cut:cut+4])
		require.NotEqual(t, b[cut+4:cut+8], a[cut+4:cut+8])
	}
}

func TestDrop(t *testing.T) {
	s, want := NewStream(Rate), NewStream(Rate)
	early, late := Hit{100, LeadDum, 1, 1}, Hit{5000, LeadTek, 1, 2}
	require.NoError(t, want.Schedule(early))
	require.NoError(t, s.Schedule(early, late, Hit{9000, BassDum, 1, 3}))
	a, b := read(t, s, 2000), read(t, want, 2000)
	s.Drop(5000)
	a, b = append(a, read(t, s, 18000)...), append(b, read(t, want, 18000)...)
	require.True(t, bytes.Equal(b, a))
}

// More strokes in their attack than there are slots: the oldest gives way.
func TestCrowd(t *testing.T) {
	s := NewStream(Rate)
	for i := range int64(4 * crowd) {
		require.NoError(t, s.Schedule(Hit{i * 3, LeadTek, 0.02, uint64(i)}))
	}
	left, _ := split(read(t, s, 3*second))
	require.LessOrEqual(t, left.peak(), 1.0)
	require.False(t, s.lead.awake)
}

func TestOtherRates(t *testing.T) {
	for _, rate := range []SampleRate{8000, 22050, 44100, 96000, 192000} {
		if testing.Short() && rate > 2*Rate {
			continue
		}
		s := NewStream(rate)
		for v := range voices {
			require.NoError(t, s.Schedule(Hit{int64(v) * int64(rate) / 8, v, 1, 1}))
		}
		left, right := split(read(t, s, 3*int(rate)))
		require.InDelta(t, 0.75, left.peak(), 0.3, "%d", rate)
		require.InDelta(t, 0.6, right.peak(), 0.3, "%d", rate)
		require.False(t, s.lead.awake || s.bass.awake || s.leadRoom.awake || s.bassRoom.awake)
	}
}

func TestReaderAndScheduler(t *testing.T) {
	s := NewStream(Rate)
	var both sync.WaitGroup
	both.Go(func() {
		p := make([]byte, 800)
		for range 500 {
			if _, err := s.Read(p); err != nil {
				panic(err)
			}
		}
	})
	both.Go(func() {
		for i := range 200 {
			f := s.Frame() + 100_000
			if err := s.Schedule(Hit{f, LeadTek, 1, uint64(i)}); err != nil {
				panic(err)
			}
			s.Drop(f)
		}
	})
	both.Wait()
	require.Equal(t, int64(50_000), s.Frame())
}

// The strokes as they sounded when last listened to, as int16, within one
// step: float64 functions differ in their last bits between processors. A
// difference is either a mistake or a new sound, to be heard before the file
// is written anew (go test ./audio -run Golden -update).
func TestGolden(t *testing.T) {
	const n = 14000
	s := NewStream(Rate)
	require.NoError(t, s.Schedule(
		Hit{10, LeadDum, 1, 1}, Hit{10, BassDum, 1, 2},
		Hit{3000, LeadTek, 0.8, 3}, Hit{5000, LeadKa, 0.6, 4},
		Hit{6000, LeadRollTek, 0.7, 8}, Hit{7100, LeadRollKa, 0.9, 9},
		Hit{6500, BassTek, 0.5, 5}, Hit{8000, LeadSak, 1, 6}, Hit{11000, BassDum, 0.7, 7},
	))
	left, right := split(read(t, s, n))
	var got []int16
	for i := range left {
		got = append(got, int16(math.RoundToEven(left[i]*32767)), int16(math.RoundToEven(right[i]*32767)))
	}
	name := filepath.Join("..", "testdata", "golden", "strokes.pcm")
	if *update {
		require.NoError(t, os.MkdirAll(filepath.Dir(name), 0o755))
		require.NoError(t, os.WriteFile(name, pack(got), 0o644))
	}
	want, err := os.ReadFile(name)
	require.NoError(t, err)
	require.Len(t, want, 4*n)
	for i, g := range got {
		w := int16(want[2*i]) | int16(want[2*i+1])<<8
		if d := int(g) - int(w); d < -1 || d > 1 {
			require.Fail(t, "not as before", "frame %d, channel %d: %d, was %d", i/2, i%2, g, w)
		}
	}
}

// pack returns little-endian bytes.
func pack(x []int16) (p []byte) {
	for _, v := range x {
		p = append(p, byte(v), byte(v>>8))
	}
	return p
}

// A busy minute. Real time is 0.384 MB/s.
func BenchmarkStream(b *testing.B) {
	const minute = 60 * int64(Rate)
	hits := busy(minute)
	p := make([]byte, 2048*frameSize)
	b.SetBytes(minute * frameSize)
	for b.Loop() {
		b.StopTimer()
		s := NewStream(Rate)
		if err := s.Schedule(hits...); err != nil {
			b.Fatal(err)
		}
		b.StartTimer()
		for s.Frame() < minute {
			if _, err := s.Read(p); err != nil {
				b.Fatal(err)
			}
		}
	}
	b.ReportMetric(60*float64(b.N)/b.Elapsed().Seconds(), "×real-time")
	b.ReportAllocs()
}

func BenchmarkNewStream(b *testing.B) {
	for b.Loop() {
		NewStream(Rate)
	}
}
