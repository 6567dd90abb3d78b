package round

import (
	"cmp"
	"fmt"
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/scoring"
)

// Grace is how long a round listens on after its last step, for a tap on a
// stroke near the end that comes late.
const Grace = 300 * time.Millisecond

// Window is how far from a stroke a tap may lie and still belong to it: 100 ms,
// and never past the middle between two strokes. A [Carried] round has a wider one.
const Window = scoring.Wide

// A Tap is one press on the tap area. At is heard time from the round's first
// frame. Mark is the caller's own number for the tap, handed back untouched.
type Tap struct {
	At   time.Duration
	Mark int
}

// A Round is one question whose strokes are tapped. The zero Round is not
// usable; see New.
type Round struct {
	course
	Setting Setting

	within  time.Duration
	strokes []time.Duration
	steps   []int
	taps    []Tap
	pass    func(setup time.Duration) // takes out the taps that are not scored
	result  scoring.Result
}

// New returns a round that is ready to begin, or what is wrong with the
// setting.
func New(q Setting) (*Round, error) {
	k, _ := kindOf(q.Kind)
	if k.made != "" {
		return nil, fmt.Errorf("round: kind %q is for %s", q.Kind, k.made)
	}
	if err := q.Check(); err != nil {
		return nil, err
	}
	cycles := q.Rhythm.CyclesIn(q.Eights)
	played, err := Riff(q.Rhythm, q.Level, q.Seed, 0, q.Hide)
	if err != nil {
		return nil, err
	}
	p, err := NewPassage(q.BPM, q.Level, q.Seed, true, Section{Rhythm: q.Rhythm, Cycles: cycles, Riff: played})
	if err != nil {
		return nil, err
	}
	r := &Round{course: courseOf(p), Setting: q, within: Window, strokes: p.Strokes(k.asks), steps: p.steps(0, k.asks)}
	r.pass = r.passOver
	return r, nil
}

// Strokes are the times of the strokes that the player is asked to tap: of the
// frames of [audio.Rate] in which they sound, so that an offset is the distance
// to what was heard.
func (r *Round) Strokes() []time.Duration { return r.strokes }

// Asks tells which strokes of the base are tapped.
func (r *Round) Asks() func(rhythm.Stroke) bool { return Asks(r.Setting.Kind) }

// Steps are the absolute steps of Strokes, from the question's first step.
func (r *Round) Steps() []int { return r.steps }

// Length is how many steps the question has, those in breaks and silences too. In odd
// metres kinds of rounds that go eight by eight have more than others of as many eights.
func (r *Round) Length() int { return r.parts[0].Cycles * r.Setting.Rhythm.Steps() }

// Within is how far from a stroke a tap may lie and still belong to it.
func (r *Round) Within() time.Duration { return r.within }

// Close is how far from its stroke a tap may lie and still be on it, in whole
// microseconds: by the rhythm's beat and the nearest two strokes, see [scoring.CloseAt].
func (r *Round) Close() time.Duration {
	c := r.Setting.Rhythm
	beat := c.At(c.StepsPerBeat(), r.Setting.BPM)
	gap := 4 * max(beat, scoring.Close) // of one stroke alone
	for i := 1; i < len(r.strokes); i++ {
		gap = min(gap, r.strokes[i]-r.strokes[i-1])
	}
	return scoring.CloseAt(beat, gap).Truncate(time.Microsecond)
}

// Taps are the taps taken so far, in the order of their times.
func (r *Round) Taps() []Tap { return r.taps }

// Result is the result of a round in review; otherwise it is zero.
func (r *Round) Result() scoring.Result { return r.result }

// Hear tells the round what is being heard now. When the question is over and
// the grace has passed, it matches and scores: setup is the player's own mean
// offset, taken off before matching.
func (r *Round) Hear(now, setup time.Duration) {
	if !r.UnderWay() {
		return
	}
	r.hear(now)
	if r.Over(now, setup) {
		r.pass(setup)
		r.finish(setup)
	}
}

// Over reports whether the question and the grace after it have passed at a
// time. A player whose set-up is behind has so much longer.
func (r *Round) Over(now, setup time.Duration) bool {
	return now >= r.End()+Grace+max(0, setup)
}

// Tap takes one tap and reports whether it belongs to the question: a tap
// along with the count-in does not, one that is just ahead of the first step
// does. Both are meant for a player who is as far behind as her set-up.
func (r *Round) Tap(t Tap, setup time.Duration) bool {
	if !r.UnderWay() {
		return false
	}
	if t.At-setup < r.Start()-r.lead() || r.Over(t.At, setup) {
		return false
	}
	r.taps, _ = insert(r.taps, t)
	return true
}

// insert puts a tap among others in the order of their times, behind those at its
// own, and tells where.
func insert(taps []Tap, t Tap) ([]Tap, int) {
	i := len(taps)
	for i > 0 && taps[i-1].At > t.At {
		i--
	}
	return slices.Insert(taps, i, t), i
}

// Retime places the taps anew: a clock that has heard more may know better when
// a tap fell. It does nothing once the round is over, since a result counts on
// the order of the taps.
func (r *Round) Retime(at func(Tap) time.Duration) {
	if !r.UnderWay() {
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
	return r.Setting.Rhythm.At(r.Setting.Rhythm.StepsPerBeat(), r.Setting.BPM) / 2
}

func (r *Round) finish(setup time.Duration) {
	taps := make([]time.Duration, len(r.taps))
	for i, t := range r.taps {
		taps[i] = t.At
	}
	r.result = scoring.Score(r.strokes, taps, setup, r.within)
	r.phase = Review
}
