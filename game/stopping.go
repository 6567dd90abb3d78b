//go:build js

package game

import (
	"slices"
	"time"

	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// stopping is the exercise Catch the stop: tapping, while the drummer breaks off now
// and then. It deals its own rounds.
type stopping struct {
	tapping
	stopped *round.Stopped
}

func newStopping(d *desk) *stopping {
	x := &stopping{tapping: tapping{desk: d, player: newPlayer(d)}}
	x.dealer = x
	return x
}

func (x *stopping) deal(q round.Question) (*round.Round, error) {
	q.Kind = round.Stops
	var err error
	if x.stopped, err = round.NewStopped(q); err != nil {
		return nil, err
	}
	return &x.stopped.Round, nil
}

func (x *stopping) replay(q round.Question) (*round.Passage, error) {
	return round.NewStoppedPassage(q, false)
}

// silent: a sweep that turned on in the silence would show the 1 that is to be felt.
func (x *stopping) silent(at time.Duration) bool { return x.stopped.Silent(at) }

func (x *stopping) note(r *history.Round) {
	for _, c := range x.stopped.Catches() {
		r.Breaks = append(r.Breaks, history.Break{
			From: x.second(x.stopped.At(c.From)), Stop: c.Last.Stroke, Counts: c.Silence, Back: c.Back.Stroke, Taps: c.InSilence,
		})
	}
	for _, t := range x.stopped.Aside() {
		r.Aside = append(r.Aside, x.recorded(t))
	}
}

func (x *stopping) screen() view.Screen {
	m := &view.Stop{Dums: *x.model()}
	if m.Phase == view.Reviewing {
		x.catches(m)
	}
	m.Core = slices.DeleteFunc(m.Core, func(o view.Option) bool { return o.Value == view.Any })
	x.head.set(m.Head())
	x.ringed = -1 // what was on the head is gone
	return m.Screen(x.Words)
}

// catches says how the stops were caught, and takes them out of the pictures, which
// show the dums of the rhythm and no others.
func (x *stopping) catches(m *view.Stop) {
	c, setup := x.round.Question.Rhythm, x.round.Result().Setup
	landing := func(l round.Landing) view.Landing {
		if !l.Tapped {
			return view.Landing{}
		}
		return view.Landing{Tapped: true, Offset: l.Offset - setup}
	}
	other := map[int]bool{}
	for _, k := range x.stopped.Catches() {
		m.Caught = append(m.Caught, view.StopResult{
			Eight: k.At/(c.CyclesIn(1)*c.Steps()) + 1, Count: c.CountInEight(k.At), Silence: k.Silence,
			Last: landing(k.Last), InSilence: k.InSilence, Back: landing(k.Back),
		})
		other[k.At] = true
		other[k.Stop.Back] = !c.Skeleton[0].Low()
	}
	m.Review.Landed = slices.DeleteFunc(m.Review.Landed, func(l view.Landed) bool { return other[l.Step] })
	m.Review.LeftOut = slices.DeleteFunc(m.Review.LeftOut, func(step int) bool { return other[step] })
	m.Result.Counts = m.Review.Tally(c.Skeleton, view.CountsOf(c.Base()))
}
