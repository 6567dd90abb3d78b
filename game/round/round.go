package round

import (
	"cmp"
	"slices"
	"time"

	"groundbeat/audio"
	"groundbeat/game/riff"
	"groundbeat/scoring"
)

// Phase is where a round stands.
type Phase uint8

// The phases, in order; Void stands beside them.
const (
	Ready   Phase = iota // waiting for Begin
	CountIn              // 5 6 7 8
	Playing              // the question sounds, taps count
	Review               // finished: there is a result
	Void                 // cut: no result
)

var phaseNames = [...]string{"ready", "count-in", "playing", "review", "void"}

func (p Phase) String() string { return phaseNames[p] }

// CountInBeats is the length of the count-in: 5 6 7 8.
const CountInBeats = 4

// Grace is how long a round listens on after its last step, for a tap on a
// stroke near the end that comes late.
const Grace = 300 * time.Millisecond

// Window is how far from a stroke a tap may lie and still belong to it: 100 ms,
// and never past the middle between two strokes.
var Window = scoring.Window{Within: scoring.Wide, Capped: true}

// A Tap is one press on the tap area. At is heard time from the round's first
// frame. Mark is the caller's own number for the tap, handed back untouched.
type Tap struct {
	At   time.Duration
	Mark int
}

// A Round is one question being asked. The zero Round is not usable; see New.
type Round struct {
	Question Question

	part    riff.Part
	phase   Phase
	why     string
	heard   time.Duration
	strokes []time.Duration
	steps   []int
	taps    []Tap
	result  scoring.Result
}

// New returns a round that is ready to begin, or what is wrong with the
// question.
func New(q Question) (*Round, error) {
	if err := q.Check(); err != nil {
		return nil, err
	}
	part, err := riff.Play(q.Rhythm, q.Level, q.Rhythm.CyclesIn(q.Eights), q.Seed)
	if err != nil {
		return nil, err
	}
	r := &Round{Question: q, part: part, heard: unheard}
	for _, s := range part.Bass {
		if s.Sound.Low() {
			r.steps = append(r.steps, s.Step)
			r.strokes = append(r.strokes, sounded(r.at(s.Step)))
		}
	}
	return r, nil
}

// at is the time of a step of the question, counted from its first step: the
// count-in lies before it on the same grid.
func (r *Round) at(step int) time.Duration {
	c := r.Question.Rhythm
	return c.At(CountInBeats*c.StepsPerBeat()+step, r.Question.BPM)
}

// sounded is when what is due at a time is heard: hits lie on whole frames, up
// to 10 µs beside the exact time.
func sounded(at time.Duration) time.Duration {
	return audio.Rate.Duration(audio.Rate.Frame(at))
}

// Phase tells where the round stands.
func (r *Round) Phase() Phase { return r.phase }

// Why tells why a void round was cut.
func (r *Round) Why() string { return r.why }

// Strokes are the times of the strokes that the player is asked to tap: of the
// frames of [audio.Rate] in which they sound, so that an offset is the distance
// to what was heard.
func (r *Round) Strokes() []time.Duration { return r.strokes }

// Steps are the absolute steps of Strokes, from the question's first step.
func (r *Round) Steps() []int { return r.steps }

// Taps are the taps taken so far, in the order of their times.
func (r *Round) Taps() []Tap { return r.taps }

// Result is the result of a round in review; otherwise it is zero.
func (r *Round) Result() scoring.Result { return r.result }

// Start is when the question's first step sounds; End is when the cycle after
// its last step would begin.
func (r *Round) Start() time.Duration { return r.at(0) }

// End is when the question is over.
func (r *Round) End() time.Duration {
	c := r.Question.Rhythm
	return r.at(c.CyclesIn(r.Question.Eights) * c.Steps())
}

// Begin starts the count-in.
func (r *Round) Begin() {
	if r.phase == Ready {
		r.phase = CountIn
	}
}

// Hear tells the round what is being heard now. When the question is over and
// the grace has passed, it matches and scores: setup is the player's own mean
// offset, taken off before matching.
func (r *Round) Hear(now, setup time.Duration) {
	if !r.underWay() {
		return
	}
	r.heard = now
	if r.phase == CountIn && now >= r.Start() {
		r.phase = Playing
	}
	if r.Over(now, setup) {
		r.finish(setup)
	}
}

// Over reports whether the question and the grace after it have passed at a
// time. A player whose set-up is behind has so much longer.
func (r *Round) Over(now, setup time.Duration) bool {
	return now >= r.End()+Grace+max(0, setup)
}

// unheard is the time heard before anything of the round is: its first frame
// is still to come.
const unheard time.Duration = -1

// Heard is what Hear was told last while the round was under way, and less than
// 0 before that.
func (r *Round) Heard() time.Duration { return r.heard }

// Tap takes one tap and reports whether it belongs to the question: a tap
// along with the count-in does not, one that is just ahead of the first step
// does. Both are meant for a player who is as far behind as her set-up.
func (r *Round) Tap(t Tap, setup time.Duration) bool {
	if !r.underWay() {
		return false
	}
	if t.At-setup < r.Start()-r.lead() || r.Over(t.At, setup) {
		return false
	}
	i := len(r.taps)
	for i > 0 && r.taps[i-1].At > t.At {
		i--
	}
	r.taps = slices.Insert(r.taps, i, t)
	return true
}

// Retime places the taps anew: a clock that has heard more may know better when
// a tap fell. It does nothing once the round is over, since a result counts on
// the order of the taps.
func (r *Round) Retime(at func(Tap) time.Duration) {
	if !r.underWay() {
		return
	}
	for i := range r.taps {
		r.taps[i].At = at(r.taps[i])
	}
	slices.SortStableFunc(r.taps, func(a, b Tap) int { return cmp.Compare(a.At, b.At) })
}

// lead is how far ahead of the first step a tap still counts: half a beat, so
// that a tap on the "8" does not.
func (r *Round) lead() time.Duration {
	return r.Question.Rhythm.At(r.Question.Rhythm.StepsPerBeat(), r.Question.BPM) / 2
}

// Cut makes a round that is under way void. A round in review stays there: who
// has doubts about the sound of a round must cut it before it hears its end.
func (r *Round) Cut(why string) {
	if r.underWay() {
		r.phase, r.why = Void, why
	}
}

// underWay reports whether the round has begun and is not over.
func (r *Round) underWay() bool { return r.phase == CountIn || r.phase == Playing }

func (r *Round) finish(setup time.Duration) {
	taps := make([]time.Duration, len(r.taps))
	for i, t := range r.taps {
		taps[i] = t.At
	}
	r.result = scoring.Score(r.strokes, taps, setup, Window)
	r.phase = Review
}
