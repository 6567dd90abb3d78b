//go:build js

package game

import (
	"strings"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// practice is one of some minutes that is under way, round by round.
type practice struct{ *quiz.Course }

// practise begins a practice of some minutes, at once or as soon as it is known what
// there was before.
func (d *desk) practise(minutes int) {
	if d.wanted = minutes; !d.learner.isRead() {
		return
	}
	d.wanted = 0
	k := d.learner.known()
	if steps := k.Practice(minutes, d.learner.pool(k), d.Wall.Seed()); len(steps) > 0 {
		d.through(steps)
	}
}

// through goes through steps, from the first.
func (d *desk) through(steps []quiz.Step) {
	d.practice, d.wanted = &practice{quiz.NewCourse(steps)}, 0
	d.step(true)
}

// onward goes on to the next step, or from the last to the diary. Pressed twice at
// once, the second press may find the practice over.
func (d *desk) onward() {
	p := d.practice
	if p == nil {
		return
	}
	if !p.Next() {
		d.leave(view.DefaultAddress(view.ScreenDiary))
		return
	}
	d.step(false)
}

// step begins the step that the practice is at.
func (d *desk) step(visit bool) {
	d.goTo(addressOf(d.practice.Step()), visit)
	d.exercise.act(view.ActBegin, "")
}

// addressOf is where a step is practised.
func addressOf(s quiz.Step) view.Address {
	a := view.DefaultAddress(view.ScreenWhich)
	switch s.Kind {
	case history.Dums:
		a = view.DefaultAddress(view.ScreenDums)
		a.Rhythm = s.Rhythms[0]
	case history.Which:
		a.Ask, a.Answers = view.AskRhythm, min(max(len(s.Rhythms), view.LeastAnswers), view.MostAnswers)
	default:
		a.Ask = s.Kind
	}
	if a.Screen == view.ScreenWhich && len(s.Rhythms) > 0 {
		a.From = strings.Join(s.Rhythms, ".")
	}
	a.BPM, a.Seed, a.Eights = s.BPM, s.Seed, min(max(s.Eights, view.LeastEights), view.MostEights)
	a = a.WithLevel(s.Level.String())
	if s.Level > riff.Filled {
		a.Hide = s.Hide
	}
	return a
}

// shown is the practice as the page shows it.
func (p *practice) shown() view.Practice {
	seconds := 0
	steps, at := p.Steps(), p.At()
	for i, s := range steps {
		if i > at || i == at && !p.Done() {
			seconds += s.Seconds
		}
	}
	return view.Practice{Part: at + 1, Parts: len(steps), Minutes: (seconds + 30) / 60, Done: p.Done()}
}
