package paper

import (
	"errors"
	"maps"
	"slices"
	"strings"

	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Storage is what a browser keeps. It outlasts the page.
type Storage struct {
	Faults
	Files []File // that were handed to the player

	wall   *Wall
	people []person
	chosen string
	rounds []kept
	begun  bool
	out    host.Outputs
	things map[string]string // what is remembered, and what belongs to classes
	last   batch
	read   []arrival // of the file that was read last
	jobs   []job
}

// Faults are what goes wrong with keeping.
type Faults struct {
	Full   bool  // the browser refuses rounds and things; rounds wait, and are kept on a later try
	None   bool  // the browser gives no storage: rounds wait, and are lost with the page
	Older  bool  // what is kept is a later page's
	Frames int   // how many frames each answer takes, besides the first
	Held   bool  // no answer comes before it is released
	Behind []int // rounds that are not counted yet, each time that days are told; nil: none
}

// File is a file that was handed to the player.
type File struct{ Name, Text string }

// kept is a round as it lies in the browser.
type kept struct {
	id, person, line, batch string
	waits                   bool // the browser refused it; it is tried again
}

// job is an answer that is still to come.
type job struct {
	frames int
	do     func()
}

var errFull = errors.New("the quota has been exceeded")

func newStorage(wall *Wall) *Storage {
	return &Storage{wall: wall, people: []person{{Person: host.Person{ID: "first"}}}, chosen: "first", things: map[string]string{}}
}

// later answers between two frames, never at once.
func (s *Storage) later(do func()) { s.jobs = append(s.jobs, job{s.Frames, do}) }

// tick answers what is due.
func (s *Storage) tick() {
	if s.Held {
		return
	}
	jobs := s.jobs
	s.jobs = nil
	for _, j := range jobs {
		if j.frames > 0 {
			j.frames--
			s.jobs = append(s.jobs, j)
			continue
		}
		j.do()
	}
}

// Pending is how many answers are still to come.
func (s *Storage) Pending() int { return len(s.jobs) }

// Release lets the answer come that was asked for first, if any was.
func (s *Storage) Release() {
	if len(s.jobs) > 0 {
		first := s.jobs[0]
		s.jobs = s.jobs[1:]
		first.do()
	}
}

// Put puts rounds there that were kept before.
func (s *Storage) Put(some ...history.Round) {
	for _, r := range some {
		line, err := history.Format(r)
		if err != nil {
			panic(err) // they are a test's own
		}
		s.rounds = append(s.rounds, kept{id: r.ID, person: s.chosen, line: string(line)})
	}
}

// reload drops what was not kept, and tries what waits once more.
func (s *Storage) reload() {
	s.jobs = nil
	if s.None {
		s.rounds = nil
	}
	s.try()
}

// try tries to keep what waits.
func (s *Storage) try() {
	for i := range s.rounds {
		s.rounds[i].waits = s.rounds[i].waits && s.refuses()
	}
}

func (s *Storage) refuses() bool { return s.Full || s.None }

// Keep keeps a round as its line.
func (s *Storage) Keep(r history.Round, done func(error)) {
	line, err := history.Format(r)
	if err != nil {
		done(err)
		return
	}
	s.rounds = append(s.rounds, kept{id: r.ID, person: s.chosen, line: string(line)})
	s.later(func() {
		s.try()
		if s.refuses() {
			s.mark(r.ID)
			done(errFull)
			return
		}
		done(nil)
	})
}

func (s *Storage) mark(id string) {
	for i := range s.rounds {
		s.rounds[i].waits = s.rounds[i].waits || s.rounds[i].id == id
	}
}

// Rounds are all rounds of everybody in the order in which they were kept, read from
// their lines.
func (s *Storage) Rounds() []history.Round { return read(s.rounds) }

func read(some []kept) (all []history.Round) {
	for _, k := range some {
		r, err := history.Parse([]byte(k.line))
		if err != nil {
			panic(err) // it was written by history
		}
		all = append(all, r)
	}
	return all
}

// Storage tells what waits.
func (s *Storage) Storage() view.Storage {
	is := view.Storage{Aside: !s.None, None: s.None, Older: s.Older}
	for _, k := range s.rounds {
		if k.waits {
			is.Waiting++
		}
	}
	return is
}

// SaveWaiting hands over what waits.
func (s *Storage) SaveWaiting() error {
	text := ""
	for _, k := range s.rounds {
		if k.waits {
			text += k.line + "\n"
		}
	}
	return s.Save("waiting", "", text)
}

// Outputs are those that are kept.
func (s *Storage) Outputs() host.Outputs {
	return host.Outputs{Chosen: s.out.Chosen, List: slices.Clone(s.out.List)}
}

// KeepOutputs keeps them.
func (s *Storage) KeepOutputs(o host.Outputs) error {
	if s.refuses() {
		return errFull
	}
	s.out = host.Outputs{Chosen: o.Chosen, List: slices.Clone(o.List)}
	return nil
}

// Begun reports whether a round was finished.
func (s *Storage) Begun() bool { return s.begun }

// KeepBegun notes that one was.
func (s *Storage) KeepBegun() { s.begun = true }

// Remembered is what was remembered under a name.
func (s *Storage) Remembered(name string) string { return s.things["memory/"+name] }

// Remember remembers it.
func (s *Storage) Remember(name, text string) { s.things["memory/"+name] = text }

// Kept is what is kept of classes under a name.
func (s *Storage) Kept(name string) string { return s.things["class/"+name] }

// KeptUnder are the texts whose names begin so, in the order of their names.
func (s *Storage) KeptUnder(prefix string) (texts []string) {
	for _, name := range slices.Sorted(maps.Keys(s.things)) {
		if strings.HasPrefix(name, "class/"+prefix) {
			texts = append(texts, s.things[name])
		}
	}
	return texts
}

// Save hands over a file.
func (s *Storage) Save(name, _, text string) error {
	s.Files = append(s.Files, File{name, text})
	return nil
}

// room keeps what belongs to classes.
type room struct{ *Storage }

// Keep keeps a text under a name; "" removes it. It holds for this visit in any case.
func (r room) Keep(name, text string) error {
	if r.things["class/"+name] = text; text == "" {
		delete(r.things, "class/"+name)
	}
	if r.refuses() {
		return errFull
	}
	return nil
}
