//go:build js

package store

import (
	"errors"
	"syscall/js"

	"groundbeat/game/diary"
	"groundbeat/game/host"
	"groundbeat/scoring/history"
	"groundbeat/wasm/dom"
	"groundbeat/wasm/idb"
)

// store implements [host.Diary]: each of its methods begins something that goes on
// beside the page's own work, in short tasks. Those about people are in players.go, about
// files in import.go and export.go.
var _ host.Diary = (*Store)(nil)

// mostReadings is how often a diary is read until nothing of it is behind: once, once
// more when old rounds have their cards, and once more when they are counted. Another
// window may come between.
const mostReadings = 5

var errUncounted = errors.New("some rounds could not be counted")

// Days implements [host.Diary].
func (s *Store) Days(done func(host.Days)) {
	go func() {
		if _, err := s.crowd(); err != nil {
			done(host.Days{Person: s.Player.asked(), Err: err})
			return
		}
		p, goes := s.Player, s.err == nil && mayGo()
		for reading := 1; ; reading++ {
			told, doubtful := s.days(p)
			told.MayGo = goes
			if told.Behind > 0 && reading == mostReadings {
				told.Err = errUncounted
			}
			done(told)
			if told.Err != nil || len(doubtful) == 0 && told.Behind == 0 {
				return
			}
			<-s.database.swept
			for _, date := range doubtful {
				if told.Err == nil {
					_, told.Err = s.database.recount(p.Id, date)
				}
			}
			if told.Err != nil {
				done(told)
			}
			if told.Err != nil || told.Behind == 0 {
				return
			}
		}
	}()
}

// mayGo reports whether the browser may clear what is kept when space is short. Where it
// does not tell, nobody is alarmed.
func mayGo() bool {
	storage := js.Global().Get("navigator").Get("storage")
	if !storage.Truthy() || !storage.Get("persisted").Truthy() {
		return false
	}
	stays, err := dom.Await(storage.Call("persisted"))
	return err == nil && !stays.Bool()
}

// days reads a person's days once, and the dates that must be counted anew.
func (s *Store) days(p person) (told host.Days, doubtful []string) {
	told.Person = p.asked()
	var days []*diary.Day
	if s.err == nil {
		var b daybook
		if b, told.Err = s.database.days(p.Id); told.Err != nil {
			return told, nil
		}
		days, doubtful = b.read(idb.NewWork())
		told.Aside, told.Newer, told.Behind = b.aside, b.newer, b.fresh
		for _, date := range doubtful {
			told.Behind += b.rounds[date]
		}
	}
	told.Days = s.memory.addTo(days, p.Id)
	return told, doubtful
}

// Latest implements [host.Diary].
func (s *Store) Latest(kind string, n int, done func([]history.Round, error)) {
	go func() {
		_, err := s.crowd()
		p := s.Player
		var rounds []history.Round
		if err == nil && s.err == nil {
			<-s.database.swept
			rounds, err = s.database.latest(p.Id, kind, n)
		}
		done(s.memory.latest(rounds, p.Id, kind, n), err)
	}()
}
