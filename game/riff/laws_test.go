package riff_test

import (
	"flag"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

var many = flag.Bool("many", false, "hold 1,000 seeds to the laws of riffs instead of 50")

// seeds is how many riffs of each rhythm and level are held to a law.
func seeds() uint64 {
	switch {
	case *many:
		return 1000
	case testing.Short():
		return 10
	}
	return 50
}

const levels = riff.Solo + 1

// eachRiff plays 32 cycles of every supplied rhythm at every level from low on,
// from many seeds.
func eachRiff(t *testing.T, low riff.Level, law func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part)) {
	t.Helper()
	for _, c := range supplied(t) {
		for level := low; level < levels; level++ {
			t.Run(fmt.Sprint(c.ID, " ", level), func(t *testing.T) {
				for seed := range seeds() {
					p, err := riff.Play(c, level, cyclesHeld, seed)
					require.NoError(t, err)
					law(t, c, level, p)
					if t.Failed() {
						t.Fatalf("seed %d", seed)
					}
				}
			})
		}
	}
}

const cyclesHeld = 32

// open reports whether a step lies in a declared break or roll.
func open(p riff.Part, step int) bool {
	return slices.ContainsFunc(p.Open, func(s riff.Span) bool { return s.Contains(step) })
}

func TestBassHoldsTheBase(t *testing.T) {
	eachRiff(t, riff.Bare, func(t *testing.T, c *rhythm.Cycle, _ riff.Level, p riff.Part) {
		requireBase(t, c, p, cyclesHeld)
	})
}

// requireBase holds the bass drum to the skeleton outside declared breaks and rolls.
func requireBase(t *testing.T, c *rhythm.Cycle, p riff.Part, cycles int) {
	t.Helper()
	var base []riff.Stroke
	for i := range cycles * c.Steps() {
		sound := c.Skeleton[i%c.Steps()]
		switch {
		case open(p, i):
		case sound.Low():
			base = append(base, riff.Stroke{Step: i, Sound: rhythm.Dum, Strength: 1})
		case sound.Sounds():
			base = append(base, riff.Stroke{Step: i, Sound: rhythm.Tek, Strength: 0.3})
		}
	}
	require.Equal(t, base, p.Base())
	held := slices.DeleteFunc(slices.Clone(p.Bass), func(s riff.Stroke) bool { return open(p, s.Step) })
	require.Equal(t, base, held)
}

// Below Riffing the lead drum has the dums of the base and no other; at Solo it
// has none of them.
func TestDumsOfTheLead(t *testing.T) {
	eachRiff(t, riff.Bare, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		requireDums(t, c, level, p, cyclesHeld)
	})
}

func requireDums(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part, cycles int) {
	t.Helper()
	said := 0
	for _, s := range p.Lead {
		if !s.Sound.Low() || open(p, s.Step) {
			continue
		}
		on := s.Sub == 0 && c.Skeleton[s.Step%c.Steps()].Low()
		switch {
		case on && level == riff.Solo:
			t.Fatalf("a dum of the base, step %d", s.Step)
		case on:
			said++
		case level < riff.Riffing:
			t.Fatalf("a dum off the base, step %d", s.Step)
		}
	}
	if level < riff.Riffing {
		require.Equal(t, cycles*len(c.Dums()), said)
	}
}

func TestStrokesOfRiffs(t *testing.T) {
	eachRiff(t, riff.Bare, func(t *testing.T, c *rhythm.Cycle, _ riff.Level, p riff.Part) {
		requireStrokes(t, c, p, cyclesHeld)
	})
}

// requireStrokes holds the strokes of each drum to the order of time, one at a
// tick, and to their limits; a roll lasts until something follows.
func requireStrokes(t *testing.T, c *rhythm.Cycle, p riff.Part, cycles int) {
	t.Helper()
	for drum, strokes := range [][]riff.Stroke{p.Lead, p.Bass} {
		free := 0
		for _, s := range strokes {
			at := s.Step*riff.TicksPerStep + s.Sub
			rolls := s.Roll > 0 && drum == 0 && s.Swell > s.Strength && s.Swell <= 1
			switch {
			case at < free, s.Sub < 0, s.Sub >= riff.TicksPerStep, !s.Sound.Sounds(),
				!(s.Strength > 0 && s.Strength <= 1),
				!rolls && (s.Roll != 0 || s.Swell != 0):
				t.Fatalf("%+v, %d ticks are free before", s, at-free)
			}
			free = at + max(s.Roll, 1)
		}
		require.LessOrEqual(t, free, cycles*c.Steps()*riff.TicksPerStep)
	}
}

// No break or roll in the first phrase, none below Riffing, and three of any four
// cycles free of them, if not more.
func TestOpenIsRare(t *testing.T) {
	eachRiff(t, riff.Bare, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		last := -4
		for _, s := range p.Open {
			require.Greater(t, level, riff.Ornamented)
			require.Less(t, s.From, s.To)
			require.Zero(t, s.To%c.Steps(), "it ends with its cycle")
			cycle := s.From / c.Steps()
			require.Equal(t, s.To/c.Steps()-1, cycle, "within one cycle")
			require.GreaterOrEqual(t, cycle, 3)
			require.GreaterOrEqual(t, cycle-last, 4)
			last = cycle
		}
	})
}

// In a break both drums strike the same few moments, the last of them the stop,
// and then nothing for half of it or more; in a roll both strike once, and the
// lead drum rolls to its end.
func TestBothDrumsFollow(t *testing.T) {
	kinds := map[riff.Kind]int{}
	eachRiff(t, riff.Riffing, func(t *testing.T, c *rhythm.Cycle, _ riff.Level, p riff.Part) {
		for _, o := range p.Open {
			kinds[o.Kind]++
			lead, bass := within(p.Lead, o), within(p.Bass, o)
			require.NotEmpty(t, lead)
			require.Len(t, bass, len(lead))
			for i := range lead {
				require.Equal(t, bass[i].Step, lead[i].Step)
				require.Zero(t, lead[i].Sub+bass[i].Sub)
				require.Equal(t, rhythm.Dum, bass[i].Sound)
			}
			require.Equal(t, o.From, lead[0].Step)
			stop := lead[len(lead)-1]
			if o.Kind == riff.Roll {
				require.Equal(t, riff.Stroke{Step: o.To, Sound: rhythm.Tek, Strength: stop.Strength, Swell: stop.Swell}, stop.End())
			} else {
				require.GreaterOrEqual(t, 2*(o.To-stop.Step), o.To-o.From)
			}
		}
	})
	require.Positive(t, kinds[riff.Break])
	require.Positive(t, kinds[riff.Roll])
}

func within(strokes []riff.Stroke, o riff.Span) []riff.Stroke {
	return slices.DeleteFunc(slices.Clone(strokes), func(s riff.Stroke) bool { return !o.Contains(s.Step) })
}

// Two hands can play every riff at every tempo of its rhythm, and, with what At
// leaves out, at any tempo of a round; Filled, which is played as it is written,
// up to the rhythm's fastest.
func TestTwoHandsCanPlay(t *testing.T) {
	const fastest = 220
	for _, c := range supplied(t) {
		for level := range levels {
			for seed := range seeds() {
				r, err := riff.New(c, level, seed)
				require.NoError(t, err)
				for _, bpm := range []int{c.Tempo.Slow, c.Tempo.Fast, c.Tempo.Fast + 1, 170, fastest} {
					if bpm > c.Tempo.Fast && level <= riff.Filled {
						continue
					}
					p, err := r.At(bpm).Cycles(0, 16)
					require.NoError(t, err)
					hands, ok := riff.Hands(c, p.Lead, bpm)
					require.True(t, ok, "%s %v %d at %d", c.ID, level, seed, bpm)
					requireHands(t, c, p.Lead, hands, bpm)
					_, ok = riff.Hands(c, p.Bass, bpm)
					require.True(t, ok, "the bass drum of %s %v %d at %d", c.ID, level, seed, bpm)
				}
			}
		}
	}
}

// requireHands holds hands to what they can do, counted anew.
func requireHands(t *testing.T, c *rhythm.Cycle, lead []riff.Stroke, hands []riff.Hand, bpm int) {
	t.Helper()
	last := map[riff.Hand]time.Duration{riff.Strong: -time.Second, riff.Other: -time.Second}
	for i, s := range lead {
		at, h := s.At(c, bpm), hands[i]
		switch {
		case at-last[1-h] < riff.TwoHandsGap, at-last[h] < riff.HandGap,
			h == riff.Other && (s.Sound == rhythm.Dum || s.Sound == rhythm.Sak):
			t.Fatalf("%+v with the %v hand at %d", s, h, bpm)
		}
		last[h] = at
	}
}

// Up to the rhythm's fastest tempo At changes nothing; above it the riff is the
// same but for what is left out or made a tek.
func TestAtOnlyLeavesOut(t *testing.T) {
	for _, c := range supplied(t) {
		for level := range levels {
			r, err := riff.New(c, level, 7)
			require.NoError(t, err)
			whole, err := r.Cycles(0, 16)
			require.NoError(t, err)
			same, err := r.At(c.Tempo.Fast).Cycles(0, 16)
			require.NoError(t, err)
			require.Equal(t, whole, same)
			fast, err := r.At(220).Cycles(0, 16)
			require.NoError(t, err)
			require.Equal(t, whole.Bass, fast.Bass)
			require.Equal(t, whole.Open, fast.Open)
			at := map[[2]int]riff.Stroke{}
			for _, s := range whole.Lead {
				at[[2]int{s.Step, s.Sub}] = s
			}
			for _, s := range fast.Lead {
				was, ok := at[[2]int{s.Step, s.Sub}]
				require.True(t, ok)
				require.Equal(t, was.Strength, s.Strength)
				require.Equal(t, was.Sound.Light(), s.Sound.Light())
			}
		}
	}
}

// Fewer cycles are the beginning of more, and cycles one by one are all at once.
func TestCyclesGoOn(t *testing.T) {
	for _, c := range supplied(t) {
		for level := range levels {
			r, err := riff.New(c, level, 9)
			require.NoError(t, err)
			whole, err := r.Cycles(0, 40)
			require.NoError(t, err)
			played, err := riff.Play(c, level, 40, 9)
			require.NoError(t, err)
			require.Equal(t, whole, played)
			for _, lap := range []int{1, 3, 7} {
				var joined riff.Part
				for first := 0; first < 40; first += lap {
					n := min(lap, 40-first)
					p, err := r.Cycles(first, n)
					require.NoError(t, err)
					joined = join(joined, p, first*c.Steps())
				}
				require.Equal(t, whole, joined, "%s %v by %d", c.ID, level, lap)
			}
		}
	}
}

func join(a, b riff.Part, steps int) riff.Part {
	for _, s := range b.Lead {
		s.Step += steps
		a.Lead = append(a.Lead, s)
	}
	for _, s := range b.Bass {
		s.Step += steps
		a.Bass = append(a.Bass, s)
	}
	for _, o := range b.Open {
		a.Open = append(a.Open, riff.Span{From: o.From + steps, To: o.To + steps, Kind: o.Kind})
	}
	return a
}
