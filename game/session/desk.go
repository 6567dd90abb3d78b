package session

import (
	"errors"
	"strconv"

	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/view"
)

// Session is what is going on: the address, what is shared by all exercises, and
// the one that lies on it.
type Session struct {
	shared Shared

	began    float64 // when the round did, performance time in ms
	underWay bool    // something is, on the screen that is shown
	news     news
	rest     playback.Head // the drum beside a link that cannot be opened

	controllers controllers
	controller  Controller // of the screen that is shown
	trail       *link.Trail
	latest      map[string]link.Address // by screens: as each was left
	touch       bool

	practice *practice // that is under way, or nil
}

// New begins a session with the link that opened the page.
func New(o *host.Host) *Session {
	d := &Session{}
	d.open(o)
	return d
}

func (d *Session) open(o *host.Host) {
	d.shared.Host = o
	d.shared.Practice = Practice{Begin: d.practiseAll, Finished: d.roundOver, Meeting: d.meeting}
	d.shared.Ear = playback.NewEar(o.Sound)
	d.shared.SetVolume(d.firstVolume())
	d.shared.Outputs = o.Store.Outputs()
	diary := NewDiary(&d.shared)
	d.controllers = newControllers(&d.shared, diary)
	d.latest = map[string]link.Address{}
	d.shared.Learner = Learner{Host: o, Redraw: d.learnt, Recount: diary.Count}
	d.shared.Finished = o.Store.Begun()
	d.shared.SetOutput()
	d.shared.Page.Theme(d.shared.Theme())
	d.trail = link.NewTrail(d.shared.Wall.ID())
	d.shared.Page.Link("", d.trail.At(), false)
	d.visit(o.Query)
}

// turn lays on the desk what the address says.
func (d *Session) turn() {
	d.controller = d.controllers.of(d.shared.Address.Screen)
	d.trail.Lay(d.shared.Address.Screen)
	d.shared.nth = 0
	d.shared.Ear.Reset(d.shared.Outputs.Adjustment().Bass)
	d.controller.Prepare()
	d.shared.Stale = true
}

// Happened answers one event.
func (d *Session) Happened(e *host.Event) {
	switch e.Kind {
	case host.Used:
		d.shared.File = e.File
		d.act(e.Action, e.Value)
	case host.Tapped:
		if x, ok := d.controller.(Tapper); ok {
			x.Tap(&e.Tap)
		}
	case host.Visited:
		d.came(e.Value, e.Mark)
	case host.ExportFailed:
		d.shared.Unmade, d.shared.Stale = errors.New(e.Reason), true
	case host.Stored:
		d.shared.Stale = true
	case host.Told:
		d.told(e.Value)
	case host.Stopped:
		d.controller.Interrupt(e.Reason)
		d.shared.Stale = true
	case host.Running:
		d.shared.Stale = true
	}
}

// act answers a control: what concerns the session here, and the rest, with the address as
// it then is, by the controller.
func (d *Session) act(action, value string) {
	d.shared.Stale = true
	if d.goes(action, value) || d.practises(action, value) || d.keeps(action, value) {
		return
	}
	before := d.shared.Address
	d.remember(action, value)
	d.shared.Set(action, value)
	d.use(action, value)
	if d.shared.Address != before {
		d.shared.Page.Link(d.shared.Address.String(), d.trail.At(), false)
	}
}

// goes answers a control that leads elsewhere, and reports whether it was one.
func (d *Session) goes(action, value string) bool {
	switch action {
	case view.ActOpen:
		d.shared.Problems = nil
		d.shared.Page.Link(d.shared.Address.String(), d.trail.At(), false)
		d.turn()
	case view.ActGo:
		d.leave(d.onTo(value))
	case view.ActHome:
		d.leave(d.shared.Address.To(view.ScreenHome))
	case view.ActFirst:
		d.leave(link.FirstRound())
		d.use(view.ActBegin, "")
	case view.ActReload:
		d.shared.Reload()
	default:
		return false
	}
	return true
}

// practises answers a control of a practice, and reports whether it was one.
func (d *Session) practises(action, value string) bool {
	switch action {
	case view.ActDiaryPractise:
		number, _ := strconv.Atoi(value)
		d.practise(number)
	case view.ActPracticeEnd:
		d.leave(link.Default(view.ScreenDiary))
	case view.ActPracticeAsk:
		d.asked()
	case view.ActPracticeNext:
		d.onward()
	case view.ActNext:
		if d.practice == nil {
			return false
		}
		d.onward()
	default:
		return false
	}
	return true
}

// keeps answers a control of what is kept and remembered, and reports whether it was one.
func (d *Session) keeps(action, value string) bool {
	switch action {
	case view.ActExport:
		d.shared.Unmade = nil
		d.shared.Export()
	case view.ActSaveWaiting:
		d.shared.Unmade = d.shared.Store.SaveWaiting()
	case view.ActVolume:
		number, _ := strconv.Atoi(value)
		d.shared.SetVolume(number)
		d.remember(action, value)
	case view.ActTheme:
		d.remember(action, value)
	case view.ActDiaryWho:
		d.shared.Diary.Choose(value)
		d.shared.Learner.Read()
	default:
		return false
	}
	return true
}

// use lets the exercise answer a control. Stop lies where Begin was: the second press of two
// in haste does not end what the first began.
func (d *Session) use(action, value string) {
	now := d.shared.Wall.Now()
	if action == view.ActStop && value != view.ByEscape && now-d.began < hasty {
		return
	}
	played := d.phase() == view.Playing
	d.controller.Act(action, value)
	if !played && d.phase() == view.Playing {
		d.began = now
	}
}

// hasty is how long after the first the second press of two may come, in ms; systems take
// two presses within half a second for one double press (common practice, no source).
const hasty = 500

// Tick moves on to what is heard at a performance time, in ms, and shows what changed.
func (d *Session) Tick(now float64) {
	if d.shared.Learner.times == 0 && d.shared.Width != 0 { // the first screen is on the page
		d.shared.Learner.Read()
	}
	if d.controller.Tick(now) {
		d.shared.Stale = true
	}
	d.catchUp()
	if w := d.shared.Page.Width(); w != d.shared.Width {
		d.shared.Width, d.shared.Stale = w, true
	}
	d.keepStep()
	if on := d.shared.Page.Touch(); on != d.touch {
		d.touch, d.shared.Words, d.shared.Stale = on, d.shared.Words.ForTouch(on), true
	}
	if d.shared.Stale {
		d.shared.Stale = false
		s := d.screen()
		d.underWay = goesOn(&s)
		d.shared.Page.Show(s)
	}
}

// screen is what the page shows now.
func (d *Session) screen() view.Screen {
	if d.shared.Problems != nil {
		link := link.WrongLink{Problems: d.shared.Problems, Nearest: d.shared.Address}
		if c := d.shared.Cycle(); c != nil {
			link.Rhythm = c.Name
		}
		d.rest.Set(link.Head())
		return link.Screen(d.shared.Words)
	}
	s := d.controller.Screen()
	if d.practice != nil {
		s = d.practice.shown().On(s, d.shared.Words)
	}
	return d.shared.Store.Storage().On(s, d.shared.Words)
}

// Picture is what lives in a place on the page; nil where nothing does.
func (d *Session) Picture(place host.Place) *picture.Picture {
	if d.shared.Problems != nil {
		return d.rest.Draw(d.shared.Calm())
	}
	return d.controller.Draw(place.Picture)
}
