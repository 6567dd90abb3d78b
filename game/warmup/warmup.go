package warmup

import (
	"math/rand/v2"
	"slices"
	"time"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Warmup is what a set with a seed brings, in order: as much as fits into its
// minutes, one task at least.
type Warmup struct {
	Set
	Tasks []Task
	lasts []time.Duration
}

// How long people take beside what is heard: own choice, not measured in a room.
const (
	sayWhat   = 8 * time.Second // what is to be done now
	countOne  = 5 * time.Second // hands for one answer
	sayWhatIs = 8 * time.Second // what it was
)

// NewWarmup returns the warm-up of a set, whose seed must not be 0. Its kinds come
// mixed: all of them once, in a new order, then all once more. The riff grows level by
// level up to the set's, and begins anew, so that what the room hears through can be
// told. A longer warm-up begins as the shorter one of the same seed.
func NewWarmup(s Set, c *rhythm.Catalogue) (*Warmup, error) {
	if err := s.Check(c); err != nil {
		return nil, err
	}
	pool, err := quiz.From(c, s.From)
	if err != nil {
		return nil, err
	}
	w := &Warmup{Set: s}
	left := time.Duration(s.Minutes) * time.Minute
	for i := 0; ; i++ {
		t, err := s.nth(pool, i)
		if err != nil {
			return nil, err
		}
		lasts, err := t.Lasts()
		if err != nil {
			return nil, err
		}
		if left -= lasts; left < 0 && i > 0 {
			return w, nil
		}
		w.Tasks, w.lasts = append(w.Tasks, t), append(w.lasts, lasts)
	}
}

// nth is a task of the warm-up, counted from 0.
func (s Set) nth(pool []*rhythm.Cycle, i int) (Task, error) {
	kind, once := s.kind(i)
	level := riff.Level(once % (int(s.Level) + 1))
	seed := rand.New(rand.NewPCG(s.Seed, uint64(i)<<8|8)).Uint64N(MostSeed) + 1
	return s.draw(pool, kind, level, seed)
}

// kind is the kind of a task, and how often it came before. No two follow one another
// if there are several.
func (s Set) kind(i int) (k Kind, before int) {
	n := len(s.Kinds)
	order := func(round int) []Kind {
		all := slices.Clone(s.Kinds)
		slices.SortFunc(all, func(a, b Kind) int { return slices.Index(Kinds(), a) - slices.Index(Kinds(), b) })
		r := rand.New(rand.NewPCG(s.Seed, uint64(round)<<8|9))
		r.Shuffle(n, func(i, j int) { all[i], all[j] = all[j], all[i] })
		return all
	}
	round := i / n
	all := order(0)
	for at := 1; at <= round; at++ {
		last := all[n-1]
		if all = order(at); n > 1 && all[0] == last {
			all[0], all[1] = all[1], all[0]
		}
	}
	return all[i%n], round
}

// Lasts is about how long the task takes a room, with what is heard afterwards.
func (t Task) Lasts() (time.Duration, error) {
	asked, cut, err := t.Passage(100)
	if err != nil {
		return 0, err
	}
	if cut == 0 {
		cut = asked.End()
	}
	lasts := sayWhat + cut + sayWhatIs
	if !t.Kind.Counted() {
		return lasts, nil
	}
	lasts += time.Duration(len(t.Choices)) * countOne
	turns, err := t.Turns(t.rival())
	if err != nil {
		return 0, err
	}
	for _, turn := range turns {
		lasts += turn.End()
	}
	again, err := t.Replay()
	if err != nil {
		return 0, err
	}
	return lasts + again.End(), nil
}

// rival is the wrong answer that is likeliest: of rhythms the most alike, else the
// first.
func (t Task) rival() string {
	id, least := "", 0
	for _, c := range t.Choices {
		if c.ID == t.Right {
			continue
		}
		far := 0
		if c.Rhythm != nil {
			far = quiz.Apart(t.Rhythm, c.Rhythm)
		}
		if id == "" || far < least {
			id, least = c.ID, far
		}
	}
	return id
}

// Lasts is about how long the warm-up takes.
func (w *Warmup) Lasts() time.Duration {
	var all time.Duration
	for _, lasts := range w.lasts {
		all += lasts
	}
	return all
}
