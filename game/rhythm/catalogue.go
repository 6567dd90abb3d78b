package rhythm

import (
	"bytes"
	"cmp"
	"errors"
	"fmt"
	"io/fs"
	"maps"
	"slices"
)

// A Catalogue holds rhythms in the order in which they are listed: the most
// used first, odd metres last, otherwise by id. It never changes, and its cycles
// must not be changed; it is safe for concurrent use.
type Catalogue struct {
	cycles []*Cycle
	byID   map[string]*Cycle
	byName map[string]*Cycle // by folded name
	own    map[string]bool   // ids of rhythms that were added by With
}

// Load reads every file rhythms/*.txt. If some are wrong, the error joins the
// first mistake of each, and there is no catalogue. Two rhythms that share a
// name or spelling are a mistake too, since a search could not tell them apart.
func Load(fsys fs.FS) (*Catalogue, error) {
	paths, err := fs.Glob(fsys, "rhythms/*.txt")
	if err != nil {
		return nil, err
	}
	if len(paths) == 0 {
		return nil, errors.New("rhythm.Load: there is no file rhythms/*.txt")
	}
	c := &Catalogue{byID: map[string]*Cycle{}, byName: map[string]*Cycle{}}
	var mistakes []error
	for _, path := range paths {
		mistakes = append(mistakes, c.read(fsys, path))
	}
	if err := errors.Join(mistakes...); err != nil {
		return nil, err
	}
	slices.SortFunc(c.cycles, listedBefore)
	return c, nil
}

// Read reads the one file rhythms/id.txt.
func Read(fsys fs.FS, id string) (*Cycle, error) { return read(fsys, "rhythms/"+id+".txt") }

func read(fsys fs.FS, path string) (*Cycle, error) {
	text, err := fs.ReadFile(fsys, path)
	if err != nil {
		return nil, err
	}
	return Parse(path, bytes.NewReader(text))
}

func (c *Catalogue) read(fsys fs.FS, path string) error {
	cycle, err := read(fsys, path)
	if err != nil {
		return err
	}
	c.cycles = append(c.cycles, cycle)
	c.byID[cycle.ID] = cycle
	return c.index(path, cycle)
}

// With returns a catalogue that has one more rhythm, of the player's own. One
// that was added before under the same id is replaced; a name or spelling of
// any other rhythm is a mistake.
func (c *Catalogue) With(cycle *Cycle) (*Catalogue, error) {
	file := cycle.ID + ".txt"
	if c.byID[cycle.ID] != nil && !c.own[cycle.ID] {
		return nil, &Error{File: file, Msg: fmt.Sprintf("there is a rhythm of this name already: call the file something else than %s", file)}
	}
	more := &Catalogue{byID: map[string]*Cycle{}, byName: map[string]*Cycle{}, own: maps.Clone(c.own)}
	if more.own == nil {
		more.own = map[string]bool{}
	}
	more.own[cycle.ID] = true
	for _, other := range append(slices.Clone(c.cycles), cycle) {
		if other.ID == cycle.ID && other != cycle {
			continue
		}
		more.cycles = append(more.cycles, other)
		more.byID[other.ID] = other
		if err := more.index(file, other); err != nil {
			return nil, err
		}
	}
	slices.SortStableFunc(more.cycles, listedBefore)
	return more, nil
}

// index enters every name of a cycle.
func (c *Catalogue) index(path string, cycle *Cycle) error {
	names := append([]string{cycle.ID, cycle.Name, cycle.Script}, cycle.Spellings...)
	for _, name := range names {
		key := fold(name)
		if other := c.byName[key]; other != nil && other != cycle {
			return &Error{File: path, Msg: fmt.Sprintf("'%s' is a name of %s already", name, other.Name)}
		}
		if key != "" {
			c.byName[key] = cycle
		}
	}
	return nil
}

func listedBefore(a, b *Cycle) int {
	return cmp.Or(
		last(!a.Core, !b.Core),
		last(a.Odd(), b.Odd()),
		cmp.Compare(a.ID, b.ID),
	)
}

// last orders false before true.
func last(a, b bool) int {
	switch {
	case a == b:
		return 0
	case a:
		return 1
	}
	return -1
}

// IDs returns the ids of all rhythms in order. The slice is the caller's.
func (c *Catalogue) IDs() []string {
	ids := make([]string, len(c.cycles))
	for i, cycle := range c.cycles {
		ids[i] = cycle.ID
	}
	return ids
}

// Get returns the rhythm of an id.
func (c *Catalogue) Get(id string) (*Cycle, bool) {
	cycle, found := c.byID[id]
	return cycle, found
}

// Find returns the rhythm of a name, a spelling, a script or an id. Case,
// accents, vowel signs, apostrophes, hyphens and blanks do not matter; the other
// letters must all be there.
func (c *Catalogue) Find(spelling string) (*Cycle, bool) {
	cycle, found := c.byName[fold(spelling)]
	return cycle, found
}

// Answers returns the rhythms that may be answers in a quiz, in order; those in
// odd metres only if they are asked for.
func (c *Catalogue) Answers(odd bool) []*Cycle {
	return c.pick(func(cycle *Cycle) bool { return cycle.Quiz && (odd || !cycle.Odd()) })
}

// Family returns the rhythms of a family, in order.
func (c *Catalogue) Family(family string) []*Cycle {
	return c.pick(func(cycle *Cycle) bool { return cycle.Family == family })
}

func (c *Catalogue) pick(wanted func(*Cycle) bool) []*Cycle {
	var some []*Cycle
	for _, cycle := range c.cycles {
		if wanted(cycle) {
			some = append(some, cycle)
		}
	}
	return some
}
