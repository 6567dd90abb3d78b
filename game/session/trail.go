package session

import (
	"errors"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// visit opens a link.
func (x *Session) visit(query string) {
	if x.controller != nil {
		x.controller.Interrupt(host.WhyStop)
	}
	address, err := link.Parse(query, x.shared.Allowed)
	x.shared.Address, x.shared.Problems, x.practice = address, nil, nil
	if link.Bare(query) {
		x.shared.Address = x.habits().Fill(address, link.Address{})
	}
	var link *link.Error
	if errors.As(err, &link) {
		x.shared.Problems = link.Problems
	}
	x.turn()
}

// leave goes to another address, out of a practice too; the back button leads back
// from it.
func (x *Session) leave(to link.Address) {
	x.practice = nil
	x.goTo(to, true)
}

// goTo goes to another address: as a visit, from which the back button leads back, or
// in the place of the one before.
func (x *Session) goTo(to link.Address, visit bool) {
	x.controller.Interrupt(host.WhyStop)
	x.latest[x.shared.Address.Screen] = x.shared.Address
	x.shared.Address, x.shared.Problems = to, nil
	if visit {
		x.trail.Visit()
	}
	x.shared.Page.Link(to.String(), x.trail.At(), visit)
	x.turn()
}

// keepStep keeps the browser's history in step with what goes on. A practice is one
// entry, whatever is played in it.
func (x *Session) keepStep() {
	in := x.practice == nil && x.shared.Problems == nil && x.phase() != view.Ready
	switch {
	case in && !x.trail.In():
		x.shared.Page.Link(x.shared.Address.String(), x.trail.Enter(x.shared.Address.Screen), true)
	case !in && x.trail.In():
		x.shared.Page.Back(x.trail.Leave())
	}
}

// came follows the browser, which went back or forward to an entry.
func (x *Session) came(query, mark string) {
	came, screen := x.trail.Come(mark)
	switch {
	case came == link.CameHere && x.shared.Problems != nil:
	case came == link.CameHere:
		x.shared.Page.Link(x.shared.Address.String(), mark, false)
	case came == link.CameOut:
		if c, ok := x.controller.(control.Entered); ok {
			c.GoOut() // with what was set meanwhile
		}
		x.shared.Page.Link(x.shared.Address.String(), mark, false)
		x.shared.Stale = true
	case came == link.CameToRound && phaseIn(x.controllers.of(screen)) == view.Reviewing:
		x.restore(screen, query)
	default:
		x.visit(query)
	}
}

// restore goes back to a review, which lies where it was left.
func (x *Session) restore(screen, query string) {
	address, err := link.Parse(query, x.shared.Allowed)
	if err != nil {
		x.visit(query)
		return
	}
	x.controller.Interrupt(host.WhyStop)
	x.shared.Address, x.shared.Problems, x.practice = address, nil, nil
	x.controller = x.controllers.of(screen)
	x.shared.Ear.Reset(x.shared.Outputs.Adjustment().Bass)
	x.shared.Stale = true
}

// phase is where the round on the screen stands; Ready where there are none.
func (x *Session) phase() view.Phase { return phaseIn(x.controller) }

func phaseIn(c control.Controller) view.Phase {
	if in, ok := c.(control.Entered); ok {
		return in.Phase()
	}
	return view.Ready
}

// onTo is the address of another screen, as one goes there: with what this one shares with
// it; from one that shares nothing as the other was left, or else as is the habit.
func (x *Session) onTo(screen string) link.Address {
	if was, ok := x.latest[screen]; ok && x.shared.Address.Riff == "" {
		return was
	}
	return x.habits().Fill(x.shared.Address.To(screen), x.shared.Address)
}
