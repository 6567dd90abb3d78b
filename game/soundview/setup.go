package soundview

import (
	"fmt"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"time"
)

// SetUp is what the screen Set-up is made from: what the player's outputs and
// hand are behind by themselves, measured by tapping along.
type SetUp struct {
	Phase   view.Phase // not Waiting
	Name    string     // of the output to be measured; empty: DefaultOutput
	Outputs []Output   // those that are kept, in the order shown
	Chosen  string     // name of the output in use; empty: none

	Volume int // 0 to 100; below 0: there is no sound, and so nothing to measure
	Notes  []view.Note
	Round  int // number of the round, which taps carry; 0: none

	Result *Measured // when Reviewing
	Why    view.Why  // when Voided
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
func DefaultOutput(w say.Words) string { return w.Say("set-up-device") }

// Screen returns the screen of the tap-along's phase.
func (u *SetUp) Screen(w say.Words) view.Screen {
	switch u.Phase {
	case view.Playing:
		return u.playing(w)
	case view.Reviewing:
		return u.reviewing(w)
	case view.Voided:
		return view.VoidScreen(w, view.ScreenSetUp, view.SayWhy(w, u.Why), u.head(w), u.once(w, view.LookPrimary), u.change(w))
	}
	return u.ready(w)
}

// Head returns what the drumhead shows: nothing, since the ear is measured and
// not the eye. The painter adds the count-in and the marks of taps, no sweep.
func (u *SetUp) Head() picture.Head { return picture.Head{Hidden: true} }

func (u *SetUp) head(w say.Words) view.Item {
	h := u.Head()
	return view.Stage(w, h.Twin(w))
}

func (u *SetUp) name(w say.Words) string {
	if u.Name == "" {
		return DefaultOutput(w)
	}
	return u.Name
}

func (u *SetUp) ready(w say.Words) view.Screen {
	items := []view.Item{
		view.Heading("heading", w.Say("set-up")),
		{ID: "why", Role: view.RoleText, Text: w.Say("set-up-why")},
		{ID: "how", Role: view.RoleText, Text: w.Say("set-up-how")},
		u.head(w),
		view.Settings(view.Item{ID: "name", Role: view.RoleField, Name: w.Say("set-up-name"), Action: view.ActSetUpName, Value: u.name(w)},
			view.Volume(w, u.Volume)),
		{ID: "names", Role: view.RoleText, Text: w.Say("set-up-names"), Look: view.LookNote},
		{ID: "begin", Role: view.RoleButton, Name: w.Say("begin"), Action: view.ActBegin, Look: view.LookPrimary, Disabled: u.Volume < 0},
		{ID: "to-check", Role: view.RoleButton, Name: w.Say("set-up-check"), Action: view.ActGo, Value: view.ScreenCheck, Look: view.LookQuiet},
	}
	items = append(items, u.outputs(w)...)
	items = append(items, view.NotesWithout(w, u.Notes, w.Say("set-up-no-sound"))...)
	return view.ReadyScreen(w, view.ScreenSetUp, w.Say("set-up"), items)
}

// outputs lists what is kept; nothing if nothing is.
func (u *SetUp) outputs(w say.Words) []view.Item {
	if len(u.Outputs) == 0 {
		return nil
	}
	list := view.Item{ID: "outputs", Role: view.RoleList}
	for i, o := range u.Outputs {
		list.Children = append(list.Children, u.output(w, fmt.Sprintf("output-%d", i+1), o))
	}
	return []view.Item{view.Subheading("outputs-heading", w.Say("set-up-outputs")), list}
}

// output is one of the list. Its buttons say its name, so that each makes sense
// by itself.
func (u *SetUp) output(w say.Words, id string, o Output) view.Item {
	text := view.Item{ID: id + "-figures", Role: view.RoleText, Text: sayOutput(w, o)}
	if o.Name == u.Chosen {
		text.Text = w.Say("set-up-in-use", "output", text.Text)
	}
	button := func(what, name, action string) view.Item {
		return view.Item{ID: id + "-" + what, Role: view.RoleButton, Name: name, Action: action, Value: o.Name, Look: view.LookQuiet}
	}
	use := button("use", w.Say("set-up-use", "name", o.Name), view.ActSetUpUse)
	use.Pressed = o.Name == u.Chosen
	anew := button("anew", w.Say("set-up-anew", "name", o.Name), view.ActBegin)
	anew.Disabled = u.Volume < 0
	return view.Item{ID: id, Role: view.RoleListItem, Children: []view.Item{text,
		{ID: id + "-do", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{use,
			anew,
			button("forget", w.Say("set-up-forget", "name", o.Name), view.ActSetUpForget)}}}}
}

func sayOutput(w say.Words, o Output) string {
	if o.When == "" {
		return w.Say("set-up-output", "name", o.Name, "offset", say.Offset(w, o.Mean), "ms", say.WholeMs(o.Spread))
	}
	return w.Say("set-up-output-when", "name", o.Name, "offset", say.Offset(w, o.Mean), "ms", say.WholeMs(o.Spread), "when", o.When)
}

func (u *SetUp) playing(w say.Words) view.Screen {
	return view.Tapping(view.Page(w, view.ScreenSetUp, w.Say("set-up"), nil), w, w.Say("playing-set-up"), u.Round, u.head(w))
}

func (u *SetUp) reviewing(w say.Words) view.Screen {
	items := u.measured(w)
	if u.Result.Refusal != RefusedNot {
		items = u.refused(w)
	}
	s := view.Page(w, view.ScreenSetUp, w.Say("set-up"), append(items, view.Notes(w, u.Notes)...))
	s.Escape = view.ActChange
	return s
}

func (u *SetUp) measured(w say.Words) []view.Item {
	r := u.Result
	return []view.Item{
		view.Heading("heading", w.Say("set-up-measured", "name", u.name(w))),
		{ID: "finding", Role: view.RoleText, Text: sayMeasured(w, r), Look: view.LookFinding},
		{ID: "figures", Role: view.RoleGroup, Look: view.LookFigures, Children: []view.Item{
			view.Figure("mean", w.Say("mean"), say.Offset(w, r.Mean)),
			view.Figure("spread", w.Say("spread"), w.Say("ms", "ms", say.WholeMs(r.Spread))),
			view.Figure("taps", w.Say("set-up-tapped"), w.Say("of", "n", r.Taps, "of", r.Of))}},
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
			{ID: "keep", Role: view.RoleButton, Name: w.Say("set-up-keep"), Action: view.ActSetUpKeep, Value: u.name(w), Look: view.LookPrimary},
			u.once(w, ""), u.change(w)}},
	}
}

func sayMeasured(w say.Words, r *Measured) string {
	within := say.WholeMs(r.Spread)
	switch n := say.WholeMs(r.Mean); {
	case n < 0:
		return w.Say("set-up-ahead", "ms", -n, "within", within)
	case n > 0:
		return w.Say("set-up-behind", "ms", n, "within", within)
	}
	return w.Say("set-up-on", "within", within)
}

// refused says why nothing can be kept, and what to try.
func (u *SetUp) refused(w say.Words) []view.Item {
	why, try := sayRefusal(w, u.Result)
	return []view.Item{
		view.Heading("heading", w.Say("set-up-refused")),
		{ID: "why", Role: view.RoleText, Text: why, Look: view.LookFinding},
		{ID: "try", Role: view.RoleText, Text: try},
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{u.once(w, view.LookPrimary), u.change(w)}},
	}
}

func sayRefusal(w say.Words, r *Measured) (why, try string) {
	switch r.Refusal {
	case RefusedFew:
		return w.Say("set-up-few", "n", r.Taps, "of", r.Of), w.Say("set-up-few-try")
	case RefusedScattered:
		return w.Say("set-up-scattered", "ms", say.WholeMs(r.Spread)), w.Say("set-up-scattered-try")
	}
	return w.Say("set-up-unclear"), w.Say("set-up-unclear-try")
}

func (u *SetUp) once(w say.Words, look string) view.Item {
	return view.Item{ID: "once", Role: view.RoleButton, Name: w.Say("once-more"), Action: view.ActOnce, Look: look}
}

func (u *SetUp) change(w say.Words) view.Item {
	return view.Item{ID: "change", Role: view.RoleButton, Name: w.Say("set-up-back"), Action: view.ActChange, Look: view.LookQuiet}
}
