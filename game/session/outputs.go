package session

import (
	"slices"
	"time"

	"groundbeat/game/view"
)

// An Output is a way out of the sound, with the player's own mean offset on it,
// and what was set for it at the sound check.
type Output struct {
	Name   string    `json:"name"`          // the player's own; before there is one, view.DefaultOutput
	Mean   float64   `json:"mean"`          // ms: + behind, − ahead
	Spread float64   `json:"spread"`        // ms
	When   time.Time `json:"when,omitzero"` // it was measured; zero: it was not, and the two above are 0

	Check
}

// Check is what was set at the sound check. Its zero is how an output is taken
// before: the picture as the sound comes, both drums alike and in the middle.
type Check struct {
	Later int  `json:"later,omitzero"` // ms that pictures wait for the sound: + later, − earlier
	Bass  int  `json:"bass,omitzero"`  // how far the balance lies towards the bass drum, 0 to view.MostBass
	Wide  bool `json:"wide,omitzero"`  // the drums stand a little apart
}

// Outputs are those that are known, and which is in use; "" is none.
type Outputs struct {
	Chosen string   `json:"chosen"`
	List   []Output `json:"outputs"`
}

// named returns the output of a name, or nil.
func (o *Outputs) named(name string) *Output {
	for i := range o.List {
		if o.List[i].Name == name {
			return &o.List[i]
		}
	}
	return nil
}

// in returns the output in use, or nil.
func (o *Outputs) in() *Output { return o.named(o.Chosen) }

// measured returns the output in use if Set-up has measured it, or nil. One that
// was not is known by what was set at the sound check alone: no round may say that
// it was played with a set-up.
func (o *Outputs) measured() *Output {
	if in := o.in(); in != nil && !in.When.IsZero() {
		return in
	}
	return nil
}

// check returns what was set for the output in use, within its bounds.
func (o *Outputs) check() Check {
	in := o.in()
	if in == nil {
		return Check{}
	}
	c := in.Check // what is kept may have been written by anybody
	c.Later = min(max(c.Later, int(view.EarliestPicture.Milliseconds())), int(view.LatestPicture.Milliseconds()))
	c.Bass = min(max(c.Bass, 0), view.MostBass)
	return c
}

// set keeps what was set for the output in use; where there is none, for one of
// the given name, which is used from then on.
func (o *Outputs) set(c Check, name string) {
	if o.in() == nil {
		if o.Chosen = name; o.in() == nil {
			o.List = append(o.List, Output{Name: name})
		}
	}
	o.in().Check = c
}

// put keeps what was measured on an output in place of one of the same name, and
// uses it. What was set for it at the sound check stays. What was set before the
// output in use had been measured is taken to be of this one, which now has a name.
func (o *Outputs) put(one Output) {
	was := o.named(one.Name)
	if in := o.in(); was == nil && in != nil && o.measured() == nil {
		was = in
	}
	if was != nil {
		one.Check = was.Check
		o.forget(was.Name)
	}
	o.List = append(o.List, one)
	o.Chosen = one.Name
}

// forget drops an output.
func (o *Outputs) forget(name string) {
	o.List = slices.DeleteFunc(o.List, func(one Output) bool { return one.Name == name })
	if o.Chosen == name {
		o.Chosen = ""
	}
}
