package quiz

import (
	"bytes"
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

var filled = Lean{Fill: true}

func nextFilled(t testing.TB, from string, answers, bpm int, level riff.Level, seed uint64) Question {
	t.Helper()
	q, err := filled.Next(Which, pool(t, from), answers, bpm, level, seed)
	require.NoError(t, err)
	return q
}

func changeFilled(t testing.TB, start *rhythm.Cycle, from string, answers, eights, bpm int, level riff.Level, seed uint64) Change {
	t.Helper()
	q, err := filled.NextChange(start, pool(t, from), answers, eights, bpm, level, seed)
	require.NoError(t, err)
	return q
}

// Of the named pools there are as many names as were asked for, at every level: in all
// questions of Which, and after each rhythm that may change but for the odd ones, which
// have a beat in common with two others only. Without filling, of the five played bare
// no question had four, and two in five had two where three were asked for.
func TestAsManyNamesAsAskedFor(t *testing.T) {
	seeds := uint64(60)
	if testing.Short() {
		seeds = 15
	}
	for _, from := range []string{Five, Even, All} {
		for level := riff.Bare; level <= riff.Solo; level++ {
			for answers := MinAnswers; answers <= MaxAnswers; answers++ {
				require.Equal(t, Names{Least: answers, Most: answers}, filled.Names(pool(t, from), answers, 0, level))
				for seed := range seeds {
					q := nextFilled(t, from, answers, 0, level, seed)
					sound(t, q)
					require.Len(t, q.Choices, answers, "%s %s %d", from, level, seed)
				}
			}
		}
		for answers := MinAnswers; answers <= MaxAnswers; answers++ {
			for seed := range 4 * seeds {
				q := changeFilled(t, nil, from, answers, 6, 0, riff.Bare, seed)
				want := answers
				if q.From.Metre.Unit == 8 {
					want = min(want, 2)
				}
				require.Len(t, q.Choices, want, "%s %d: %s", from, seed, q.From.ID)
			}
		}
	}
}

// Where density has as many, the question of a seed is the one that it always was; and
// where it has not, all choices are played at one tempo, within their own ranges.
func TestFilledQuestions(t *testing.T) {
	timed := 0
	for _, from := range []string{Five, Even, All} {
		for level := riff.Bare; level <= riff.Filled; level++ {
			for seed := range uint64(80) {
				answers := MinAnswers + int(seed%3)
				old, q := next(t, Which, from, answers, 0, level, seed), nextFilled(t, from, answers, 0, level, seed)
				if from == All && level == riff.Filled {
					continue // sama'i thaqil, sparser than all others can be, is asked now: so lots fall otherwise
				}
				if len(old.Choices) == answers {
					require.Equal(t, []any{old.Right, old.BPM, ids(old.Choices)}, []any{q.Right, q.BPM, ids(q.Choices)})
					continue
				}
				timed++
				for _, c := range q.Choices {
					require.GreaterOrEqual(t, c.BPM, c.Rhythm.Tempo.Slow)
					require.LessOrEqual(t, c.BPM, c.Rhythm.Tempo.Fast)
					// Whole beats a minute, of a quarter or an eighth, of the same quarters.
					require.InDelta(t, float64(q.BPM)/float64(q.Rhythm.Metre.Unit), float64(c.BPM)/float64(c.Rhythm.Metre.Unit), 1/4.)
				}
			}
		}
	}
	require.Greater(t, timed, 50)
}

// Every rhythm of a pool is asked, also the one that is sparser than all others can be.
func TestFilledAsksAll(t *testing.T) {
	for level := riff.Bare; level <= riff.Filled; level++ {
		asked := map[string]bool{}
		for seed := range uint64(500) {
			asked[nextFilled(t, All, 4, 0, level, seed).Right] = true
		}
		require.Len(t, asked, len(pool(t, All)))
	}
}

// As it sounds each filled question has one right answer; see
// TestOneRightAnswerAsSounded and TestOneRightAnswerAfterTheChange.
func TestFilledAsSounded(t *testing.T) {
	for _, from := range []string{Five, Even, All} {
		for level := riff.Bare; level <= riff.Filled; level++ {
			for seed := range uint64(25) {
				q := nextFilled(t, from, MaxAnswers, 0, level, seed)
				right, until := played(t, q)
				for _, c := range q.Choices {
					for _, bpm := range append([]int{c.BPM, q.BPM}, tempi(c.Rhythm, 7)...) {
						if n := differ(right, heard(t, c.Rhythm, q.Level, bpm, until)); c.ID != q.Right {
							require.Positive(t, n, "%s as %s", q.Right, c.ID)
						} else if bpm == q.BPM {
							require.Zero(t, n)
						}
					}
				}
			}
		}
		for seed := range uint64(80) {
			q := changeFilled(t, nil, from, MaxAnswers, 4, 0, riff.Level(seed%2), seed)
			_, err := round.NewChanged(q.Change)
			require.NoError(t, err)
			if q.To != nil {
				until := q.To.At(q.To.CyclesIn(1)*q.To.Steps(), q.BPM)
				toldApart(t, q, until)
			}
		}
	}
}

// toldApart: what it becomes is heard as none of the other choices, nor as the first.
func toldApart(t *testing.T, q Change, until time.Duration) {
	t.Helper()
	right := heard(t, q.To, q.Level, q.BPM, until)
	require.Positive(t, differ(right, heard(t, q.From, q.Level, q.BPM, until)), "%s from %s", q.To.ID, q.From.ID)
	for _, c := range q.Choices {
		require.Equal(t, c.ID == q.Right(), differ(right, heard(t, c.Rhythm, q.Level, q.BPM, until)) == 0, "%s as %s", q.To.ID, c.ID)
	}
}

// At a tempo that somebody sets, beyond what one of them is played at, two rhythms of the
// same strokes are no choices of one question after all.
func TestSameStrokesAtASetTempo(t *testing.T) {
	together := func(q Change) bool {
		all := []string{q.From.ID}
		for _, c := range q.Choices {
			all = append(all, c.ID)
		}
		return slices.Contains(all, "baladi") && slices.Contains(all, "masmudi-kabir")
	}
	for bpm, want := range map[int]bool{0: true, 100: true, 120: false, 60: false} {
		got := false
		for seed := range uint64(200) {
			got = got || together(changeFilled(t, nil, Five, 4, 6, bpm, riff.Bare, seed))
		}
		require.Equal(t, want, got, "at %d", bpm)
	}
}

// Where there are fewer names than were asked for, it can be said why.
func TestNamesToldApart(t *testing.T) {
	ids := func(n Names) (few, a, b string) {
		if n.Few == nil {
			return
		}
		few = n.Few.ID
		if n.Apart[0] != nil {
			a, b = n.Apart[0].ID, n.Apart[1].ID
		}
		return few, a, b
	}
	for _, c := range []struct {
		from        string
		answers     int
		least, most int
		few, a, b   string
		speed       bool
	}{
		{"baladi.maqsum.saidi", 3, 3, 3, "", "", "", false},
		{"fallahi.maqsum.saidi", 3, 2, 2, "fallahi", "fallahi", "maqsum", true},
		{"malfuf.masmudi-kabir.wahda", 3, 2, 2, "malfuf", "malfuf", "wahda", true},
	} {
		n := filled.Names(pool(t, c.from), c.answers, 0, riff.Bare)
		few, a, b := ids(n)
		require.Equal(t, []any{c.least, c.most, c.few, c.a, c.b, c.speed}, []any{n.Least, n.Most, few, a, b, n.Speed}, c.from)
	}
	require.Equal(t, Names{Least: 4, Most: 4}, filled.ChangeNames(get(t, "maqsum"), pool(t, Five), 4, 0))
	require.Equal(t, Names{Least: 4, Most: 4}, filled.ChangeNames(nil, pool(t, Even), 4, 0))
	n := filled.ChangeNames(nil, pool(t, All), 4, 0)
	require.Equal(t, []int{2, 4}, []int{n.Least, n.Most})
	require.True(t, n.Few.Odd())
	n = Lean{}.ChangeNames(get(t, "maqsum"), pool(t, Five), 4, 0)
	few, a, b := ids(n)
	require.Equal(t, []any{3, 3, "maqsum", "baladi", "masmudi-kabir", true}, []any{n.Least, n.Most, few, a, b, n.Speed}, "as it was")
}

// A seed is a promise; see TestGolden.
func TestGoldenFilled(t *testing.T) {
	var b bytes.Buffer
	for _, from := range []string{Five, All} {
		for i := range uint64(8) {
			seed := i * i * i * 1_234_567_891
			level := riff.Level(i % 2)
			q := nextFilled(t, from, 3+int(i/4), 0, level, seed)
			fmt.Fprintf(&b, "which %s %s %d: %s at %d of", from, level, seed, q.Right, q.BPM)
			for _, c := range q.Choices {
				fmt.Fprintf(&b, " %s/%d", c.ID, c.BPM)
			}
			c := changeFilled(t, nil, from, 3+int(i/4), 6, 0, level, seed)
			fmt.Fprintf(&b, "\nchange %s %s %d: %s at %d, after %d %s of %s\n", from, level, seed, c.From.ID, c.BPM, c.At, c.Right(), ids(c.Choices))
		}
	}
	golden(t, "filled.txt", b.String())
}
