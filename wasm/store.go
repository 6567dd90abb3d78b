//go:build js

package main

import (
	"context"
	"errors"
	"fmt"
	"slices"
	"strings"
	"syscall/js"

	"github.com/hack-pad/go-indexeddb/idb"

	"groundbeat/scoring/history"
)

// The database: one store, one record a round, the round's id as the key and
// its line of JSON, as package history writes it, as the value.
const (
	databaseName    = "groundbeat"
	databaseVersion = 1
	roundsStore     = "rounds"
)

// store keeps finished rounds in the browser. Where the browser does not let
// it, rounds of this visit are held in memory and the reason is told.
type store struct {
	database *idb.Database
	err      error         // why nothing is kept, or nil
	opened   chan struct{} // closed when database or err is set
	visit    []string      // lines of this visit, in order
	local    js.Value      // the browser's local storage; null where it gives none
}

// openStore opens the store. The page's parts say whether the browser lets it ask
// for storage at all; where it does not, even the question ends the program.
func openStore(parts js.Value) *store {
	s := &store{opened: make(chan struct{}), local: parts.Get("local")}
	if !parts.Get("storage").Bool() {
		s.err = errors.New("the browser gives no storage")
		close(s.opened)
		return s
	}
	go func() {
		defer close(s.opened)
		s.database, s.err = open()
	}()
	return s
}

// open opens the database. A browser that blocks storage throws at any step.
func open() (db *idb.Database, err error) {
	defer recovered(&err)
	ctx := context.Background()
	request, err := idb.Global().Open(ctx, databaseName, databaseVersion, func(db *idb.Database, _, _ uint) error {
		_, err := db.CreateObjectStore(roundsStore, idb.ObjectStoreOptions{})
		return err
	})
	if err != nil {
		return nil, err
	}
	return request.Await(ctx)
}

// recovered turns a JavaScript exception into an error.
func recovered(err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("storage: %v", r)
	}
}

// Keep implements [game.Store]. It never overwrites a record.
func (s *store) Keep(r history.Round, done func(error)) {
	line, err := history.Format(r)
	if err != nil {
		done(err)
		return
	}
	s.visit = append(s.visit, string(line))
	go func() {
		<-s.opened
		if s.err != nil {
			done(s.err)
			return
		}
		done(s.add(r.ID, string(line)))
	}()
}

func (s *store) add(id, line string) (err error) {
	defer recovered(&err)
	tx, err := s.transaction(idb.TransactionReadWrite)
	if err != nil {
		return err
	}
	rounds, err := tx.ObjectStore(roundsStore)
	if err != nil {
		return err
	}
	if _, err := rounds.AddKey(js.ValueOf(id), js.ValueOf(line)); err != nil {
		return err
	}
	return tx.Await(context.Background())
}

// transaction begins a transaction. A connection that the browser has closed
// meanwhile (storage that was cleared, for one) is opened anew.
func (s *store) transaction(mode idb.TransactionMode) (*idb.Transaction, error) {
	if tx, err := s.database.Transaction(mode, roundsStore); err == nil {
		return tx, nil
	}
	database, err := open()
	if err != nil {
		return nil, err
	}
	s.database = database
	return database.Transaction(mode, roundsStore)
}

// lines returns the lines of all rounds, those that are kept first, by their
// time, and those of this visit that could not be kept.
func (s *store) lines() ([]string, error) {
	<-s.opened
	if s.err != nil {
		return slices.Clone(s.visit), nil
	}
	kept, err := s.kept()
	if err != nil {
		return nil, err
	}
	for _, line := range s.visit {
		if !slices.Contains(kept, line) {
			kept = append(kept, line)
		}
	}
	when := func(line string) string {
		r, err := history.Parse([]byte(line))
		if err != nil {
			return "" // a line that is broken or newer is handed out all the same
		}
		return r.When
	}
	slices.SortStableFunc(kept, func(a, b string) int { return strings.Compare(when(a), when(b)) })
	return kept, nil
}

func (s *store) kept() (lines []string, err error) {
	defer recovered(&err)
	tx, err := s.transaction(idb.TransactionReadOnly)
	if err != nil {
		return nil, err
	}
	rounds, err := tx.ObjectStore(roundsStore)
	if err != nil {
		return nil, err
	}
	request, err := rounds.OpenCursor(idb.CursorNext)
	if err != nil {
		return nil, err
	}
	err = request.Iter(context.Background(), func(c *idb.CursorWithValue) error {
		value, err := c.Value()
		if err == nil {
			lines = append(lines, asLine(value))
		}
		return err
	})
	return lines, err
}

// asLine returns a stored value as a line. We store nothing but lines; what
// somebody else has put there is written as JSON, so that it is not lost.
func asLine(value js.Value) string {
	if value.Type() != js.TypeString {
		value = js.Global().Get("JSON").Call("stringify", value)
	}
	return value.String()
}

// export hands all rounds to the player as a file of JSON Lines.
func (s *store) export(document js.Value) (err error) {
	defer recovered(&err)
	lines, err := s.lines()
	if err != nil {
		return err
	}
	text := strings.Join(append(lines, ""), "\n")
	handOver(document, "groundbeat-rounds.jsonl", "application/jsonl", text)
	return nil
}
