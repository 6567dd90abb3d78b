package quiz

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// sounded is a stroke as it is heard.
type sounded struct {
	at   time.Duration
	bass bool
	low  bool
}

// alike is how far apart two strokes may be and still be taken for one: half a
// sixteenth at 300 beats a minute is 25 ms. Chosen.
const alike = 25 * time.Millisecond

// heard returns what both drums play until a time. All strokes that are no dums
// count alike.
func heard(t testing.TB, c *rhythm.Cycle, level riff.Level, bpm int, until time.Duration) []sounded {
	t.Helper()
	part, err := riff.Play(c, level, 1+int(until/c.Length(bpm)), 0)
	require.NoError(t, err)
	var all []sounded
	for i, drum := range [][]riff.Stroke{part.Lead, part.Bass} {
		for _, s := range drum {
			if at := s.At(c, bpm); at < until {
				all = append(all, sounded{at, i == 1, s.Sound.Low()})
			}
		}
	}
	return all
}

// strange counts the strokes of a that b does not have.
func strange(a, b []sounded) int {
	n := 0
	for _, s := range a {
		if !slices.ContainsFunc(b, func(o sounded) bool {
			return o.bass == s.bass && o.low == s.low && (o.at-s.at).Abs() <= alike
		}) {
			n++
		}
	}
	return n
}

// differ counts the strokes that one has and the other has not.
func differ(a, b []sounded) int { return strange(a, b) + strange(b, a) }

// tempi returns those of a rhythm's own range in steps, and both its ends.
func tempi(c *rhythm.Cycle, step int) []int {
	var all []int
	for bpm := c.Tempo.Slow; bpm < c.Tempo.Fast; bpm += step {
		all = append(all, bpm)
	}
	return append(all, c.Tempo.Fast)
}

// Every question has one right answer as it sounds: over all of its eights, from
// the first step on, both drums of each wrong choice at the tempo at which it
// would have been played, at the tempo of the question, and at any tempo of its
// own, differ by a stroke at least from what is heard.
func TestOneRightAnswerAsSounded(t *testing.T) {
	least := map[string]int{}
	for _, s := range settings(0, 40, 73, 100, 150, 200) {
		seeds := uint64(12)
		if s.bpm == 0 {
			seeds = 60
		}
		for seed := range seeds {
			q := next(t, Which, s.from, s.answers, s.bpm, s.level, seed)
			right, until := played(t, q)
			for _, c := range q.Choices {
				if c.ID == q.Right {
					require.Same(t, q.Rhythm, c.Rhythm)
					require.Zero(t, differ(right, heard(t, c.Rhythm, q.Level, c.BPM, until)))
					continue
				}
				for _, bpm := range append([]int{c.BPM, q.BPM}, tempi(c.Rhythm, 7)...) {
					n := differ(right, heard(t, c.Rhythm, q.Level, bpm, until))
					require.Positive(t, n, "%v %d: %s at %d is heard as %s at %d", s, seed, q.Right, q.BPM, c.ID, bpm)
					if was, found := least[s.level.String()]; !found || n < was {
						least[s.level.String()] = n
					}
				}
			}
		}
	}
	t.Log("fewest strokes of both drums that differ, by level:", least)
}

// From ornamented on, the riff of each rhythm is its own, and only the bass drum
// tells. Outside what breaks and rolls leave open it plays the base, and no wrong
// choice's base, at any tempo of its own, is the same.
func TestOneRightBaseUnderTheRiff(t *testing.T) {
	seeds := uint64(40)
	if testing.Short() {
		seeds = 8
	}
	for level := riff.Ornamented; level <= riff.Solo; level++ {
		for _, from := range []string{Five, Even, All} {
			for seed := range seeds {
				q := next(t, Which, from, MaxAnswers, 0, level, seed)
				until := q.Rhythm.At(q.Cycles()*q.Rhythm.Steps(), q.BPM)
				right, open := base(t, q.Rhythm, level, q.BPM, until, seed)
				for _, c := range q.Choices {
					for _, bpm := range append([]int{c.BPM, q.BPM}, tempi(c.Rhythm, 7)...) {
						other, _ := base(t, c.Rhythm, riff.Bare, bpm, until, seed)
						other = slices.DeleteFunc(other, func(s sounded) bool { return within(s.at, open) })
						if n := differ(right, other); c.ID != q.Right {
							require.Positive(t, n, "%v %d: %s at %d, %s at %d", level, seed, q.Right, q.BPM, c.ID, bpm)
						} else if bpm == q.BPM {
							require.Zero(t, n, "%v %d", level, seed)
						}
					}
				}
			}
		}
	}
}

// base returns what the bass drum plays of the base until a time, and from when to
// when it leaves it.
func base(t testing.TB, c *rhythm.Cycle, level riff.Level, bpm int, until time.Duration, seed uint64) (all []sounded, open [][2]time.Duration) {
	t.Helper()
	part, err := riff.Play(c, level, 1+int(until/c.Length(bpm)), seed)
	require.NoError(t, err)
	for _, s := range part.Base() {
		if at := s.At(c, bpm); at < until {
			all = append(all, sounded{at, true, s.Sound.Low()})
		}
	}
	for _, s := range part.Open {
		open = append(open, [2]time.Duration{c.At(s.From, bpm), c.At(s.To, bpm)})
	}
	return all, open
}

func within(at time.Duration, spans [][2]time.Duration) bool {
	return slices.ContainsFunc(spans, func(s [2]time.Duration) bool { return s[0] <= at && at < s[1] })
}

// played returns what is heard of a question and how long it lasts.
func played(t testing.TB, q Question) ([]sounded, time.Duration) {
	until := q.Rhythm.At(q.Cycles()*q.Rhythm.Steps(), q.BPM)
	return heard(t, q.Rhythm, q.Level, q.BPM, until), until
}

// Of any two rhythms, each at any of its own tempi and either level, one is not
// heard as the other unless they are mistakable.
func TestRhythmsThatAreNotMistakable(t *testing.T) {
	for _, a := range pool(t, All) {
		for _, b := range pool(t, All) {
			if Mistakable(a, b) {
				continue
			}
			for _, level := range []riff.Level{riff.Bare, riff.Filled} {
				for _, bpm := range tempi(a, 15) {
					until := a.At(a.CyclesIn(whichEights)*a.Steps(), bpm)
					right := heard(t, a, level, bpm, until)
					for _, other := range tempi(b, 9) {
						require.Positive(t, differ(right, heard(t, b, level, other, until)), "%s %d, %s %d", a.ID, bpm, b.ID, other)
					}
				}
			}
		}
	}
}

// The two halves of Same differ, as they sound, exactly when that is right.
func TestSameAsSounded(t *testing.T) {
	for _, level := range []riff.Level{riff.Bare, riff.Filled} {
		for seed := range uint64(300) {
			q := next(t, Same, All, 2, 0, level, seed)
			first, until := played(t, q)
			n := differ(first, heard(t, q.Other, level, q.BPM, until))
			if q.Right == same {
				require.Zero(t, n)
				continue
			}
			// One stroke a cycle is low instead of high: that one and that other, on two drums.
			require.Equal(t, 4*q.Cycles(), n, "%s %s", q.Rhythm.Skeleton, q.Other.Skeleton)
		}
	}
}

// The dums of HowMany and the stroke of Stroke, as they sound on either drum.
func TestDumsAsSounded(t *testing.T) {
	for seed := range uint64(300) {
		for _, ask := range []Ask{HowMany, Stroke} {
			q := next(t, ask, All, 2, 0, riff.Level(seed%2), seed)
			all, _ := played(t, q)
			dums := map[bool]int{}
			for _, s := range all {
				if s.low {
					dums[s.bass]++
				}
			}
			require.Equal(t, dums[true], dums[false])
			if ask == HowMany {
				require.Equal(t, q.Right, string(rune('0'+dums[true])))
				continue
			}
			require.Len(t, all, 2, "one stroke of each drum")
			require.Equal(t, q.Right == dum, dums[true] == 1)
		}
	}
}
