package session

import (
	"fmt"
	"strings"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// hearing is the screen Listen: one rhythm, for as long as one likes.
type hearing struct {
	*desk
	loop    playback.Loop
	seed    uint64    // of the riff
	riff    riff.Riff // what is played, cycle after cycle
	first   view.RiffCycle
	sounds  []rhythm.Stroke // what the lead drum plays …
	rolls   bool            // … and whether it rolls, over all that is said at once
	hides   float64         // how far it hides the base, as predicted
	problem string

	head  playback.Head
	line  playback.Line
	shown *round.Passage // the cycle that both show
	hands []round.Strike // of it and its neighbours; nil until they are asked for
}

func newHearing(d *desk) *hearing {
	x := &hearing{desk: d}
	x.loop = playback.NewLoop(playback.NewTrack(d.Sound, &d.outputs), x.cycleAsSet)
	return x
}

// cycleAsSet is one cycle of the riff as the settings say, without a count-in.
func (x *hearing) cycleAsSet(n int) *round.Passage {
	p, err := round.NewPassage(x.desk.address.BPM, x.desk.level(), x.seed, false,
		round.Section{Rhythm: x.desk.cycle(), Cycles: 1, First: n, Riff: x.riff})
	if err != nil {
		panic(err) // the limits of addresses lie within those of passages
	}
	return p
}

func (x *hearing) lay() {
	if x.desk.address.BPM == 0 {
		x.desk.address.BPM = x.desk.cycle().Tempo.Usual
	}
	x.problem = ""
	x.choose(x.desk.seed())
}

// choose takes the riff of a seed.
func (x *hearing) choose(seed uint64) {
	x.seed, x.riff, x.first = seed, x.desk.riff(x.desk.cycle(), seed), view.RiffCycle{}
	part, err := x.riff.At(x.desk.address.BPM).Cycles(0, heardAtOnce)
	if err != nil {
		panic(err) // as many as can be had
	}
	x.hides = riff.Hide(x.desk.cycle(), part, x.desk.address.BPM)
	x.sounds, x.rolls = nil, false
	if x.desk.level() != riff.Bare {
		x.first = view.RiffOf(part, x.desk.cycle().Steps(), 0)
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
		x.desk.ear.Begin()
		x.loop.Start(x.desk.Wall.Now())
	case view.ActStop:
		x.interrupted(host.WhyStop)
	case view.ActRhythm:
		x.problem = ""
		x.desk.address.BPM = x.desk.cycle().Tempo.Usual
		x.choose(x.desk.seed())
		if x.loop.On {
			x.desk.ear.Back()
			x.loop.Start(x.desk.Wall.Now()) // at once, from its first step
		}
	case view.ActTempo:
		x.loop.Update()
	case view.ActLevel, view.ActHide:
		x.choose(x.seed)
		x.loop.Update()
	case view.ActFile:
		x.open(value)
	}
}

// help answers the controls of the ear.
func (x *hearing) help(action, value string) bool {
	at, eight := time.Duration(0), time.Duration(0)
	if x.loop.On && x.desk.address.BPM > 0 { // 0: another rhythm was chosen just now
		at, _, _ = x.loop.Heard(x.desk.Wall.Now())
		eight = playback.Eight(x.desk.cycle(), x.desk.address.BPM)
	}
	return x.desk.ear.Act(action, value, at, eight)
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
		more, err = x.desk.Rhythms().With(c)
	}
	if err != nil {
		x.problem = err.Error()
		return
	}
	x.desk.Rhythms, x.problem = func() *rhythm.Catalogue { return more }, ""
	x.desk.address = x.desk.address.WithRhythm(c.ID)
	x.act(view.ActRhythm, c.ID)
}

func (x *hearing) tap(*host.Tap) {}

// interrupted stops what plays; a gap in the sound is played on after.
func (x *hearing) interrupted(why string) {
	if x.loop.On && why == host.WhyGap {
		x.desk.ear.Back()
		x.loop.Start(x.desk.Wall.Now())
		return
	}
	if x.loop.On {
		x.loop.Halt()
		x.desk.ear.Back()
		x.shown, x.desk.stale = nil, true
		x.choose(x.desk.seed()) // the next time there is another riff to hear, unless the link asks for one
	}
}

func (x *hearing) tick(now float64) bool {
	why := x.loop.Follow(now)
	if why != "" {
		x.interrupted(why)
		return true
	}
	if !x.desk.ear.Alone {
		return false
	}
	at, _, _ := x.loop.Heard(now)
	return x.desk.ear.Follow(at)
}

func (x *hearing) screen() view.Screen {
	m := x.model()
	x.head.Set(m.Head())
	x.line.Set(m.Line(x.desk.Words))
	x.shown = nil
	if x.desk.meeting() {
		return m.Meeting(x.desk.Words)
	}
	return m.Screen(x.desk.Words)
}

func (x *hearing) model() *view.Listen {
	c := x.desk.cycle()
	slow, fast := x.desk.tempi(c)
	m := &view.Listen{
		Rhythm: c, Playing: x.loop.On,
		BPM: x.desk.address.BPM, Slow: slow, Fast: fast,
		Level: x.desk.address.Riff, Levels: x.desk.levels(), Hide: x.desk.address.Hide, Hides: &x.hides, Riff: x.first,
		Sounds: x.sounds, Rolls: x.rolls,
		Balance: x.desk.ear.Balance, Help: x.desk.ear.Shown(), Volume: x.desk.shownVolume(),
		Problem: x.problem, Board: x.desk.board(), Notes: x.desk.notes(),
	}
	m.Core, m.More = x.desk.options()
	return m
}

func (x *hearing) draw(place string) *view.Picture {
	x.follow()
	switch place {
	case view.PlaceHead:
		h := x.loop.TurnHead(&x.head)
		if h.Shown.ShowHands = x.desk.ear.Hands; h.Shown.ShowHands {
			if h.Shown.Hands = view.HandsAt(x.hands, x.loop.At); x.desk.calm() {
				h.Shown.Hands = view.HandsStanding(x.hands, x.loop.At)
			}
		}
		return h.Draw(x.desk.calm())
	case view.PlaceLine:
		return x.line.Draw(x.desk.calm())
	}
	return nil
}

// follow lets head and line show the cycle that is heard, and the line its step.
func (x *hearing) follow() {
	if x.loop.Shows == nil {
		x.hands = nil
		return
	}
	c := x.loop.Shows.Rhythm(0)
	if x.loop.Shows != x.shown {
		x.shown, x.hands = x.loop.Shows, nil
		x.show(c)
	}
	if x.hands == nil && x.desk.ear.Hands {
		x.hands = x.loop.Strikes()
	}
	if step := int(x.loop.Turn * float64(c.Steps())); step != x.line.Shown.Step || !x.line.Shown.Live {
		x.line.Shown.Live, x.line.Shown.Step = true, step
		x.line.Changed()
	}
}

// show takes what the lead drum plays in the cycle that is heard. The level may be
// another by now, which is heard from the next cycle on.
func (x *hearing) show(c *rhythm.Cycle) {
	if x.desk.level() == riff.Bare {
		return
	}
	x.head.Shown.Riff = view.RiffOf(x.loop.Shows.Played(0), c.Steps(), 0)
	if x.desk.level() != riff.Filled { // whose line has a pattern
		x.line.Shown.Riff = x.head.Shown.Riff
		x.line.Changed()
	}
}
