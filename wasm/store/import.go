//go:build js

package store

import (
	"errors"
	"io"
	"slices"

	"groundbeat/game/host"
	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// An arrival is a round of a file that is not kept yet, under its new line.
type arrival struct {
	round  history.Round // without taps and strokes: they are in the line
	line   string
	Player string
}

// arrivals are the rounds of a file.
type arrivals struct {
	file   string
	rounds []arrival
}

// sift reads a file in slices and tells what of it is new. there tells which rounds are
// kept, by their ids.
func sift(file string, text io.Reader, there func(id string) bool) (p host.Preview, a arrivals) {
	p.File, a.file = file, file
	seen := map[string]bool{}
	w := idb.NewWork()
	for r, err := range history.Lines(file, text) {
		w.Rest()
		var newer *history.Newer
		switch {
		case errors.As(err, &newer):
			p.Newer = append(p.Newer, err)
		case err != nil:
			p.Broken = append(p.Broken, err)
		case seen[r.ID] || there(r.ID):
			p.There++
		default:
			seen[r.ID] = true
			arrived, err := arrive(r)
			if err != nil {
				p.Broken = append(p.Broken, err) // what Parse took, Format takes
				continue
			}
			if arrived.Player != "" && !slices.Contains(p.People, arrived.Player) {
				p.People = append(p.People, arrived.Player)
			}
			a.rounds = append(a.rounds, arrived)
		}
	}
	p.New = len(a.rounds)
	return p, a
}

// arrive takes the nickname off a round's line.
func arrive(r history.Round) (arrival, error) {
	player := tidy(r.Player)
	r.Player = ""
	line, err := history.Format(r)
	r.Taps, r.Strokes, r.Aside = nil, nil, nil
	return arrival{round: r, line: string(line), Player: player}, err
}

// Import implements [host.Diary].
func (s *Store) Import(file string, text io.Reader, done func(host.Preview, error)) {
	s.readings++
	reading := s.readings
	s.read = arrivals{}
	go func() {
		<-s.opened
		there := s.memory.has
		if s.err == nil {
			kept, err := s.database.there()
			if err != nil {
				done(host.Preview{File: file}, err)
				return
			}
			there = func(id string) bool { return kept(id) || s.memory.has(id) }
		}
		preview, read := sift(file, text, there)
		if reading == s.readings {
			s.read = read
		}
		done(preview, nil)
	}()
}

// Accept implements [host.Diary].
func (s *Store) Accept(own bool, done func(host.Imported, error)) {
	go func() {
		<-s.opened
		read := s.read
		s.read = arrivals{}
		if s.err != nil {
			b, n := s.memory.accept(read, s.Player, !own)
			done(b.imported(n), nil)
			return
		}
		b, n, err := s.database.accept(read, s.Player, !own)
		done(b.imported(n), err)
	}()
}

// LastImport implements [host.Diary].
func (s *Store) LastImport(done func(host.Imported, error)) {
	go func() {
		<-s.opened
		var err error
		b, n := s.memory.lastImport()
		if s.err == nil {
			b, n, err = s.database.lastImport()
		}
		done(b.imported(n), err)
	}()
}

// Undo implements [host.Diary].
func (s *Store) Undo(done func(error)) {
	go func() {
		<-s.opened
		if s.err != nil {
			s.memory.undo()
			done(nil)
			return
		}
		done(s.database.undo())
	}()
}
