package session

import (
	"strconv"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// What is remembered of settings, by name. A length is remembered for each screen: its
// name is followed by the screen's.
const (
	rememberedVolume = "volume"
	rememberedLevel  = "level"
	rememberedLength = "eights/"
)

// habits are what was chosen last of what a link may leave open.
func (d *Session) habits() link.Habits {
	h := link.Habits{Level: d.shared.Store.Remembered(rememberedLevel), Eights: map[string]int{}}
	for _, screen := range view.Screens() {
		if n, err := strconv.Atoi(d.shared.Store.Remembered(rememberedLength + screen)); err == nil {
			h.Eights[screen] = n
		}
	}
	return h
}

// remember remembers what was set by a control of the screen.
func (d *Session) remember(action, value string) {
	switch a := &d.shared.Address; action {
	case view.ActVolume:
		d.shared.Store.Remember(rememberedVolume, strconv.Itoa(d.shared.Volume))
	case view.ActLevel:
		if a.Riff != "" {
			d.shared.Store.Remember(rememberedLevel, value)
		}
	case view.ActEights:
		d.shared.Store.Remember(rememberedLength+a.Screen, value)
	case view.ActTheme:
		d.shared.SetTheme(value)
	}
}

// news is what other windows have kept, until it is taken up here: not while something
// is under way.
type news struct{ things, rounds bool }

// told notes that another window has kept something.
func (d *Session) told(what string) {
	d.news.things = d.news.things || what == host.Things
	d.news.rounds = d.news.rounds || what == host.Rounds
}

// catchUp takes up what other windows have kept, once nothing is under way: outputs and
// sets at once, rounds as soon as a screen tells of them.
func (d *Session) catchUp() {
	if d.underWay {
		return
	}
	if d.news.things {
		d.news.things, d.shared.Stale = false, true
		d.shared.Outputs = d.shared.Store.Outputs()
		d.shared.SetOutput()
		d.shared.Ear.Apply()
		d.shared.Finished = d.shared.Finished || d.shared.Store.Begun()
		d.shared.Page.Theme(d.shared.Theme())
		if x, ok := d.controller.(Refresher); ok {
			x.Refresh()
		}
	}
	screen := d.shared.Address.Screen
	if tells := screen == view.ScreenDiary || screen == view.ScreenHome; tells && d.news.rounds && d.practice == nil {
		d.news.rounds = false
		d.shared.Learner.Read()
	}
}

// goesOn reports whether something is under way on a screen: a round, or what plays
// until it is stopped.
func goesOn(s *view.Screen) (on bool) {
	s.Each(func(it *view.Item) { on = on || it.Role == view.RoleTapArea || it.Action == view.ActStop })
	return on || s.Room
}

// learnt lets a screen that tells of the learner be made again.
func (d *Session) learnt() {
	switch d.shared.Address.Screen {
	case view.ScreenDiary, view.ScreenHome, view.ScreenPractice:
		d.shared.Stale = true
	}
}
