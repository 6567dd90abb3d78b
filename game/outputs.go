//go:build js

package game

import (
	"slices"
	"time"
)

// An Output is a way out of the sound, with the player's own mean offset on it.
type Output struct {
	Name   string    `json:"name"`   // the player's own
	Mean   float64   `json:"mean"`   // ms: + behind, − ahead
	Spread float64   `json:"spread"` // ms
	When   time.Time `json:"when"`
}

// Outputs are those that were measured, and which is in use; "" is none.
type Outputs struct {
	Chosen string   `json:"chosen"`
	List   []Output `json:"outputs"`
}

// in returns the output in use, or nil.
func (o *Outputs) in() *Output {
	for i := range o.List {
		if o.List[i].Name == o.Chosen {
			return &o.List[i]
		}
	}
	return nil
}

// put keeps an output in place of one of the same name, and uses it.
func (o *Outputs) put(one Output) {
	o.forget(one.Name)
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
