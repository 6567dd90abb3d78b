package session

import (
	"math/rand/v2"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// chosen is the rhythm of a round: the address's, or for Any one out of the
// pool, by the seed.
func (x *tapping) chosen(seed uint64) *rhythm.Cycle {
	if c := x.desk.cycle(); c != nil {
		return c
	}
	pool, err := quiz.From(x.desk.Rhythms(), x.desk.address.From)
	if err != nil || len(pool) == 0 {
		pool, _ = quiz.From(x.desk.Rhythms(), quiz.Five)
	}
	return pool[rand.New(rand.NewPCG(seed, 0)).IntN(len(pool))]
}

func (x *tapping) screen() view.Screen {
	m := x.model()
	x.head.Set(m.Head())
	x.follower.Clear() // what was on the head is gone
	return m.Screen(x.desk.Words)
}

// model is the round in the terms of its screens.
func (x *tapping) model() *view.Dums {
	c := x.round.Question.Rhythm
	slow, fast := x.desk.tempi(c)
	m := &view.Dums{
		Rhythm: view.NameOf(c), Base: c.Skeleton, Counts: view.CountsOf(c.Base()), Groups: c.Grouping,
		Any: x.desk.address.Rhythm == view.Any, From: x.desk.address.From,
		BPM: x.round.BPM(), Slow: slow, Fast: fast, Eights: x.desk.address.Eights,
		Level: x.desk.address.Riff, Levels: x.desk.levels(), Hide: x.desk.address.Hide,
		Balance: x.desk.ear.Balance, Help: x.desk.ear.Shown(),
		Round: x.taps.Number, Volume: x.desk.shownVolume(),
		Columns: view.ColumnsOf(c.Grouping, c.Steps(), c.StepsPerBeat(), x.desk.board(), x.round.Phase() == round.Review),
		Notes:   x.notes(),
	}
	m.Core, m.More = x.desk.options()
	m.Core = append(m.Core, view.AnyOption(x.desk.Words))
	switch x.round.Phase() {
	case round.Ready:
		hides := riff.Hide(c, x.round.Played(0), x.round.BPM())
		if m.Hides = &hides; m.Any {
			m.BPM = x.desk.address.BPM
		}
	case round.CountIn, round.Playing:
		m.Phase = view.Playing
	case round.Void:
		m.Phase, m.Why = view.Voided, whys[x.round.Why()]
	case round.Review:
		m.Phase = view.Reviewing
		m.Review = view.ReviewOf(x.round)
		m.Result = x.result(m.Review)
		m.Again = view.Again{Hearing: x.hears, Drums: x.again.Drums, Slowly: x.again.Slowly}
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
		if x.desk.Sound.Audible() {
			notes = append(notes, view.NoteQuiet)
		}
	case round.Review:
		notes = x.desk.placed(notes, &x.taps)
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
		return h.Draw(x.desk.calm())
	}
	h.Moves = x.round.UnderWay()
	if h.Moves {
		at := x.track.Seen(x.round.Heard())
		h.Shown.Centre = ""
		begun, silent := at >= x.round.Start(), x.dealer.silent(at)
		h.Shown.Turning = begun && !silent
		if h.Shown.Turning {
			h.Shown.Turn, x.gone = x.round.TurnAt(at), x.eightsOver(at)
		}
		if begun {
			h.Shown.Beads, h.Shown.Gone = x.round.Question.Eights, x.gone
		} else {
			h.Shown.Centre = x.round.CountAt(at)
		}
		x.marks(silent)
		x.follower.ShowHands(&h.Shown, x.desk.ear.Hands && !silent, at)
	}
	return h.Draw(x.desk.calm())
}

// eightsOver is how many whole eights of the round are over at a time.
func (x *tapping) eightsOver(at time.Duration) int {
	return int((at - x.round.Start()) / playback.Eight(x.round.Question.Rhythm, x.round.BPM()))
}

// marks shows where in the cycle the taps came, as it was to be seen then; the
// older the fainter. Where nothing may tell the time, that would.
func (x *tapping) marks(silent bool) {
	x.head.Shown.Taps = x.head.Shown.Taps[:0]
	if silent {
		return
	}
	length := x.round.Question.Rhythm.Length(x.round.BPM())
	for _, t := range x.round.Taps() {
		x.head.Shown.Taps = append(x.head.Shown.Taps, view.Tap{
			Turn: x.round.TurnAt(x.track.Seen(t.At)),
			Age:  int((x.round.Heard() - t.At) / length),
		})
	}
}
