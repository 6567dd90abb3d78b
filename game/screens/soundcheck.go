package screens

import (
	"strconv"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
)

// SoundCheck is the screen Sound check: is the dum heard, and does the picture move
// with the sound?
type SoundCheck struct {
	s      *control.Shared
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

func NewSoundCheck(s *control.Shared) *SoundCheck {
	x := &SoundCheck{s: s}
	x.loop = playback.NewLoop(playback.NewTrack(s.Sound, &s.Outputs), x.watched)
	return x
}

// watched is one cycle of what is played to see the picture move.
func (x *SoundCheck) watched(int) *round.Passage {
	c, _ := x.s.Rhythms().Get(checkRhythm) // it is supplied
	p, err := round.NewPassage(checkBPM, riff.Bare, x.s.Wall.Seed(), false, round.Section{Rhythm: c, Cycles: 1})
	if err != nil {
		panic(err) // all its numbers are above
	}
	return p
}

func (x *SoundCheck) Prepare() { x.hears, x.silent = "", false }

func (x *SoundCheck) Act(action, value string) {
	switch action {
	case view.ActStrike:
		x.strike(value)
	case view.ActPlay:
		x.hush()
		x.silent = false
		x.loop.Start(x.s.Wall.Now())
	case view.ActStop:
		x.hush()
	case view.ActHears:
		x.hears = value
	case view.ActSetUpUse:
		x.s.UseOutput(value)
	default:
		x.set(action, value)
	}
}

// strike plays one stroke of both drums, a dum or a tek, as a round would.
func (x *SoundCheck) strike(stroke string) {
	q, err := quiz.Next(quiz.Stroke, nil, quiz.MinAnswers, 0, riff.Bare, x.s.Wall.Seed())
	if err != nil {
		panic(err) // a question of one stroke needs no pool
	}
	passage, err := passageOf(alone(q, stroke), 0)
	if err != nil {
		panic(err) // its tempo is the question's own
	}
	x.hush()
	x.struck, x.silent = true, false
	x.loop.Play(passage, x.s.Wall.Now())
}

// set keeps a setting for the output in use.
func (x *SoundCheck) set(action, value string) {
	c := x.s.Outputs.Adjustment()
	number, _ := strconv.Atoi(value)
	switch action {
	case view.ActLater:
		c.Later = number
	case view.ActBass:
		c.Bass = number
	case view.ActMono:
		c.Wide = value == ""
	default:
		return // the volume is the session's
	}
	x.s.Outputs.Adjust(c, soundview.DefaultOutput(x.s.Words))
	x.s.SaveOutputs()
	if action == view.ActBass && !x.loop.On {
		x.strike("dum") // whether it is heard now
	}
}

// hush ends what is played.
func (x *SoundCheck) hush() {
	if x.loop.On || x.struck {
		x.loop.Halt()
		x.struck, x.s.Stale = false, true
	}
}

// Interrupt stops what plays; after a gap it is played from its first step.
func (x *SoundCheck) Interrupt(why string) {
	switch {
	case why == host.WhyGap && x.loop.On:
		x.loop.Start(x.s.Wall.Now())
	case why == host.WhyGap && x.struck:
		x.loop.Play(x.loop.Passage, x.s.Wall.Now())
	default:
		x.silent = x.silent || why == host.WhySilent
		x.hush()
	}
}

func (x *SoundCheck) Tick(now float64) bool {
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
		x.Interrupt(why)
	}
	return why != ""
}

func (x *SoundCheck) Screen() view.Screen {
	m := x.model()
	x.head.Set(m.Head())
	return m.Screen(x.s.Words)
}

func (x *SoundCheck) model() *soundview.SoundCheck {
	c := x.s.Outputs.Adjustment()
	m := &soundview.SoundCheck{
		Volume: x.s.ShownVolume(), Hears: x.hears, Silent: x.silent, Playing: x.loop.On,
		Later: time.Duration(c.Later) * time.Millisecond, Bass: c.Bass, Mono: !c.Wide,
		Output: x.s.Outputs.Chosen, Notes: x.s.Notes(),
	}
	m.Rhythm, _ = x.s.Rhythms().Get(checkRhythm)
	for _, o := range x.s.Outputs.List {
		m.Outputs = append(m.Outputs, o.Name)
	}
	if in := x.s.Outputs.Measured(); in != nil {
		mean := host.Duration(in.Mean)
		m.Measured = &mean
	}
	return m
}

func (x *SoundCheck) Draw(place string) *picture.Picture {
	if place != view.PlaceHead {
		return nil
	}
	return x.loop.TurnHead(&x.head).Draw(x.s.Calm())
}
