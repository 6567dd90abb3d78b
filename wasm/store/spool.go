//go:build js

package store

import (
	"encoding/json"

	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// The spool is where a round lies from the moment at which it is over until the database
// has it: the browser's local storage, which is written at once, so that not even a page
// that is left in the same moment loses it. Whoever opens the database next, in whatever
// window, keeps what lies there. A round that is in both is kept once.
const spoolKey = "groundbeat.round." // followed by the round's id

// A spooled round, as it lies there.
type spooled struct {
	Person string  `json:"person"` // who played it: see person
	Name   string  `json:"name,omitempty"`
	Made   float64 `json:"made,omitempty"`
	Line   string  `json:"line"`
}

// spool puts a round into the spool; it reports whether there was room.
func (s *Store) spool(h held) bool {
	text, err := json.Marshal(spooled{h.who.Id, h.who.name, h.who.made, h.line})
	return err == nil && idb.SetItem(s.local, spoolKey+h.round.ID, string(text)) == nil
}

func (s *Store) unspool(id string) { idb.RemoveItem(s.local, spoolKey+id) }

// takeSpool takes what lies in the spool into memory, where it waits to be kept. What
// cannot be read is left: it may be of a later version.
func (s *Store) takeSpool() {
	for _, key := range idb.ItemKeys(s.local, spoolKey) {
		var in spooled
		if json.Unmarshal([]byte(idb.Item(s.local, key)), &in) != nil {
			continue
		}
		r, err := history.Parse([]byte(in.Line))
		if err != nil || s.memory.has(r.ID) || in.Person == "" {
			continue
		}
		who := person{Id: in.Person, name: in.Name, made: in.Made}
		s.memory.rounds = append(s.memory.rounds, held{person: who.Id, who: who, round: r, line: in.Line, aside: true, failed: s.err != nil})
	}
}
