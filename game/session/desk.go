package session

import (
	"errors"
	"strconv"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/view"
)

// desk is what is going on: the address, what is shared by all exercises, and
// the one that lies on it.
type desk struct {
	*host.Host

	address  view.Address
	problems []view.Problem // what is wrong with the link, if anything is
	volume   int            // 0 to 100
	width    float64        // of the window when the screen was made
	began    float64        // when the round did, performance time in ms
	nth      uint64         // how many questions ago the link's own was asked
	unsaved  error          // why the outputs were not
	unmade   error          // why the file of all rounds was not made, when it was last asked for
	finished bool           // a round was finished here, now or earlier
	stale    bool           // the screen must be made again
	underWay bool           // something is, on the screen that is shown
	news     news
	ear      playback.Ear
	rest     playback.Head // the drum beside a link that cannot be opened

	exercise exercise
	exercises
	trail   *view.Trail
	latest  map[string]view.Address // by screens: as each was left
	touch   bool
	outputs host.Outputs

	learner  learner
	practice *practice // that is under way, or nil
}

func (d *desk) open(o *host.Host) {
	d.Host = o
	d.ear = playback.NewEar(o.Sound)
	d.setVolume(d.firstVolume())
	d.outputs = o.Store.Outputs()
	d.exercises = newExercises(d)
	d.latest = map[string]view.Address{}
	d.learner.d = d
	d.finished = o.Store.Begun()
	d.setOutput()
	d.Page.Theme(view.Theme(d.Store.Remembered(rememberedTheme)))
	d.trail = view.NewTrail(d.Wall.ID())
	d.Page.Link("", d.trail.At(), false)
	d.visit(o.Query)
}

// turn lays on the desk what the address says.
func (d *desk) turn() {
	d.exercise = d.exercises.of(d.address.Screen)
	d.trail.Lay(d.address.Screen)
	d.nth = 0
	d.ear.Reset(d.outputs.Adjustment().Bass)
	d.exercise.lay()
	d.stale = true
}

func (d *desk) allowed() view.Allowed {
	a := view.Allowed{Rhythms: d.Rhythms().IDs(), Set: func(text string) error {
		_, err := quiz.ParseLink(text, d.Rhythms())
		return err
	}}
	for _, c := range d.Rhythms().Answers(true) {
		a.Answers = append(a.Answers, c.ID)
	}
	for l := riff.Bare; l <= riff.Solo; l++ {
		if riff.Available(l) {
			a.Riffs = append(a.Riffs, l.String())
		}
	}
	return a
}

// happened answers one event.
func (d *desk) happened(e *host.Event) {
	switch e.Kind {
	case host.Used:
		d.exercises.journal.file = e.File
		d.act(e.Action, e.Value)
	case host.Tapped:
		d.exercise.tap(&e.Tap)
	case host.Visited:
		d.came(e.Value, e.Mark)
	case host.ExportFailed:
		d.unmade, d.stale = errors.New(e.Reason), true
	case host.Stored:
		d.stale = true
	case host.Told:
		d.told(e.Value)
	case host.Stopped:
		d.exercise.interrupted(e.Reason)
		d.stale = true
	case host.Running:
		d.stale = true
	}
}

// act answers a control: what concerns the desk here, and the rest, with the
// address as it then is, by the exercise.
func (d *desk) act(action, value string) {
	d.stale = true
	number, _ := strconv.Atoi(value)
	before := d.address
	switch action {
	case view.ActOpen:
		d.problems = nil
		d.Page.Link(d.address.String(), d.trail.At(), false)
		d.turn()
		return
	case view.ActGo:
		d.leave(d.onTo(value))
		return
	case view.ActHome:
		d.leave(d.address.To(view.ScreenHome))
		return
	case view.ActFirst:
		d.leave(view.FirstRound())
		d.use(view.ActBegin, "")
		return
	case view.ActExport:
		d.unmade = nil
		d.Export()
		return
	case view.ActSaveWaiting:
		d.unmade = d.Store.SaveWaiting()
		return
	case view.ActReload:
		d.Reload()
		return
	case view.ActVolume:
		d.setVolume(number)
		d.remember(action, value)
		return
	case view.ActTheme:
		d.remember(action, value)
		return
	case view.ActDiaryWho:
		d.Diary.Choose(value)
		d.learner.read()
		return
	case view.ActDiaryPractise:
		d.practise(number)
		return
	case view.ActPracticeEnd:
		d.leave(view.DefaultAddress(view.ScreenDiary))
		return
	case view.ActPracticeAsk:
		d.asked()
		return
	case view.ActPracticeNext:
		d.onward()
		return
	case view.ActNext:
		if d.practice != nil {
			d.onward()
			return
		}
		d.nth++
	case view.ActRhythm:
		d.address = d.address.WithRhythm(value)
	case view.ActTempo:
		d.setTempo(number)
	case view.ActEights:
		d.remember(action, value)
		d.address.Eights = number
	case view.ActLevel:
		d.remember(action, value)
		d.address = d.address.WithLevel(value)
	case view.ActHide:
		d.address.Hide = number
	case view.ActAsk:
		d.address.Ask = value
		if ids := d.address.Ids(); len(ids) == 1 {
			d.address.From = view.FromFive // one rhythm cannot be told from others
		} else if len(ids) > 1 {
			d.address.Answers = min(max(d.address.Answers, view.LeastAnswers), len(ids))
		}
	case view.ActAnswers:
		d.address.Answers = number
	case view.ActFrom:
		d.address.From = value
	}
	d.use(action, value)
	if d.address != before {
		d.Page.Link(d.address.String(), d.trail.At(), false)
	}
}

// use lets the exercise answer a control. Stop lies where Begin was: the second press of two
// in haste does not end what the first began.
func (d *desk) use(action, value string) {
	now := d.Wall.Now()
	if action == view.ActStop && value != view.ByEscape && now-d.began < hasty {
		return
	}
	played := d.exercise.stands() == view.Playing
	d.exercise.act(action, value)
	if !played && d.exercise.stands() == view.Playing {
		d.began = now
	}
}

// hasty is how long after the first the second press of two may come, in ms; systems take
// two presses within half a second for one double press (common practice, no source).
const hasty = 500

func (d *desk) setTempo(bpm int) {
	slow, fast := d.tempi(d.cycle())
	d.address.BPM = min(max(bpm, slow), fast)
}

// cycle is the address's rhythm; Any has none.
func (d *desk) cycle() *rhythm.Cycle {
	c, _ := d.Rhythms().Get(d.address.Rhythm)
	return c
}

// tempi are the ends of what is offered: the rhythm's own, widened downwards to
// practise slowly, and always with what the link asked for.
func (d *desk) tempi(c *rhythm.Cycle) (slow, fast int) {
	slow, fast = view.LeastBPM, view.MostBPM
	if c != nil {
		slow, fast = max(slow, c.Tempo.Slow*2/3), min(fast, c.Tempo.Fast)
	}
	if d.address.BPM == 0 {
		return slow, fast
	}
	return min(slow, d.address.BPM), max(fast, d.address.BPM)
}

// seed is the address's seed and, for each next question, the one after it; or
// a new one.
func (d *desk) seed() uint64 {
	if d.address.Seed != 0 {
		return (d.address.Seed-1+d.nth)%view.MostSeed + 1
	}
	return d.Wall.Seed()
}

// level is the address's riff level.
func (d *desk) level() riff.Level {
	level, err := riff.ParseLevel(d.address.Riff)
	if err != nil {
		panic(err) // the address allows only what there is
	}
	return level
}

// options are the rhythms that can be chosen: the most used, and the rest.
func (d *desk) options() (core, more []view.Option) {
	for _, id := range d.Rhythms().IDs() {
		c, _ := d.Rhythms().Get(id)
		if option := view.RhythmOption(c, d.Words); c.Core {
			core = append(core, option)
		} else {
			more = append(more, option)
		}
	}
	return core, more
}

func (d *desk) levels() []string { return d.allowed().Riffs }

// notes are the asides that every screen may need.
func (d *desk) notes() []view.Note {
	var notes []view.Note
	if !d.Sound.Audible() {
		notes = append(notes, view.NoteNoSound)
	}
	if d.unsaved != nil && !d.Store.Storage().None { // or it is said of everything
		notes = append(notes, view.NoteNotKept)
	}
	if d.unmade != nil {
		notes = append(notes, view.NoteNotExported)
	}
	if d.address.Riffs != 0 && d.address.Seed != 0 {
		notes = append(notes, view.NoteRiffs)
	}
	return notes
}

// tick moves the exercise on to what is heard now, and shows what changed.
func (d *desk) tick(now float64) {
	if d.learner.times == 0 && d.width != 0 { // the first screen is on the page
		d.learner.read()
	}
	if d.exercise.tick(now) {
		d.stale = true
	}
	d.catchUp()
	if w := d.Page.Width(); w != d.width {
		d.width, d.stale = w, true
	}
	d.keepStep()
	if on := d.Page.Touch(); on != d.touch {
		d.touch, d.Words, d.stale = on, d.Words.ForTouch(on), true
	}
	if d.stale {
		d.stale = false
		s := d.screen()
		d.underWay = goesOn(&s)
		d.Page.Show(s)
	}
}

// screen is what the page shows now.
func (d *desk) screen() view.Screen {
	if d.problems != nil {
		link := view.WrongLink{Problems: d.problems, Nearest: d.address}
		if c := d.cycle(); c != nil {
			link.Rhythm = c.Name
		}
		d.rest.Set(link.Head())
		return link.Screen(d.Words)
	}
	s := d.exercise.screen()
	if d.practice != nil {
		s = d.practice.shown().On(s, d.Words)
	}
	return d.Store.Storage().On(s, d.Words)
}

// picture is what lives in a place on the page; nil where nothing does.
func (d *desk) picture(place host.Place) *view.Picture {
	if d.problems != nil {
		return d.rest.Draw(d.calm())
	}
	return d.exercise.draw(place.Picture)
}
