package session

import (
	"strconv"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// ear is the help for the ear in the exercise on the desk: the balance, the bass
// drum alone for one eight, and the drummer's hands. All of it is a matter of gains
// and pictures: it acts at once and asks for no new sound.
type ear struct {
	sound   host.Sound
	balance int           // −100, the lead drum alone, to 100, the bass drum alone
	alone   bool          // the bass drum is heard alone …
	until   time.Duration // … up to here, in what is played
	hands   bool          // the drummer's hands are shown
	used    history.Helps // since the round began
}

// reset puts the ear where an exercise begins.
func (e *ear) reset(balance int) {
	*e = ear{sound: e.sound, balance: balance}
	e.apply()
}

// begin notes that a round, or something to be listened to, begins.
func (e *ear) begin() {
	e.alone, e.used = false, history.Helps{}
	e.apply()
}

// apply lets the drums be heard as it is set.
func (e *ear) apply() {
	if e.alone {
		e.sound.Balance(levels(100))
		return
	}
	e.sound.Balance(levels(e.balance))
}

// act answers the controls of the ear, while something is heard at a time of what
// is played and an eight lasts so long. It reports whether it was one of them.
func (e *ear) act(action, value string, at, eight time.Duration) bool {
	switch action {
	case view.ActBalance:
		balance, _ := strconv.Atoi(value)
		e.balance = min(max(balance, -100), 100)
	case view.ActAlone:
		if e.alone = value != "" && eight > 0; e.alone {
			e.until = max(at, 0) + eight
			e.used.Bass++
		}
	case view.ActHands:
		e.hands = value != ""
	default:
		return false
	}
	e.used.Hands = e.used.Hands || e.hands
	e.apply()
	return true
}

// helped answers the controls of the ear, while a player's passage is under way or
// while it is not. It reports whether it was one of them.
func (d *desk) helped(p *player, underWay bool, action, value string) bool {
	at, eight := time.Duration(0), time.Duration(0)
	if underWay {
		at, _, _ = p.heard(d.Wall.Now())
		eight = eightOf(p.passage.Rhythm(max(at, 0)), p.passage.BPM())
	}
	return d.ear.act(action, value, at, eight)
}

// cut ends a round that is under way, without result.
func (d *desk) cut(p *player, r interface {
	UnderWay() bool
	Cut(why string)
}, why string) {
	if r.UnderWay() {
		r.Cut(why)
		p.stop()
		d.ear.back()
	}
}

// follow brings both drums back when the eight is over; it reports whether it did.
func (e *ear) follow(at time.Duration) bool {
	if !e.alone || at < e.until {
		return false
	}
	e.back()
	return true
}

// back lets both drums be heard again.
func (e *ear) back() {
	e.alone = false
	e.apply()
}

// helps are the helps that were used in the round, with those that still are.
func (e *ear) helps() history.Helps {
	used := e.used
	used.Balance, used.Hands = e.balance, used.Hands || e.hands
	return used
}

// shown is the ear on a screen.
func (e *ear) shown() view.Help { return view.Help{Alone: e.alone, Hands: e.hands} }
