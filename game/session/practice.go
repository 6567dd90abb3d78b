package session

import (
	"slices"
	"strings"

	"groundbeat/game/coach"
	"groundbeat/game/diaryview"
	"groundbeat/game/link"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// practice is one of some minutes that is under way, round by round. A rhythm that is
// new to the player is met before the round that asks it.
type practice struct {
	*coach.Course
	known coach.Known // before it began
	meets []string    // IDs of what is still to be met before the round
	met   []string    // what was met in it
}

// practise goes to the plan of a practice of some minutes.
func (x *Session) practise(minutes int) {
	to := link.Default(view.ScreenPractice)
	to.Minutes = min(max(minutes, link.LeastMinutes), link.MostMinutes)
	x.leave(to)
}

// begin goes through steps, from the first.
func (x *Session) begin(steps []coach.Step) {
	x.practice = &practice{Course: coach.NewCourse(steps), known: x.shared.Known()}
	x.step(true)
}

// onward goes on to the next step, or from the last to the diary. Pressed twice at
// once, the second press may find the practice over.
func (x *Session) onward() {
	p := x.practice
	if p == nil {
		return
	}
	if !p.Next() {
		x.leave(link.Default(view.ScreenDiary))
		return
	}
	x.step(false)
}

// step begins the step that the practice is at: first with what is new in it.
func (x *Session) step(visit bool) {
	p := x.practice
	p.meets = slices.DeleteFunc(p.known.New(p.Step()), func(id string) bool { return slices.Contains(p.met, id) })
	x.meet(visit)
}

// meet lets the next new rhythm of the step be met, or begins its round.
func (x *Session) meet(visit bool) {
	p := x.practice
	if len(p.meets) == 0 {
		x.goTo(addressOf(p.Step()), visit)
		x.use(view.ActBegin, "")
		return
	}
	x.goTo(meetingOf(p.meets[0], p.Step()), visit)
	if x.shared.Sound.Audible() {
		x.controller.Act(view.ActPlay, "")
	}
}

// asked ends the meeting with a rhythm; like onward, a second press may come too late.
func (x *Session) asked() {
	if p := x.practice; p != nil && len(p.meets) > 0 {
		p.met, p.meets = append(p.met, p.meets[0]), p.meets[1:]
		x.meet(false)
	}
}

// meeting reports whether a rhythm is being met.
func (x *Session) meeting() bool { return x.practice != nil && len(x.practice.meets) > 0 }

// roundOver tells the practice of a round that is over.
func (x *Session) roundOver(r history.Round) {
	if x.practice != nil {
		x.practice.Finished(r)
		x.shared.Stale = true
	}
}

// meetingOf is where a rhythm is met: in Listen, bare, as fast as it will be asked.
func meetingOf(id string, s coach.Step) link.Address {
	a := link.Default(view.ScreenListen)
	a.Rhythm, a.BPM = id, s.BPM
	return a
}

// addressOf is where a step is practised.
func addressOf(s coach.Step) link.Address {
	a := link.AddressOf(s.Kind)
	switch form, asked := quiz.FormOf(quiz.Ask(s.Kind)); {
	case !asked:
		a.Rhythm = s.Rhythms[0]
	case len(s.Rhythms) > 0:
		a.From = strings.Join(s.Rhythms, ".")
		if form.Named {
			a.Answers = min(max(len(s.Rhythms), link.LeastAnswers), link.MostAnswers)
		}
	}
	a.BPM, a.Seed, a.Eights = s.BPM, s.Seed, min(max(s.Eights, link.LeastEights), link.MostEights)
	a = a.WithLevel(s.Level.String())
	if s.Level > riff.Filled {
		a.Hide = s.Hide
	}
	return a
}

// shown is the practice as the page shows it.
func (p *practice) shown() diaryview.Practice {
	v := diaryview.Practice{Done: p.Done(), Last: p.At() == len(p.Steps())-1}
	seconds, at := 0, p.At()
	for i, s := range p.Steps() {
		if i > at || i == at && !p.Done() {
			seconds += s.Seconds
		}
	}
	v.Minutes = (seconds + 30) / 60
	for _, part := range coach.Parts(p.Steps()) {
		v.Parts++
		if at >= 0 {
			v.Part, v.Reason = v.Parts, part.Reason
		}
		at -= len(part.Steps)
	}
	return v
}
