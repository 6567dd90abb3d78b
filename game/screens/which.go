package screens

import (
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Which is the screen Which rhythm?, with its lower rungs: a question sounds and is
// answered by a word.
type Which struct {
	s        *control.Shared
	track    playback.Track
	question quiz.Question
	round    *round.Answered
	given    quiz.Choice
	timed    bool             // is it known when the answer came?
	inSecond bool             // of two that may differ the second is heard
	repeated bool             // was the question heard once more?
	names    []string         // of the rhythms that a link asked for
	fewer    *roundview.Fewer // why there are fewer names than were asked for; nil where there are not

	blank    playback.Head // the head while the question is asked
	follower playback.Follower
	sides    sides
}

// NewWhich is the screen over what is shared.
func NewWhich(s *control.Shared) *Which {
	return &Which{s: s, track: playback.NewTrack(s.Sound, &s.Outputs), sides: newSides(s)}
}

// Prepare makes a new question as the address says.
func (x *Which) Prepare() {
	a := x.s.Address
	pool, err := quiz.From(x.s.Rhythms(), a.From)
	if err == nil {
		x.question, err = x.lean().Next(quiz.Ask(a.Ask), pool, max(a.Answers, link.LeastAnswers), a.BPM, x.s.Level(), x.s.Seed())
	}
	if err != nil {
		// The pool of the link makes no question: say so, and offer one that does.
		x.s.Problems = []link.Problem{{Name: "from", Value: a.From, Allowed: x.s.Words.Say("from-too-few")}}
		x.s.Address = link.Default(view.ScreenWhich)
		x.s.Address.Ask = a.Ask
		if x.s.Address == a {
			panic(err) // the quiz's tests make questions of the five
		}
		x.Prepare()
		return
	}
	switch form := x.question.Form(); {
	case form.Named:
		x.question.Eights = a.Eights
	case form.Halves:
		x.question.Eights = max(1, a.Eights/2) // of each half
	}
	x.names = nil
	if a.From != quiz.Five && a.From != quiz.Even && a.From != quiz.All {
		for _, c := range pool {
			x.names = append(x.names, c.Name)
		}
	}
	x.fewer = nil
	if n := x.lean().Names(pool, max(a.Answers, link.LeastAnswers), a.BPM, x.s.Level()); x.question.Form().Named {
		x.fewer = roundview.FewerOf(n)
	}
	x.ask()
}

// lean is what the questions lean to: those of an old link to what they were.
func (x *Which) lean() quiz.Lean {
	l := x.s.Lean()
	l.Fill = x.s.Address.Asked != 1
	return l
}

// ask makes the question ready to be heard.
func (x *Which) ask() {
	p, err := passageOf(x.question, x.s.Address.Hide)
	if err != nil {
		panic(err) // questions are made of what can be played; the quiz's tests play them
	}
	x.follower.Follow(p)
	x.round = round.NewAnswered(p, x.limit())
	x.sides.begin(x.question)
	x.given, x.inSecond, x.repeated = quiz.Choice{}, false, false
}

// limit is how long the question is heard; 0 is to its end.
func (x *Which) limit() time.Duration {
	if !x.question.Form().Named {
		return 0
	}
	return time.Duration(x.question.Eights) * eightLasts
}

func (x *Which) begin() {
	x.s.Ear.Begin()
	x.track.Play(x.round.Passage, x.s.Wall.Now())
	x.round.Begin()
}

func (x *Which) Act(action, value string) {
	if x.s.Helped(&x.track, x.round.UnderWay(), action, value) || x.sides.act(action, value, x.round.Phase()) {
		return
	}
	switch action {
	case view.ActBegin:
		if x.round.Phase() == round.Ready {
			x.begin()
		}
	case view.ActAnswer:
		x.answer(value)
	case view.ActRepeat, view.ActOnce:
		x.Interrupt(host.WhyStop)
		x.ask()
		x.repeated = true
		x.begin()
	case view.ActNext:
		x.Interrupt(host.WhyStop)
		x.Prepare()
		x.begin()
	default: // it is stopped, or a setting was changed
		x.Interrupt(host.WhyStop)
		x.Prepare()
	}
}

// answer takes an answer, keeps it, and shows what was right.
func (x *Which) answer(id string) {
	given, ok := x.question.Choice(id)
	if !ok {
		return
	}
	at, _, why := x.track.Heard(x.s.Wall.Now())
	x.timed = why == "" && at >= 0
	if !x.timed {
		at = x.round.Heard()
	}
	if !x.round.Answer(id, at) {
		return
	}
	x.given = given
	x.track.Stop()
	x.review()
	x.s.Keep(x.record())
	x.s.Ear.Back()
}

func (x *Which) record() (history.Round, error) {
	q := x.question
	played := x.s.Blank(string(q.Ask), q.Rhythm.ID)
	played.BPM, played.Riff, played.Eights, played.Seed = q.BPM, q.Level.String(), q.Eights, q.Seed
	played.Epoch = x.track.Epoch
	x.s.Riffed(&played, q.Rhythm, x.round.Played(0), x.s.Address.Hide)
	for _, c := range q.Choices {
		played.Choices = append(played.Choices, c.ID)
	}
	answer, took := x.round.Given()
	played.Answer, played.Right = answer, answer == q.Right
	if x.timed {
		after := host.Milliseconds(took)
		played.Took = &after
	}
	played.Heard = float64(min(took, x.round.End()-x.round.Start())) / float64(q.Rhythm.Length(q.BPM))
	return history.NewAnswered(played)
}

func (x *Which) Interrupt(why string) {
	x.s.Cut(&x.track, x.round, why)
	x.sides.silence()
}

func (x *Which) Tick(now float64) bool {
	before, alone, second := x.round.Phase(), x.s.Ear.Alone, x.inSecond
	switch {
	case x.round.UnderWay():
		at, _, why := x.track.Heard(now)
		if why != "" {
			x.Interrupt(why)
			return true
		}
		x.s.Ear.Follow(at)
		x.round.Hear(at)
		x.inSecond = x.question.Other != nil && at >= x.round.Start()+x.question.Rhythm.At(x.question.Cycles()*x.question.Rhythm.Steps(), x.question.BPM)
		if x.round.Phase() == round.Waiting {
			x.track.Stop()
			x.s.Ear.Back()
		}
		x.blank.Shown.Centre, x.blank.Moves = "", true
		if at = x.track.Seen(at); at < x.round.Start() {
			x.blank.Shown.Centre = x.round.CountAt(at)
		}
		x.follower.ShowHands(&x.blank.Shown, x.s.Ear.Hands, at)
	case x.sides.hears != 0:
		x.sides.follow(now)
	}
	return x.round.Phase() != before || x.s.Ear.Alone != alone || x.inSecond != second
}

func (x *Which) Phase() view.Phase { return control.PhaseOf(x.round.Phase()) }

// GoOut gives up the round.
func (x *Which) GoOut() {
	x.Interrupt(host.WhyStop)
	x.Prepare()
}
