package session

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// asking is the exercise Which rhythm? with its lower rungs: a question sounds
// and is answered by a word.
type asking struct {
	*desk
	player
	question quiz.Question
	round    *round.Answered
	given    quiz.Choice
	timed    bool        // is it known when the answer came?
	inSecond bool        // of two that may differ the second is heard
	repeated bool        // was the question heard once more?
	names    []string    // of the rhythms that a link asked for
	fewer    *view.Fewer // why there are fewer names than were asked for; nil where there are not

	side  int // which side is heard in the review: 0 none, 1, 2
	sides []view.Side
	heads [2]liveHead
	blank liveHead // the head while the question is asked
	again again
	follower
}

func newAsking(d *desk) *asking {
	return &asking{desk: d, player: newPlayer(d)}
}

// lay makes a new question as the address says.
func (x *asking) lay() {
	a := x.address
	pool, err := quiz.From(x.Rhythms(), a.From)
	if err == nil {
		x.question, err = x.lean().Next(quiz.Ask(a.Ask), pool, max(a.Answers, view.LeastAnswers), a.BPM, x.level(), x.seed())
	}
	if err != nil {
		// The pool of the link makes no question: say so, and offer one that does.
		x.problems = []view.Problem{{Name: "from", Value: a.From, Allowed: x.Words.Say("from-too-few")}}
		x.address = view.DefaultAddress(view.ScreenWhich)
		x.address.Ask = a.Ask
		if x.address == a {
			panic(err) // the quiz's tests make questions of the five
		}
		x.lay()
		return
	}
	switch x.question.Ask {
	case quiz.Which:
		x.question.Eights = a.Eights
	case quiz.Same:
		x.question.Eights = max(1, a.Eights/2) // of each half
	}
	x.names = nil
	if a.From != quiz.Five && a.From != quiz.Even && a.From != quiz.All {
		for _, c := range pool {
			x.names = append(x.names, c.Name)
		}
	}
	x.fewer = nil
	if n := x.lean().Names(pool, max(a.Answers, view.LeastAnswers), a.BPM, x.level()); x.question.Ask == quiz.Which {
		x.fewer = view.FewerOf(n)
	}
	x.ask()
}

// lean is what the questions lean to: those of an old link to what they were.
func (x *asking) lean() quiz.Lean {
	l := x.learner.lean()
	l.Fill = x.address.Asked != 1
	return l
}

// ask makes the question ready to be heard.
func (x *asking) ask() {
	p, err := passageOf(x.question, x.address.Hide)
	if err != nil {
		panic(err) // questions are made of what can be played; the quiz's tests play them
	}
	x.follow(p)
	x.round = round.NewAnswered(p, x.limit())
	x.side, x.sides, x.given, x.inSecond, x.repeated = 0, nil, quiz.Choice{}, false, false
}

// eightLasts is how long an eight of a question among rhythms is heard, however
// fast it is: a length that went with the tempo would tell the rhythm.
const eightLasts = 8 * time.Minute / 100

// limit is how long the question is heard; 0 is to its end.
func (x *asking) limit() time.Duration {
	if x.question.Ask != quiz.Which {
		return 0
	}
	return time.Duration(x.question.Eights) * eightLasts
}

// passageOf is what a question sounds like. A count-in would tell the tempo, and
// so something of the rhythm: there is none where the rhythm is asked.
func passageOf(q quiz.Question, hide int) (*round.Passage, error) {
	cycles := q.Cycles()
	if q.Ask == quiz.Which {
		cycles += int(time.Duration(q.Eights)*eightLasts/q.Rhythm.Length(q.BPM)) + 1
	}
	var sections []round.Section
	for i, c := range []*rhythm.Cycle{q.Rhythm, q.Other} {
		if c == nil {
			continue
		}
		r, err := round.Riff(c, q.Level, q.Seed, i, hide)
		if err != nil {
			return nil, err
		}
		sections = append(sections, round.Section{Rhythm: c, Cycles: cycles, Riff: r})
	}
	counted := q.Ask == quiz.HowMany || q.Ask == quiz.Same
	return round.NewPassage(q.BPM, q.Level, q.Seed, counted, sections...)
}

func (x *asking) begin() {
	x.ear.begin()
	x.play(x.round.Passage, x.Wall.Now())
	x.round.Begin()
}

func (x *asking) act(action, value string) {
	if x.helped(&x.player, x.round.UnderWay(), action, value) || x.actReview(action, value, x.round.Phase()) {
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
		x.interrupted(host.WhyStop)
		x.ask()
		x.repeated = true
		x.begin()
	case view.ActNext:
		x.interrupted(host.WhyStop)
		x.lay()
		x.begin()
	default: // it is stopped, or a setting was changed
		x.interrupted(host.WhyStop)
		x.lay()
	}
}

// answer takes an answer, keeps it, and shows what was right.
func (x *asking) answer(id string) {
	given, ok := x.question.Choice(id)
	if !ok {
		return
	}
	at, _, why := x.heard(x.Wall.Now())
	x.timed = why == "" && at >= 0
	if !x.timed {
		at = x.round.Heard()
	}
	if !x.round.Answer(id, at) {
		return
	}
	x.given = given
	x.player.stop()
	x.review()
	x.keep(x.record())
	x.ear.back()
}

func (x *asking) record() (history.Round, error) {
	q := x.question
	kind := string(q.Ask) // alike, but for the one with names
	if q.Ask == quiz.Which {
		kind = history.Which
	}
	played := x.desk.blank(kind, q.Rhythm.ID)
	played.BPM, played.Riff, played.Eights, played.Seed = q.BPM, q.Level.String(), q.Eights, q.Seed
	played.Epoch = x.epoch
	x.riffed(&played, q.Rhythm, x.round.Played(0), x.address.Hide)
	for _, c := range q.Choices {
		played.Choices = append(played.Choices, c.ID)
	}
	answer, took := x.round.Given()
	played.Answer, played.Right = answer, answer == q.Right
	if x.timed {
		after := ms(took)
		played.Took = &after
	}
	played.Heard = float64(min(took, x.round.End()-x.round.Start())) / float64(q.Rhythm.Length(q.BPM))
	return history.NewAnswered(played)
}

func (x *asking) tap(*host.Tap) {}

func (x *asking) interrupted(why string) {
	x.cut(&x.player, x.round, why)
	x.silence()
}

// silence ends what is heard in the review.
func (x *asking) silence() {
	if x.side != 0 {
		x.side = 0
		x.player.stop()
		x.ear.apply()
		x.stale = true
	}
}

func (x *asking) tick(now float64) bool {
	before, alone, second := x.round.Phase(), x.ear.alone, x.inSecond
	switch {
	case x.round.UnderWay():
		at, _, why := x.heard(now)
		if why != "" {
			x.interrupted(why)
			return true
		}
		x.ear.follow(at)
		x.round.Hear(at)
		x.inSecond = x.question.Other != nil && at >= x.round.Start()+x.question.Rhythm.At(x.question.Cycles()*x.question.Rhythm.Steps(), x.question.BPM)
		if x.round.Phase() == round.Waiting {
			x.player.stop()
			x.ear.back()
		}
		x.blank.Centre, x.blank.moves = "", true
		if at = x.seen(at); at < x.round.Start() {
			x.blank.Centre = x.round.CountAt(at)
		}
		x.show(&x.blank.Head, x.ear.hands, at)
	case x.side != 0:
		x.followSide(now)
	}
	return x.round.Phase() != before || x.ear.alone != alone || x.inSecond != second
}
