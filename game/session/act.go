package session

import (
	"strconv"

	"groundbeat/game/link"
	"groundbeat/game/view"
)

// act answers a control: what concerns the session here, and the rest, with the address as
// it then is, by the controller.
func (x *Session) act(action, value string) {
	x.shared.Stale = true
	if x.goes(action, value) || x.practises(action, value) || x.keeps(action, value) {
		return
	}
	before := x.shared.Address
	x.remember(action, value)
	x.shared.Set(action, value)
	x.use(action, value)
	if x.shared.Address != before {
		x.shared.Page.Link(x.shared.Address.String(), x.trail.At(), false)
	}
}

// goes answers a control that leads elsewhere, and reports whether it was one.
func (x *Session) goes(action, value string) bool {
	switch action {
	case view.ActOpen:
		x.shared.Problems = nil
		x.shared.Page.Link(x.shared.Address.String(), x.trail.At(), false)
		x.turn()
	case view.ActGo:
		x.leave(x.onTo(value))
	case view.ActHome:
		x.leave(x.shared.Address.To(view.ScreenHome))
	case view.ActFirst:
		x.leave(link.FirstRound())
		x.use(view.ActBegin, "")
	case view.ActReload:
		x.shared.Reload()
	default:
		return false
	}
	return true
}

// practises answers a control of a practice, and reports whether it was one.
func (x *Session) practises(action, value string) bool {
	switch action {
	case view.ActDiaryPractise:
		number, _ := strconv.Atoi(value)
		x.practise(number)
	case view.ActPracticeEnd:
		x.leave(link.Default(view.ScreenDiary))
	case view.ActPracticeAsk:
		x.asked()
	case view.ActPracticeNext:
		x.onward()
	case view.ActNext:
		if x.practice == nil {
			return false
		}
		x.onward()
	default:
		return false
	}
	return true
}

// keeps answers a control of what is kept and remembered, and reports whether it was one.
func (x *Session) keeps(action, value string) bool {
	switch action {
	case view.ActExport:
		x.shared.Unmade = nil
		x.shared.Export()
	case view.ActSaveWaiting:
		x.shared.Unmade = x.shared.Store.SaveWaiting()
	case view.ActVolume:
		number, _ := strconv.Atoi(value)
		x.shared.SetVolume(number)
		x.remember(action, value)
	case view.ActTheme:
		x.remember(action, value)
	case view.ActDiaryWho:
		x.shared.Diary.Choose(value)
		x.shared.Learner.Read()
	default:
		return false
	}
	return true
}

// use lets the controller answer a control. Stop lies where Begin was: the second press of two
// in haste does not end what the first began.
func (x *Session) use(action, value string) {
	now := x.shared.Wall.Now()
	if action == view.ActStop && value != view.ByEscape && now-x.began < hasty {
		return
	}
	played := x.phase() == view.Playing
	x.controller.Act(action, value)
	if !played && x.phase() == view.Playing {
		x.began = now
	}
}

// hasty is how long after the first the second press of two may come, in ms; systems take
// two presses within half a second for one double press (common practice, no source).
const hasty = 500
