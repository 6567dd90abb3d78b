//go:build js

package store

import (
	"cmp"
	"encoding/json"
	"fmt"
	"slices"

	"groundbeat/game/host"
	"groundbeat/wasm/memo"
)

// Each output is a thing of its own, under its name, and which is in use is another.

// Outputs implements [host.Store].
func (s *Store) Outputs() (o host.Outputs) {
	for _, n := range s.things.Under(outputThing) {
		var one host.Output
		if err := json.Unmarshal([]byte(n.Text), &one); err != nil {
			fmt.Println("outputs:", err) // for whoever looks into the console; it stays as it is
			continue
		}
		o.List = append(o.List, one)
	}
	slices.SortFunc(o.List, func(a, b host.Output) int {
		return cmp.Or(a.When.Compare(b.When), cmp.Compare(a.Name, b.Name))
	})
	o.Chosen = s.things.Text(chosenThing)
	s.outputs = outputTexts(o)
	return o
}

// KeepOutputs implements [host.Store]. It writes what is different from what it was told
// or has told last: what another window has written meanwhile stays.
func (s *Store) KeepOutputs(o host.Outputs) (err error) {
	is := outputTexts(o)
	for key, text := range memo.Changes(s.outputs, is) {
		err = cmp.Or(err, s.write(key, text))
	}
	s.outputs = is
	return err
}

// outputTexts are outputs as things.
func outputTexts(o host.Outputs) map[string]string {
	all := map[string]string{chosenThing: o.Chosen}
	for _, one := range o.List {
		text, err := json.Marshal(one)
		if err != nil {
			continue // a number that is none cannot be written
		}
		all[outputThing+one.Name] = string(text)
	}
	return all
}
