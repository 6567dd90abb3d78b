package session

import (
	"slices"
	"time"

	"groundbeat/game/playback"
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
	x := &stopping{tapping: tapping{desk: d, track: playback.NewTrack(d.Sound, &d.outputs)}}
	x.tapping.dealer = x
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
			From: x.tapping.track.Second(x.stopped.At(c.From)), Stop: c.Last.Stroke, Counts: c.Silence, Back: c.Back.Stroke, Taps: c.InSilence,
		})
	}
	for _, t := range x.stopped.Aside() {
		r.Aside = append(r.Aside, x.tapping.taps.Recorded(t))
	}
}

func (x *stopping) screen() view.Screen {
	m := &view.Stop{Dums: *x.tapping.model()}
	if m.Phase == view.Reviewing {
		m.Catch(x.stopped)
	}
	m.Core = slices.DeleteFunc(m.Core, func(o view.Option) bool { return o.Value == view.Any })
	x.tapping.head.Set(m.Head())
	x.tapping.follower.Clear() // what was on the head is gone
	return m.Screen(x.tapping.desk.Words)
}
