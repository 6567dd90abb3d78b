package riff_test

import (
	"os"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

func supplied(t testing.TB) []*rhythm.Cycle {
	t.Helper()
	catalogue, err := rhythm.Load(os.DirFS("../../assets"))
	require.NoError(t, err)
	var all []*rhythm.Cycle
	for _, id := range catalogue.IDs() {
		c, _ := catalogue.Get(id)
		all = append(all, c)
	}
	return all
}

// onGrid puts strokes back on a pattern of so many steps for each of the
// rhythm's.
func onGrid(t testing.TB, strokes []riff.Stroke, steps, scale int) string {
	t.Helper()
	line := []byte(strings.Repeat("-", steps*scale))
	for _, s := range strokes {
		require.Zero(t, s.Sub*scale%riff.TicksPerStep)
		require.Less(t, s.Sub, riff.TicksPerStep)
		at := s.Step*scale + s.Sub*scale/riff.TicksPerStep
		require.Equal(t, byte('-'), line[at])
		line[at] = byte(s.Sound)
	}
	return string(line)
}

// The lead drum plays the filled form of every rhythm on its own steps, the bass
// drum what it plays at Bare; and the lead has every dum of the bass, at the same
// moment and as firm.
func TestFilled(t *testing.T) {
	const cycles = 3
	for _, c := range supplied(t) {
		t.Run(c.ID, func(t *testing.T) {
			part, err := riff.Play(c, riff.Filled, cycles, 7)
			require.NoError(t, err)
			bare, err := riff.Play(c, riff.Bare, cycles, 1)
			require.NoError(t, err)
			require.Equal(t, bare.Bass, part.Bass)
			scale := len(c.Filled) / c.Steps()
			require.Equal(t, strings.Repeat(c.Filled.String(), cycles), onGrid(t, part.Lead, cycles*c.Steps(), scale))
			var dums, bass []riff.Stroke
			last := time.Duration(-1)
			for _, s := range part.Lead {
				require.Greater(t, s.At(c, 100), last, "in the order of time")
				last = s.At(c, 100)
				switch {
				case s.Sound.Low():
					dums = append(dums, s)
				case s.Sound.Light():
					require.Equal(t, 0.45, s.Strength)
				default:
					require.Equal(t, 0.8, s.Strength)
				}
			}
			for _, s := range part.Bass {
				if s.Sound.Low() {
					bass = append(bass, s)
				}
			}
			require.Equal(t, bass, dums)
		})
	}
}

func TestFilledWithoutAFilledForm(t *testing.T) {
	for _, tt := range skeletons {
		c := cycle(t, tt.metre, tt.skeleton)
		filled, err := riff.Play(c, riff.Filled, 2, 1)
		require.NoError(t, err)
		bare, err := riff.Play(c, riff.Bare, 2, 1)
		require.NoError(t, err)
		require.Equal(t, bare, filled, tt.name)
	}
}

func TestFilledGrid(t *testing.T) {
	maqsum := cycle(t, "4/4", "DT-TD-T-")
	maqsum.Filled = rhythm.Pattern("D-T-kkT-D-kkT-kk")
	part, err := riff.Play(maqsum, riff.Filled, 2, 0)
	require.NoError(t, err)
	require.Equal(t, riff.Stroke{Step: 2, Sub: 6, Sound: rhythm.Ka, Strength: 0.45}, part.Lead[3])
	require.Equal(t, riff.Stroke{Step: 15, Sub: 6, Sound: rhythm.Ka, Strength: 0.45}, part.Lead[len(part.Lead)-1])
	require.Len(t, part.Lead, 22)
}

// The time of a stroke is that of its step, exactly; between steps it is rounded
// once. The figures are 60 s · ticks / (bpm · steps a beat · 12), by hand.
func TestStrokeAt(t *testing.T) {
	maqsum, malfuf := cycle(t, "4/4", "DT-TD-T-"), cycle(t, "2/4", "D--T--T-")
	for _, tt := range []struct {
		c         *rhythm.Cycle
		step, sub int
		bpm       int
		want      time.Duration
	}{
		{maqsum, 0, 0, 120, 0},
		{maqsum, 3, 0, 120, 750 * time.Millisecond},
		{maqsum, 3, 6, 120, 875 * time.Millisecond},
		{maqsum, 2, 4, 100, 700 * time.Millisecond},
		{malfuf, 3, 6, 120, 437500 * time.Microsecond},
		{maqsum, 0, 1, 97, 25773196},             // 2.5 s / 97
		{maqsum, 1, 1, 97, 335051546},            // 32.5 s / 97
		{malfuf, 8, 11, 173, 773121387},          // 133.75 s / 173
		{maqsum, 79_999, 11, 400, 5999993750000}, // 100 minutes less a twelfth of a step
	} {
		got := riff.Stroke{Step: tt.step, Sub: tt.sub}.At(tt.c, tt.bpm)
		require.Equal(t, tt.want, got, "%d+%d at %d", tt.step, tt.sub, tt.bpm)
	}
	for _, c := range supplied(t) {
		for bpm := 20; bpm <= rhythm.MaxBPM; bpm += 19 {
			for step := range 50 {
				require.Equal(t, c.At(step, bpm), riff.Stroke{Step: step}.At(c, bpm))
			}
			if scale := 2; len(c.Filled) == scale*c.Steps() {
				half := riff.Stroke{Step: 7, Sub: riff.TicksPerStep / scale}
				require.Equal(t, c.Form(c.Filled).At(15, bpm), half.At(c, bpm), "as the filled form counts it")
			}
		}
	}
	require.NotPanics(t, func() { riff.Stroke{}.At(maqsum, 83_333) })
	require.Panics(t, func() { riff.Stroke{}.At(maqsum, 83_334) })
	require.Panics(t, func() { riff.Stroke{}.At(maqsum, 0) })
}

// Of n ticks at bpm, the time lies within half a nanosecond of the exact one. (No
// rhythm has more than 128 steps.)
func FuzzStrokeAt(f *testing.F) {
	f.Add(uint32(17), byte(5), uint16(97))
	f.Add(uint32(1<<31), byte(11), uint16(1))
	maqsum := cycle(f, "4/4", "DT-TD-T-")
	f.Fuzz(func(t *testing.T, step uint32, sub byte, bpm uint16) {
		if bpm == 0 {
			t.Skip()
		}
		s := riff.Stroke{Step: int(step) % (riff.MaxCycles * 128), Sub: int(sub % riff.TicksPerStep)}
		ticks, rate := int64(s.Step)*riff.TicksPerStep+int64(s.Sub), int64(bpm)*2*riff.TicksPerStep
		// |at − 60·10⁹·ticks/rate| ≤ ½, in whole numbers that cannot overflow.
		whole, rest := ticks/rate, ticks%rate
		at := int64(s.At(maqsum, int(bpm))) - whole*int64(time.Minute)
		off := 2 * (at*rate - rest*int64(time.Minute))
		require.LessOrEqual(t, max(off, -off), rate)
	})
}
