package session

import (
	"fmt"
	"strings"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// hearing is the screen Listen: one rhythm, for as long as one likes.
type hearing struct {
	*desk
	loop
	seed    uint64    // of the riff
	riff    riff.Riff // what is played, cycle after cycle
	first   view.RiffCycle
	sounds  []rhythm.Stroke // what the lead drum plays …
	rolls   bool            // … and whether it rolls, over all that is said at once
	hides   float64         // how far it hides the base, as predicted
	problem string

	head  liveHead
	line  liveLine
	shown *round.Passage // the cycle that both show
	hands []round.Strike // of it and its neighbours; nil until they are asked for
}

func newHearing(d *desk) *hearing {
	x := &hearing{desk: d, loop: loop{player: newPlayer(d)}}
	x.next = x.cycleAsSet
	return x
}

// cycleAsSet is one cycle of the riff as the settings say, without a count-in.
func (x *hearing) cycleAsSet(n int) *round.Passage {
	p, err := round.NewPassage(x.address.BPM, x.level(), x.seed, false,
		round.Section{Rhythm: x.cycle(), Cycles: 1, First: n, Riff: x.riff})
	if err != nil {
		panic(err) // the limits of addresses lie within those of passages
	}
	return p
}

func (x *hearing) lay() {
	if x.address.BPM == 0 {
		x.address.BPM = x.cycle().Tempo.Usual
	}
	x.problem = ""
	x.choose(x.desk.seed())
}

// choose takes the riff of a seed.
func (x *hearing) choose(seed uint64) {
	x.seed, x.riff, x.first = seed, x.desk.riff(x.cycle(), seed), view.RiffCycle{}
	part, err := x.riff.At(x.address.BPM).Cycles(0, heardAtOnce)
	if err != nil {
		panic(err) // as many as can be had
	}
	x.hides = riff.Hide(x.cycle(), part, x.address.BPM)
	x.sounds, x.rolls = nil, false
	if x.level() != riff.Bare {
		x.first = view.RiffOf(part, x.cycle().Steps(), 0)
		x.sounds, x.rolls = view.SoundsOf(part)
	}
}

// heardAtOnce is over how many cycles it is said how far a riff hides the base: four
// phrases.
const heardAtOnce = 16

func (x *hearing) act(action, value string) {
	if x.help(action, value) {
		return
	}
	switch action {
	case view.ActPlay:
		x.ear.begin()
		x.start(x.Wall.Now())
	case view.ActStop:
		x.interrupted(host.WhyStop)
	case view.ActRhythm:
		x.problem = ""
		x.address.BPM = x.cycle().Tempo.Usual
		x.choose(x.desk.seed())
		if x.on {
			x.ear.back()
			x.start(x.Wall.Now()) // at once, from its first step
		}
	case view.ActTempo:
		x.change()
	case view.ActLevel, view.ActHide:
		x.choose(x.seed)
		x.change()
	case view.ActFile:
		x.open(value)
	}
}

// help answers the controls of the ear.
func (x *hearing) help(action, value string) bool {
	at, eight := time.Duration(0), time.Duration(0)
	if x.on && x.address.BPM > 0 { // 0: another rhythm was chosen just now
		at, _, _ = x.heard(x.Wall.Now())
		eight = eightOf(x.cycle(), x.address.BPM)
	}
	return x.ear.act(action, value, at, eight)
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
		more, err = x.Rhythms().With(c)
	}
	if err != nil {
		x.problem = err.Error()
		return
	}
	x.Rhythms, x.problem = func() *rhythm.Catalogue { return more }, ""
	x.address = x.address.WithRhythm(c.ID)
	x.act(view.ActRhythm, c.ID)
}

func (x *hearing) tap(*host.Tap) {}

// interrupted stops what plays; a gap in the sound is played on after.
func (x *hearing) interrupted(why string) {
	if x.on && why == host.WhyGap {
		x.ear.back()
		x.start(x.Wall.Now())
		return
	}
	if x.on {
		x.halt()
		x.ear.back()
		x.shown, x.stale = nil, true
		x.choose(x.desk.seed()) // the next time there is another riff to hear, unless the link asks for one
	}
}

func (x *hearing) tick(now float64) bool {
	why := x.hear(now)
	if why != "" {
		x.interrupted(why)
		return true
	}
	if !x.ear.alone {
		return false
	}
	at, _, _ := x.heard(now)
	return x.ear.follow(at)
}

func (x *hearing) screen() view.Screen {
	m := x.model()
	x.head.set(m.Head())
	x.line.set(m.Line(x.Words))
	x.shown = nil
	if x.meeting() {
		return m.Meeting(x.Words)
	}
	return m.Screen(x.Words)
}

func (x *hearing) model() *view.Listen {
	c := x.cycle()
	slow, fast := x.tempi(c)
	m := &view.Listen{
		Rhythm: c, Playing: x.on,
		BPM: x.address.BPM, Slow: slow, Fast: fast,
		Level: x.address.Riff, Levels: x.levels(), Hide: x.address.Hide, Hides: &x.hides, Riff: x.first,
		Sounds: x.sounds, Rolls: x.rolls,
		Balance: x.ear.balance, Help: x.ear.shown(), Volume: x.shownVolume(),
		Problem: x.problem, Board: x.board(), Notes: x.notes(),
	}
	m.Core, m.More = x.options()
	return m
}

func (x *hearing) draw(place string) *view.Picture {
	x.follow()
	switch place {
	case view.PlaceHead:
		h := x.move(&x.head)
		if h.ShowHands = x.ear.hands; h.ShowHands {
			if h.Hands = view.HandsAt(x.hands, x.at); x.calm() {
				h.Hands = view.HandsStanding(x.hands, x.at)
			}
		}
		return h.draw(x.calm())
	case view.PlaceLine:
		return x.line.draw(x.calm())
	}
	return nil
}

// follow lets head and line show the cycle that is heard, and the line its step.
func (x *hearing) follow() {
	if x.shows == nil {
		x.hands = nil
		return
	}
	c := x.shows.Rhythm(0)
	if x.shows != x.shown {
		x.shown, x.hands = x.shows, nil
		x.show(c)
	}
	if x.hands == nil && x.ear.hands {
		x.hands = x.strikes()
	}
	if step := int(x.loop.turn * float64(c.Steps())); step != x.line.Step || !x.line.Live {
		x.line.Live, x.line.Step, x.line.drawn = true, step, false
	}
}

// show takes what the lead drum plays in the cycle that is heard. The level may be
// another by now, which is heard from the next cycle on.
func (x *hearing) show(c *rhythm.Cycle) {
	if x.level() == riff.Bare {
		return
	}
	x.head.Riff = view.RiffOf(x.shows.Played(0), c.Steps(), 0)
	if x.level() != riff.Filled { // whose line has a pattern
		x.line.Riff, x.line.drawn = x.head.Riff, false
	}
}
