package paper

import (
	"math"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/view"
)

// An Ear tells what was heard since a moment, as somebody does who knows the rhythms:
// from the strokes of the drum that holds the base, and what the screen says of rhythm
// and tempo. It knows nothing of what is asked.
type Ear struct {
	b       *Browser
	since   float64
	meant   []float64 // strokes that were heard or are kept up
	noticed float64   // when the rhythm was another, as far as one could hear; 0: it was not
}

func newEar(b *Browser, since float64) *Ear { return &Ear{b: b, since: since} }

// base are the strokes of the base between two times.
func (e *Ear) base(from, to float64) []Strike {
	return slices.DeleteFunc(e.b.Sound.Strikes(from, to), func(s Strike) bool { return !s.Base() })
}

// all is what of the base was heard up to now.
func (e *Ear) all() []Strike { return e.base(e.since, e.b.Wall.Now()) }

// strokes are the times of the strokes between two times that are asked for, or of the
// others.
func (e *Ear) strokes(asks func(rhythm.Stroke) bool, asked bool, from, to float64) (all []float64) {
	for _, s := range e.base(from, to) {
		sound := rhythm.Tek
		if s.Low() {
			sound = rhythm.Dum
		}
		if asks(sound) == asked {
			all = append(all, s.At)
		}
	}
	return all
}

// stops is for how long nothing is heard after the end, in ms: longer than any pause in
// a rhythm that is asked.
const stops = 2500

// over reports whether something was heard, and has ended.
func (e *Ear) over() bool {
	all := e.base(e.since, e.b.Wall.Now()+1000)
	return len(all) > 0 && all[len(all)-1].At < e.b.Wall.Now()-stops
}

// score is what the screen says: the rhythm and its length; and how fast it is heard, and
// from when on.
type score struct {
	*rhythm.Cycle
	step        float64 // ms
	first, ends float64 // performance times of the first step and of the end, ms
}

// read reads the score, once something of it was heard; where the screen does not say how
// fast it is, a cycle.
func (e *Ear) read() (s score, ok bool) {
	heard := e.base(e.since, e.b.Wall.Now()+foresees)
	link, err := url.ParseQuery(strings.TrimPrefix(e.b.Query(), "?"))
	if err != nil {
		return s, false
	}
	if s.Cycle, ok = e.b.all.Get(link.Get("rhythm")); !ok {
		return s, false
	}
	played := strokes(s.Cycle)
	bpm, said := strconv.Atoi(link.Get("bpm"))
	if said != nil {
		bpm = s.Tempo.Usual
	}
	switch unsaid := said != nil && e.b.Screen().ID == view.ScreenChange; { // there it varies
	case len(heard) == 0, unsaid && len(heard) <= len(played):
		return s, false
	case unsaid:
		s.step = (heard[len(played)].At - heard[0].At) / float64(s.Steps())
	default:
		s.step = float64(s.At(s.Steps(), bpm)) / 1e6 / float64(s.Steps())
	}
	eights, _ := strconv.Atoi(link.Get("eights"))
	s.first = heard[0].At - s.ms(played[0])
	s.ends = s.first + s.ms(max(1, eights)*s.CyclesIn(1)*s.Steps()) // as where it goes eight by eight
	return s, true
}

// ms is the time of a step.
func (s *score) ms(step int) float64 { return float64(step) * s.step }

// strokes are the steps of a rhythm's strokes.
func strokes(c *rhythm.Cycle) (steps []int) {
	for i, s := range c.Skeleton {
		if s != rhythm.Rest {
			steps = append(steps, i)
		}
	}
	return steps
}

// near is how close two strokes lie that are one, in ms.
const near = 60

func among(times []float64, at float64) bool {
	return slices.ContainsFunc(times, func(t float64) bool { return math.Abs(t-at) < near })
}

// carried are the strokes that are heard between two times, and those that are kept up
// while nothing is, up to the end that the screen has told.
func (e *Ear) carried(asks func(rhythm.Stroke) bool, from, to float64) []float64 {
	all := e.strokes(asks, true, from, to)
	if s, ok := e.read(); ok {
		cycle := s.ms(s.Steps())
		for _, m := range e.meant {
			if at := m + cycle; at >= from && at < to && at < s.ends-near && !among(all, at) {
				all = append(all, at)
			}
		}
	}
	e.meant = append(e.meant, all...)
	return all
}

// reacts is how long it takes to press when something was noticed, in ms: own choice,
// about a simple reaction to a sound with some thought.
const reacts = 300

// changes is when to press because the rhythm is another, once: when a stroke was heard
// that does not belong to it, or one that does was not. Too soon: at once.
func (e *Ear) changes(tooSoon bool) []float64 {
	s, ok := e.read()
	now := e.b.Wall.Now()
	if !ok || e.noticed > 0 || now < s.first {
		return nil
	}
	if tooSoon {
		e.noticed = now
		return []float64{now}
	}
	if at, differs := e.differs(&s, now); differs {
		e.noticed = at
		return []float64{now + reacts}
	}
	return nil
}

// differs is when what was heard up to now was first another than a score.
func (e *Ear) differs(s *score, now float64) (at float64, differs bool) {
	at = math.Inf(1)
	heard := e.base(s.first-near, now)
	for _, h := range heard {
		if !s.plays(h) {
			at = min(at, h.At)
		}
	}
	for n := 0; ; n++ {
		for _, step := range strokes(s.Cycle) {
			due := s.first + s.ms(n*s.Steps()+step)
			if due > now-near || due > s.ends-near {
				return at, !math.IsInf(at, 1)
			}
			if !slices.ContainsFunc(heard, func(h Strike) bool { return math.Abs(h.At-due) < near }) {
				at = min(at, due)
			}
		}
	}
}

// plays reports whether a stroke is one of the score's.
func (s *score) plays(h Strike) bool {
	step := int(math.Round((h.At - s.first) / s.step))
	c := ((step % s.Steps()) + s.Steps()) % s.Steps()
	return s.Skeleton[c] != rhythm.Rest && s.Skeleton[c].Low() == h.Low() && math.Abs(s.first+s.ms(step)-h.At) < near
}
