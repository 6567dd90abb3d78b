package session

import (
	"strconv"

	"groundbeat/game/control"
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
func (x *Session) habits() link.Habits {
	h := link.Habits{Level: x.shared.Store.Remembered(rememberedLevel), Eights: map[string]int{}}
	for _, screen := range view.Screens() {
		if n, err := strconv.Atoi(x.shared.Store.Remembered(rememberedLength + screen)); err == nil {
			h.Eights[screen] = n
		}
	}
	return h
}

// remember remembers what was set by a control of the screen.
func (x *Session) remember(action, value string) {
	switch a := &x.shared.Address; action {
	case view.ActVolume:
		x.shared.Store.Remember(rememberedVolume, strconv.Itoa(x.shared.Volume))
	case view.ActLevel:
		if a.Riff != "" {
			x.shared.Store.Remember(rememberedLevel, value)
		}
	case view.ActEights:
		x.shared.Store.Remember(rememberedLength+a.Screen, value)
	case view.ActTheme:
		x.shared.SetTheme(value)
	}
}

// news is what other windows have kept, until it is taken up here: not while something
// is under way.
type news struct{ things, rounds bool }

// told notes that another window has kept something.
func (x *Session) told(what string) {
	x.news.things = x.news.things || what == host.Things
	x.news.rounds = x.news.rounds || what == host.Rounds
}

// catchUp takes up what other windows have kept, once nothing is under way: outputs and
// sets at once, rounds as soon as a screen tells of them.
func (x *Session) catchUp() {
	if x.underWay {
		return
	}
	if x.news.things {
		x.news.things, x.shared.Stale = false, true
		x.shared.Outputs = x.shared.Store.Outputs()
		x.shared.SetOutput()
		x.shared.Ear.Apply()
		x.shared.Finished = x.shared.Finished || x.shared.Store.Begun()
		x.shared.Page.Theme(x.shared.Theme())
		if c, ok := x.controller.(control.Refresher); ok {
			c.Refresh()
		}
	}
	screen := x.shared.Address.Screen
	if tells := screen == view.ScreenDiary || screen == view.ScreenHome; tells && x.news.rounds && x.practice == nil {
		x.news.rounds = false
		x.shared.Learner.Read()
	}
}

// goesOn reports whether something is under way on a screen: a round, or what plays
// until it is stopped.
func goesOn(s *view.Screen) (on bool) {
	s.Each(func(it *view.Item) { on = on || it.Role == view.RoleTapArea || it.Action == view.ActStop })
	return on || s.Room
}

// learnt lets a screen that tells of the learner be made again.
func (x *Session) learnt() {
	switch x.shared.Address.Screen {
	case view.ScreenDiary, view.ScreenHome, view.ScreenPractice:
		x.shared.Stale = true
	}
}
