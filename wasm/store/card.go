//go:build js

package store

import (
	"fmt"
	"syscall/js"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// A card is what is needed to find a round without reading its line.
type card struct {
	Id     string
	person string
	day    string  // 2006-01-02, where the player was
	when   float64 // ms since 1970
	kind   string
	batch  string // id of the import that it came with; "" for a round played here
	newer  int    // version of a line that this program does not know; then there is no day
}

// cardOf is the card of a round.
func cardOf(r history.Round, person, batch string) card {
	return card{Id: r.ID, person: person, day: diary.Date(r), when: float64(r.Time().UnixMilli()), kind: r.Kind, batch: batch}
}

// value is the card as it is kept.
func (c card) value() map[string]any {
	v := map[string]any{"id": c.Id, "person": c.person}
	if c.batch != "" {
		v["batch"] = c.batch
	}
	if c.newer > 0 {
		v["newer"] = c.newer
		return v
	}
	v["day"], v["when"], v["kind"] = c.day, c.when, c.kind
	return v
}

// readCard is the card of a kept value.
func readCard(v js.Value) card {
	c := card{Id: v.Get("id").String(), person: v.Get("person").String()}
	if batch := v.Get("batch"); batch.Truthy() {
		c.batch = batch.String()
	}
	if newer := v.Get("newer"); newer.Truthy() {
		c.newer = newer.Int()
		return c
	}
	c.day, c.when, c.kind = v.Get("day").String(), v.Get("when").Float(), v.Get("kind").String()
	return c
}

// cards returns the cards in a range of an index, ascending; all cards by their id if
// index is "" and keys undefined.
func allCards(t idb.Transaction, index string, keys any) (all []card, err error) {
	err = t.Each(cardsStore, index, keys, idb.Ascending, func(_ *idb.Cursor, v js.Value) bool {
		all = append(all, readCard(v))
		return true
	})
	return all, err
}

// cardsOf returns the cards of a person, or of everybody.
func cardsOf(t idb.Transaction, person string) ([]card, error) {
	if person == "" {
		return allCards(t, "", js.Undefined())
	}
	return allCards(t, byPerson, person)
}

// idsOf are the keys of cards and their rounds.
func idsOf(cards []card) []any {
	ids := make([]any, len(cards))
	for i, c := range cards {
		ids[i] = c.Id
	}
	return ids
}

// readRound reads a kept value.
func readRound(id string, value js.Value) (history.Round, error) {
	if value.Type() != js.TypeString {
		return history.Round{}, &history.Error{Msg: "a kept round is a text"}
	}
	r, err := history.Parse([]byte(value.String()))
	if err == nil && r.ID != id {
		err = &history.Error{Field: "id", Msg: fmt.Sprintf("%q, but it is kept as %q", r.ID, id)}
	}
	return r, err
}
