package classroom

import (
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// What a room hears.

// arriving is one cycle of what is heard as people arrive: the rhythms of the set, one
// after the other, each at its usual tempo.
func (x *Class) arriving(n int) *round.Passage {
	pool, err := quiz.From(x.s.Rhythms(), x.run.Warmup.From)
	if err != nil {
		panic(err) // the warm-up is made of it
	}
	c := pool[n/walkInCycles%len(pool)]
	bpm := min(max(c.Tempo.Usual, round.MinBPM), round.MaxBPM)
	p, err := round.NewPassage(bpm, min(x.run.Warmup.Level, riff.Ornamented), x.run.Warmup.Seed, false,
		round.Section{Rhythm: c, Cycles: 1, First: n % walkInCycles})
	if err != nil {
		panic(err)
	}
	return p.Tamed(tamest)
}

// tamest is how firmly the walk-in's strokes fall at most: people talk over it.
const tamest = 0.7

func (x *Class) walkIn() {
	if !x.s.Sound.Audible() {
		return
	}
	x.fadeIn(fadesWalkIn)
	x.loop.Start(x.s.Wall.Now())
}

// playTask plays what is asked.
func (x *Class) playTask() {
	t, _ := x.run.Task()
	percent := 100
	if x.slow {
		percent = slowly
	}
	p, cut, err := t.Passage(percent)
	if err != nil {
		panic(err) // the warm-up was made of it
	}
	x.turns = nil
	x.playOnce(p, cut)
}

// playTurns plays what was right, and then what it was taken for.
func (x *Class) playTurns() {
	t, _ := x.run.Task()
	other, _ := x.run.TakenFor()
	turns, err := t.Turns(other)
	if err != nil {
		panic(err)
	}
	x.turns = turns
	x.playOnce(turns[0].Passage, 0)
}

func (x *Class) replay() {
	t, _ := x.run.Task()
	p, err := t.Replay()
	if err != nil {
		panic(err)
	}
	x.turns = nil
	x.playOnce(p, 0)
}

// playOnce plays a passage, up to a time in it if that is not 0.
func (x *Class) playOnce(p *round.Passage, cut time.Duration) {
	if !x.s.Sound.Audible() {
		return
	}
	turns := x.turns
	x.hush()
	x.turns = turns
	x.one, x.silent, x.lined, x.now, x.cycle = true, false, true, -1, 0
	if x.cut = cut; cut == 0 {
		x.cut = p.End()
	}
	x.fadeIn(fadesTask)
	x.s.Ear.Begin()
	x.loop.Play(p, x.s.Wall.Now())
	x.s.Stale = true
}

// fadeIn lets what is played next begin softly.
func (x *Class) fadeIn(ms float64) {
	x.fade, x.lasts = x.s.Wall.Now(), ms
	x.s.Sound.Volume(0)
}

// hush ends what is played.
func (x *Class) hush() {
	if x.loop.On || x.one {
		x.loop.Halt()
		x.s.Stale = true
	}
	x.one, x.turns, x.now = false, nil, -1
	if x.fade != 0 {
		x.fade = 0
		x.s.SetVolume(x.s.Volume)
	}
}

func (x *Class) Tick(now float64) bool {
	if x.ready.tick(!x.inside || x.run.Stage() == warmup.WalkIn) {
		x.s.Stale = true
	}
	if !x.loop.On && !x.one {
		return false
	}
	at, why := time.Duration(0), ""
	if x.loop.On {
		if why = x.loop.Follow(now); why == "" {
			at = x.loop.At
		}
	} else {
		at, _, why = x.loop.Heard(now)
		x.now = x.loop.Seen(at)
	}
	if why != "" {
		x.Interrupt(why)
		return true
	}
	x.fadeOn(now, at)
	if x.one && at >= x.cut {
		x.over()
		return true
	}
	return x.changed(at)
}

// fadeOn raises the level from when the first of it is heard.
func (x *Class) fadeOn(now float64, at time.Duration) {
	switch {
	case x.fade == 0:
	case at < 0:
		x.fade = now
	case now-x.fade >= x.lasts:
		x.fade = 0
		x.s.SetVolume(x.s.Volume)
	default:
		x.level(x.s.Volume, (now-x.fade)/x.lasts)
	}
}

// level is a part of a volume, 0 to 1: both go as a person hears them.
func (x *Class) level(volume int, part float64) {
	v := float64(volume) / 100 * part
	x.s.Sound.Volume(v * v)
}

// changed reports whether the screen is another: the line of what is spoken has gone,
// another rhythm is heard, or both drums are back.
func (x *Class) changed(at time.Duration) bool {
	is := x.s.Ear.Follow(at)
	if t, _ := x.run.Task(); x.one && t != nil && t.Kind == warmup.SayIt && x.run.Stage() == warmup.Asking && x.lined && at >= warmup.LineUntil(x.loop.Passage) {
		x.lined, is = false, true
	}
	p, seen := x.loop.Passage, x.now
	if x.loop.On {
		p, seen = x.loop.Shows, x.loop.At
	}
	if n := cycleAt(p, seen); x.one && n != x.cycle {
		x.cycle, is = n, true
	}
	if p != nil && seen >= 0 && p.Rhythm(seen) != x.of {
		x.of, is = p.Rhythm(seen), true
	}
	return is
}

// cycleAt is which cycle of a passage's first section a time lies in, from 0.
func cycleAt(p *round.Passage, at time.Duration) int {
	if p == nil || at < p.Start() {
		return 0
	}
	return int((at - p.Start()) / p.Rhythm(0).Length(p.BPM()))
}

// over ends a passage that was heard to its end, and begins with what is next in turn.
func (x *Class) over() {
	if len(x.turns) > 1 {
		x.turns = x.turns[1:]
		x.playOnce(x.turns[0].Passage, 0)
		return
	}
	x.hush()
	x.s.Ear.Back()
	x.heard = true
}

func (x *Class) Draw(place string) *picture.Picture {
	at, p := x.now, x.loop.Passage
	if x.loop.On && x.loop.Shows != nil {
		at, p = x.loop.At, x.loop.Shows
	}
	turns := (x.one || x.loop.On) && at >= 0 && p != nil
	switch place {
	case view.PlaceHead:
		x.head.Moves = x.head.Shown.Turning || turns || x.head.Shown.Glow > 0
		if x.head.Shown.Glow = 0; turns && x.head.Shown.Hidden {
			x.head.Shown.Glow = picture.GlowAt(at, x.s.Calm())
		}
		x.head.Shown.Turning, x.head.Shown.Centre = turns && !x.head.Shown.Hidden && at >= p.Start(), ""
		if turns && x.one && at < p.Start() {
			x.head.Shown.Centre = p.CountAt(at)
			x.head.Moves = true
		}
		if x.head.Shown.Turning {
			x.head.Shown.Turn = p.TurnAt(at)
		}
		return x.head.Draw(x.s.Calm())
	case view.PlaceLine:
		if turns && len(x.line.Shown.Counts) > 0 {
			live := at >= p.Start()
			step := int(p.TurnAt(at) * float64(len(x.line.Shown.Counts)))
			if live != x.line.Shown.Live || step != x.line.Shown.Step {
				x.line.Shown.Live, x.line.Shown.Step = live, step
				x.line.Changed()
			}
		}
		return x.line.Draw(x.s.Calm())
	}
	return nil
}
