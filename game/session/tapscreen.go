package session

import (
	"math/rand/v2"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// chosen is the rhythm of a round: the address's, or for Any one out of the
// pool, by the seed.
func (x *tapping) chosen(seed uint64) *rhythm.Cycle {
	if c := x.cycle(); c != nil {
		return c
	}
	pool, err := quiz.From(x.Rhythms(), x.address.From)
	if err != nil || len(pool) == 0 {
		pool, _ = quiz.From(x.Rhythms(), quiz.Five)
	}
	return pool[rand.New(rand.NewPCG(seed, 0)).IntN(len(pool))]
}

func (x *tapping) screen() view.Screen {
	m := x.model()
	x.head.set(m.Head())
	x.ringed = -1 // what was on the head is gone
	return m.Screen(x.Words)
}

// model is the round in the terms of its screens.
func (x *tapping) model() *view.Dums {
	c := x.round.Question.Rhythm
	slow, fast := x.tempi(c)
	m := &view.Dums{
		Rhythm: view.NameOf(c), Base: c.Skeleton, Counts: view.CountsOf(c.Base()), Groups: c.Grouping,
		Any: x.address.Rhythm == view.Any, From: x.address.From,
		BPM: x.round.BPM(), Slow: slow, Fast: fast, Eights: x.address.Eights,
		Level: x.address.Riff, Levels: x.levels(), Hide: x.address.Hide,
		Balance: x.ear.balance, Help: x.ear.shown(),
		Round: x.number, Volume: x.shownVolume(),
		Columns: view.ColumnsOf(c.Grouping, c.Steps(), c.StepsPerBeat(), x.board(), x.round.Phase() == round.Review),
		Notes:   x.notes(),
	}
	m.Core, m.More = x.options()
	m.Core = append(m.Core, view.AnyOption(x.Words))
	switch x.round.Phase() {
	case round.Ready:
		hides := riff.Hide(c, x.round.Played(0), x.round.BPM())
		if m.Hides = &hides; m.Any {
			m.BPM = x.address.BPM
		}
	case round.CountIn, round.Playing:
		m.Phase = view.Playing
	case round.Void:
		m.Phase, m.Why = view.Voided, whys[x.round.Why()]
	case round.Review:
		m.Phase = view.Reviewing
		m.Review = view.ReviewOf(x.round)
		m.Result = x.result(m.Review)
		m.Again = view.Again{Hearing: x.hears, Drums: x.again.drums, Slowly: x.again.slowly}
	}
	return m
}

var whys = map[string]view.Why{
	host.WhyGap: view.WhyCut, host.WhyHidden: view.WhyHidden, host.WhyPaused: view.WhyPaused, host.WhySilent: view.WhySilent,
}

func (x *tapping) notes() []view.Note {
	notes := x.desk.notes()
	switch x.round.Phase() {
	case round.Ready:
		if x.Sound.Audible() {
			notes = append(notes, view.NoteQuiet)
		}
	case round.Review:
		notes = x.placed(notes, &x.taps)
	}
	return notes
}

// result is the round in figures.
func (x *tapping) result(v *view.Review) *view.Result {
	out, setup := view.ResultOf(x.round, v), x.round.Result().Setup
	if setup != 0 {
		out.SetUp = &setup
	}
	out.Measured = x.measured
	return out
}

// draw moves the drumhead on to what is to be seen of what is heard.
func (x *tapping) draw(place string) *view.Picture {
	if place != view.PlaceHead {
		return nil
	}
	h := &x.head
	if x.round.Phase() == round.Review {
		x.drawAgain()
		return h.draw(x.calm())
	}
	h.moves = x.round.UnderWay()
	if h.moves {
		at := x.seen(x.round.Heard())
		h.Centre = ""
		begun, silent := at >= x.round.Start(), x.silent(at)
		h.Turning = begun && !silent
		if h.Turning {
			h.Turn, x.gone = x.round.TurnAt(at), x.eightsOver(at)
		}
		if begun {
			h.Beads, h.Gone = x.round.Question.Eights, x.gone
		} else {
			h.Centre = x.round.CountAt(at)
		}
		x.marks(silent)
		x.show(&h.Head, x.ear.hands && !silent, at)
	}
	return h.draw(x.calm())
}

// eightsOver is how many whole eights of the round are over at a time.
func (x *tapping) eightsOver(at time.Duration) int {
	return int((at - x.round.Start()) / eightOf(x.round.Question.Rhythm, x.round.BPM()))
}

// marks shows where in the cycle the taps came, as it was to be seen then; the
// older the fainter. Where nothing may tell the time, that would.
func (x *tapping) marks(silent bool) {
	x.head.Taps = x.head.Taps[:0]
	if silent {
		return
	}
	length := x.round.Question.Rhythm.Length(x.round.BPM())
	for _, t := range x.round.Taps() {
		x.head.Taps = append(x.head.Taps, view.Tap{
			Turn: x.round.TurnAt(x.seen(t.At)),
			Age:  int((x.round.Heard() - t.At) / length),
		})
	}
}
