//go:build js

package main

import (
	"context"
	"errors"
	"fmt"
	"syscall/js"

	"github.com/hack-pad/go-indexeddb/idb"
)

// The database. Version 1 had the rounds alone.
//
//	rounds   id → the line, as package history writes it; never written twice
//	cards    by id: what is needed to find a round; see card
//	days     [person, day] → the day's summary, as package diary writes it
//	people   by id: see person
//	aside    counted up: a record that cannot be read, as it was; see aside
//	imports  "last" → the last import; see batch
//
// A round, its card and its day's summary are written in one transaction. A summary
// may be missing, or be of another number of rounds than there are cards: it is then
// made anew from the rounds. So whoever changes rounds in another way than by adding
// one, removes the summaries. A round without a card is one of version 1.
const (
	databaseName    = "groundbeat"
	databaseVersion = 2

	roundsStore  = "rounds"
	cardsStore   = "cards"
	daysStore    = "days"
	peopleStore  = "people"
	asideStore   = "aside"
	importsStore = "imports"
)

// everything are all stores.
var everything = []string{roundsStore, cardsStore, daysStore, peopleStore, asideStore, importsStore}

// The indexes of the cards. A card without one of the members is not in the index.
const (
	byPerson = "person" // person
	byDay    = "day"    // [person, day, when]
	byKind   = "kind"   // [person, kind, when]
	byBatch  = "batch"  // batch
	byNewer  = "newer"  // newer
)

// database is a connection to the database of a name. One that the browser has closed
// meanwhile (storage that was cleared, for one) is opened anew.
type database struct {
	name       string
	connection js.Value
	swept      chan struct{} // closed when every round had its card once; see sweep
}

// openDatabase opens a database, and makes or upgrades it where needed. A browser that
// blocks storage throws at any step. A database of a later version is left alone: this
// is an error.
func openDatabase(name string) (*database, error) {
	d := &database{name: name, swept: make(chan struct{})}
	return d, d.connect()
}

func (d *database) connect() (err error) {
	defer recovered(&err)
	defer staying()()
	ctx := context.Background()
	request, err := idb.Global().Open(ctx, d.name, databaseVersion, upgrade)
	if err != nil {
		return err
	}
	if _, err := request.Await(ctx); err != nil {
		return err
	}
	d.connection, err = request.Request.Result()
	return err
}

// staying keeps the page, until it is over, from being frozen and kept by the browser
// when it is left, as browsers do with pages that do not listen for the end: a page that
// is frozen while the database is made holds it, and no other can open it.
func staying() (over func()) {
	nothing := js.FuncOf(func(js.Value, []js.Value) any { return nil })
	js.Global().Call("addEventListener", "unload", nothing)
	return func() {
		js.Global().Call("removeEventListener", "unload", nothing)
		nothing.Release()
	}
}

// upgrade adds what a database of an earlier version lacks, and touches nothing that is
// there.
func upgrade(db *idb.Database, from, _ uint) error {
	if from < 1 {
		if _, err := db.CreateObjectStore(roundsStore, idb.ObjectStoreOptions{}); err != nil {
			return err
		}
	}
	id := js.ValueOf("id")
	cards, err := db.CreateObjectStore(cardsStore, idb.ObjectStoreOptions{KeyPath: id})
	if err != nil {
		return err
	}
	for name, path := range map[string]any{
		byPerson: "person", byBatch: "batch", byNewer: "newer",
		byDay: []any{"person", "day", "when"}, byKind: []any{"person", "kind", "when"},
	} {
		if _, err := cards.CreateIndex(name, js.ValueOf(path), idb.IndexOptions{}); err != nil {
			return err
		}
	}
	people, err := db.CreateObjectStore(peopleStore, idb.ObjectStoreOptions{KeyPath: id})
	if err != nil {
		return err
	}
	_, err = people.Put(js.ValueOf(firstPerson.value()))
	for name, counted := range map[string]bool{daysStore: false, asideStore: true, importsStore: false} {
		if err == nil {
			_, err = db.CreateObjectStore(name, idb.ObjectStoreOptions{AutoIncrement: counted})
		}
	}
	return err
}

// recovered turns a JavaScript exception into an error.
func recovered(err *error) {
	if r := recover(); r != nil {
		*err = fmt.Errorf("storage: %v", r)
	}
}

// read does something in a transaction that reads from all stores.
func (d *database) read(what func(transaction) error) error {
	return d.transact("readonly", what)
}

// write does something in a transaction that writes, wholly or not at all.
func (d *database) write(what func(transaction) error) error {
	return d.transact("readwrite", what)
}

func (d *database) transact(mode string, what func(transaction) error) error {
	t, err := d.begin(mode)
	if err != nil {
		if err := d.connect(); err != nil {
			return err
		}
		if t, err = d.begin(mode); err != nil {
			return err
		}
	}
	return t.end(tried(t, what))
}

func (d *database) begin(mode string) (t transaction, err error) {
	defer recovered(&err)
	return newTransaction(d.connection, mode), nil
}

// tried does something in a transaction; what the browser throws is an error.
func tried(t transaction, what func(transaction) error) (err error) {
	defer recovered(&err)
	return what(t)
}

var (
	errNoDatabase = errors.New("the browser gives no storage")
	errAborted    = errors.New("storage: given up by the browser")
	errLate       = errors.New("storage: no answer")
)
