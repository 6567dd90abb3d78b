package history

import (
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// finished are a flawless round of each kind, and one in which all went wrong. A kind
// without them fails TestKinds.
var finished = map[string]func(t testing.TB) (right, wrong Round){
	Dums:    tappedAs(func(testing.TB) Round { r, _ := studio(); return r }),
	Stop:    tappedAs(broken),
	Carry:   tappedAs(carried),
	Which:   chosenAs(0, "maqsum", "saidi"),
	Stroke:  chosenAs(1, "dum", "tek"),
	HowMany: chosenAs(2, "2", "3"),
	Same:    chosenAs(3, "same", "different"),
	Change: func(testing.TB) (right, wrong Round) {
		right, wrong = changed(), changed()
		right.Taps, right.Answer, right.Right = right.Taps[1:], right.To, true
		return right, wrong
	},
}

// tappedAs are rounds with the strokes of another: each tapped as it sounds; and none.
func tappedAs(other func(testing.TB) Round) func(testing.TB) (right, wrong Round) {
	return func(t testing.TB) (right, wrong Round) {
		return tappedBy(t, other(t), 0), tappedBy(t, other(t), 0.3)
	}
}

// tappedBy is a round tapped so many seconds behind each stroke.
func tappedBy(t testing.TB, played Round, behind float64) Round {
	t.Helper()
	var strokes, taps []time.Duration
	sample := studioTap()
	played.Taps = nil
	for i := range played.Breaks {
		played.Breaks[i].Taps = 0
	}
	for _, s := range played.Strokes {
		at := s + behind
		sample.Frame = at * float64(played.Rate)
		played.Taps = append(played.Taps, sample)
		strokes, taps = append(strokes, time.Duration(s*1e9)), append(taps, time.Duration(at*1e9))
	}
	r, err := New(played, scoring.Score(strokes, taps, 0, 50*time.Millisecond))
	require.NoError(t, err)
	return r
}

func studioTap() Tap {
	played, _ := studio()
	return played.Taps[0]
}

// chosenAs are the nth of answered with a right answer and with a wrong one.
func chosenAs(n int, good, bad string) func(testing.TB) (right, wrong Round) {
	return func(testing.TB) (right, wrong Round) {
		right, wrong = answered()[n], answered()[n]
		right.Answer, right.Right = good, true
		wrong.Answer, wrong.Right = bad, false
		return right, wrong
	}
}

// Each kind has a name of its own and tells all that others ask of it; its rounds are
// written and read again; a flawless one is right, and one in which all went wrong is not.
func TestKinds(t *testing.T) {
	var names []string
	for _, k := range Kinds {
		require.NotContains(t, names, k.ID)
		names = append(names, k.ID)
		require.Contains(t, []Play{Tapped, Answered, Pressed}, k.Play, k.ID)
		require.NotNil(t, k.Guess, k.ID)
		require.False(t, k.Along && k.Play != Tapped, k.ID)
		require.Contains(t, finished, k.ID)
		right, wrong := finished[k.ID](t)
		for _, r := range []Round{right, wrong} {
			require.Equal(t, k.ID, r.Kind)
			require.Contains(t, thereAndBack(t, r), `"kind":"`+k.ID+`"`)
			require.True(t, Tried(r), k.ID)
		}
		require.True(t, Right(right), k.ID)
		require.False(t, Right(wrong), k.ID)
	}
}

// Only the round's own maker makes it.
func TestKindsAreMadeByTheirMakers(t *testing.T) {
	makers := map[Play]func(Round) error{
		Tapped: func(r Round) error {
			var taps []time.Duration
			for range r.Taps {
				taps = append(taps, time.Hour)
			}
			_, err := New(r, scoring.Score(make([]time.Duration, len(r.Strokes)), taps, 0, 0))
			return err
		},
		Answered: func(r Round) error { _, err := NewAnswered(r); return err },
		Pressed:  func(r Round) error { _, err := NewChange(r); return err },
	}
	for _, k := range Kinds {
		right, _ := finished[k.ID](t)
		for play, made := range makers {
			if play == k.Play {
				require.NoError(t, made(right), k.ID)
			} else {
				requireField(t, "kind", made(right))
			}
		}
	}
}

// What only some kinds have is refused of all others, and no member comes twice.
func TestKindsHaveNoForeignMembers(t *testing.T) {
	for _, k := range Kinds {
		right, _ := finished[k.ID](t)
		var names []string
		for _, f := range right.fields() {
			names = append(names, f.name)
		}
		require.Len(t, slices.Compact(slices.Sorted(slices.Values(names))), len(names), "%s: a member twice", k.ID)
		for _, other := range Kinds {
			theirs, _ := finished[other.ID](t)
			foreign := ""
			for f := range told(&theirs) {
				if !slices.Contains(names, f.name) && !f.empty() {
					foreign = f.name
					break
				}
			}
			theirs.Kind, theirs.Rhythm = k.ID, "maqsum"
			if _, err := Format(theirs); foreign != "" {
				require.ErrorContains(t, err, "has none", "%s of %s in %s", foreign, other.ID, k.ID)
			}
		}
	}
}

// A round of a kind that is not known tells nothing, whatever it says of itself.
func TestUnknownKindTellsNothing(t *testing.T) {
	_, known := KindOf("clapping")
	require.False(t, known)
	for _, k := range Kinds {
		r, _ := finished[k.ID](t)
		r.Kind = "clapping"
		require.False(t, Right(r))
		require.False(t, Tried(r))
		_, err := Format(r)
		requireField(t, "kind", err)
	}
}

// What is right by chance: one of the choices; half of that where one presses or does
// not; of taps what taps at any place are.
func TestGuess(t *testing.T) {
	asked := Asked{Rhythm: "maqsum", To: "saidi", Choices: 4, Place: func() int { return 6 }}
	special := map[string]int{Change: 8, Carry: 0}
	for _, k := range Kinds {
		want, is := special[k.ID]
		if !is {
			want = map[Play]int{Tapped: 6, Answered: 4}[k.Play]
		}
		require.Equal(t, want, k.Guess(asked), k.ID)
	}
	k, _ := KindOf(Change)
	asked.To = ""
	require.Zero(t, k.Guess(asked), "who never presses is right")
	require.Empty(t, k.Named(asked))
}
