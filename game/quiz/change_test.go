package quiz

import (
	"bytes"
	"errors"
	"fmt"
	"math"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// Right is the ID of what it becomes, "" where it never changes.
func (c Change) Right() string {
	if c.To == nil {
		return ""
	}
	return c.To.ID
}

func nextChange(t testing.TB, start, from string, answers, eights, bpm int, level riff.Level, seed uint64) Change {
	t.Helper()
	var first *rhythm.Cycle
	if start != "" {
		first = get(t, start)
	}
	q, err := Lean{}.NextChange(first, pool(t, from), answers, eights, bpm, level, seed)
	require.NoError(t, err)
	return q
}

// soundChange checks what holds for every question of Hear the change.
func soundChange(t testing.TB, q Change) {
	t.Helper()
	require.NoError(t, q.Check())
	require.GreaterOrEqual(t, len(q.Choices), MinAnswers)
	all := []*rhythm.Cycle{q.From}
	for _, c := range q.Choices {
		require.Equal(t, q.BPM, c.BPM)
		require.Equal(t, []string{c.Rhythm.ID, c.Rhythm.Name}, []string{c.ID, c.Name})
		require.Equal(t, q.From.Metre.Unit, c.Rhythm.Metre.Unit, "one beat")
		for _, o := range all {
			require.False(t, Mistakable(c.Rhythm, o), "%s %s", c.ID, o.ID)
		}
		all = append(all, c.Rhythm)
	}
	if q.To == nil {
		require.Empty(t, q.Right())
		return
	}
	right, found := q.Choice(q.Right())
	require.True(t, found)
	require.Same(t, q.To, right.Rhythm)
}

// Every rhythm that has a beat in common with two others begins and follows, in
// both their own ranges of tempo; one round in four has no change; each place from
// the second quarter to the last eight but one comes.
func TestNextChange(t *testing.T) {
	n := 1200
	if testing.Short() {
		n = 400
	}
	for _, from := range []string{Five, Even, All} {
		never, at := 0, map[int]int{}
		begins, follows := map[string]bool{}, map[string]bool{}
		for seed := range uint64(n) {
			q := nextChange(t, "", from, 2+int(seed%3), 8, 0, riff.Bare, seed)
			soundChange(t, q)
			require.LessOrEqual(t, len(q.Choices), 2+int(seed%3))
			for _, c := range append(slices.Clone(q.Choices), Choice{Rhythm: q.From}) {
				require.GreaterOrEqual(t, q.BPM, c.Rhythm.Tempo.Slow)
				require.LessOrEqual(t, q.BPM, c.Rhythm.Tempo.Fast)
			}
			begins[q.From.ID] = true
			if q.To == nil {
				never++
				continue
			}
			follows[q.To.ID] = true
			at[q.At]++
		}
		require.InDelta(t, n/4, never, 4*math.Sqrt(float64(n)*3/16))
		require.Len(t, at, 5, "8 eights: after 2 to 6")
		for _, hits := range at {
			require.InDelta(t, n*3/4/5, hits, 4*math.Sqrt(float64(n)*3/4/5))
		}
		for _, c := range pool(t, from) {
			require.True(t, begins[c.ID], "%s begins", c.ID)
			require.True(t, follows[c.ID], "%s follows", c.ID)
		}
	}
}

// As it sounds: the change can be heard, and from the change on what is heard
// differs by a stroke at least, of both drums, from the first rhythm going on and
// from each wrong choice in its place.
func TestOneRightAnswerAfterTheChange(t *testing.T) {
	for _, from := range []string{Five, Even, All} {
		for _, level := range []riff.Level{riff.Bare, riff.Filled} {
			for _, bpm := range []int{0, 60, 140} {
				for seed := range uint64(40) {
					q := nextChange(t, "", from, 4, 4, bpm, level, seed)
					_, err := round.NewChanged(q.Change)
					require.NoError(t, err)
					if q.To == nil {
						continue
					}
					until := q.To.At(q.To.CyclesIn(1)*q.To.Steps(), q.BPM) // heard at least: one eight
					right := heard(t, q.To, level, q.BPM, until)
					require.Positive(t, differ(right, heard(t, q.From, level, q.BPM, until)), "%s from %s", q.To.ID, q.From.ID)
					for _, c := range q.Choices {
						require.Equal(t, c.ID == q.Right(), differ(right, heard(t, c.Rhythm, level, q.BPM, until)) == 0, "%s as %s", q.To.ID, c.ID)
					}
				}
			}
		}
	}
}

// Near first: from maqsum, at a tempo of the middle, the change is mostly to its own
// family.
func TestChangesAreNear(t *testing.T) {
	family := 0
	for seed := range uint64(600) {
		q := nextChange(t, "maqsum", Even, 2, 4, 0, riff.Bare, seed)
		require.Equal(t, "maqsum", q.From.ID)
		for _, c := range q.Choices {
			if c.Rhythm.Family == q.From.Family {
				family++
			}
		}
	}
	require.Greater(t, family, 600, "of 1,200 names")
}

// What it becomes has nothing to do with its place among the names.
func TestChangeIsToAnyOfThem(t *testing.T) {
	const n = 4000
	var places [3]int
	changes := 0
	for seed := range uint64(n) {
		q := nextChange(t, "maqsum", "baladi.ciftetelli.saidi", 3, 4, 100, riff.Bare, seed)
		require.Len(t, q.Choices, 3)
		if q.To != nil {
			changes++
			places[slices.IndexFunc(q.Choices, func(c Choice) bool { return c.ID == q.Right() })]++
		}
	}
	for _, hits := range places {
		require.InDelta(t, changes/3, hits, 4*math.Sqrt(n/6.))
	}
}

func TestNextChangeRefuses(t *testing.T) {
	maqsum := get(t, "maqsum")
	for _, c := range []struct {
		start           *rhythm.Cycle
		from            string
		answers, eights int
		want            string
	}{
		{nil, Five, 5, 4, "quiz: 5 answers; a question has 2 to 4"},
		{nil, Five, 2, 3, "quiz: 3 eights; a change is asked in 4 to 8"},
		{nil, Five, 2, 9, "quiz: 9 eights; a change is asked in 4 to 8"},
		{maqsum, "baladi", 2, 4, "quiz: too few rhythms: none that two others could follow at the same tempo"},
		{nil, "maqsum.fallahi.saidi", 2, 4, "quiz: too few rhythms: none that two others could follow at the same tempo"},
		{maqsum, "karsilama.roman-9", 2, 4, "quiz: too few rhythms: none that two others could follow at the same tempo"},
		{get(t, "karachi"), Five, 2, 4, "quiz: too few rhythms: none that two others could follow at the same tempo"},
	} {
		_, err := Lean{}.NextChange(c.start, pool(t, c.from), c.answers, c.eights, 0, riff.Bare, 1)
		require.EqualError(t, err, c.want)
	}
	_, err := Lean{}.NextChange(maqsum, nil, 2, 4, 0, riff.Bare, 1)
	require.True(t, errors.Is(err, ErrTooFew))
	q, err := Lean{}.NextChange(maqsum, pool(t, "saidi.baladi"), 4, 4, 0, riff.Bare, 1)
	require.NoError(t, err, "the first need not be in the pool")
	require.Len(t, q.Choices, 2, "as many as there are")
}

// A seed is a promise, whatever the order of the pool; see TestGolden.
func TestGoldenChanges(t *testing.T) {
	var b bytes.Buffer
	for _, start := range []string{"", "maqsum", "malfuf"} {
		for _, from := range []string{Five, All} {
			for i := range uint64(8) {
				seed := i * i * i * 1_234_567_891
				q := nextChange(t, start, from, 2+int(i%3), 4+int(i%5), 0, riff.Level(i%2), seed)
				fmt.Fprintf(&b, "%s %s %d %d: %s at %d", start, from, q.Eights, seed, q.From.Skeleton, q.BPM)
				if q.To != nil {
					fmt.Fprintf(&b, ", after %d %s", q.At, q.To.Skeleton)
				}
				fmt.Fprintf(&b, " of %s\n", ids(q.Choices))
				reversed := slices.Clone(pool(t, from))
				slices.Reverse(reversed)
				again, err := Lean{}.NextChange(q.From, reversed, 2+int(i%3), 4+int(i%5), 0, riff.Level(i%2), seed)
				require.NoError(t, err)
				if start != "" {
					require.Equal(t, q, again)
				}
			}
		}
	}
	golden(t, "changes.txt", b.String())
}

// FuzzNextChange: whatever is asked for, there is a question that can be played, or
// an error, and the same again.
func FuzzNextChange(f *testing.F) {
	f.Add(uint32(0xffffffff), byte(0), 4, 4, 0, byte(0), uint64(1))
	f.Add(uint32(7), byte(3), 2, 8, 100, byte(1), uint64(1<<53))
	f.Fuzz(func(t *testing.T, which uint32, start byte, answers, eights, bpm int, level byte, seed uint64) {
		var some []*rhythm.Cycle
		all := supplied(t)
		for i, id := range all.IDs() {
			if which>>i&1 == 1 {
				some = append(some, get(t, id))
			}
		}
		var first *rhythm.Cycle
		if int(start) < len(all.IDs()) {
			first = get(t, all.IDs()[start])
		}
		q, err := Lean{}.NextChange(first, some, answers, eights, bpm, riff.Level(level), seed)
		again, twice := Lean{}.NextChange(first, some, answers, eights, bpm, riff.Level(level), seed)
		require.Equal(t, err, twice)
		require.Equal(t, q, again)
		if err != nil {
			require.Zero(t, q)
			return
		}
		soundChange(t, q)
		_, err = round.NewChanged(q.Change)
		require.NoError(t, err)
	})
}
