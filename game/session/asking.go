package session

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
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
	track    playback.Track
	question quiz.Question
	round    *round.Answered
	given    quiz.Choice
	timed    bool        // is it known when the answer came?
	inSecond bool        // of two that may differ the second is heard
	repeated bool        // was the question heard once more?
	names    []string    // of the rhythms that a link asked for
	fewer    *view.Fewer // why there are fewer names than were asked for; nil where there are not

	side     int // which side is heard in the review: 0 none, 1, 2
	sides    []view.Side
	heads    [2]playback.Head
	blank    playback.Head // the head while the question is asked
	again    playback.Replay
	follower playback.Follower
}

func newAsking(d *desk) *asking {
	return &asking{desk: d, track: playback.NewTrack(d.Sound, &d.outputs)}
}

// lay makes a new question as the address says.
func (x *asking) lay() {
	a := x.desk.address
	pool, err := quiz.From(x.desk.Rhythms(), a.From)
	if err == nil {
		x.question, err = x.lean().Next(quiz.Ask(a.Ask), pool, max(a.Answers, view.LeastAnswers), a.BPM, x.desk.level(), x.desk.seed())
	}
	if err != nil {
		// The pool of the link makes no question: say so, and offer one that does.
		x.desk.problems = []view.Problem{{Name: "from", Value: a.From, Allowed: x.desk.Words.Say("from-too-few")}}
		x.desk.address = view.DefaultAddress(view.ScreenWhich)
		x.desk.address.Ask = a.Ask
		if x.desk.address == a {
			panic(err) // the quiz's tests make questions of the five
		}
		x.lay()
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
	if n := x.lean().Names(pool, max(a.Answers, view.LeastAnswers), a.BPM, x.desk.level()); x.question.Form().Named {
		x.fewer = view.FewerOf(n)
	}
	x.ask()
}

// lean is what the questions lean to: those of an old link to what they were.
func (x *asking) lean() quiz.Lean {
	l := x.desk.learner.lean()
	l.Fill = x.desk.address.Asked != 1
	return l
}

// ask makes the question ready to be heard.
func (x *asking) ask() {
	p, err := passageOf(x.question, x.desk.address.Hide)
	if err != nil {
		panic(err) // questions are made of what can be played; the quiz's tests play them
	}
	x.follower.Follow(p)
	x.round = round.NewAnswered(p, x.limit())
	x.side, x.sides, x.given, x.inSecond, x.repeated = 0, nil, quiz.Choice{}, false, false
}

// eightLasts is how long an eight of a question among rhythms is heard, however
// fast it is: a length that went with the tempo would tell the rhythm.
const eightLasts = 8 * time.Minute / 100

// limit is how long the question is heard; 0 is to its end.
func (x *asking) limit() time.Duration {
	if !x.question.Form().Named {
		return 0
	}
	return time.Duration(x.question.Eights) * eightLasts
}

// passageOf is what a question sounds like. A count-in would tell the tempo, and
// so something of the rhythm: there is none where the rhythm is asked.
func passageOf(q quiz.Question, hide int) (*round.Passage, error) {
	cycles := q.Cycles()
	if q.Form().Named {
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
	return round.NewPassage(q.BPM, q.Level, q.Seed, q.Form().Counted, sections...)
}

func (x *asking) begin() {
	x.desk.ear.Begin()
	x.track.Play(x.round.Passage, x.desk.Wall.Now())
	x.round.Begin()
}

func (x *asking) act(action, value string) {
	if x.desk.helped(&x.track, x.round.UnderWay(), action, value) || x.actReview(action, value, x.round.Phase()) {
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
	at, _, why := x.track.Heard(x.desk.Wall.Now())
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
	x.desk.keep(x.record())
	x.desk.ear.Back()
}

func (x *asking) record() (history.Round, error) {
	q := x.question
	played := x.desk.blank(string(q.Ask), q.Rhythm.ID)
	played.BPM, played.Riff, played.Eights, played.Seed = q.BPM, q.Level.String(), q.Eights, q.Seed
	played.Epoch = x.track.Epoch
	x.desk.riffed(&played, q.Rhythm, x.round.Played(0), x.desk.address.Hide)
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
	x.desk.cut(&x.track, x.round, why)
	x.silence()
}

// silence ends what is heard in the review.
func (x *asking) silence() {
	if x.side != 0 {
		x.side = 0
		x.track.Stop()
		x.desk.ear.Apply()
		x.desk.stale = true
	}
}

func (x *asking) tick(now float64) bool {
	before, alone, second := x.round.Phase(), x.desk.ear.Alone, x.inSecond
	switch {
	case x.round.UnderWay():
		at, _, why := x.track.Heard(now)
		if why != "" {
			x.interrupted(why)
			return true
		}
		x.desk.ear.Follow(at)
		x.round.Hear(at)
		x.inSecond = x.question.Other != nil && at >= x.round.Start()+x.question.Rhythm.At(x.question.Cycles()*x.question.Rhythm.Steps(), x.question.BPM)
		if x.round.Phase() == round.Waiting {
			x.track.Stop()
			x.desk.ear.Back()
		}
		x.blank.Shown.Centre, x.blank.Moves = "", true
		if at = x.track.Seen(at); at < x.round.Start() {
			x.blank.Shown.Centre = x.round.CountAt(at)
		}
		x.follower.ShowHands(&x.blank.Shown, x.desk.ear.Hands, at)
	case x.side != 0:
		x.followSide(now)
	}
	return x.round.Phase() != before || x.desk.ear.Alone != alone || x.inSecond != second
}
