package round

import (
	"fmt"
	"slices"
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// CountInBeats is the length of a count-in: 5 6 7 8.
const CountInBeats = 4

// A Section is some cycles of one rhythm.
type Section struct {
	Rhythm *rhythm.Cycle
	Cycles int
	First  int       // which cycle of its riff it begins with
	Riff   riff.Riff // what is played; the zero value: the riff of the passage's level and seed
}

// A Passage is what both drums play in one go, at one tempo: a count-in or none,
// then its sections one after the other. All times in it are durations from its
// first frame. It never changes.
type Passage struct {
	bpm     int
	countIn bool
	seed    uint64
	parts   []part
}

// part is a section with what is played in it and when it starts and ends.
type part struct {
	Section
	riff.Part
	from, to time.Duration
}

// NewPassage returns the passage, or what cannot be played about it. The
// count-in is in beats of the first section's rhythm.
func NewPassage(bpm int, level riff.Level, seed uint64, countIn bool, sections ...Section) (*Passage, error) {
	if bpm < MinBPM || bpm > MaxBPM {
		return nil, fmt.Errorf("round: %d beats a minute; allowed is %d to %d", bpm, MinBPM, MaxBPM)
	}
	p := &Passage{bpm: bpm, countIn: countIn, seed: seed}
	var at time.Duration
	for i, s := range sections {
		played, err := s.play(bpm, level, mix(seed, uint64(i)))
		if err != nil {
			return nil, err
		}
		before := 0
		if i == 0 && countIn {
			before = CountInBeats * s.Rhythm.StepsPerBeat()
		}
		// Times within a section are taken from its steps, not added up.
		from, to := s.Rhythm.At(before, bpm), s.Rhythm.At(before+s.Cycles*s.Rhythm.Steps(), bpm)
		p.parts = append(p.parts, part{s, played, at + from, at + to})
		at += to
	}
	return p, nil
}

// play is what both drums play in the section, as two hands can at the tempo.
func (s Section) play(bpm int, level riff.Level, seed uint64) (riff.Part, error) {
	r := s.Riff
	if r == (riff.Riff{}) {
		var err error
		if r, err = riff.New(s.Rhythm, level, seed); err != nil {
			return riff.Part{}, err
		}
	}
	if !slices.Equal(r.Rhythm().Skeleton, s.Rhythm.Skeleton) {
		return riff.Part{}, fmt.Errorf("round: a riff over %s for %s", r.Rhythm().Name, s.Rhythm.Name)
	}
	return r.At(bpm).Cycles(s.First, s.Cycles)
}

// Start is when the first step sounds; End is when the cycle after the last
// one would begin.
func (p *Passage) Start() time.Duration { return p.parts[0].from }

// End is when the passage is over.
func (p *Passage) End() time.Duration { return p.parts[len(p.parts)-1].to }

// Strokes are the times of those strokes of the base that are asked for, such as
// [rhythm.Stroke.Low]: of the frames of [audio.Rate] in which they sound. In a declared
// break or roll there is no base, and none of its strokes is one of these.
func (p *Passage) Strokes(asked func(rhythm.Stroke) bool) []time.Duration {
	var all []time.Duration
	for i := range p.parts {
		for _, step := range p.steps(i, asked) {
			all = append(all, sounded(p.at(i, step)))
		}
	}
	return all
}

// steps are the steps of those strokes of the base of a section that are asked for,
// counted from its own first.
func (p *Passage) steps(i int, asked func(rhythm.Stroke) bool) []int {
	var steps []int
	for _, s := range p.parts[i].Base() {
		if asked(s.Sound) {
			steps = append(steps, s.Step)
		}
	}
	return steps
}

// A Span is a declared break or roll, in which nothing is scored: from its first
// stroke up to where the base goes on. Stop is its last stroke on the bass drum:
// of a break, after it there is silence.
type Span struct {
	Kind           riff.Kind
	From, Stop, To time.Duration
}

// Open are the declared breaks and rolls, in the order of time: the times of the
// frames of [audio.Rate].
func (p *Passage) Open() []Span {
	var all []Span
	for i := range p.parts {
		for _, o := range p.parts[i].Open {
			span := Span{Kind: o.Kind, From: sounded(p.at(i, o.From)), To: sounded(p.at(i, o.To))}
			for _, s := range p.parts[i].Bass {
				if o.Contains(s.Step) {
					span.Stop = sounded(p.strike(i, s))
				}
			}
			all = append(all, span)
		}
	}
	return all
}

// BPM is the tempo, in beats a minute of each rhythm's own beat.
func (p *Passage) BPM() int { return p.bpm }

// at is the time of a section's step.
func (p *Passage) at(i, step int) time.Duration {
	s := &p.parts[i]
	if i == 0 && p.countIn {
		return s.Rhythm.At(CountInBeats*s.Rhythm.StepsPerBeat()+step, p.bpm)
	}
	return s.from + s.Rhythm.At(step, p.bpm)
}

// section is the section that a time lies in: the first before the passage and
// the last after it.
func (p *Passage) section(t time.Duration) int {
	i := len(p.parts) - 1
	for i > 0 && t < p.parts[i].from {
		i--
	}
	return i
}

// Rhythm is the rhythm that is played at a time.
func (p *Passage) Rhythm(t time.Duration) *rhythm.Cycle { return p.parts[p.section(t)].Rhythm }

// step is the step of a section that a time lies in: the last one at or before
// it, negative before the first. It is found by the exact times of steps near a
// guess, since the guess, from the rounded length of a cycle, may be a few
// nanoseconds out.
func (p *Passage) step(i int, t time.Duration) int {
	c := p.parts[i].Rhythm
	length := c.Length(p.bpm)
	since := t - p.at(i, 0)
	step := c.Steps()*int(since/length) + int(since%length*time.Duration(c.Steps())/length)
	for p.at(i, step) > t {
		step--
	}
	for p.at(i, step+1) <= t {
		step++
	}
	return step
}

// TurnAt is how far round its cycle a time lies: from 0 to just below 1, also
// for times before the first step.
func (p *Passage) TurnAt(t time.Duration) float64 {
	i := p.section(t)
	steps := p.parts[i].Rhythm.Steps()
	first := floor(p.step(i, t), steps)
	from, to := p.at(i, first), p.at(i, first+steps)
	return float64(t-from) / float64(to-from)
}

// CountAt is the count heard at a time: 5 6 7 8 in the count-in, then the
// dancer's count of the beat in its eight. It is empty before the first frame
// and after the end.
func (p *Passage) CountAt(t time.Duration) string {
	if t < 0 || t >= p.End() {
		return ""
	}
	i := p.section(t)
	c := p.parts[i].Rhythm
	step, perBeat := p.step(i, t), c.StepsPerBeat()
	if step < 0 {
		return countIn[CountInBeats+floor(step, perBeat)/perBeat]
	}
	return c.CountInEight(floor(step, perBeat))
}

var countIn = [CountInBeats]string{"5", "6", "7", "8"}

// floor is the greatest multiple of n that is not above a.
func floor(a, n int) int { return a - ((a%n)+n)%n }

// sounded is when what is due at a time is heard: hits lie on whole frames, up
// to 10 µs beside the exact time.
func sounded(at time.Duration) time.Duration {
	return audio.Rate.Duration(audio.Rate.Frame(at))
}
