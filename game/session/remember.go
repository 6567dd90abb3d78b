package session

import (
	"strconv"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

// What is remembered of settings, by name. A length is remembered for each screen: its
// name is followed by the screen's.
const (
	rememberedVolume = "volume"
	rememberedLevel  = "level"
	rememberedLength = "eights/"
	rememberedTheme  = "theme"
)

// habits are what was chosen last of what a link may leave open.
func (d *desk) habits() view.Habits {
	h := view.Habits{Level: d.Store.Remembered(rememberedLevel), Eights: map[string]int{}}
	for _, screen := range view.Screens() {
		if n, err := strconv.Atoi(d.Store.Remembered(rememberedLength + screen)); err == nil {
			h.Eights[screen] = n
		}
	}
	return h
}

// remember remembers what was set by a control of the screen.
func (d *desk) remember(action, value string) {
	switch a := &d.address; action {
	case view.ActVolume:
		d.Store.Remember(rememberedVolume, strconv.Itoa(d.volume))
	case view.ActLevel:
		if a.Riff != "" {
			d.Store.Remember(rememberedLevel, value)
		}
	case view.ActEights:
		d.Store.Remember(rememberedLength+a.Screen, value)
	case view.ActTheme:
		d.Store.Remember(rememberedTheme, view.Theme(value))
		d.Page.Theme(view.Theme(value))
	}
}

// news is what other windows have kept, until it is taken up here: not while something
// is under way.
type news struct{ things, rounds bool }

// told notes that another window has kept something.
func (d *desk) told(what string) {
	d.news.things = d.news.things || what == host.Things
	d.news.rounds = d.news.rounds || what == host.Rounds
}

// catchUp takes up what other windows have kept, once nothing is under way: outputs and
// sets at once, rounds as soon as a screen tells of them.
func (d *desk) catchUp() {
	if d.underWay {
		return
	}
	if d.news.things {
		d.news.things, d.stale = false, true
		d.outputs = d.Store.Outputs()
		d.setOutput()
		d.ear.Apply()
		d.finished = d.finished || d.Store.Begun()
		d.Page.Theme(view.Theme(d.Store.Remembered(rememberedTheme)))
		if d.exercise == d.exercises.teaching && !d.exercises.teaching.inside {
			d.exercises.teaching.ready.read()
		}
	}
	if tells := d.exercise == d.exercises.journal || d.exercise == d.exercises.welcome; tells && d.news.rounds && d.practice == nil {
		d.news.rounds = false
		d.learner.read()
	}
}

// goesOn reports whether something is under way on a screen: a round, or what plays
// until it is stopped.
func goesOn(s *view.Screen) (on bool) {
	s.Each(func(it *view.Item) { on = on || it.Role == view.RoleTapArea || it.Action == view.ActStop })
	return on || s.Room
}
