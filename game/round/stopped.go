package round

import (
	"slices"
	"time"

	"groundbeat/game/riff"
)

// A Stopped round is one in which the drummer breaks off now and then. The dums are
// tapped; the last tap before a silence belongs on the stop, and the first after it
// on the 1. The zero Stopped is not usable; see [NewStopped].
type Stopped struct {
	Round
	stops []Stop
	aside []Tap
}

// NewStopped returns a round that is ready to begin, or what is wrong with the
// setting, whose kind is Stops.
func NewStopped(q Setting) (*Stopped, error) {
	p, err := NewStoppedPassage(q, true)
	if err != nil {
		return nil, err
	}
	r := &Stopped{Round: Round{course: courseOf(p), Setting: q, within: Window}, stops: StopsOf(q.Rhythm, q.Eights, q.Seed)}
	r.pass = r.setAside
	r.ask(p.asked(r.stops))
	return r, nil
}

// NewStoppedPassage returns what a setting of kind Stops sounds like, with a
// count-in or without one; or what is wrong with it.
func NewStoppedPassage(q Setting, countIn bool) (*Passage, error) {
	p, err := q.passage(Stops, countIn)
	if err != nil {
		return nil, err
	}
	return p, p.stopped(StopsOf(q.Rhythm, q.Eights, q.Seed))
}

// asked are the steps to be tapped: the dums of the base outside the breaks, each
// stop, and each 1 after it.
func (p *Passage) asked(stops []Stop) []int {
	steps := p.steps(0, Asks(Stops))
	for _, s := range stops {
		steps = append(steps, s.At, s.Back)
	}
	slices.Sort(steps)
	return slices.Compact(steps)
}

// Stops are where the drummer breaks off.
func (r *Stopped) Stops() []Stop { return r.stops }

// Silent reports whether the drums are silent at a time, after a stop: from a count
// after it, when it has died away, to the 1.
func (r *Stopped) Silent(t time.Duration) bool {
	perBeat := r.Setting.Rhythm.StepsPerBeat()
	for _, s := range r.stops {
		if t >= r.at(0, s.At+perBeat) && t < r.at(0, s.Back) {
			return true
		}
	}
	return false
}

// Aside are the taps of a round in review that go along with a figure, or lie in a
// declared roll: they are neither scored nor counted, and are not among Taps.
func (r *Stopped) Aside() []Tap { return r.aside }

// setAside takes out the taps that belong to strokes that are not asked for, and
// those in an open span that belong to none.
func (r *Stopped) setAside(setup time.Duration) {
	all, asked := r.withFigures()
	r.aside = r.sift(setup, all, asked, r.unasked)
}

// withFigures are the strokes asked for and those of the figures, in order, and
// which of them are asked for.
func (r *Stopped) withFigures() (all []time.Duration, asked []bool) {
	all = slices.Clone(r.strokes)
	for _, s := range r.stops {
		for _, stroke := range s.figure(r.Setting.Rhythm.StepsPerBeat()) {
			all = append(all, sounded(r.strike(0, stroke)))
		}
	}
	slices.Sort(all)
	all = slices.Compact(all)
	for _, t := range all {
		_, is := slices.BinarySearch(r.strokes, t)
		asked = append(asked, is)
	}
	return all, asked
}

// unasked reports whether a time lies in a figure, before the stop, or in a roll; as
// with [Round], from a window before it.
func (r *Stopped) unasked(t time.Duration) bool {
	for _, o := range r.Open() {
		to := o.To
		if o.Kind == riff.Break {
			to = o.Stop
		}
		if t >= o.From-Window && t < to {
			return true
		}
	}
	return false
}

// A Catch is how one stop was caught.
type Catch struct {
	Stop
	Last      Landing // on the stop
	InSilence int     // taps in the silence
	Back      Landing // on the 1
}

// Catches are how the stops of a round in review were caught, in order; otherwise
// there are none.
func (r *Stopped) Catches() []Catch {
	if r.phase != Review {
		return nil
	}
	var all []Catch
	for _, s := range r.stops {
		all = append(all, r.catch(s))
	}
	return all
}

func (r *Stopped) catch(s Stop) Catch {
	c := Catch{Stop: s, Last: r.landing(s.At), Back: r.landing(s.Back)}
	from, to := r.strokes[c.Last.Stroke], r.strokes[c.Back.Stroke]
	for _, i := range r.result.Added {
		if at := r.taps[i].At - r.result.Setup; at >= from && at < to {
			c.InSilence++
		}
	}
	return c
}
