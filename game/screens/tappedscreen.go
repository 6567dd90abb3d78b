package screens

import (
	"math/rand/v2"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// chosen is the rhythm of a round: the address's, or for Any one out of the
// pool, by the seed.
func (x *tapped) chosen(seed uint64) *rhythm.Cycle {
	if c := x.s.Cycle(); c != nil {
		return c
	}
	pool, err := quiz.From(x.s.Rhythms(), x.s.Address.From)
	if err != nil || len(pool) == 0 {
		pool, _ = quiz.From(x.s.Rhythms(), quiz.Five)
	}
	return pool[rand.New(rand.NewPCG(seed, 0)).IntN(len(pool))]
}

// show puts a drumhead in place of the one before.
func (x *tapped) show(h picture.Head) {
	x.head.Set(h)
	x.follower.Clear() // what was on the head is gone
}

// model is the round in the terms of its screens.
func (x *tapped) model() *roundview.Dums {
	c := x.round.Setting.Rhythm
	slow, fast := x.s.Tempi(c)
	m := &roundview.Dums{
		Kind:   x.kind,
		Rhythm: view.NameOf(c), Base: c.Skeleton, Counts: picture.CountsOf(c.Base()), Groups: c.Grouping,
		Any: x.s.Address.Rhythm == view.Any, From: x.s.Address.From,
		BPM: x.round.BPM(), Slow: slow, Fast: fast, Eights: x.s.Address.Eights,
		Level: x.s.Address.Riff, Levels: x.s.Levels(), Hide: x.s.Address.Hide,
		Balance: x.s.Ear.Balance, Help: x.s.Ear.Shown(),
		Round: x.taps.Number, Volume: x.s.ShownVolume(),
		Columns: picture.ColumnsOf(c.Grouping, c.Steps(), c.StepsPerBeat(), x.s.Board(), x.round.Phase() == round.Review),
		Notes:   x.notes(),
	}
	m.Core, m.More = x.s.Options()
	if link.TakesAny(x.kind) {
		m.Core = append(m.Core, roundview.AnyOption(x.s.Words))
	}
	if !link.TakesHide(x.kind) {
		m.Hide = view.NoHide
	}
	switch x.round.Phase() {
	case round.Ready:
		hides := riff.Hide(c, x.round.Played(0), x.round.BPM())
		if m.Hides = &hides; m.Any {
			m.BPM = x.s.Address.BPM
		}
	case round.CountIn, round.Playing:
		m.Phase = view.Playing
	case round.Void:
		m.Phase, m.Why = view.Voided, control.Whys[x.round.Why()]
	case round.Review:
		m.Phase = view.Reviewing
		m.Review = roundview.ReviewOf(x.round)
		m.Result = x.result(m.Review)
		m.Replay = roundview.Replay{Hearing: x.hears, Drums: x.replay.Drums, Slowly: x.replay.Slowly}
	}
	return m
}

func (x *tapped) notes() []view.Note {
	notes := x.s.Notes()
	switch x.round.Phase() {
	case round.Ready:
		if x.s.Sound.Audible() {
			notes = append(notes, view.NoteQuiet)
		}
	case round.Review:
		notes = x.s.Placed(notes, &x.taps)
	}
	return notes
}

// result is the round in figures.
func (x *tapped) result(v *picture.Review) *roundview.Result {
	out, setup := roundview.ResultOf(x.round, v), x.round.Result().Setup
	if setup != 0 {
		out.SetUp = &setup
	}
	out.Measured = x.measured
	return out
}

// draw moves the drumhead on to what is to be seen of what is heard.
func (x *tapped) draw(place string) *picture.Picture {
	if place != view.PlaceHead {
		return nil
	}
	h := &x.head
	if x.round.Phase() == round.Review {
		x.drawReplay()
		return h.Draw(x.s.Calm())
	}
	h.Moves = x.round.UnderWay()
	if h.Moves {
		at := x.track.Seen(x.round.Heard())
		h.Shown.Centre = ""
		begun, silent := at >= x.round.Start(), x.deals.silent(at)
		h.Shown.Turning = begun && !silent
		if h.Shown.Turning {
			h.Shown.Turn, x.gone = x.round.TurnAt(at), x.eightsOver(at)
		}
		if begun {
			h.Shown.Beads, h.Shown.Gone = x.round.Setting.Eights, x.gone
		} else {
			h.Shown.Centre = x.round.CountAt(at)
		}
		x.marks(silent)
		x.follower.ShowHands(&h.Shown, x.s.Ear.Hands && !silent, at)
	}
	return h.Draw(x.s.Calm())
}

// eightsOver is how many whole eights of the round are over at a time.
func (x *tapped) eightsOver(at time.Duration) int {
	return int((at - x.round.Start()) / playback.Eight(x.round.Setting.Rhythm, x.round.BPM()))
}

// marks shows where in the cycle the taps came, as it was to be seen then; the
// older the fainter. Where nothing may tell the time, that would.
func (x *tapped) marks(silent bool) {
	x.head.Shown.Taps = x.head.Shown.Taps[:0]
	if silent {
		return
	}
	length := x.round.Setting.Rhythm.Length(x.round.BPM())
	for _, t := range x.round.Taps() {
		x.head.Shown.Taps = append(x.head.Shown.Taps, picture.Tap{
			Turn: x.round.TurnAt(x.track.Seen(t.At)),
			Age:  int((x.round.Heard() - t.At) / length),
		})
	}
}
