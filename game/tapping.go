//go:build js

package game

import (
	"time"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// tapping is the exercise Dums: a round whose low strokes are tapped.
type tapping struct {
	*desk
	player
	round  *round.Round
	number int  // of the round on the page; taps carry it
	slowed int  // tempo of this round alone, where each has its own; 0: not slowed
	coarse bool // was any tap placed by a coarse clock?
	taps   []heardTap
	head   liveHead
}

// heardTap is a tap that the round took, with what was heard at it.
type heardTap struct {
	Tap
	position clock.Position
}

func newTapping(d *desk) *tapping {
	return &tapping{desk: d, player: player{sound: d.Sound}}
}

// lay lays a new round on the desk, as the address says.
func (x *tapping) lay() {
	x.slowed = 0
	x.with(x.seed())
}

// with lays the round of a seed on the desk.
func (x *tapping) with(seed uint64) {
	cycle := x.chosen(seed)
	bpm := x.address.BPM
	if x.address.Rhythm == view.Any && x.slowed != 0 {
		bpm = x.slowed
	}
	if bpm == 0 {
		bpm = cycle.Tempo.Usual
	}
	var err error
	x.round, err = round.New(round.Question{
		Kind: round.Dums, Rhythm: cycle, BPM: bpm, Eights: x.address.Eights, Level: x.level(), Seed: seed,
	})
	if err != nil {
		panic(err) // the limits of addresses lie within those of questions; a test holds them together
	}
	x.number++
	x.coarse, x.taps = false, x.taps[:0]
}

func (x *tapping) begin() {
	x.play(x.round.Passage, x.Wall.Now())
	x.round.Begin()
}

func (x *tapping) act(action, value string) {
	switch action {
	case view.ActBegin:
		if x.round.Phase() == round.Ready {
			x.begin()
		}
	case view.ActStop:
		x.interrupted(WhyStop)
		x.lay()
	case view.ActOnce:
		x.with(x.round.Question.Seed)
		x.begin()
	case view.ActNext:
		x.lay()
		x.begin()
	case view.ActSlower:
		bpm := x.round.BPM()
		x.slowed = max(view.LeastBPM, bpm-max(4, bpm/slowing))
		if x.address.Rhythm != view.Any { // there each rhythm has a tempo of its own
			x.setTempo(x.slowed)
		}
		x.with(x.round.Question.Seed)
		x.begin()
	default:
		x.lay() // a setting was changed
	}
}

// slowing is how much slower "slower" is: a tenth, and at least 4 beats a
// minute.
const slowing = 10

// tap places a tap in the stream by the browser's own stamp and hands it to the
// round it was meant for.
func (x *tapping) tap(t *Tap) {
	if t.Round != x.number {
		return
	}
	at, position, why := x.heard(t.At)
	if at < 0 || why != "" {
		return
	}
	if x.round.Tap(round.Tap{At: at, Mark: len(x.taps)}, x.setup()) {
		x.taps = append(x.taps, heardTap{*t, position})
		x.coarse = x.coarse || position.Coarse
	}
}

// interrupted ends a round that is under way, without result.
func (x *tapping) interrupted(why string) {
	if x.round.UnderWay() {
		x.round.Cut(why)
		x.stop()
	}
}

// tick tells the round what is heard; it reports whether the screen is another.
func (x *tapping) tick(now float64) bool {
	before := x.round.Phase()
	if x.round.UnderWay() {
		x.follow(now)
	}
	return x.round.Phase() != before
}

func (x *tapping) follow(now float64) {
	at, _, why := x.heard(now)
	if why != "" {
		x.interrupted(why)
		return
	}
	if x.round.Over(at, x.setup()) {
		if !x.whole() {
			x.interrupted(WhyGap)
			return
		}
		x.settle()
	}
	x.round.Hear(at, x.setup())
	if x.round.Phase() == round.Review {
		x.sound.Stop()
		x.keep(x.record())
	}
}

// settle asks the clock once more for every tap of a round that is over: where
// readings are noisy, it has learnt meanwhile.
func (x *tapping) settle() {
	x.round.Retime(func(t round.Tap) time.Duration {
		tap := &x.taps[t.Mark]
		if p, err := x.sound.Heard(tap.At); err == nil && p.Epoch == x.epoch {
			tap.position = p
		}
		return x.span(tap.position)
	})
}

// record is the round as it is kept.
func (x *tapping) record() (history.Round, error) {
	q := x.round.Question
	played := x.blank(history.Dums, q.Rhythm.ID)
	played.BPM, played.Riff, played.Eights, played.Seed = q.BPM, q.Level.String(), q.Eights, q.Seed
	played.Epoch, played.Coarse = x.epoch, x.coarse
	played.Window = float64(round.Window.Within) / float64(time.Millisecond)
	for _, s := range x.round.Strokes() {
		frame := x.base + audio.Rate.Frame(s)
		played.Strokes = append(played.Strokes, float64(frame)/float64(audio.Rate))
	}
	for _, t := range x.round.Taps() {
		h := x.taps[t.Mark]
		played.Taps = append(played.Taps, history.Tap{
			At: h.At, Frame: h.position.Frame, By: h.By,
			Reading: history.Reading{Context: h.position.Reading.Context, Performance: h.position.Reading.Performance},
		})
	}
	return history.New(played, x.round.Result())
}
