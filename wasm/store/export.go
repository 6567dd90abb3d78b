//go:build js

package store

import (
	"cmp"
	"slices"
	"strings"
	"syscall/js"
	"time"

	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// A kept line is one as it is handed out.
type keptLine struct {
	Id     string // "" of what was set aside
	line   string
	Player string // nickname; "" if there is none, or of what cannot be read
}

// export hands over what is kept of a person, or of everybody: rounds by their time,
// then what this program cannot read: later versions, and what was set aside. f may not
// wait.
func (d *database) export(person string, f func(keptLine)) error {
	return d.read(func(t idb.Transaction) error {
		all, err := allPeople(t)
		if err != nil {
			return err
		}
		if found := all.find(person); found != nil {
			person = found.Id
		}
		names := map[string]string{}
		for _, p := range all {
			names[p.Id] = p.name
		}
		cards, err := cardsOf(t, person)
		if err != nil {
			return err
		}
		slices.SortStableFunc(cards, byTime)
		err = t.Values(roundsStore, idsOf(cards), func(i int, value js.Value) error {
			if !value.IsUndefined() {
				f(keptLine{cards[i].Id, idb.AsLine(value), names[cards[i].person]})
			}
			return nil
		})
		if err != nil {
			return err
		}
		if err := eachFresh(t, person, f); err != nil {
			return err
		}
		return eachAside(t, person, func(_, record js.Value) {
			f(keptLine{line: idb.AsLine(record.Get("value"))})
		})
	})
}

// eachFresh hands over the rounds that have no card, if a sweep has left any: those of
// the first person.
func eachFresh(t idb.Transaction, person string, f func(keptLine)) error {
	n, err := countFresh(t)
	if err != nil || n == 0 || person != "" && person != firstPerson.Id {
		return err
	}
	cards, err := cardsOf(t, "")
	if err != nil {
		return err
	}
	known := map[string]bool{}
	for _, c := range cards {
		known[c.Id] = true
	}
	return t.Each(roundsStore, "", js.Undefined(), idb.Ascending, func(c *idb.Cursor, value js.Value) bool {
		if id := js.Global().Call("String", c.Key()).String(); !known[id] {
			f(keptLine{Id: id, line: idb.AsLine(value)})
		}
		return true
	})
}

// byTime puts cards in the order of their rounds, those of later versions at the end.
func byTime(a, b card) int {
	if a.newer != b.newer {
		return cmp.Compare(a.newer, b.newer)
	}
	return cmp.Compare(a.when, b.when)
}

// parts is a long text in pieces, as a file is made of: a whole one would hold up the
// page.
type parts struct {
	list js.Value
	next strings.Builder
}

const partSize = 1 << 17 // bytes

func newParts() *parts { return &parts{list: js.Global().Get("Array").New()} }

func (p *parts) add(text string) {
	p.next.WriteString(text)
	if p.next.Len() >= partSize {
		p.end()
	}
}

// end makes what was added since the last piece one more, and returns all.
func (p *parts) end() js.Value {
	text, marked := strings.CutPrefix(p.next.String(), "\uFEFF")
	if marked { // a mark at the beginning of a text is lost on its way to the browser
		p.list.Call("push", js.Global().Get("String").Call("fromCharCode", 0xFEFF))
	}
	if text != "" {
		p.list.Call("push", text)
	}
	p.next.Reset()
	return p.list
}

// allLines is a file of all rounds of a person, or of everybody.
func (s *Store) allLines(person string) (js.Value, error) {
	text := newParts()
	err := s.eachLine(person, func(l keptLine) {
		text.add(string(history.Handed([]byte(l.line), l.Player)) + "\n")
	})
	return text.end(), err
}

// sheet is the same as a table.
func (s *Store) sheet(person string) (js.Value, error) {
	table := newParts()
	table.add(history.SheetHead())
	err := s.eachLine(person, func(l keptLine) {
		r, err := history.Parse([]byte(l.line))
		if err != nil {
			return
		}
		r.Player = cmp.Or(r.Player, l.Player)
		table.add(history.SheetRow(r))
	})
	return table.end(), err
}

// handOver hands the player a file, made of parts. Where the browser asks where to put it, it reads it
// only once that was answered, so that its address holds for a while.
func handOver(document js.Value, name, kind string, parts js.Value) (err error) {
	defer idb.Recovered(&err)
	blob := js.Global().Get("Blob").New(parts, map[string]any{"type": kind})
	url := js.Global().Get("URL")
	link := document.Call("createElement", "a")
	address := url.Call("createObjectURL", blob)
	link.Set("href", address)
	link.Set("download", name)
	link.Call("click")
	time.AfterFunc(10*time.Minute, func() { url.Call("revokeObjectURL", address) })
	return nil
}

// fileName is the name of a person's file: with her nickname, without what file names
// may not have everywhere.
func fileName(nickname, ending string) string {
	safe := strings.Map(func(c rune) rune {
		if strings.ContainsRune(`\/:*?"<>|.`, c) {
			return '-'
		}
		return c
	}, nickname)
	return strings.Join(slices.DeleteFunc([]string{"groundbeat-rounds", safe}, func(s string) bool { return s == "" }), "-") + ending
}

// ExportLines implements [game.Diary].
func (s *Store) ExportLines(person string, done func(error)) {
	go func() { done(s.export(person, ".jsonl", "application/jsonl", s.allLines)) }()
}

// ExportSheet implements [game.Diary].
func (s *Store) ExportSheet(person string, done func(error)) {
	go func() { done(s.export(person, ".csv", "text/csv", s.sheet)) }()
}

// export hands the player a file of rounds.
func (s *Store) export(person, ending, kind string, make func(string) (js.Value, error)) error {
	all, err := s.crowd()
	if err != nil {
		return err
	}
	name := ""
	if p := all.find(person); p != nil {
		person, name = p.Id, p.name
	}
	parts, err := make(person)
	if err != nil {
		return err
	}
	return handOver(js.Global().Get("document"), fileName(name, ending), kind, parts)
}
