package screens

import (
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Stop is the screen Catch the stop: strokes are tapped, while the drummer breaks off now
// and then.
type Stop struct {
	tapped tapped
	deals  *stops
}

// NewStop is the screen over what is shared.
func NewStop(s *control.Shared) *Stop {
	deals := &stops{}
	return &Stop{tapped: newTapped(s, round.Stops, deals), deals: deals}
}

// stops deals the rounds in which the drummer stops.
type stops struct{ stopped *round.Stopped }

func (d *stops) deal(q round.Setting) (*round.Round, error) {
	var err error
	if d.stopped, err = round.NewStopped(q); err != nil {
		return nil, err
	}
	return &d.stopped.Round, nil
}

func (d *stops) replay(q round.Setting) (*round.Passage, error) {
	return round.NewStoppedPassage(q, false)
}

// silent: a sweep that turned on in the silence would show the 1 that is to be felt.
func (d *stops) silent(at time.Duration) bool { return d.stopped.Silent(at) }

func (d *stops) note(r *history.Round, x *tapped) {
	for _, c := range d.stopped.Catches() {
		r.Breaks = append(r.Breaks, history.Break{
			From: x.track.Second(d.stopped.At(c.From)), Stop: c.Last.Stroke, Counts: c.Silence, Back: c.Back.Stroke, Taps: c.InSilence,
		})
	}
	for _, t := range d.stopped.Aside() {
		r.Aside = append(r.Aside, x.taps.Recorded(t))
	}
}

func (x *Stop) Screen() view.Screen {
	m := &roundview.Stop{Dums: *x.tapped.model()}
	if m.Phase == view.Reviewing {
		m.Catch(x.deals.stopped)
	}
	x.tapped.show(m.Head())
	return m.Screen(x.tapped.s.Words)
}

func (x *Stop) Prepare()                       { x.tapped.prepare() }
func (x *Stop) Act(action, value string)       { x.tapped.act(action, value) }
func (x *Stop) Tap(t *host.Tap)                { x.tapped.tap(t) }
func (x *Stop) Interrupt(why string)           { x.tapped.interrupt(why) }
func (x *Stop) Tick(now float64) bool          { return x.tapped.tick(now) }
func (x *Stop) Draw(p string) *picture.Picture { return x.tapped.draw(p) }
func (x *Stop) Phase() view.Phase              { return x.tapped.phase() }
func (x *Stop) GoOut()                         { x.tapped.leave() }
