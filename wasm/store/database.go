//go:build js

package store

import (
	"errors"
	"fmt"
	"groundbeat/wasm/idb"
	"syscall/js"
)

// The database. Version 1 had the rounds alone, version 2 all but the things.
//
//	rounds   id → the line, as package history writes it; never written twice
//	cards    by id: what is needed to find a round; see card
//	days     [person, day] → the day's summary, as package diary writes it
//	people   by id: see person
//	aside    counted up: a record that cannot be read, as it was; see aside
//	imports  "last" → the last import; see batch
//	things   by key: the outputs, what belongs to classes, and what is remembered; see shelf
//
// A round, its card and its day's summary are written in one transaction. A summary
// may be missing, or be of another number of rounds than there are cards: it is then
// made anew from the rounds. So whoever changes rounds in another way than by adding
// one, removes the summaries. A round without a card is one of version 1.
//
// The browser makes stores only while it raises the version. Where somebody has left a
// database of our version that lacks some, it is raised by repair, so that the version
// less all repairs is still that of this description.
const (
	databaseName    = "groundbeat"
	databaseVersion = 3
	repair          = 100

	roundsStore  = "rounds"
	cardsStore   = "cards"
	daysStore    = "days"
	peopleStore  = "people"
	asideStore   = "aside"
	importsStore = "imports"
	thingsStore  = "things"
)

// storeNames are all stores; ofPeople are those of them that hold what is kept of
// people, all of which goes when everything of them is erased.
var (
	ofPeople   = []string{roundsStore, cardsStore, daysStore, peopleStore, asideStore, importsStore}
	storeNames = append(ofPeople[:len(ofPeople):len(ofPeople)], thingsStore)
)

// The indexes of the cards. A card without one of the members is not in the index.
const (
	byPerson = "person" // person
	byDay    = "day"    // [person, day, when]
	byKind   = "kind"   // [person, kind, when]
	byBatch  = "batch"  // batch
	byNewer  = "newer"  // newer
)

// How each store is made, where not as one whose keys are given with its values, and
// the indexes of those that have some.
var (
	storeOptions = map[string]map[string]any{
		cardsStore: {"keyPath": "id"}, peopleStore: {"keyPath": "id"}, thingsStore: {"keyPath": "key"},
		asideStore: {"autoIncrement": true},
	}
	storeIndexes = map[string]map[string]any{
		cardsStore: {
			byPerson: "person", byBatch: "batch", byNewer: "newer",
			byDay: []any{"person", "day", "when"}, byKind: []any{"person", "kind", "when"},
		},
	}
)

// database is a connection to the database of a name. One that the browser has closed
// meanwhile (storage that was cleared, for one) is opened anew.
type database struct {
	name       string
	connection js.Value
	swept      chan struct{}  // closed when every round had its card once; see sweep
	stands     func(standing) // told of what other windows do to the database; may be nil
}

// standing is how a page stands to the database.
type standing uint8

const (
	fine    standing = iota
	blocked          // a window with an earlier version keeps this one from it
	older            // it is of a later version than this page: a reload brings the later page
)

// tell tells how the page stands to the database.
func (d *database) tell(is standing) {
	if d.stands != nil {
		d.stands(is)
	}
}

// openDatabase opens a database, and makes or upgrades it where needed. A browser that
// blocks storage throws at any step. A database of a later version is left alone: this
// is errOlder. stands, unless it is nil, is told of what other windows do.
func openDatabase(name string, stands func(standing)) (*database, error) {
	d := &database{name: name, swept: make(chan struct{}), stands: stands}
	return d, d.connect()
}

// connect opens the database at our version, or at ours with repairs.
func (d *database) connect() (err error) {
	defer idb.Recovered(&err)
	defer staying()()
	connection, err := d.request(databaseVersion)
	if isNamed(err, "VersionError") {
		connection, err = d.later()
	}
	if err == nil && !whole(connection) {
		connection, err = d.mend(connection)
	}
	if err != nil {
		return err
	}
	d.connection = connection
	d.listen()
	return nil
}

// later opens a database whose version is higher than ours: by repairs, or since it is
// of a later page.
func (d *database) later() (js.Value, error) {
	connection, err := d.request(0)
	if err != nil {
		return connection, err
	}
	version := connection.Get("version").Int()
	is := version % repair
	if is == databaseVersion {
		return connection, nil
	}
	connection.Call("close")
	if is < databaseVersion {
		return d.request(version - is + databaseVersion)
	}
	d.tell(older)
	return connection, errOlder
}

// mend makes the stores that a database of our version lacks.
func (d *database) mend(connection js.Value) (js.Value, error) {
	version := connection.Get("version").Int()
	connection.Call("close")
	return d.request(version + repair)
}

// whole reports whether a database has all stores.
func whole(connection js.Value) bool {
	names := connection.Get("objectStoreNames")
	for _, store := range storeNames {
		if !names.Call("contains", store).Bool() {
			return false
		}
	}
	return true
}

// request opens the database at a version; at the one that it has if that is 0.
func (d *database) request(version int) (connection js.Value, err error) {
	args := []any{d.name}
	if version > 0 {
		args = append(args, version)
	}
	request := js.Global().Get("indexedDB").Call("open", args...)
	opened := make(chan bool, 1)
	on := func(event string, f func()) js.Func {
		heard := js.FuncOf(func(js.Value, []js.Value) any { f(); return nil })
		request.Set(event, heard)
		return heard
	}
	for _, heard := range []js.Func{
		on("onupgradeneeded", func() { upgrade(request) }),
		on("onblocked", func() { d.tell(blocked) }),
		on("onsuccess", func() { opened <- true }),
		on("onerror", func() { opened <- false }),
	} {
		defer heard.Release()
	}
	if !<-opened {
		return js.Undefined(), js.Error{Value: request.Get("error")}
	}
	d.tell(fine)
	return request.Get("result"), nil
}

// listen lets go of the database when another window wants to upgrade or to delete it,
// which it could not while this one holds it.
func (d *database) listen() {
	connection := d.connection
	connection.Set("onversionchange", js.FuncOf(func(_ js.Value, args []js.Value) any {
		connection.Call("close")
		if version := args[0].Get("newVersion"); version.Type() == js.TypeNumber && version.Int()%repair > databaseVersion {
			d.tell(older)
		}
		return nil
	}))
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

// upgrade adds what a database lacks, whoever has left it, and touches nothing that is
// there. What the browser throws ends the upgrade, and all of it is undone.
func upgrade(request js.Value) {
	var err error
	defer func() {
		if err != nil {
			fmt.Println(err) // for whoever looks into the console
			request.Get("transaction").Call("abort")
		}
	}()
	defer idb.Recovered(&err)
	db, names := request.Get("result"), request.Get("result").Get("objectStoreNames")
	for _, name := range storeNames {
		there := names.Call("contains", name).Bool()
		if !there {
			db.Call("createObjectStore", name, storeOptions[name])
		}
		store := request.Get("transaction").Call("objectStore", name)
		for index, path := range storeIndexes[name] {
			if !store.Get("indexNames").Call("contains", index).Bool() {
				store.Call("createIndex", index, path)
			}
		}
		if !there && name == peopleStore {
			store.Call("put", firstPerson.value())
		}
	}
}

// isNamed reports whether the browser gave an error of a name.
func isNamed(err error, name string) bool {
	var thrown js.Error
	return errors.As(err, &thrown) && thrown.Get("name").String() == name
}

// read does something in a transaction that reads from all stores.
func (d *database) read(what func(idb.Transaction) error) error {
	return d.transact("readonly", what)
}

// write does something in a transaction that writes, wholly or not at all.
func (d *database) write(what func(idb.Transaction) error) error {
	return d.transact("readwrite", what)
}

func (d *database) transact(mode string, what func(idb.Transaction) error) error {
	t, err := d.begin(mode)
	if err != nil {
		if err := d.connect(); err != nil {
			return err
		}
		if t, err = d.begin(mode); err != nil {
			return err
		}
	}
	return t.End(tried(t, what))
}

func (d *database) begin(mode string) (t idb.Transaction, err error) {
	defer idb.Recovered(&err)
	return idb.NewTransaction(d.connection, mode, storeNames), nil
}

// tried does something in a transaction; what the browser throws is an error.
func tried(t idb.Transaction, what func(idb.Transaction) error) (err error) {
	defer idb.Recovered(&err)
	return what(t)
}

var (
	errNoDatabase = errors.New("the browser gives no storage")
	errLate       = errors.New("storage: no answer")
	errOlder      = errors.New("storage: kept by a newer Groundbeat; reload the page")
)
