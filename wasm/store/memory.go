//go:build js

package store

import (
	"cmp"
	"maps"
	"slices"

	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/scoring/history"
)

// memory holds what cannot be kept, for this visit: where the browser gives no storage
// everything, else the rounds that it refused to keep.
type memory struct {
	people crowd
	rounds []held
	last   batch
}

// held is a round in memory.
type held struct {
	person string
	who    person // as she was when it was played
	batch  string
	round  history.Round
	line   string
	aside  bool // it lies in the spool
	failed bool // it was tried to keep it, in vain
}

func newMemory() *memory { return &memory{people: crowd{firstPerson}} }

// owner is as that of a transaction.
func (m *memory) owner(p person) string {
	if found := m.people.find(p.Id); found != nil {
		return found.Id
	}
	m.people = append(m.people, p)
	return p.Id
}

func (m *memory) has(id string) bool {
	return slices.ContainsFunc(m.rounds, func(h held) bool { return h.round.ID == id })
}

func (m *memory) remove(which func(held) bool) {
	m.rounds = slices.DeleteFunc(m.rounds, which)
}

// of are the rounds of a person, or of everybody, by their time.
func (m *memory) of(person string) []held {
	some := slices.DeleteFunc(slices.Clone(m.rounds), func(h held) bool { return person != "" && h.person != person })
	slices.SortStableFunc(some, func(a, b held) int { return a.round.Time().Compare(b.round.Time()) })
	return some
}

// addTo adds the rounds of a person to her days.
func (m *memory) addTo(days []*diary.Day, person string) []*diary.Day {
	byDate := map[string]*diary.Day{}
	for _, day := range days {
		byDate[day.Date()] = day
	}
	for _, h := range m.of(person) {
		date := diary.Date(h.round)
		if byDate[date] == nil {
			byDate[date] = new(diary.Day)
		}
		byDate[date].Add(h.round)
	}
	return slices.SortedFunc(maps.Values(byDate), func(a, b *diary.Day) int { return cmp.Compare(a.Date(), b.Date()) })
}

// latest puts the rounds of a person before those that were read, and takes the last n
// of all.
func (m *memory) latest(kept []history.Round, person, kind string, n int) []history.Round {
	for _, h := range m.of(person) {
		if kind == "" || h.round.Kind == kind {
			kept = append(kept, h.round)
		}
	}
	slices.SortStableFunc(kept, func(a, b history.Round) int { return b.Time().Compare(a.Time()) })
	return kept[:min(len(kept), max(n, 0))]
}

func (m *memory) addPerson(name string) (p person, err error) {
	if name, err = m.people.nickname(name, ""); err != nil {
		return p, err
	}
	p = newPerson(name)
	m.people = append(m.people, p)
	return p, nil
}

func (m *memory) rename(id, name string) error {
	p := m.people.find(id)
	if p == nil {
		return host.ErrNobody
	}
	name, err := m.people.nickname(name, p.Id)
	if err == nil {
		p.name = name
	}
	return err
}

func (m *memory) merge(from, into string) error {
	one, other := m.people.find(from), m.people.find(into)
	switch {
	case one == nil || other == nil:
		return host.ErrNobody
	case one.Id == other.Id:
		return nil
	}
	m.hand(one.Id, other.Id)
	one.into = other.Id
	return nil
}

// hand gives the rounds of one person to another.
func (m *memory) hand(from, into string) {
	for i := range m.rounds {
		if m.rounds[i].person == from {
			m.rounds[i].person = into
		}
	}
}

func (m *memory) erase(id string) error {
	p := m.people.find(id)
	if p == nil {
		return host.ErrNobody
	}
	gone := p.Id
	m.remove(func(h held) bool { return h.person == gone })
	m.people = slices.DeleteFunc(m.people, func(p person) bool { return p.Id == gone })
	if len(m.people.present()) == 0 {
		m.people = append(m.people, firstPerson)
	}
	return nil
}

// accept is as that of the database.
func (m *memory) accept(a arrivals, p person, named bool) (batch, int) {
	b, n := newBatch(a.file), 0
	owner := m.owner(p)
	for _, r := range a.rounds {
		who := owner
		if named && r.Player != "" {
			who = m.ownerOf(r.Player, owner, &b)
		}
		whole, err := history.Parse([]byte(r.line))
		if err != nil || m.has(whole.ID) {
			continue
		}
		m.rounds = append(m.rounds, held{person: who, who: *m.people.find(who), batch: b.Id, round: whole, line: r.line})
		n++
	}
	if n > 0 {
		m.last = b
	}
	return b, n
}

func (m *memory) ownerOf(player, otherwise string, b *batch) string {
	if p := m.people.named(player); p != nil {
		return p.Id
	}
	p, err := m.addPerson(player)
	if err != nil {
		return otherwise
	}
	b.people = append(b.people, p.Id)
	return p.Id
}

func (m *memory) lastImport() (batch, int) {
	n := 0
	for _, h := range m.rounds {
		if m.last.Id != "" && h.batch == m.last.Id {
			n++
		}
	}
	return m.last, n
}

func (m *memory) undo() {
	last := m.last
	if last.Id == "" {
		return
	}
	m.remove(func(h held) bool { return h.batch == last.Id })
	for _, id := range last.people {
		idle := !slices.ContainsFunc(m.rounds, func(h held) bool { return h.person == id })
		if idle && len(m.people.present()) > 1 {
			m.people = slices.DeleteFunc(m.people, func(p person) bool { return p.Id == id })
		}
	}
	m.last = batch{}
}
