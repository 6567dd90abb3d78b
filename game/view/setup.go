package view

import (
	"fmt"
	"time"
)

// SetUp is what the screen Set-up is made from: what the player's outputs and
// hand are behind by themselves, measured by tapping along.
type SetUp struct {
	Phase   Phase    // not Waiting
	Name    string   // of the output to be measured; empty: DefaultOutput
	Outputs []Output // those that are kept, in the order shown
	Chosen  string   // name of the output in use; empty: none

	Volume int // 0 to 100; below 0: there is no sound, and so nothing to measure
	Notes  []Note
	Round  int // number of the round, which taps carry; 0: none

	Result *Measured // when Reviewing
	Why    Why       // when Voided
}

// Output is a way out of the sound that was measured. Its name is the player's
// own: browsers do not tell.
type Output struct {
	Name         string
	Mean, Spread time.Duration // of the taps: + behind, − ahead; 0 or more
	When         string        // the day, as it is shown; empty: not known
}

// Measured is a finished tap-along in figures.
type Measured struct {
	Refusal      Refusal       // RefusedNot: it can be kept
	Mean, Spread time.Duration // + behind, − ahead; 0 or more
	Taps, Of     int           // taps that it rests on, of how many dums
}

// Refusal says why a tap-along tells no delay.
type Refusal uint8

// The refusals.
const (
	RefusedNot       Refusal = iota
	RefusedFew               // too few taps belong to a dum
	RefusedScattered         // they are too scattered
	RefusedUnclear           // they fit in more than one way
)

// DefaultOutput is the name of an output that the player gave none.
func DefaultOutput(w Words) string { return w.Say("set-up-device") }

// Screen returns the screen of the tap-along's phase.
func (u *SetUp) Screen(w Words) Screen {
	switch u.Phase {
	case Playing:
		return u.playing(w)
	case Reviewing:
		return u.reviewing(w)
	case Voided:
		return voided(w, ScreenSetUp, sayWhy(w, u.Why), u.head(w), u.once(w, LookPrimary), u.change(w))
	}
	return u.ready(w)
}

// Head returns what the drumhead shows: nothing, since the ear is measured and
// not the eye. The painter adds the count-in and the marks of taps, no sweep.
func (u *SetUp) Head() Head { return Head{Hidden: true} }

func (u *SetUp) head(w Words) Item {
	h := u.Head()
	return stage(w, h.Twin(w))
}

func (u *SetUp) name(w Words) string {
	if u.Name == "" {
		return DefaultOutput(w)
	}
	return u.Name
}

func (u *SetUp) ready(w Words) Screen {
	items := []Item{
		heading("heading", w.Say("set-up")),
		{ID: "why", Role: RoleText, Text: w.Say("set-up-why")},
		{ID: "how", Role: RoleText, Text: w.Say("set-up-how")},
		u.head(w),
		settings(Item{ID: "name", Role: RoleField, Name: w.Say("set-up-name"), Action: ActSetUpName, Value: u.name(w)},
			volume(w, u.Volume)),
		{ID: "names", Role: RoleText, Text: w.Say("set-up-names"), Look: LookNote},
		{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary, Disabled: u.Volume < 0},
		{ID: "to-check", Role: RoleButton, Name: w.Say("set-up-check"), Action: ActGo, Value: ScreenCheck, Look: LookQuiet},
	}
	items = append(items, u.outputs(w)...)
	items = append(items, notesWithout(w, u.Notes, w.Say("set-up-no-sound"))...)
	return ready(w, ScreenSetUp, w.Say("set-up"), items)
}

// outputs lists what is kept; nothing if nothing is.
func (u *SetUp) outputs(w Words) []Item {
	if len(u.Outputs) == 0 {
		return nil
	}
	list := Item{ID: "outputs", Role: RoleList}
	for i, o := range u.Outputs {
		list.Children = append(list.Children, u.output(w, fmt.Sprintf("output-%d", i+1), o))
	}
	return []Item{subheading("outputs-heading", w.Say("set-up-outputs")), list}
}

// output is one of the list. Its buttons say its name, so that each makes sense
// by itself.
func (u *SetUp) output(w Words, id string, o Output) Item {
	text := Item{ID: id + "-figures", Role: RoleText, Text: sayOutput(w, o)}
	if o.Name == u.Chosen {
		text.Text = w.Say("set-up-in-use", "output", text.Text)
	}
	button := func(what, name, action string) Item {
		return Item{ID: id + "-" + what, Role: RoleButton, Name: name, Action: action, Value: o.Name, Look: LookQuiet}
	}
	use := button("use", w.Say("set-up-use", "name", o.Name), ActSetUpUse)
	use.Pressed = o.Name == u.Chosen
	anew := button("anew", w.Say("set-up-anew", "name", o.Name), ActBegin)
	anew.Disabled = u.Volume < 0
	return Item{ID: id, Role: RoleListItem, Children: []Item{text,
		{ID: id + "-do", Role: RoleGroup, Look: LookRow, Children: []Item{use,
			anew,
			button("forget", w.Say("set-up-forget", "name", o.Name), ActSetUpForget)}}}}
}

func sayOutput(w Words, o Output) string {
	if o.When == "" {
		return w.Say("set-up-output", "name", o.Name, "offset", sayOffset(w, o.Mean), "ms", wholeMs(o.Spread))
	}
	return w.Say("set-up-output-when", "name", o.Name, "offset", sayOffset(w, o.Mean), "ms", wholeMs(o.Spread), "when", o.When)
}

func (u *SetUp) playing(w Words) Screen {
	return tapping(page(w, ScreenSetUp, w.Say("set-up"), nil), w, w.Say("playing-set-up"), u.Round, u.head(w))
}

func (u *SetUp) reviewing(w Words) Screen {
	items := u.measured(w)
	if u.Result.Refusal != RefusedNot {
		items = u.refused(w)
	}
	s := page(w, ScreenSetUp, w.Say("set-up"), append(items, notes(w, u.Notes)...))
	s.Escape = ActChange
	return s
}

func (u *SetUp) measured(w Words) []Item {
	r := u.Result
	return []Item{
		heading("heading", w.Say("set-up-measured", "name", u.name(w))),
		{ID: "finding", Role: RoleText, Text: sayMeasured(w, r), Look: LookFinding},
		{ID: "figures", Role: RoleGroup, Look: LookFigures, Children: []Item{
			figure("mean", w.Say("mean"), sayOffset(w, r.Mean)),
			figure("spread", w.Say("spread"), w.Say("ms", "ms", wholeMs(r.Spread))),
			figure("taps", w.Say("set-up-tapped"), w.Say("of", "n", r.Taps, "of", r.Of))}},
		{ID: "next", Role: RoleGroup, Look: LookRow, Children: []Item{
			{ID: "keep", Role: RoleButton, Name: w.Say("set-up-keep"), Action: ActSetUpKeep, Value: u.name(w), Look: LookPrimary},
			u.once(w, ""), u.change(w)}},
	}
}

func sayMeasured(w Words, r *Measured) string {
	within := wholeMs(r.Spread)
	switch n := wholeMs(r.Mean); {
	case n < 0:
		return w.Say("set-up-ahead", "ms", -n, "within", within)
	case n > 0:
		return w.Say("set-up-behind", "ms", n, "within", within)
	}
	return w.Say("set-up-on", "within", within)
}

// refused says why nothing can be kept, and what to try.
func (u *SetUp) refused(w Words) []Item {
	why, try := sayRefusal(w, u.Result)
	return []Item{
		heading("heading", w.Say("set-up-refused")),
		{ID: "why", Role: RoleText, Text: why, Look: LookFinding},
		{ID: "try", Role: RoleText, Text: try},
		{ID: "next", Role: RoleGroup, Look: LookRow, Children: []Item{u.once(w, LookPrimary), u.change(w)}},
	}
}

func sayRefusal(w Words, r *Measured) (why, try string) {
	switch r.Refusal {
	case RefusedFew:
		return w.Say("set-up-few", "n", r.Taps, "of", r.Of), w.Say("set-up-few-try")
	case RefusedScattered:
		return w.Say("set-up-scattered", "ms", wholeMs(r.Spread)), w.Say("set-up-scattered-try")
	}
	return w.Say("set-up-unclear"), w.Say("set-up-unclear-try")
}

func (u *SetUp) once(w Words, look string) Item {
	return Item{ID: "once", Role: RoleButton, Name: w.Say("once-more"), Action: ActOnce, Look: look}
}

func (u *SetUp) change(w Words) Item {
	return Item{ID: "change", Role: RoleButton, Name: w.Say("set-up-back"), Action: ActChange, Look: LookQuiet}
}
