package session

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
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
	taps   playback.Taps // the presses
	change quiz.Change
	round  *round.Changed
	muted  bool // the eight in which the change was heard is all but over
}

func newChanging(d *desk) *changing {
	return &changing{asking: asking{desk: d, track: playback.NewTrack(d.Sound, &d.outputs)}}
}

// quietBefore is how long before the end of the eight the drums fall silent, so that
// nothing of the next is heard: less than the time from its last stroke, and more
// than a gain takes and a tick may come late.
const quietBefore = 50 * time.Millisecond

// lay makes a new round as the address says.
func (x *changing) lay() {
	change, err := x.next(x.asking.desk.address.From)
	if err != nil {
		// Nothing follows the first rhythm of the link: say so, and offer what does.
		was := x.asking.desk.address
		x.asking.desk.problems = []view.Problem{{Name: "from", Value: was.From, Allowed: x.asking.desk.Words.Say("change-too-few")}}
		if !x.widen() {
			x.asking.desk.address = view.DefaultAddress(view.ScreenChange)
		}
		if x.asking.desk.address == was {
			panic(err) // the quiz's tests make questions of the five
		}
		x.lay()
		return
	}
	x.with(change)
}

// next is the question that the address makes out of some rhythms.
func (x *changing) next(from string) (quiz.Change, error) {
	a := x.asking.desk.address
	pool, err := quiz.From(x.asking.desk.Rhythms(), from)
	if err != nil {
		return quiz.Change{}, err
	}
	answers, lean := max(a.Answers, view.LeastAnswers), quiz.Lean{Fill: a.Asked != 1}
	x.asking.fewer = view.FewerOf(lean.ChangeNames(x.asking.desk.cycle(), pool, answers, a.BPM))
	return lean.NextChange(x.asking.desk.cycle(), pool, answers, a.Eights, a.BPM, x.asking.desk.level(), x.asking.desk.seed())
}

// widen takes more rhythms into the choice until some can follow the first, and
// reports whether there are.
func (x *changing) widen() bool {
	for _, from := range []string{x.asking.desk.address.From, view.FromEven, view.FromAll} {
		if _, err := x.next(from); err == nil {
			x.asking.desk.address.From = from
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
	x.asking.question = quiz.Question{Ask: quiz.Same, Rhythm: change.From, BPM: change.BPM, Level: change.Level, Seed: change.Seed}
	x.taps.Renew()
	x.asking.follower.Follow(r.Passage)
	x.asking.side, x.asking.sides, x.muted = 0, nil, false
	x.asking.names = nil
	for _, id := range x.asking.desk.address.Ids() {
		c, _ := x.asking.desk.Rhythms().Get(id)
		x.asking.names = append(x.asking.names, c.Name)
	}
}

func (x *changing) begin() {
	x.asking.desk.ear.Begin()
	x.asking.track.Play(x.round.Passage, x.asking.desk.Wall.Now())
	x.round.Begin()
}

func (x *changing) act(action, value string) {
	if x.asking.desk.helped(&x.asking.track, x.round.UnderWay(), action, value) || x.asking.actReview(action, value, x.round.Phase()) {
		return
	}
	switch action {
	case view.ActBegin:
		if x.round.Phase() == round.Ready && x.asking.desk.Sound.Audible() {
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

func (x *changing) tap(t *host.Tap) {
	x.taps.Take(&x.asking.track, t, x.asking.desk.setup(), x.round.Press)
}

// say takes what the player says it has become.
func (x *changing) say(id string) {
	if _, ok := x.change.Choice(id); ok && x.round.Answer(id) {
		x.finish()
	}
}

// finish makes the review and keeps the round.
func (x *changing) finish() {
	x.asking.sides = []view.Side{{ID: x.change.From.ID, Rhythm: x.change.From}}
	if to := x.change.To; to != nil {
		x.asking.sides = append(x.asking.sides, view.Side{ID: to.ID, Rhythm: to})
		if said, ok := x.change.Choice(x.round.Notice().Answer); ok && said.ID != to.ID {
			x.asking.sides = append(x.asking.sides, view.Side{ID: said.ID, Rhythm: said.Rhythm})
		}
	}
	x.asking.desk.keep(x.record())
}

func (x *changing) interrupted(why string) {
	x.asking.desk.cut(&x.asking.track, x.round, why)
	x.asking.silence()
}

func (x *changing) tick(now float64) bool {
	before, alone := x.round.Phase(), x.asking.desk.ear.Alone
	switch {
	case x.round.UnderWay():
		x.hear(now)
	case x.asking.side != 0:
		x.asking.followSide(now)
	}
	return x.round.Phase() != before || x.asking.desk.ear.Alone != alone
}

// hear tells the round what is heard.
func (x *changing) hear(now float64) {
	at, _, why := x.asking.track.Heard(now)
	if why != "" {
		x.interrupted(why)
		return
	}
	if x.round.Over(at, x.asking.desk.setup()) {
		if !x.asking.track.WholeTo(x.round.End()) {
			x.interrupted(host.WhyGap)
			return
		}
		x.round.Retime(func(t round.Tap) time.Duration { return x.taps.Settled(&x.asking.track, t) })
	}
	x.round.Hear(at, x.asking.desk.setup())
	switch {
	case !x.round.UnderWay():
		x.asking.track.Stop()
		x.asking.desk.ear.Back()
	case x.muted:
	case x.round.End() < x.round.Passage.End() && at >= x.round.End()-quietBefore:
		x.muted = true
		x.asking.desk.Sound.Balance(0, 0)
	default:
		x.asking.desk.ear.Follow(at)
	}
	if x.round.Phase() == round.Review {
		x.finish()
	}
}

func (x *changing) record() (history.Round, error) {
	c, n := x.change, x.round.Notice()
	kept := x.asking.desk.blank(history.Change, c.From.ID)
	kept.BPM, kept.Riff, kept.Eights, kept.Seed = c.BPM, c.Level.String(), c.Eights, c.Seed
	kept.Epoch, kept.Coarse, kept.Setup = x.asking.track.Epoch, x.taps.Coarse, ms(x.round.SetUp())
	x.asking.desk.riffed(&kept, c.From, x.round.Played(0), 0)
	if at, ok := x.round.Changes(); ok {
		differs, _ := x.round.Differs()
		changes := x.asking.track.Second(at)
		kept.To, kept.After, kept.Changes, kept.Strokes = c.To.ID, c.At, &changes, []float64{x.asking.track.Second(differs)}
	}
	for i, p := range x.round.Presses() {
		tap := x.taps.Recorded(p)
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
