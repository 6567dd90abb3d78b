package paper

import (
	"cmp"
	"errors"
	"io"
	"slices"
	"time"

	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/scoring/history"
)

// batch is an import.
type batch struct {
	id, file string
	when     time.Time
}

// arrival is a round of a file that is not kept yet.
type arrival struct {
	kept
	player string
}

// of are the rounds of a person, by their time.
func (s *Storage) of(person string) []history.Round {
	mine := slices.DeleteFunc(slices.Clone(s.rounds), func(k kept) bool { return person != host.Everybody && k.person != person })
	all := read(mine)
	slices.SortStableFunc(all, func(a, b history.Round) int { return a.Time().Compare(b.Time()) })
	return all
}

// Days tells the days of who is chosen; more than once where some are behind.
func (s *Storage) Days(done func(host.Days)) {
	for _, n := range append(s.Behind, 0)[:max(1, len(s.Behind))] {
		s.later(func() {
			days := s.days()
			days.Behind = n
			done(days)
		})
	}
}

func (s *Storage) days() host.Days {
	days := host.Days{Person: s.who()}
	for _, r := range s.of(days.Person.ID) {
		n := len(days.Days)
		if n == 0 || days.Days[n-1].Date() != diary.Date(r) {
			days.Days = append(days.Days, new(diary.Day))
			n++
		}
		days.Days[n-1].Add(r)
	}
	return days
}

// Latest tells her last rounds, the latest first.
func (s *Storage) Latest(kind string, n int, done func([]history.Round, error)) {
	s.later(func() {
		all := slices.DeleteFunc(s.of(s.who().ID), func(r history.Round) bool { return kind != "" && r.Kind != kind })
		slices.Reverse(all)
		done(all[:min(n, len(all))], nil)
	})
}

// Import reads a file.
func (s *Storage) Import(file string, text io.Reader, done func(host.Preview, error)) {
	s.later(func() {
		p := host.Preview{File: file}
		s.read, s.last.file = nil, file
		for r, err := range history.Lines(file, text) {
			s.sift(&p, r, err)
		}
		p.New = len(s.read)
		done(p, nil)
	})
}

// sift takes a line of a file.
func (s *Storage) sift(p *host.Preview, r history.Round, err error) {
	var newer *history.Newer
	there := slices.ContainsFunc(s.rounds, func(k kept) bool { return k.id == r.ID }) ||
		slices.ContainsFunc(s.read, func(a arrival) bool { return a.id == r.ID })
	switch {
	case errors.As(err, &newer):
		p.Newer = append(p.Newer, err)
	case err != nil:
		p.Broken = append(p.Broken, err)
	case there:
		p.There++
	default:
		a := arrival{kept{id: r.ID}, r.Player}
		if a.player != "" && !slices.Contains(p.People, a.player) {
			p.People = append(p.People, a.player)
		}
		r.Player = ""
		line, err := history.Format(r)
		if err != nil {
			panic(err) // what was read can be written
		}
		a.line = string(line)
		s.read = append(s.read, a)
	}
}

// Accept keeps what is new in it.
func (s *Storage) Accept(own bool, done func(host.Imported, error)) {
	s.later(func() {
		s.last.id, s.last.when = s.wall.ID(), s.wall.Date()
		who := s.who().ID
		for _, a := range s.read {
			a.person, a.batch = who, s.last.id
			if p := s.named(a.player); !own && a.player != "" && p != nil {
				a.person = p.ID
			} else if !own && a.player != "" {
				a.person = s.add(a.player, s.last.id).ID
			}
			s.rounds = append(s.rounds, a.kept)
		}
		s.read = nil
		done(s.imported(), nil)
	})
}

// imported is the last import.
func (s *Storage) imported() host.Imported {
	in := host.Imported{File: s.last.file, When: s.last.when}
	for _, k := range s.rounds {
		if s.last.id != "" && k.batch == s.last.id {
			in.Rounds++
		}
	}
	return in
}

// LastImport tells of it.
func (s *Storage) LastImport(done func(host.Imported, error)) {
	s.later(func() { done(s.imported(), nil) })
}

// Undo takes it back.
func (s *Storage) Undo(done func(error)) {
	s.later(func() {
		last := s.last.id
		s.rounds = slices.DeleteFunc(s.rounds, func(k kept) bool { return last != "" && k.batch == last })
		s.people = slices.DeleteFunc(s.people, func(p person) bool {
			return last != "" && p.batch == last && len(s.of(p.ID)) == 0
		})
		s.last = batch{}
		done(nil)
	})
}

// ExportLines hands over rounds as lines.
func (s *Storage) ExportLines(person string, done func(error)) {
	s.export(person, "rounds.jsonl", "", func(r history.Round, player string) string {
		r.Player = ""
		line, err := history.Format(r)
		if err != nil {
			panic(err) // it was read
		}
		return string(history.Handed(line, player)) + "\n"
	}, done)
}

// ExportSheet hands them over as a table.
func (s *Storage) ExportSheet(person string, done func(error)) {
	s.export(person, "rounds.csv", history.SheetHead(), func(r history.Round, player string) string {
		r.Player = cmp.Or(r.Player, player)
		return history.SheetRow(r)
	}, done)
}

func (s *Storage) export(id, name, head string, row func(r history.Round, player string) string, done func(error)) {
	s.later(func() {
		text := head
		for _, p := range s.people {
			if id != host.Everybody && p.ID != id {
				continue
			}
			for _, r := range s.of(p.ID) {
				text += row(r, p.Name)
			}
		}
		done(s.Save(name, "", text))
	})
}
