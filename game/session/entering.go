package session

import (
	"errors"

	"groundbeat/game/host"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// visit opens a link.
func (d *desk) visit(query string) {
	if d.exercise != nil {
		d.exercise.interrupted(host.WhyStop)
	}
	address, err := view.ParseAddress(query, d.allowed)
	d.address, d.problems, d.practice = address, nil, nil
	if view.Bare(query) {
		d.address = d.habits().Fill(address, view.Address{})
	}
	var link *view.LinkError
	if errors.As(err, &link) {
		d.problems = link.Problems
	}
	d.turn()
}

// leave goes to another address, out of a practice too; the back button leads back
// from it.
func (d *desk) leave(to view.Address) {
	d.practice = nil
	d.goTo(to, true)
}

// goTo goes to another address: as a visit, from which the back button leads back, or
// in the place of the one before.
func (d *desk) goTo(to view.Address, visit bool) {
	d.exercise.interrupted(host.WhyStop)
	d.latest[d.address.Screen] = d.address
	d.address, d.problems = to, nil
	if visit {
		d.trail.Visit()
	}
	d.Page.Link(to.String(), d.trail.At(), visit)
	d.turn()
}

// keepStep keeps the browser's history in step with what lies on the desk. A practice is one
// entry, whatever is played in it.
func (d *desk) keepStep() {
	in := d.practice == nil && d.problems == nil && d.exercise.stands() != view.Ready
	switch {
	case in && !d.trail.In():
		d.Page.Link(d.address.String(), d.trail.Enter(d.address.Screen), true)
	case !in && d.trail.In():
		d.Page.Back(d.trail.Leave())
	}
}

// came follows the browser, which went back or forward to an entry.
func (d *desk) came(query, mark string) {
	came, screen := d.trail.Come(mark)
	switch {
	case came == view.CameHere && d.problems != nil:
	case came == view.CameHere:
		d.Page.Link(d.address.String(), mark, false)
	case came == view.CameOut:
		d.exercise.goOut() // with what was set meanwhile
		d.Page.Link(d.address.String(), mark, false)
		d.stale = true
	case came == view.CameToRound && d.exercises.of(screen).stands() == view.Reviewing:
		d.restore(screen, query)
	default:
		d.visit(query)
	}
}

// restore goes back to a review, which lies where it was left.
func (d *desk) restore(screen, query string) {
	address, err := view.ParseAddress(query, d.allowed)
	if err != nil {
		d.visit(query)
		return
	}
	d.exercise.interrupted(host.WhyStop)
	d.address, d.problems, d.practice = address, nil, nil
	d.exercise = d.exercises.of(screen)
	d.ear.Reset(d.outputs.Adjustment().Bass)
	d.stale = true
}

// stands is where nothing is played in rounds.
func (d *desk) stands() view.Phase { return view.Ready }

// goOut gives up the round.
func (d *desk) goOut() {
	d.exercise.interrupted(host.WhyStop)
	d.exercise.lay()
}

// phaseOf is where a round stands, in the terms of its screens.
func phaseOf(p round.Phase) view.Phase {
	switch p {
	case round.CountIn, round.Playing:
		return view.Playing
	case round.Waiting:
		return view.Waiting
	case round.Void:
		return view.Voided
	case round.Review:
		return view.Reviewing
	}
	return view.Ready
}

func (x *tapping) stands() view.Phase  { return phaseOf(x.round.Phase()) }
func (x *asking) stands() view.Phase   { return phaseOf(x.round.Phase()) }
func (x *changing) stands() view.Phase { return phaseOf(x.round.Phase()) }

func (x *setting) stands() view.Phase {
	if x.found != nil {
		return view.Reviewing
	}
	return phaseOf(x.round.Phase())
}

func (x *teaching) stands() view.Phase {
	if x.inside {
		return view.Playing
	}
	return view.Ready
}

func (x *teaching) goOut() { x.leaveRoom() }

// onTo is the address of another screen, as one goes there: with what this one shares with
// it; from one that shares nothing as the other was left, or else as is the habit.
func (d *desk) onTo(screen string) view.Address {
	if was, ok := d.latest[screen]; ok && d.address.Riff == "" {
		return was
	}
	return d.habits().Fill(d.address.To(screen), d.address)
}
