package roundview

import (
	"math/rand/v2"
	"slices"
	"strings"
	"sync"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func everyRhythm(t testing.TB) []*rhythm.Cycle { return proof.EveryRhythm(t) }

// ids are those of a screen's items, in order.
func ids(s view.Screen) (all []string) {
	s.Each(func(it *view.Item) { all = append(all, it.ID) })
	return all
}

// requireWhole: a screen has all that a reader needs, one heading of the first level, and
// no words that were not filled in; its pictures keep within their frames.
func requireWhole(t *testing.T, s view.Screen, of ...any) {
	t.Helper()
	require.NoError(t, screenproof.Check(s), of...)
	require.NotContains(t, text(t, s), "{", of...)
	headings := 0
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleHeading && it.Level == 1 {
			headings++
		}
		if it.Picture != nil {
			screenproof.RequireInside(t, it.Picture)
		}
	})
	require.Equal(t, 1, headings, of...)
}

// dumsBy is a round of a rhythm that was played by chance, at a phase.
func dumsBy(t *testing.T, c *rhythm.Cycle, phase view.Phase, chance *rand.Rand) *Dums {
	yes := func() bool { return chance.IntN(2) == 1 }
	name := view.NameOf(c)
	d := &Dums{Phase: phase, Rhythm: name, Base: c.Skeleton, Counts: picture.CountsOf(c.Base()), Groups: c.Grouping, Hidden: yes(),
		Any: yes(), From: view.FromFive, Core: core(t), More: more(t), BPM: c.Tempo.Usual, Slow: c.Tempo.Slow, Fast: c.Tempo.Fast + 1,
		Eights: 1 + chance.IntN(32), Level: allLevels[chance.IntN(5)], Levels: allLevels, Hide: chance.IntN(101),
		Volume: chance.IntN(102) - 1, Balance: 10 * (chance.IntN(21) - 10), Columns: []int{0, 4}[chance.IntN(2)], Round: chance.IntN(3), Why: view.Why(chance.IntN(4))}
	if len(c.Grouping) > 0 {
		d.Columns = 0
	}
	if phase == view.Reviewing {
		r := playedBy(t, c, chance)
		d.Review = ReviewOf(r)
		d.Result = ResultOf(r, d.Review)
		d.Result.Measured = yes()
		d.Replay = Replay{Hearing: yes(), Drums: []string{"", DrumsBass, DrumsLead}[chance.IntN(3)], Slowly: yes()}
	}
	return d
}

// playedBy is a round of dums that somebody tapped by chance: well, badly, late, or not.
func playedBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) *round.Round {
	t.Helper()
	r, err := round.New(round.Setting{Kind: round.Dums, Rhythm: c, BPM: c.Tempo.Usual, Eights: 1 + chance.IntN(4),
		Level: riff.Level(chance.IntN(5)), Seed: chance.Uint64N(99) + 1})
	require.NoError(t, err)
	r.Begin()
	lean, spread, misses := 30*chance.NormFloat64(), 50*chance.Float64(), chance.Float64()
	for _, at := range r.Strokes() {
		if chance.Float64() >= misses*misses {
			r.Tap(round.Tap{At: at + time.Duration((lean+spread*chance.NormFloat64())*float64(ms))}, 0)
		}
		if chance.IntN(12) == 0 {
			r.Tap(round.Tap{At: at + 170*ms}, 0)
		}
	}
	r.Hear(time.Hour, 0)
	return r
}

// Every round of dums of every rhythm has whole screens at every phase, however it was
// played.
func TestEveryRoundOfDumsIsWhole(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 21))
	for _, c := range everyRhythm(t) {
		for _, phase := range []view.Phase{view.Ready, view.Playing, view.Reviewing, view.Voided} {
			for range 4 {
				d := dumsBy(t, c, phase, chance)
				s := d.Screen(w)
				requireWhole(t, s, c.ID, phase)
				if phase != view.Reviewing {
					continue
				}
				require.NotEmpty(t, s.Find("finding").Text)
				require.Len(t, s.Find("one-by-one").Rows, len(d.Result.Taps))
				require.Equal(t, d.BPM <= d.Slow, s.Find("slower").Disabled, "it never goes below its slowest")
				require.Equal(t, map[bool]string{false: view.ActChange, true: view.ActStop}[d.Replay.Hearing], s.Escape)
			}
		}
	}
}

// A rhythm that is not named before the review stands nowhere on the screens before it:
// they are the same whatever it is.
func TestAnyTellsNothingBeforeTheReview(t *testing.T) {
	w := words(t)
	maqsum := supplied(t, "maqsum")
	for _, c := range everyRhythm(t) {
		for _, phase := range []view.Phase{view.Ready, view.Voided} {
			a, b := dumsBy(t, maqsum, phase, rand.New(rand.NewPCG(1, 1))), dumsBy(t, c, phase, rand.New(rand.NewPCG(1, 1)))
			a.Any, b.Any, a.BPM, b.BPM, b.Slow, b.Fast, a.Columns, b.Columns = true, true, 0, 0, a.Slow, a.Fast, 0, 0
			require.Equal(t, text(t, a.Screen(w)), text(t, b.Screen(w)), "%s %d", c.ID, phase)
			require.Equal(t, a.Head(), b.Head())
		}
	}
}

// While dums are asked by ear no stroke is to be seen, and after the round all are.
func TestHiddenStrokesAreShownAfterwards(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 22))
	for _, c := range everyRhythm(t) {
		d := dumsBy(t, c, view.Playing, chance)
		require.True(t, d.Any || d.Head().Hidden, c.ID)
		d = dumsBy(t, c, view.Reviewing, chance)
		require.False(t, d.Head().Hidden, c.ID)
		require.Equal(t, d.Review, d.Head().Review)
		d = dumsBy(t, c, view.Voided, chance)
		require.True(t, d.Head().Hidden, "what does not count is asked once more")
		require.Empty(t, d.Head().Base)
	}
}

// asWhich is a question of the quiz as it is shown, at a phase, with an answer by chance.
func asWhich(q quiz.Question, phase view.Phase, chance *rand.Rand) *Which {
	out := &Which{Phase: phase, Ask: string(q.Ask), Answers: 3, From: view.FromFive, Eights: 2, Level: q.Level.String(), Levels: allLevels, Volume: 60,
		CountIn: chance.IntN(2) == 1, Second: chance.IntN(2) == 1, Repeat: chance.IntN(2) == 1}
	for _, c := range q.Choices {
		out.Choices = append(out.Choices, view.Option{Value: c.ID, Label: c.Name})
	}
	if phase != view.Reviewing {
		return out
	}
	said := q.Choices[chance.IntN(len(q.Choices))]
	right, _ := q.Choice(q.Right)
	out.Right, out.Said, out.BPM = view.Option{Value: right.ID, Label: right.Name}, view.Option{Value: said.ID, Label: said.Name}, q.BPM
	out.Differences = quiz.Differences(q, said.ID)
	if q.Rhythm != nil {
		out.Sides = []Side{{ID: q.Rhythm.ID, Rhythm: q.Rhythm}}
	}
	if said.Rhythm != nil && said.ID != q.Right {
		out.Sides = append(out.Sides, Side{ID: said.ID, Rhythm: said.Rhythm})
	}
	return out
}

// drawn are questions of every form, at every level, of six seeds: drawn once, since names
// take long to be put together.
var drawn = sync.OnceValues(func() (all [6][]quiz.Question, err error) {
	catalogue, err := proof.Supplies()
	if err != nil {
		return all, err
	}
	pool, err := quiz.From(catalogue, quiz.Five)
	for _, ask := range view.Asks() {
		for level := riff.Bare; level <= riff.Solo; level++ {
			for seed := range all {
				if q, err := quiz.Next(quiz.Ask(ask), pool, 3, 0, level, uint64(seed+1)); err == nil {
					all[seed] = append(all[seed], q) // not every level suits every form
				}
			}
		}
	}
	return all, err
})

// eachQuestion goes through the questions of some seeds, 6 at most.
func eachQuestion(t *testing.T, seeds int, each func(quiz.Question)) {
	t.Helper()
	all, err := drawn()
	require.NoError(t, err)
	for _, some := range all[:seeds] {
		for _, q := range some {
			each(q)
		}
	}
}

// Every question has whole screens at every phase, whatever was said.
func TestEveryQuestionIsWhole(t *testing.T) {
	w, chance, n := words(t), rand.New(rand.NewPCG(1, 23)), 0
	eachQuestion(t, 5, func(q quiz.Question) {
		n++
		for _, phase := range []view.Phase{view.Ready, view.Playing, view.Waiting, view.Reviewing, view.Voided} {
			requireWhole(t, asWhich(q, phase, chance).Screen(w), q.Ask, phase)
		}
	})
	require.Greater(t, n, 40)
}

// While a question is asked, its screen is the same whatever the answer is: what would
// tell it, put into the model, changes nothing.
func TestNothingOfTheAnswerIsAsked(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 24))
	eachQuestion(t, 4, func(q quiz.Question) {
		for _, phase := range []view.Phase{view.Playing, view.Waiting} {
			bare := asWhich(q, phase, chance)
			told := *bare
			after := asWhich(q, view.Reviewing, chance)
			told.Right, told.Said, told.BPM, told.Sides, told.Differences = after.Right, after.Said, after.BPM, after.Sides, after.Differences
			a, b := bare.Screen(w), told.Screen(w)
			require.Equal(t, text(t, a), text(t, b))
			require.Equal(t, a.Keys, b.Keys)
			require.Equal(t, picture.Head{Hidden: true}, told.Head())
		}
	})
}

// Each choice has its digit, and what that sends is one of the quiz's own answers; before
// anything is heard no answer is taken, by no key and no button.
func TestDigitsSendAnswers(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 25))
	eachQuestion(t, 3, func(q quiz.Question) {
		asked := asWhich(q, view.Playing, chance)
		for _, countIn := range []bool{false, true} {
			asked.CountIn = countIn
			s := asked.Screen(w)
			if countIn {
				require.Empty(t, s.Keys)
			} else {
				require.Len(t, s.Keys, len(q.Choices))
			}
			for _, k := range s.Keys {
				c, ok := q.Choice(k.Value)
				require.True(t, ok)
				require.Len(t, k.Key, 1)
				if q.Ask == view.AskHowMany {
					require.Equal(t, c.ID, k.Key, "a number is its own key")
				}
			}
			for i, it := range s.Find("choices").Children {
				require.Equal(t, q.Choices[i].ID, it.Value, "in the order in which they are asked")
				require.Equal(t, countIn, it.Disabled)
			}
		}
	})
}

// After a question it is said what was right, and whether that was said; both are to be
// heard, each by its own button.
func TestAnswerIsTold(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 26))
	eachQuestion(t, 6, func(q quiz.Question) {
		r := asWhich(q, view.Reviewing, chance)
		finding := r.Finding(w)
		other := *r
		for _, c := range q.Choices {
			if c.ID == r.Said.Value {
				continue
			}
			other.Said = view.Option{Value: c.ID, Label: c.Name}
			if (c.ID == q.Right) != (r.Said.Value == q.Right) {
				require.NotEqual(t, finding, other.Finding(w), "it tells right from wrong")
			}
		}
		s := r.Screen(w)
		require.Equal(t, finding, s.Find("heading").Name)
		for i, side := range r.Sides {
			if !r.form().Pool || i > 1 {
				break
			}
			require.Equal(t, side.ID, s.Find("hear-"+SideLetters[i]).Value)
			require.Equal(t, side.Rhythm.Skeleton, r.SideHead(i).Base)
		}
		require.Equal(t, len(r.Sides) > 1 && len(r.Differences) > 0 && !r.MetresApart(), s.Find("differences") != nil)
	})
}

// While a side is heard its button stops it, Escape stops it too, and no other button
// changes.
func TestHeardSideCanBeStopped(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 27))
	eachQuestion(t, 3, func(q quiz.Question) {
		r := asWhich(q, view.Reviewing, chance)
		if !r.form().Pool || len(r.Sides) == 0 {
			return
		}
		before := r.Screen(w)
		at := chance.IntN(min(2, len(r.Sides)))
		r.Sides[at].Hearing = true
		after := r.Screen(w)
		require.Equal(t, []string{view.ActChange, view.ActStop}, []string{before.Escape, after.Escape})
		before.Each(func(it *view.Item) {
			same := view.Same(it, after.Find(it.ID))
			require.Equal(t, it.ID != "hear-"+SideLetters[at], same, it.ID)
		})
		require.Equal(t, view.ActStop, after.Find("hear-"+SideLetters[at]).Action)
	})
}

// A difference is said with both names and both strokes, and of many only the first few,
// with how many there are besides.
func TestFewDifferencesAreTold(t *testing.T) {
	w := words(t)
	all := everyRhythm(t)
	for i, a := range all {
		for _, b := range all[:i] {
			q := &Which{Ask: view.AskRhythm, Phase: view.Reviewing, Volume: 50, Sides: []Side{{ID: a.ID, Rhythm: a}, {ID: b.ID, Rhythm: b}},
				Differences: quiz.DifferencesOf(a, b), Right: view.Option{Value: a.ID, Label: a.Name}, Said: view.Option{Value: b.ID, Label: b.Name}}
			it := q.differences(w)
			if len(q.Differences) == 0 || q.MetresApart() {
				require.Equal(t, view.RoleNone, it.Role)
				require.NotEqual(t, view.RoleNone, q.plainly(w).Role, "it is said plainly: %s %s", a.ID, b.ID)
				continue
			}
			require.LessOrEqual(t, len(it.Children), mostDifferences+1)
			told := min(len(q.Differences), mostDifferences)
			for k, d := range q.Differences[:told] {
				said := it.Children[k].Text
				for _, part := range []string{d.Count, picture.SayStroke(w, d.A), picture.SayStroke(w, d.B)} {
					require.Contains(t, strings.ToLower(said), strings.ToLower(part))
				}
			}
			require.Equal(t, len(q.Differences) > mostDifferences, len(it.Children) > told)
		}
	}
}

// Ids are in no order that could tell: no item of an asked question has an id that names
// a rhythm.
func TestIDsOfAQuestionNameNoRhythm(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 28))
	var names []string
	for _, c := range everyRhythm(t) {
		names = append(names, c.ID)
	}
	eachQuestion(t, 2, func(q quiz.Question) {
		for _, id := range ids(asWhich(q, view.Waiting, chance).Screen(w)) {
			require.False(t, slices.ContainsFunc(names, func(name string) bool { return strings.Contains(id, name) }), id)
		}
	})
}
