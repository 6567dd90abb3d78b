package session

import (
	"errors"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// visit opens a link.
func (d *Session) visit(query string) {
	if d.controller != nil {
		d.controller.Interrupt(host.WhyStop)
	}
	address, err := link.Parse(query, d.shared.Allowed)
	d.shared.Address, d.shared.Problems, d.practice = address, nil, nil
	if link.Bare(query) {
		d.shared.Address = d.habits().Fill(address, link.Address{})
	}
	var link *link.Error
	if errors.As(err, &link) {
		d.shared.Problems = link.Problems
	}
	d.turn()
}

// leave goes to another address, out of a practice too; the back button leads back
// from it.
func (d *Session) leave(to link.Address) {
	d.practice = nil
	d.goTo(to, true)
}

// goTo goes to another address: as a visit, from which the back button leads back, or
// in the place of the one before.
func (d *Session) goTo(to link.Address, visit bool) {
	d.controller.Interrupt(host.WhyStop)
	d.latest[d.shared.Address.Screen] = d.shared.Address
	d.shared.Address, d.shared.Problems = to, nil
	if visit {
		d.trail.Visit()
	}
	d.shared.Page.Link(to.String(), d.trail.At(), visit)
	d.turn()
}

// keepStep keeps the browser's history in step with what lies on the desk. A practice is one
// entry, whatever is played in it.
func (d *Session) keepStep() {
	in := d.practice == nil && d.shared.Problems == nil && d.phase() != view.Ready
	switch {
	case in && !d.trail.In():
		d.shared.Page.Link(d.shared.Address.String(), d.trail.Enter(d.shared.Address.Screen), true)
	case !in && d.trail.In():
		d.shared.Page.Back(d.trail.Leave())
	}
}

// came follows the browser, which went back or forward to an entry.
func (d *Session) came(query, mark string) {
	came, screen := d.trail.Come(mark)
	switch {
	case came == link.CameHere && d.shared.Problems != nil:
	case came == link.CameHere:
		d.shared.Page.Link(d.shared.Address.String(), mark, false)
	case came == link.CameOut:
		if x, ok := d.controller.(Entered); ok {
			x.GoOut() // with what was set meanwhile
		}
		d.shared.Page.Link(d.shared.Address.String(), mark, false)
		d.shared.Stale = true
	case came == link.CameToRound && phaseIn(d.controllers.of(screen)) == view.Reviewing:
		d.restore(screen, query)
	default:
		d.visit(query)
	}
}

// restore goes back to a review, which lies where it was left.
func (d *Session) restore(screen, query string) {
	address, err := link.Parse(query, d.shared.Allowed)
	if err != nil {
		d.visit(query)
		return
	}
	d.controller.Interrupt(host.WhyStop)
	d.shared.Address, d.shared.Problems, d.practice = address, nil, nil
	d.controller = d.controllers.of(screen)
	d.shared.Ear.Reset(d.shared.Outputs.Adjustment().Bass)
	d.shared.Stale = true
}

// phase is where the round on the screen stands; Ready where there are none.
func (d *Session) phase() view.Phase { return phaseIn(d.controller) }

func phaseIn(x Controller) view.Phase {
	if in, ok := x.(Entered); ok {
		return in.Phase()
	}
	return view.Ready
}

// onTo is the address of another screen, as one goes there: with what this one shares with
// it; from one that shares nothing as the other was left, or else as is the habit.
func (d *Session) onTo(screen string) link.Address {
	if was, ok := d.latest[screen]; ok && d.shared.Address.Riff == "" {
		return was
	}
	return d.habits().Fill(d.shared.Address.To(screen), d.shared.Address)
}
