package session

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// changing is the exercise Hear the change: a rhythm becomes another, or not, and
// the player presses when she hears it. Its review is that of asking, of whose
// question the two rhythms are made: both are seen, and heard in turn, as there.
type changing struct {
	asking
	taps   // the presses
	change quiz.Change
	round  *round.Changed
	muted  bool // the eight in which the change was heard is all but over
}

func newChanging(d *desk) *changing {
	return &changing{asking: asking{desk: d, player: newPlayer(d)}}
}

// quietBefore is how long before the end of the eight the drums fall silent, so that
// nothing of the next is heard: less than the time from its last stroke, and more
// than a gain takes and a tick may come late.
const quietBefore = 50 * time.Millisecond

// lay makes a new round as the address says.
func (x *changing) lay() {
	change, err := x.next(x.address.From)
	if err != nil {
		// Nothing follows the first rhythm of the link: say so, and offer what does.
		was := x.address
		x.problems = []view.Problem{{Name: "from", Value: was.From, Allowed: x.Words.Say("change-too-few")}}
		if !x.widen() {
			x.address = view.DefaultAddress(view.ScreenChange)
		}
		if x.address == was {
			panic(err) // the quiz's tests make questions of the five
		}
		x.lay()
		return
	}
	x.with(change)
}

// next is the question that the address makes out of some rhythms.
func (x *changing) next(from string) (quiz.Change, error) {
	a := x.address
	pool, err := quiz.From(x.Rhythms(), from)
	if err != nil {
		return quiz.Change{}, err
	}
	answers, lean := max(a.Answers, view.LeastAnswers), quiz.Lean{Fill: a.Asked != 1}
	x.fewer = view.FewerOf(lean.ChangeNames(x.cycle(), pool, answers, a.BPM))
	return lean.NextChange(x.cycle(), pool, answers, a.Eights, a.BPM, x.level(), x.seed())
}

// widen takes more rhythms into the choice until some can follow the first, and
// reports whether there are.
func (x *changing) widen() bool {
	for _, from := range []string{x.address.From, view.FromEven, view.FromAll} {
		if _, err := x.next(from); err == nil {
			x.address.From = from
			return true
		}
	}
	return false
}

// with lays a question on the desk.
func (x *changing) with(change quiz.Change) {
	r, err := round.NewChanged(change.Change)
	if err != nil {
		panic(err) // the quiz's tests play them
	}
	x.change, x.round = change, r
	x.question = quiz.Question{Ask: quiz.Same, Rhythm: change.From, BPM: change.BPM, Level: change.Level, Seed: change.Seed}
	x.renew()
	x.follow(r.Passage)
	x.side, x.sides, x.muted = 0, nil, false
	x.names = nil
	for _, id := range x.address.Ids() {
		c, _ := x.Rhythms().Get(id)
		x.names = append(x.names, c.Name)
	}
}

func (x *changing) begin() {
	x.ear.begin()
	x.play(x.round.Passage, x.Wall.Now())
	x.round.Begin()
}

func (x *changing) act(action, value string) {
	if x.helped(&x.player, x.round.UnderWay(), action, value) || x.actReview(action, value, x.round.Phase()) {
		return
	}
	switch action {
	case view.ActBegin:
		if x.round.Phase() == round.Ready && x.Sound.Audible() {
			x.begin()
		}
	case view.ActAnswer:
		x.say(value)
	case view.ActOnce:
		x.interrupted(host.WhyStop)
		x.with(x.change)
		x.begin()
	case view.ActNext:
		x.interrupted(host.WhyStop)
		x.lay()
		x.begin()
	case view.ActStop:
		x.interrupted(host.WhyStop)
		x.lay()
	default: // a setting was changed
		x.interrupted(host.WhyStop)
		x.widen()
		x.lay()
	}
}

func (x *changing) tap(t *host.Tap) { x.take(&x.player, t, x.setup(), x.round.Press) }

// say takes what the player says it has become.
func (x *changing) say(id string) {
	if _, ok := x.change.Choice(id); ok && x.round.Answer(id) {
		x.finish()
	}
}

// finish makes the review and keeps the round.
func (x *changing) finish() {
	x.sides = []view.Side{{ID: x.change.From.ID, Rhythm: x.change.From}}
	if to := x.change.To; to != nil {
		x.sides = append(x.sides, view.Side{ID: to.ID, Rhythm: to})
		if said, ok := x.change.Choice(x.round.Notice().Answer); ok && said.ID != to.ID {
			x.sides = append(x.sides, view.Side{ID: said.ID, Rhythm: said.Rhythm})
		}
	}
	x.keep(x.record())
}

func (x *changing) interrupted(why string) {
	x.cut(&x.player, x.round, why)
	x.silence()
}

func (x *changing) tick(now float64) bool {
	before, alone := x.round.Phase(), x.ear.alone
	switch {
	case x.round.UnderWay():
		x.hear(now)
	case x.side != 0:
		x.followSide(now)
	}
	return x.round.Phase() != before || x.ear.alone != alone
}

// hear tells the round what is heard.
func (x *changing) hear(now float64) {
	at, _, why := x.heard(now)
	if why != "" {
		x.interrupted(why)
		return
	}
	if x.round.Over(at, x.setup()) {
		if !x.wholeTo(x.round.End()) {
			x.interrupted(host.WhyGap)
			return
		}
		x.round.Retime(func(t round.Tap) time.Duration { return x.settled(&x.player, t) })
	}
	x.round.Hear(at, x.setup())
	switch {
	case !x.round.UnderWay():
		x.player.stop()
		x.ear.back()
	case x.muted:
	case x.round.End() < x.round.Passage.End() && at >= x.round.End()-quietBefore:
		x.muted = true
		x.Sound.Balance(0, 0)
	default:
		x.ear.follow(at)
	}
	if x.round.Phase() == round.Review {
		x.finish()
	}
}

func (x *changing) record() (history.Round, error) {
	c, n := x.change, x.round.Notice()
	kept := x.desk.blank(history.Change, c.From.ID)
	kept.BPM, kept.Riff, kept.Eights, kept.Seed = c.BPM, c.Level.String(), c.Eights, c.Seed
	kept.Epoch, kept.Coarse, kept.Setup = x.epoch, x.coarse, ms(x.round.SetUp())
	x.riffed(&kept, c.From, x.round.Played(0), 0)
	if at, ok := x.round.Changes(); ok {
		differs, _ := x.round.Differs()
		changes := x.second(at)
		kept.To, kept.After, kept.Changes, kept.Strokes = c.To.ID, c.At, &changes, []float64{x.second(differs)}
	}
	for i, p := range x.round.Presses() {
		tap := x.recorded(p)
		if n.Heard && i == n.Press {
			differs, _ := x.round.Differs()
			offset := ms(p.At - differs)
			tap.Stroke, tap.Offset = new(int), &offset
		}
		kept.Taps = append(kept.Taps, tap)
	}
	for _, choice := range c.Choices {
		kept.Choices = append(kept.Choices, choice.ID)
	}
	kept.Answer, kept.Right = n.Answer, n.Right
	return history.NewChange(kept)
}
