//go:build js

package game

import (
	"fmt"
	"strconv"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// hearing is the screen Listen: one rhythm, for as long as one likes.
type hearing struct {
	*desk
	loop
	balance int // −100, the lead drum alone, to 100, the bass drum alone
	problem string
	sounds  *round.Passage // what is heard now
	turn    float64        // how far round its cycle that has come
	head    liveHead
}

func newHearing(d *desk) *hearing {
	x := &hearing{desk: d, loop: loop{player: player{sound: d.Sound}}}
	x.next = x.cycleAsSet
	return x
}

// cycleAsSet is one cycle as the settings say, without a count-in.
func (x *hearing) cycleAsSet() *round.Passage {
	p, err := round.NewPassage(x.address.BPM, x.level(), x.seed(), false, round.Section{Rhythm: x.cycle(), Cycles: 1})
	if err != nil {
		panic(err) // the limits of addresses lie within those of passages
	}
	return p
}

func (x *hearing) lay() {
	if x.address.BPM == 0 {
		x.address.BPM = x.cycle().Tempo.Usual
	}
	x.setBalance(0)
	x.problem = ""
}

func (x *hearing) setBalance(b int) {
	x.balance = min(max(b, -100), 100)
	lead, bass := 1.0, 1.0
	if b > 0 {
		lead = 1 - float64(x.balance)/100
	} else {
		bass = 1 + float64(x.balance)/100
	}
	x.Sound.Balance(lead, bass)
}

func (x *hearing) act(action, value string) {
	switch action {
	case view.ActPlay:
		x.start(x.Wall.Now())
	case view.ActStop:
		x.interrupted(WhyStop)
	case view.ActBalance:
		b, _ := strconv.Atoi(value)
		x.setBalance(b)
	case view.ActRhythm:
		x.problem = ""
		x.address.BPM = x.cycle().Tempo.Usual
		if x.on {
			x.start(x.Wall.Now()) // at once, from its first step
		}
	case view.ActTempo, view.ActLevel:
		x.change()
	case view.ActFile:
		x.open(value)
	}
}

// open reads a rhythm file of the player's own. A broken one says where it is
// broken and changes nothing.
func (x *hearing) open(file string) {
	name, text, _ := strings.Cut(file, "\n")
	c, err := rhythm.Parse(name, strings.NewReader(text))
	if err == nil && (c.Tempo.Usual < round.MinBPM || c.Tempo.Usual > round.MaxBPM) {
		err = fmt.Errorf("%s: its usual tempo is %d; allowed is %d to %d", name, c.Tempo.Usual, round.MinBPM, round.MaxBPM)
	}
	var more *rhythm.Catalogue
	if err == nil {
		more, err = x.Rhythms.With(c)
	}
	if err != nil {
		x.problem = err.Error()
		return
	}
	x.Rhythms, x.problem = more, ""
	x.address = x.address.WithRhythm(c.ID)
	x.act(view.ActRhythm, c.ID)
}

func (x *hearing) tap(*Tap) {}

// interrupted stops what plays; a gap in the sound is played on after.
func (x *hearing) interrupted(why string) {
	if x.on && why == WhyGap {
		x.start(x.Wall.Now())
		return
	}
	if x.on {
		x.halt()
		x.sounds, x.stale = nil, true
	}
}

func (x *hearing) tick(now float64) bool {
	passage, at, why := x.hear(now)
	if why != "" {
		x.interrupted(why)
		return true
	}
	if x.sounds = passage; passage != nil {
		x.turn = passage.TurnAt(at)
	}
	return false
}

func (x *hearing) screen() view.Screen {
	m := x.model()
	x.head.set(m.Head())
	return m.Screen(x.Words)
}

func (x *hearing) model() *view.Listen {
	c := x.cycle()
	slow, fast := x.tempi(c)
	m := &view.Listen{
		Rhythm: c, Playing: x.on,
		BPM: x.address.BPM, Slow: slow, Fast: fast,
		Level: x.address.Riff, Levels: x.levels(),
		Balance: x.balance, Volume: x.shownVolume(),
		Problem: x.problem, Board: x.board(), Notes: x.notes(),
	}
	m.Core, m.More = x.options()
	return m
}

func (x *hearing) draw(place string) *liveHead {
	if place != view.PlaceHead {
		return nil
	}
	h := &x.head
	h.moves = h.moves && h.Turning || x.sounds != nil // once more when it stops
	h.Turning, h.Turn = x.sounds != nil, x.turn
	return h
}
