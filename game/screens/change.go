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

// Change is the screen Hear the change: a rhythm becomes another, or not, and the player
// presses when she hears it. Both are seen in its review, and heard in turn.
type Change struct {
	s      *control.Shared
	track  playback.Track
	taps   playback.Taps // the presses
	change quiz.Change
	round  *round.Changed
	muted  bool             // the eight in which the change was heard is all but over
	names  []string         // of the rhythms that a link asked for
	fewer  *roundview.Fewer // why there are fewer names than were asked for; nil where there are not

	blank    playback.Head // the head while it is played
	follower playback.Follower
	sides    sides
}

// NewChange is the screen over what is shared.
func NewChange(s *control.Shared) *Change {
	return &Change{s: s, track: playback.NewTrack(s.Sound, &s.Outputs), sides: newSides(s)}
}

// quietBefore is how long before the end of the eight the drums fall silent, so that
// nothing of the next is heard: less than the time from its last stroke, and more
// than a gain takes and a tick may come late.
const quietBefore = 50 * time.Millisecond

// Prepare makes a new round as the address says.
func (x *Change) Prepare() {
	change, err := x.next(x.s.Address.From)
	if err != nil {
		// Nothing follows the first rhythm of the link: say so, and offer what does.
		was := x.s.Address
		x.s.Problems = []link.Problem{{Name: "from", Value: was.From, Allowed: x.s.Words.Say("change-too-few")}}
		if !x.widen() {
			x.s.Address = link.Default(view.ScreenChange)
		}
		if x.s.Address == was {
			panic(err) // the quiz's tests make questions of the five
		}
		x.Prepare()
		return
	}
	x.with(change)
}

// next is the question that the address makes out of some rhythms.
func (x *Change) next(from string) (quiz.Change, error) {
	a := x.s.Address
	pool, err := quiz.From(x.s.Rhythms(), from)
	if err != nil {
		return quiz.Change{}, err
	}
	answers, lean := max(a.Answers, link.LeastAnswers), quiz.Lean{Fill: a.Asked != 1}
	x.fewer = roundview.FewerOf(lean.ChangeNames(x.s.Cycle(), pool, answers, a.BPM))
	return lean.NextChange(x.s.Cycle(), pool, answers, a.Eights, a.BPM, x.s.Level(), x.s.Seed())
}

// widen takes more rhythms into the choice until some can follow the first, and
// reports whether there are.
func (x *Change) widen() bool {
	for _, from := range []string{x.s.Address.From, view.FromEven, view.FromAll} {
		if _, err := x.next(from); err == nil {
			x.s.Address.From = from
			return true
		}
	}
	return false
}

// with makes ready the round of a question.
func (x *Change) with(change quiz.Change) {
	r, err := round.NewChanged(change.Change)
	if err != nil {
		panic(err) // the quiz's tests play them
	}
	x.change, x.round = change, r
	question := quiz.Question{Ask: quiz.Same, Rhythm: change.From, BPM: change.BPM, Level: change.Level, Seed: change.Seed}
	x.taps.Renew()
	x.follower.Follow(r.Passage)
	x.sides.begin(question)
	x.muted = false
	x.names = nil
	for _, id := range x.s.Address.Ids() {
		c, _ := x.s.Rhythms().Get(id)
		x.names = append(x.names, c.Name)
	}
}

func (x *Change) begin() {
	x.s.Ear.Begin()
	x.track.Play(x.round.Passage, x.s.Wall.Now())
	x.round.Begin()
}

func (x *Change) Act(action, value string) {
	if x.s.Helped(&x.track, x.round.UnderWay(), action, value) || x.sides.act(action, value, x.round.Phase()) {
		return
	}
	switch action {
	case view.ActBegin:
		if x.round.Phase() == round.Ready && x.s.Sound.Audible() {
			x.begin()
		}
	case view.ActAnswer:
		x.say(value)
	case view.ActOnce:
		x.Interrupt(host.WhyStop)
		x.with(x.change)
		x.begin()
	case view.ActNext:
		x.Interrupt(host.WhyStop)
		x.Prepare()
		x.begin()
	case view.ActStop:
		x.Interrupt(host.WhyStop)
		x.Prepare()
	default: // a setting was changed
		x.Interrupt(host.WhyStop)
		x.widen()
		x.Prepare()
	}
}

func (x *Change) Tap(t *host.Tap) {
	x.taps.Take(&x.track, t, x.s.SetUp(), x.round.Press)
}

// say takes what the player says it has become.
func (x *Change) say(id string) {
	if _, ok := x.change.Choice(id); ok && x.round.Answer(id) {
		x.finish()
	}
}

// finish makes the review and keeps the round.
func (x *Change) finish() {
	x.sides.all = []roundview.Side{{ID: x.change.From.ID, Rhythm: x.change.From}}
	if to := x.change.To; to != nil {
		x.sides.all = append(x.sides.all, roundview.Side{ID: to.ID, Rhythm: to})
		if said, ok := x.change.Choice(x.round.Notice().Answer); ok && said.ID != to.ID {
			x.sides.all = append(x.sides.all, roundview.Side{ID: said.ID, Rhythm: said.Rhythm})
		}
	}
	x.s.Keep(x.record())
}

func (x *Change) Interrupt(why string) {
	x.s.Cut(&x.track, x.round, why)
	x.sides.silence()
}

func (x *Change) Tick(now float64) bool {
	before, alone := x.round.Phase(), x.s.Ear.Alone
	switch {
	case x.round.UnderWay():
		x.hear(now)
	case x.sides.hears != 0:
		x.sides.follow(now)
	}
	return x.round.Phase() != before || x.s.Ear.Alone != alone
}

// hear tells the round what is heard.
func (x *Change) hear(now float64) {
	at, _, why := x.track.Heard(now)
	if why != "" {
		x.Interrupt(why)
		return
	}
	if x.round.Over(at, x.s.SetUp()) {
		if !x.track.WholeTo(x.round.End()) {
			x.Interrupt(host.WhyGap)
			return
		}
		x.round.Retime(func(t round.Tap) time.Duration { return x.taps.Settled(&x.track, t) })
	}
	x.round.Hear(at, x.s.SetUp())
	switch {
	case !x.round.UnderWay():
		x.track.Stop()
		x.s.Ear.Back()
	case x.muted:
	case x.round.End() < x.round.Passage.End() && at >= x.round.End()-quietBefore:
		x.muted = true
		x.s.Sound.Balance(0, 0)
	default:
		x.s.Ear.Follow(at)
	}
	if x.round.Phase() == round.Review {
		x.finish()
	}
}

func (x *Change) record() (history.Round, error) {
	c, n := x.change, x.round.Notice()
	kept := x.s.Blank(history.Change, c.From.ID)
	kept.BPM, kept.Riff, kept.Eights, kept.Seed = c.BPM, c.Level.String(), c.Eights, c.Seed
	kept.Epoch, kept.Coarse, kept.Setup = x.track.Epoch, x.taps.Coarse, host.Milliseconds(x.round.SetUp())
	x.s.Riffed(&kept, c.From, x.round.Played(0), 0)
	if at, ok := x.round.Changes(); ok {
		differs, _ := x.round.Differs()
		changes := x.track.Second(at)
		kept.To, kept.After, kept.Changes, kept.Strokes = c.To.ID, c.At, &changes, []float64{x.track.Second(differs)}
	}
	for i, p := range x.round.Presses() {
		tap := x.taps.Recorded(p)
		if n.Heard && i == n.Press {
			differs, _ := x.round.Differs()
			offset := host.Milliseconds(p.At - differs)
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

func (x *Change) Phase() view.Phase { return control.PhaseOf(x.round.Phase()) }

// GoOut gives up the round.
func (x *Change) GoOut() {
	x.Interrupt(host.WhyStop)
	x.Prepare()
}
