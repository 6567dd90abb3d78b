// Package classroom is the controller of Class: the warm-up for a room, as it is got ready,
// played, and written down.
package classroom

import (
	"slices"
	"strings"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// Class is the screen Class: the warm-up for a room, from getting it ready to the
// page after it. The run is kept after every press, so that a page that is loaded anew
// stands where it stood.
type Class struct {
	s     *control.Shared
	loop  playback.Loop
	ready ready

	run    *warmup.Run // nil: none was begun, or it has been put away
	inside bool        // its screens are shown, and not how it is got ready

	one    bool // a passage sounds, and not the walk-in
	cut    time.Duration
	turns  []warmup.Turn // what is heard in turn, the first of them now
	heard  bool          // what the stage is about was heard to its end
	slow   bool
	blank  bool
	silent bool    // nothing came of what was to be played
	fade   float64 // performance time from which the sound fades in; 0: it has
	lasts  float64 // for how long, ms
	unkept bool
	lined  bool          // the line of what is spoken still stands
	of     *rhythm.Cycle // what the screen says is heard

	head  playback.Head
	line  playback.Wall
	cycle int           // of the passage, from 0: the one whose lead drum is shown
	now   time.Duration // what pictures show of what is heard
}

// How long the sound takes to fade in, in ms: own choice.
const (
	fadesWalkIn = 3000
	fadesTask   = 400
)

// slowly is how much slower a task can be heard, of 100.
const slowly = 80

// walkInCycles is how many cycles of a rhythm are heard as people arrive, before the
// next begins.
const walkInCycles = 16

func NewClass(s *control.Shared) *Class {
	x := &Class{s: s}
	x.loop = playback.NewLoop(playback.NewTrack(s.Sound, &s.Outputs), x.arriving)
	x.ready.open(s)
	return x
}

// Prepare gets ready what the link says, unless a warm-up is under way: then it goes on.
func (x *Class) Prepare() {
	x.hush()
	x.silent, x.blank = false, false
	x.ready.prepare()
	x.resume(x.s.Classes.Kept(keptInside) == x.s.Address.String())
}

// resume takes up the run that is kept; inside shows it.
func (x *Class) resume(inside bool) {
	x.run, x.inside = nil, false
	text := x.s.Classes.Kept(keptRun)
	if text == "" {
		return
	}
	run, err := warmup.ResumeRun(text, x.s.Rhythms(), x.s.Wall.Date())
	if err != nil {
		return // what was kept is of another version: a new one can be begun
	}
	x.run, x.inside = run, inside
	x.arrive()
}

// begin goes to the walk-in of a set.
func (x *Class) begin(s warmup.Set) {
	w, err := x.ready.warmup(s)
	if err != nil {
		x.ready.problem = err.Error()
		return
	}
	x.run, x.inside = warmup.NewRun(w, x.ready.class), true
	x.ready.chosen(s)
	x.keepRun()
	x.arrive()
	x.walkIn()
}

// arrive is at a stage anew: nothing of it has been heard.
func (x *Class) arrive() {
	x.hush()
	x.heard, x.silent, x.lined = false, false, true
	x.turns, x.now, x.cycle = nil, -1, 0
	x.s.Ear.Back()
	x.s.Stale = true
}

func (x *Class) keepRun() {
	err := x.s.Classes.Keep(keptRun, x.run.Text())
	inside := ""
	if x.inside {
		inside = x.s.Address.String()
	}
	if err == nil {
		err = x.s.Classes.Keep(keptInside, inside)
	}
	if err == nil && x.run.Stage() == warmup.After {
		err = x.s.Classes.Keep(host.KeptDiary+x.run.Entry().Key(), x.run.Entry().Line())
	}
	x.unkept = err != nil
}

func (x *Class) Act(action, value string) {
	if !x.inside {
		x.getReady(action, value)
		x.s.Address = x.ready.address()
		return
	}
	before, at := x.run.Text(), x.run.Place()
	now := x.s.Wall.Date()
	switch action {
	case view.ActClassNext:
		x.on(now)
	case view.ActClassBack:
		x.run.Back()
	case view.ActClassSkip:
		x.run.Skip(now)
	case view.ActClassGoOn:
		x.run.GoOn(now)
	case view.ActClassHands:
		x.run.Press(value)
	case view.ActClassOnce:
		x.once(value)
	case view.ActSlower:
		x.slower()
	case view.ActClassBlank:
		x.blank = !x.blank
	case view.ActAlone:
		x.alone(value)
	case view.ActClassLeave:
		x.leave()
		return
	case view.ActClassCSV, view.ActClassJSON:
		x.handOver(action)
	}
	if x.run.Text() != before {
		x.moved(at, action)
	}
}

// moved keeps the run, and arrives where it has moved to.
func (x *Class) moved(from warmup.Place, action string) {
	x.keepRun()
	to := x.run.Place()
	x.slow = x.slow && to.Task == from.Task
	if to != from {
		x.arrive()
		x.playStage()
	}
	x.heard = action == view.ActClassBack // the way back on is one press, as it was
}

// on plays what is asked, if it was not heard yet and can be; else it goes on.
func (x *Class) on(now time.Time) {
	if x.run.Stage() == warmup.Asking && !x.heard && !x.one && x.s.Sound.Audible() {
		x.playTask()
		return
	}
	x.run.Next(now)
}

// playStage plays what belongs to a stage that has been arrived at.
func (x *Class) playStage() {
	switch x.run.Stage() {
	case warmup.WalkIn:
		x.walkIn()
	case warmup.Telling:
		if t, _ := x.run.Task(); t.Kind.Counted() {
			x.playTurns()
		}
	case warmup.Hearing:
		x.replay()
	}
}

// once lets what belongs to the stage be heard once more, or ends it.
func (x *Class) once(value string) {
	sounding := x.one || x.loop.On
	if value == "stop" || sounding && x.run.Stage() == warmup.WalkIn {
		x.hush()
		return
	}
	switch t, _ := x.run.Task(); x.run.Stage() {
	case warmup.WalkIn, warmup.Hearing:
		x.playStage()
	case warmup.Telling:
		if !t.Kind.Counted() {
			x.playTask()
			return
		}
		x.playTurns()
	case warmup.Asking:
		x.playTask()
	}
}

func (x *Class) slower() {
	if x.run.Stage() != warmup.Asking {
		return
	}
	x.slow = !x.slow
	if x.one {
		x.playTask()
	}
}

// alone lets the bass drum be heard alone for an eight, or both.
func (x *Class) alone(value string) {
	if !x.one && !x.loop.On {
		return
	}
	if x.s.Ear.Alone {
		value = ""
	}
	at, _, _ := x.loop.Heard(x.s.Wall.Now())
	p := x.loop.Passage
	x.s.Ear.Act(view.ActAlone, value, at, playback.Eight(p.Rhythm(max(at, 0)), p.BPM()))
}

func (x *Class) leave() {
	x.hush()
	x.s.Ear.Back()
	x.inside, x.blank = false, false
	x.keepRun()
	if x.run.Stage() == warmup.After {
		x.run = nil
		x.unkept = x.s.Classes.Keep(keptRun, "") != nil
	}
	x.ready.refresh()
}

// Interrupt stops what plays; after a gap it is played from its beginning.
func (x *Class) Interrupt(why string) {
	switch {
	case why == host.WhyGap && x.loop.On:
		x.loop.Start(x.s.Wall.Now())
		return
	case why == host.WhyGap && x.one:
		x.playOnce(x.loop.Passage, x.cut)
		return
	case why == host.WhySilent:
		x.silent = true
	}
	x.hush()
}

func (x *Class) shownRhythm() *round.Passage {
	if x.loop.On {
		return x.loop.Shows
	}
	return x.loop.Passage
}

// diary is what is kept of all classes.
func (x *Class) diary() []warmup.Entry {
	all, _ := warmup.ParseDiary(strings.Join(x.s.Classes.KeptUnder(host.KeptDiary), "\n"))
	return all
}

// earlier are the entries of the class's diary before this run, the newest few.
func (x *Class) earlier() []warmup.Entry {
	const most = 8
	all := x.diary()
	this := x.run.Entry()
	all = slices.DeleteFunc(all, func(e warmup.Entry) bool { return e.Class != this.Class || e.Same(this) })
	return all[max(0, len(all)-most):]
}

func (x *Class) Phase() view.Phase {
	if x.inside {
		return view.Playing
	}
	return view.Ready
}

func (x *Class) GoOut() { x.leave() }

// Refresh takes up what another window has kept.
func (x *Class) Refresh() {
	if !x.inside {
		x.ready.read()
	}
}
