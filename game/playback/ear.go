package playback

import (
	"strconv"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Ear is the help for the ear on the screen that is shown: the balance, the bass
// drum alone for one eight, and the drummer's hands. All of it is a matter of gains
// and pictures: it acts at once and asks for no new sound.
type Ear struct {
	sound   host.Sound
	Balance int           // −100, the lead drum alone, to 100, the bass drum alone
	Alone   bool          // the bass drum is heard alone …
	until   time.Duration // … up to here, in what is played
	Hands   bool          // the drummer's hands are shown
	used    history.Helps // since the round began
}

// NewEar is an ear over a sound.
func NewEar(sound host.Sound) Ear { return Ear{sound: sound} }

// Reset puts the ear where a screen begins.
func (e *Ear) Reset(balance int) {
	*e = Ear{sound: e.sound, Balance: balance}
	e.Apply()
}

// Begin notes that a round, or something to be listened to, begins.
func (e *Ear) Begin() {
	e.Alone, e.used = false, history.Helps{}
	e.Apply()
}

// Apply lets the drums be heard as it is set.
func (e *Ear) Apply() {
	if e.Alone {
		e.sound.Balance(Levels(100))
		return
	}
	e.sound.Balance(Levels(e.Balance))
}

// Act answers the controls of the ear, while something is heard at a time of what
// is played and an eight lasts so long. It reports whether it was one of them.
func (e *Ear) Act(action, value string, at, eight time.Duration) bool {
	switch action {
	case view.ActBalance:
		balance, _ := strconv.Atoi(value)
		e.Balance = min(max(balance, -100), 100)
	case view.ActAlone:
		if e.Alone = value != "" && eight > 0; e.Alone {
			e.until = max(at, 0) + eight
			e.used.Bass++
		}
	case view.ActHands:
		e.Hands = value != ""
	default:
		return false
	}
	e.used.Hands = e.used.Hands || e.Hands
	e.Apply()
	return true
}

// Follow brings both drums back when the eight is over; it reports whether it did.
func (e *Ear) Follow(at time.Duration) bool {
	if !e.Alone || at < e.until {
		return false
	}
	e.Back()
	return true
}

// Back lets both drums be heard again.
func (e *Ear) Back() {
	e.Alone = false
	e.Apply()
}

// Helps are the helps that were used in the round, with those that still are.
func (e *Ear) Helps() history.Helps {
	used := e.used
	used.Balance, used.Hands = e.Balance, used.Hands || e.Hands
	return used
}

// Shown is the ear on a screen.
func (e *Ear) Shown() view.Help { return view.Help{Alone: e.Alone, Hands: e.Hands} }

// Levels are those of the drums at a balance: −100, the lead drum alone, to 100,
// the bass drum alone; at 0 both are as they are.
func Levels(balance int) (lead, bass float64) {
	return 1 - float64(max(balance, 0))/100, 1 + float64(min(balance, 0))/100
}

// Eight is how long an eight of a rhythm lasts at a tempo.
func Eight(c *rhythm.Cycle, bpm int) time.Duration { return c.At(c.CyclesIn(1)*c.Steps(), bpm) }
