package host

import (
	"encoding/json"
	"fmt"
	"math"
	"slices"
	"time"

	"groundbeat/game/soundview"
)

// An Output is a way out of the sound, with the player's own mean offset on it,
// and what was set for it at the sound check.
type Output struct {
	Name   string    `json:"name"`          // the player's own; before there is one, view.DefaultOutput
	Mean   float64   `json:"mean"`          // ms: + behind, − ahead
	Spread float64   `json:"spread"`        // ms
	When   time.Time `json:"when,omitzero"` // it was measured; zero: it was not, and the two above are 0

	Adjustment
}

// Adjustment is what was set at the sound check. Its zero is how an output is taken
// before: the picture as the sound comes, both drums alike and in the middle.
type Adjustment struct {
	Later int  `json:"later,omitzero"` // ms that pictures wait for the sound: + later, − earlier
	Bass  int  `json:"bass,omitzero"`  // how far the balance lies towards the bass drum, 0 to view.MostBass
	Wide  bool `json:"wide,omitzero"`  // the drums stand a little apart
}

// Outputs are those that are known, and which is in use; "" is none.
type Outputs struct {
	Chosen string   `json:"chosen"`
	List   []Output `json:"outputs"`
}

// ParseOutputs reads outputs as earlier versions kept them, all in one text.
func ParseOutputs(text string) (Outputs, error) {
	const format = 1
	var kept struct {
		Version int `json:"v"`
		Outputs
	}
	if err := json.Unmarshal([]byte(text), &kept); err != nil {
		return Outputs{}, fmt.Errorf("outputs: %w", err)
	}
	if kept.Version != format {
		return Outputs{}, fmt.Errorf("outputs: format %d, not %d", kept.Version, format)
	}
	return kept.Outputs, nil
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

// InUse returns the output in use, or nil.
func (o *Outputs) InUse() *Output { return o.named(o.Chosen) }

// Measured returns the output in use if Set-up has measured it, or nil. One that
// was not is known by what was set at the sound check alone: no round may say that
// it was played with a set-up.
func (o *Outputs) Measured() *Output {
	if in := o.InUse(); in != nil && !in.When.IsZero() {
		return in
	}
	return nil
}

// Adjustment returns what was set for the output in use, within its bounds.
func (o *Outputs) Adjustment() Adjustment {
	in := o.InUse()
	if in == nil {
		return Adjustment{}
	}
	c := in.Adjustment // what is kept may have been written by anybody
	c.Later = min(max(c.Later, int(soundview.EarliestPicture.Milliseconds())), int(soundview.LatestPicture.Milliseconds()))
	c.Bass = min(max(c.Bass, 0), soundview.MostBass)
	return c
}

// Adjust keeps what was set for the output in use; where there is none, for one of
// the given name, which is used from then on.
func (o *Outputs) Adjust(c Adjustment, name string) {
	if o.InUse() == nil {
		if o.Chosen = name; o.InUse() == nil {
			o.List = append(o.List, Output{Name: name})
		}
	}
	o.InUse().Adjustment = c
}

// Put keeps what was measured on an output in place of one of the same name, and
// uses it. What was set for it at the sound check stays. What was set before the
// output in use had been measured is taken to be of this one, which now has a name.
func (o *Outputs) Put(one Output) {
	was := o.named(one.Name)
	if in := o.InUse(); was == nil && in != nil && o.Measured() == nil {
		was = in
	}
	if was != nil {
		one.Adjustment = was.Adjustment
		o.Forget(was.Name)
	}
	o.List = append(o.List, one)
	o.Chosen = one.Name
}

// Forget drops an output.
func (o *Outputs) Forget(name string) {
	o.List = slices.DeleteFunc(o.List, func(one Output) bool { return one.Name == name })
	if o.Chosen == name {
		o.Chosen = ""
	}
}

// Milliseconds is a time as it is kept of outputs and of rounds.
func Milliseconds(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

// Duration is a time of so many milliseconds, to the nearest nanosecond: what Milliseconds
// wrote is read as it was.
func Duration(ms float64) time.Duration {
	return time.Duration(math.Round(ms * float64(time.Millisecond)))
}
