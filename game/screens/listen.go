package screens

import (
	"fmt"
	"strings"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
)

// Listen is the screen Listen: one rhythm, for as long as one likes.
type Listen struct {
	s       *control.Shared
	loop    playback.Loop
	seed    uint64    // of the riff
	riff    riff.Riff // what is played, cycle after cycle
	first   picture.RiffCycle
	sounds  []rhythm.Stroke // what the lead drum plays …
	rolls   bool            // … and whether it rolls, over all that is said at once
	hides   float64         // how far it hides the base, as predicted
	problem string

	head  playback.Head
	line  playback.Line
	shown *round.Passage // the cycle that both show
	hands []round.Strike // of it and its neighbours; nil until they are asked for
}

func NewListen(s *control.Shared) *Listen {
	x := &Listen{s: s}
	x.loop = playback.NewLoop(playback.NewTrack(s.Sound, &s.Outputs), x.cycleAsSet)
	return x
}

// cycleAsSet is one cycle of the riff as the settings say, without a count-in.
func (x *Listen) cycleAsSet(n int) *round.Passage {
	p, err := round.NewPassage(x.s.Address.BPM, x.s.Level(), x.seed, false,
		round.Section{Rhythm: x.s.Cycle(), Cycles: 1, First: n, Riff: x.riff})
	if err != nil {
		panic(err) // the limits of addresses lie within those of passages
	}
	return p
}

func (x *Listen) Prepare() {
	if x.s.Address.BPM == 0 {
		x.s.Address.BPM = x.s.Cycle().Tempo.Usual
	}
	x.problem = ""
	x.choose(x.s.Seed())
}

// choose takes the riff of a seed.
func (x *Listen) choose(seed uint64) {
	x.seed, x.riff, x.first = seed, x.s.Riff(x.s.Cycle(), seed), picture.RiffCycle{}
	part, err := x.riff.At(x.s.Address.BPM).Cycles(0, heardAtOnce)
	if err != nil {
		panic(err) // as many as can be had
	}
	x.hides = riff.Hide(x.s.Cycle(), part, x.s.Address.BPM)
	x.sounds, x.rolls = nil, false
	if x.s.Level() != riff.Bare {
		x.first = picture.RiffOf(part, x.s.Cycle().Steps(), 0)
		x.sounds, x.rolls = picture.SoundsOf(part)
	}
}

// heardAtOnce is over how many cycles it is said how far a riff hides the base: four
// phrases.
const heardAtOnce = 16

func (x *Listen) Act(action, value string) {
	if x.help(action, value) {
		return
	}
	switch action {
	case view.ActPlay:
		x.s.Ear.Begin()
		x.loop.Start(x.s.Wall.Now())
	case view.ActStop:
		x.Interrupt(host.WhyStop)
	case view.ActRhythm:
		x.problem = ""
		x.s.Address.BPM = x.s.Cycle().Tempo.Usual
		x.choose(x.s.Seed())
		if x.loop.On {
			x.s.Ear.Back()
			x.loop.Start(x.s.Wall.Now()) // at once, from its first step
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
func (x *Listen) help(action, value string) bool {
	at, eight := time.Duration(0), time.Duration(0)
	if x.loop.On && x.s.Address.BPM > 0 { // 0: another rhythm was chosen just now
		at, _, _ = x.loop.Heard(x.s.Wall.Now())
		eight = playback.Eight(x.s.Cycle(), x.s.Address.BPM)
	}
	return x.s.Ear.Act(action, value, at, eight)
}

// open reads a rhythm file of the player's own. A broken one says where it is
// broken and changes nothing.
func (x *Listen) open(file string) {
	name, text, _ := strings.Cut(file, "\n")
	c, err := rhythm.Parse(name, strings.NewReader(text))
	if err == nil && (c.Tempo.Usual < round.MinBPM || c.Tempo.Usual > round.MaxBPM) {
		err = fmt.Errorf("%s: its usual tempo is %d; allowed is %d to %d", name, c.Tempo.Usual, round.MinBPM, round.MaxBPM)
	}
	var more *rhythm.Catalogue
	if err == nil {
		more, err = x.s.Rhythms().With(c)
	}
	if err != nil {
		x.problem = err.Error()
		return
	}
	x.s.Rhythms, x.problem = func() *rhythm.Catalogue { return more }, ""
	x.s.Address = x.s.Address.WithRhythm(c.ID)
	x.Act(view.ActRhythm, c.ID)
}

// Interrupt stops what plays; a gap in the sound is played on after.
func (x *Listen) Interrupt(why string) {
	if x.loop.On && why == host.WhyGap {
		x.s.Ear.Back()
		x.loop.Start(x.s.Wall.Now())
		return
	}
	if x.loop.On {
		x.loop.Halt()
		x.s.Ear.Back()
		x.shown, x.s.Stale = nil, true
		x.choose(x.s.Seed()) // the next time there is another riff to hear, unless the link asks for one
	}
}

func (x *Listen) Tick(now float64) bool {
	why := x.loop.Follow(now)
	if why != "" {
		x.Interrupt(why)
		return true
	}
	if !x.s.Ear.Alone {
		return false
	}
	at, _, _ := x.loop.Heard(now)
	return x.s.Ear.Follow(at)
}

func (x *Listen) Screen() view.Screen {
	m := x.model()
	x.head.Set(m.Head())
	x.line.Set(m.Line(x.s.Words))
	x.shown = nil
	if x.s.Practice.Meeting() {
		return m.Meeting(x.s.Words)
	}
	return m.Screen(x.s.Words)
}

func (x *Listen) model() *soundview.Listen {
	c := x.s.Cycle()
	slow, fast := x.s.Tempi(c)
	m := &soundview.Listen{
		Rhythm: c, Playing: x.loop.On,
		BPM: x.s.Address.BPM, Slow: slow, Fast: fast,
		Level: x.s.Address.Riff, Levels: x.s.Levels(), Hide: x.s.Address.Hide, Hides: &x.hides, Riff: x.first,
		Sounds: x.sounds, Rolls: x.rolls,
		Balance: x.s.Ear.Balance, Help: x.s.Ear.Shown(), Volume: x.s.ShownVolume(),
		Problem: x.problem, Board: x.s.Board(), Notes: x.s.Notes(),
	}
	m.Core, m.More = x.s.Options()
	return m
}

func (x *Listen) Draw(place string) *picture.Picture {
	x.follow()
	switch place {
	case view.PlaceHead:
		h := x.loop.TurnHead(&x.head)
		if h.Shown.ShowHands = x.s.Ear.Hands; h.Shown.ShowHands {
			if h.Shown.Hands = picture.HandsAt(x.hands, x.loop.At); x.s.Calm() {
				h.Shown.Hands = picture.HandsStanding(x.hands, x.loop.At)
			}
		}
		return h.Draw(x.s.Calm())
	case view.PlaceLine:
		return x.line.Draw(x.s.Calm())
	}
	return nil
}

// follow lets head and line show the cycle that is heard, and the line its step.
func (x *Listen) follow() {
	if x.loop.Shows == nil {
		x.hands = nil
		return
	}
	c := x.loop.Shows.Rhythm(0)
	if x.loop.Shows != x.shown {
		x.shown, x.hands = x.loop.Shows, nil
		x.show(c)
	}
	if x.hands == nil && x.s.Ear.Hands {
		x.hands = x.loop.Strikes()
	}
	if step := int(x.loop.Turn * float64(c.Steps())); step != x.line.Shown.Step || !x.line.Shown.Live {
		x.line.Shown.Live, x.line.Shown.Step = true, step
		x.line.Changed()
	}
}

// show takes what the lead drum plays in the cycle that is heard. The level may be
// another by now, which is heard from the next cycle on.
func (x *Listen) show(c *rhythm.Cycle) {
	if x.s.Level() == riff.Bare {
		return
	}
	x.head.Shown.Riff = picture.RiffOf(x.loop.Shows.Played(0), c.Steps(), 0)
	if x.s.Level() != riff.Filled { // whose line has a pattern
		x.line.Shown.Riff = x.head.Shown.Riff
		x.line.Changed()
	}
}
