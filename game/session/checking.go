package session

import (
	"strconv"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// checking is the screen Sound check: is the dum heard, and does the picture move
// with the sound?
type checking struct {
	*desk
	loop   playback.Loop
	struck bool   // one stroke sounds, and not the loop
	hears  string // whether the dum is heard: view.CheckYes, view.CheckNo, or no answer yet
	silent bool   // nothing came of what was to be played
	head   playback.Head
}

// What is played to see the picture move: maqsum, whose strokes are five, and at
// this tempo never more than three of them within a second: each lights up, and
// more than three flashes a second are not allowed (WCAG 2.2, 2.3.1).
const (
	checkRhythm = "maqsum"
	checkBPM    = 96
)

func newChecking(d *desk) *checking {
	x := &checking{desk: d}
	x.loop = playback.NewLoop(playback.NewTrack(d.Sound, &d.outputs), x.watched)
	return x
}

// watched is one cycle of what is played to see the picture move.
func (x *checking) watched(int) *round.Passage {
	c, _ := x.desk.Rhythms().Get(checkRhythm) // it is supplied
	p, err := round.NewPassage(checkBPM, riff.Bare, x.desk.Wall.Seed(), false, round.Section{Rhythm: c, Cycles: 1})
	if err != nil {
		panic(err) // all its numbers are above
	}
	return p
}

func (x *checking) lay() { x.hears, x.silent = "", false }

func (x *checking) act(action, value string) {
	switch action {
	case view.ActStrike:
		x.strike(value)
	case view.ActPlay:
		x.hush()
		x.silent = false
		x.loop.Start(x.desk.Wall.Now())
	case view.ActStop:
		x.hush()
	case view.ActHears:
		x.hears = value
	case view.ActSetUpUse:
		x.desk.useOutput(value)
	default:
		x.set(action, value)
	}
}

// strike plays one stroke of both drums, a dum or a tek, as a round would.
func (x *checking) strike(stroke string) {
	q, err := quiz.Next(quiz.Stroke, nil, quiz.MinAnswers, 0, riff.Bare, x.desk.Wall.Seed())
	if err != nil {
		panic(err) // a question of one stroke needs no pool
	}
	passage, err := passageOf(alone(q, stroke), 0)
	if err != nil {
		panic(err) // its tempo is the question's own
	}
	x.hush()
	x.struck, x.silent = true, false
	x.loop.Play(passage, x.desk.Wall.Now())
}

// set keeps a setting for the output in use.
func (x *checking) set(action, value string) {
	c := x.desk.outputs.Adjustment()
	number, _ := strconv.Atoi(value)
	switch action {
	case view.ActLater:
		c.Later = number
	case view.ActBass:
		c.Bass = number
	case view.ActMono:
		c.Wide = value == ""
	default:
		return // the volume is the desk's
	}
	x.desk.outputs.Adjust(c, view.DefaultOutput(x.desk.Words))
	x.desk.saveOutputs()
	if action == view.ActBass && !x.loop.On {
		x.strike("dum") // whether it is heard now
	}
}

func (x *checking) tap(*host.Tap) {}

// hush ends what is played.
func (x *checking) hush() {
	if x.loop.On || x.struck {
		x.loop.Halt()
		x.struck, x.desk.stale = false, true
	}
}

// interrupted stops what plays; after a gap it is played from its first step.
func (x *checking) interrupted(why string) {
	switch {
	case why == host.WhyGap && x.loop.On:
		x.loop.Start(x.desk.Wall.Now())
	case why == host.WhyGap && x.struck:
		x.loop.Play(x.loop.Passage, x.desk.Wall.Now())
	default:
		x.silent = x.silent || why == host.WhySilent
		x.hush()
	}
}

func (x *checking) tick(now float64) bool {
	why := ""
	if x.struck {
		var at time.Duration
		if at, _, why = x.loop.Heard(now); at >= x.loop.Passage.End() {
			why = host.WhyStop
		}
	} else {
		why = x.loop.Follow(now)
	}
	if why != "" {
		x.interrupted(why)
	}
	return why != ""
}

func (x *checking) screen() view.Screen {
	m := x.model()
	x.head.Set(m.Head())
	return m.Screen(x.desk.Words)
}

func (x *checking) model() *view.SoundCheck {
	c := x.desk.outputs.Adjustment()
	m := &view.SoundCheck{
		Volume: x.desk.shownVolume(), Hears: x.hears, Silent: x.silent, Playing: x.loop.On,
		Later: time.Duration(c.Later) * time.Millisecond, Bass: c.Bass, Mono: !c.Wide,
		Output: x.desk.outputs.Chosen, Notes: x.desk.notes(),
	}
	m.Rhythm, _ = x.desk.Rhythms().Get(checkRhythm)
	for _, o := range x.desk.outputs.List {
		m.Outputs = append(m.Outputs, o.Name)
	}
	if in := x.desk.outputs.Measured(); in != nil {
		mean := duration(in.Mean)
		m.Measured = &mean
	}
	return m
}

func (x *checking) draw(place string) *view.Picture {
	if place != view.PlaceHead {
		return nil
	}
	return x.loop.TurnHead(&x.head).Draw(x.desk.calm())
}
