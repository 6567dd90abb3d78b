package quiz

import (
	"cmp"
	"errors"
	"fmt"
	"math/rand/v2"
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// The fewest and the most choices that may be asked for.
const (
	MinAnswers = 2
	MaxAnswers = 4
)

// Lengths of a question, in eights.
const (
	whichEights = 2 // masmudi kabir and çiftetelli twice
	RungEights  = 1
)

// ErrTooFew is the reason why a pool makes no question; the error that wraps it
// says more.
var ErrTooFew = errors.New("too few rhythms")

// Next returns the question of a seed.
//
// The rhythms of the pool that are no answers in a quiz are left out, as are
// those whose tempo is out of a round's bounds; the order of the pool does not
// matter. answers, from MinAnswers to MaxAnswers, is the most choices that Which
// has; it has fewer, at least two, where the pool has no more that go together, see
// [Lean.Names].
// The lower rungs have their own. bpm is the tempo, in beats a minute from
// round.MinBPM to round.MaxBPM; at 0 it varies within the rhythm's own range.
// The package comment gives the rules.
//
// Where the pool is too small the error wraps [ErrTooFew]. Stroke needs no pool.
func Next(ask Ask, pool []*rhythm.Cycle, answers, bpm int, level riff.Level, seed uint64) (Question, error) {
	return Lean{}.Next(ask, pool, answers, bpm, level, seed)
}

// Next returns the question of a seed as the function [Next] does, with wrong answers
// to which it leans. With the zero Lean it is the same question.
func (l Lean) Next(ask Ask, pool []*rhythm.Cycle, answers, bpm int, level riff.Level, seed uint64) (Question, error) {
	if err := check(answers, bpm, level); err != nil {
		return Question{}, err
	}
	q := Question{Ask: ask, Eights: RungEights, Level: level, Seed: seed}
	form, known := FormOf(ask)
	if !known {
		return Question{}, fmt.Errorf("quiz: unknown ask %q", ask)
	}
	d := draws{answers: answers, bpm: bpm, lean: l}
	if form.Pool {
		d.players = Candidates(pool, bpm, level)
	}
	return form.next(q, d)
}

func check(answers, bpm int, level riff.Level) error {
	switch {
	case answers < MinAnswers || answers > MaxAnswers:
		return fmt.Errorf("quiz: %d answers; a question has %d to %d", answers, MinAnswers, MaxAnswers)
	case bpm != 0 && (bpm < round.MinBPM || bpm > round.MaxBPM):
		return fmt.Errorf("quiz: %d beats a minute; allowed is %d to %d, or 0 to vary", bpm, round.MinBPM, round.MaxBPM)
	case !riff.Available(level):
		return fmt.Errorf("quiz: riff level '%s' is not available", level)
	}
	return nil
}

// draw returns the random numbers of a question. Each ask has its own, so that
// one seed does not give related questions.
func Draw(seed, ask uint64) *rand.Rand { return rand.New(rand.NewPCG(seed, ask)) }

// A player is a rhythm as it can be played in a question.
type Candidate struct {
	*rhythm.Cycle
	strokes    int // of the lead drum, in one cycle
	Slow, Fast int // beats a minute
	fixed      bool

	at   int    // in its group
	Fits []bool // which of the group may be choices beside it
}

// players returns those of a pool that can be played, by id, each once.
func Candidates(pool []*rhythm.Cycle, bpm int, level riff.Level) []Candidate {
	return CandidatesOf(pool, bpm, level, Strokes)
}

// playersOf is players with the strokes of rhythms as another function counts them.
func CandidatesOf(pool []*rhythm.Cycle, bpm int, level riff.Level, strokes func(*rhythm.Cycle, riff.Level) int) []Candidate {
	pool = slices.Clone(pool)
	slices.SortStableFunc(pool, func(a, b *rhythm.Cycle) int { return cmp.Compare(a.ID, b.ID) })
	pool = slices.CompactFunc(pool, func(a, b *rhythm.Cycle) bool { return a.ID == b.ID })
	var all []Candidate
	for _, c := range pool {
		p := Candidate{Cycle: c, strokes: strokes(c, level), Slow: bpm, Fast: bpm, fixed: bpm != 0}
		if !p.fixed {
			p.Slow, p.Fast = max(c.Tempo.Slow, round.MinBPM), min(c.Tempo.Fast, round.MaxBPM)
		}
		if c.Quiz && p.Slow <= p.Fast {
			all = append(all, p)
		}
	}
	return all
}

// anyTempo draws one of the tempi at which the rhythm can be played.
func (p Candidate) AnyTempo(r *rand.Rand) int { return p.Slow + r.IntN(p.Fast-p.Slow+1) }

func TooFew(format string, a ...any) error {
	return fmt.Errorf("quiz: %w: %s", ErrTooFew, fmt.Sprintf(format, a...))
}
