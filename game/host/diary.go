package host

import (
	"errors"
	"io"
	"time"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
)

// Diary keeps who practises on this machine, and tells what was practised. Nothing of
// it waits: each method returns at once, and done is called when it is known what came
// of it, never before the method has returned, between two frames. Where nothing can be
// kept, all of it works on the rounds of this visit.
type Diary interface {
	// People tells who practises here, in the order in which they came, and who is
	// chosen. There is always one at least.
	People(done func(all []Person, chosen Person, err error))
	// Choose lets the rounds that are kept from now on belong to a person, and Days and
	// Latest tell of her; also after a reload. One who was merged is the one into whom
	// she was; one who was erased in another window comes back with her next round.
	Choose(person string)
	// AddPerson adds a person under a nickname, and chooses her. The error is one of
	// the four of nicknames, or that of the storage.
	AddPerson(name string, done func(Person, error))
	// Rename gives a person another nickname; errors as in AddPerson.
	Rename(person, name string, done func(error))
	// Merge gives all rounds of one person to another, and removes the one.
	Merge(from, into string, done func(error))

	// Days tells the days of the person who is chosen. While Days.Behind is above 0, the
	// rest is being counted, and done is called again with all of them.
	Days(done func(Days))
	// Latest tells the last n rounds of the person who is chosen, the latest first, of
	// one kind, or of all where kind is "".
	Latest(kind string, n int, done func([]history.Round, error))

	// Import reads a file of lines and tells what is in it. Nothing is kept yet. A
	// later Import forgets what an earlier one read.
	Import(file string, text io.Reader, done func(Preview, error))
	// Accept keeps the new rounds of the file that was read last, all of them or none.
	// Rounds go to the persons that the file names, who are added where they are not
	// here, and to the one who is chosen where it names nobody, or if own is true.
	Accept(own bool, done func(Imported, error))
	// LastImport tells which import can be undone: the last. Its Rounds are 0 where
	// there is none.
	LastImport(done func(Imported, error))
	// Undo removes the rounds of the last import, and the persons whom it added if they
	// have no others: all of it or nothing.
	Undo(done func(error))

	// ExportLines hands the player a file of the rounds of one person, or of all
	// [Everybody], as lines (package history), by their time; what cannot be read, as
	// it was, at the end.
	ExportLines(person string, done func(error))
	// ExportSheet hands her the same as a table for a spreadsheet ([history.SheetRow]),
	// without what cannot be read.
	ExportSheet(person string, done func(error))
	// Erase removes all that is kept of a person, or of [Everybody]. It does not ask.
	// Who has no more rounds is no more there; if nobody is left, there is a first
	// person without a nickname again. Outputs stay: they belong to the machine.
	Erase(person string, done func(error))
}

// Everybody stands for all persons.
const Everybody = ""

// A Person is somebody who practises here.
type Person struct {
	ID   string // never ""
	Name string // nickname; "" for the first person until she is given one
}

// MostName is how long a nickname may be, in characters.
const MostName = 40

// What can be wrong with a nickname or a person.
var (
	ErrNoName   = errors.New("a nickname has no letters")
	ErrLongName = errors.New("a nickname is too long")
	ErrNameUsed = errors.New("another person has this nickname") // upper and lower case do not tell two apart
	ErrNobody   = errors.New("there is no such person")
)

// Days are the days of one person.
type Days struct {
	Person Person
	Days   []*diary.Day // ascending; the caller's own
	Behind int          // rounds that are not counted in Days yet
	Aside  int          // records that cannot be read, and were set aside
	Newer  int          // records of a later version, of anybody, which are left alone
	MayGo  bool         // the browser may clear what is kept when space is short
	Err    error        // why nothing more is known than Days; nil if all is well
}

// Preview is what was found in a file.
type Preview struct {
	File   string
	New    int      // rounds that are not here yet
	There  int      // rounds that are here already, or twice in the file
	Broken []error  // lines that cannot be read, each with its place ([history.Error])
	Newer  []error  // lines of a later version, which are left alone ([history.Newer])
	People []string // nicknames that the file names, in its order
}

// Imported is an import that was accepted.
type Imported struct {
	File   string
	When   time.Time
	Rounds int // of it that are still here
}
