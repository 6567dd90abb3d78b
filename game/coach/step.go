package coach

import (
	"slices"
	"time"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// A Reason says why something is practised now.
type Reason string

// The reasons.
const (
	ReasonFirst Reason = "first"  // met for the first time, or nothing is known yet
	ReasonWell  Reason = "well"   // goes well: to begin with
	ReasonEasy  Reason = "easy"   // likewise, while nothing goes well yet
	ReasonDue   Reason = "due"    // was learnt, and is about to be forgotten
	ReasonMixUp Reason = "mix-up" // two that are mixed up
	ReasonRung  Reason = "rung"   // a lower rung that does not hold yet
	ReasonEdge  Reason = "edge"   // as much riff as is just heard through
	ReasonTempo Reason = "tempo"  // from slow to faster
	ReasonSlow  Reason = "slow"   // a slow rhythm: to end with
)

// A Step is one round of a practice, as it is to be asked.
type Step struct {
	Kind string // of round, as in package history
	// Rhythms are ids: the one whose dums are tapped; the names to choose from; or
	// those that a lower rung draws from. Stroke has none.
	Rhythms []string
	Level   riff.Level
	Hide    int // to ask for, in hundredths; 0: as it comes
	BPM     int // beats a minute; 0: drawn with the question, so that it tells nothing
	Eights  int
	Seed    uint64
	Seconds int // expected, with the review
	Reason  Reason
}

// Same reports whether two steps ask for the same: of another seed, perhaps, or for
// another reason.
func (s Step) Same(o Step) bool {
	return s.Kind == o.Kind && slices.Equal(s.Rhythms, o.Rhythms) && s.Level == o.Level && s.Hide == o.Hide &&
		s.BPM == o.BPM && s.Eights == o.Eights
}

// How long a round of practice is: stepEights, or shortEights where that would be
// longer than longStep. All chosen.
const (
	stepEights, shortEights = 4, 2
	longStep                = 40 // seconds
	reviewing               = 8  // seconds that one looks at a review
)

// length sets the expected length of a step of rhythms, and shortens what would be
// too long: the count-in and all eights of a tapped round; of a question the half,
// since it is answered in its course; and the review.
func (s *Step) length(of ...*rhythm.Cycle) {
	if s.Seconds = s.lasts(of); s.Seconds > longStep && s.Eights > shortEights {
		s.Eights = shortEights
		s.Seconds = s.lasts(of)
	}
}

func (s *Step) lasts(of []*rhythm.Cycle) int {
	var sum time.Duration
	for _, c := range of {
		sum += s.sounds(c)
	}
	if len(of) == 0 {
		sum = time.Minute * 4 / quiz.StrokeBPM
	}
	return reviewing + int((sum/time.Duration(max(1, len(of)))+time.Second/2)/time.Second)
}

// sounds is how long a rhythm is heard, as expected.
func (s *Step) sounds(c *rhythm.Cycle) time.Duration {
	bpm := s.BPM
	if bpm == 0 {
		bpm = c.Tempo.Usual
	}
	if f, asked := quiz.FormOf(quiz.Ask(s.Kind)); asked {
		return f.Heard(c, s.Eights, bpm)
	}
	return c.At(c.CyclesIn(s.Eights)*c.Steps()+round.CountInBeats*c.StepsPerBeat(), bpm)
}
