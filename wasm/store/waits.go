//go:build js

package store

import (
	"slices"
	"strings"
	"sync"
	"syscall/js"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Rounds that the database has not taken wait in memory, and are tried again: with the
// next round, when the page is shown again, when another window tells that something was
// kept, and after a while, which grows from soonest to latest. Own choice.
const (
	soonest = 5 * time.Second
	latest  = 5 * time.Minute
)

// waits is how it goes with what waits.
type waits struct {
	trying sync.Mutex
	why    error         // why the last one was refused
	after  time.Duration // how long it was waited for the last time; 0: nothing waits
	timer  *time.Timer
}

// try tries to keep all that waits, each round by itself, the oldest first. What is
// refused is tried again later.
func (s *Store) try() {
	s.waits.trying.Lock()
	defer s.waits.trying.Unlock()
	s.reopen()
	kept := false
	for _, h := range slices.Clone(s.memory.rounds) {
		if !s.memory.has(h.round.ID) {
			continue // erased meanwhile
		}
		if err := s.tryOne(h); err != nil {
			s.waits.why = err
			s.memory.fail(h.round.ID)
			continue
		}
		s.memory.remove(func(other held) bool { return other.round.ID == h.round.ID })
		s.unspool(h.round.ID)
		kept = true
	}
	if kept {
		s.persist()
		s.broadcast(map[string]any{"rounds": true})
	}
	s.later(kept)
}

// reopen opens a database once more that could not be opened, for want of room perhaps.
func (s *Store) reopen() {
	if s.err == nil || s.database == nil || s.stands == older {
		return
	}
	if s.err = s.database.connect(); s.err == nil {
		go s.database.sweep()
	}
}

func (s *Store) tryOne(h held) error {
	if s.err != nil {
		return s.err
	}
	h.who.Id = h.person
	err := s.database.keep(h.who, h.round, h.line)
	if err == errOlder {
		s.stood(older)
	}
	return err
}

// later tries what still waits once more after a while, longer each time in which
// nothing was kept.
func (s *Store) later(kept bool) {
	w := &s.waits
	if w.timer != nil {
		w.timer.Stop()
	}
	waited := w.after > 0
	switch {
	case len(s.memory.rounds) == 0:
		w.after = 0
	case kept || !waited:
		w.after = soonest
	default:
		w.after = min(2*w.after, latest)
	}
	if w.after > 0 && s.database != nil && s.stands != older {
		w.timer = time.AfterFunc(w.after, s.try)
	}
	if waited || w.after > 0 {
		s.Changed()
	}
}

// watch tries again when the page is shown.
func (s *Store) watch() {
	document := js.Global().Get("document")
	document.Call("addEventListener", "visibilitychange", js.FuncOf(func(js.Value, []js.Value) any {
		if !document.Get("hidden").Bool() && len(s.memory.rounds) > 0 {
			go s.try()
		}
		return nil
	}))
}

// fail notes that a round was tried in vain.
func (m *memory) fail(id string) {
	for i := range m.rounds {
		m.rounds[i].failed = m.rounds[i].failed || m.rounds[i].round.ID == id
	}
}

// whyWaits is why a round waits, or nil if it does not.
func (s *Store) whyWaits(id string) error {
	if !s.memory.has(id) {
		return nil
	}
	return s.waits.why
}

// Storage implements [host.Store].
func (s *Store) Storage() view.Storage {
	is := view.Storage{Aside: true, Older: s.stands == older, Blocked: s.stands == blocked}
	is.None = s.err != nil && !is.Older && !is.Blocked
	for _, h := range s.memory.rounds {
		if h.failed {
			is.Waiting++
			is.Aside = is.Aside && h.aside
		}
	}
	return is
}

// SaveWaiting implements [host.Store].
func (s *Store) SaveWaiting() error {
	var text strings.Builder
	for _, h := range s.memory.of("") {
		name := h.who.name
		if p := s.memory.people.find(h.person); p != nil && p.name != "" {
			name = p.name
		}
		text.Write(history.Handed([]byte(h.line), name))
		text.WriteString("\n")
	}
	return handOver(js.Global().Get("document"), "groundbeat-rounds-waiting.jsonl", "application/jsonl", js.ValueOf([]any{text.String()}))
}

var _ host.Store = (*Store)(nil)
