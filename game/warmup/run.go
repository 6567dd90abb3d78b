package warmup

import (
	"encoding/json"
	"errors"
	"fmt"
	"time"

	"groundbeat/game/rhythm"
)

// A Stage is where a warm-up stands.
type Stage uint8

// The stages. Of a task that counts hands there are Asking, Counting for each of its
// answers, Telling and Hearing; of the others Asking and Telling.
const (
	WalkIn   Stage = iota // people arrive; something is heard
	Asking                // what is asked is said, and heard
	Counting              // hands for one answer
	Telling               // what it was, and heard in turn
	Hearing               // heard once more, now that it is known
	After                 // the page after it
)

// A Run is a warm-up as it goes. It can be written down and taken up again at any
// time, in the same place; nothing that was counted is ever lost but by counting anew.
// The zero Run is not usable; see [NewRun] and [ResumeRun].
type Run struct {
	Warmup *Warmup
	Class  string // nickname of the class, or none
	kept   kept
}

// kept is what is written down of a run.
type kept struct {
	Version int       `json:"v"`
	Set     string    `json:"set"`
	Name    string    `json:"name,omitempty"`
	Class   string    `json:"class,omitempty"`
	Begun   time.Time `json:"begun,omitzero"` // the first task was reached
	Task    int       `json:"task"`           // -1: the walk-in; as many as there are: after it
	Step    int       `json:"step"`           // in the task: 0 asking, then each answer, and so on
	Reached int       `json:"reached"`        // how many tasks were begun
	Longer  bool      `json:"longer,omitempty"`
	Hands   [][]Hands `json:"hands"` // for each task reached, for each answer
}

const runVersion = 1

// NewRun returns a run at its walk-in.
func NewRun(w *Warmup, class string) *Run {
	return &Run{Warmup: w, Class: class, kept: kept{Version: runVersion, Set: w.Link(), Name: w.Name, Class: class, Task: -1}}
}

// Text writes the run down.
func (r *Run) Text() string {
	text, err := json.Marshal(r.kept)
	if err != nil {
		panic(err) // it holds nothing that cannot be written
	}
	return string(text)
}

// ResumeRun takes up a run that was written down. now is wall time: a run whose time
// is long over was interrupted, and may take longer.
func ResumeRun(text string, c *rhythm.Catalogue, now time.Time) (*Run, error) {
	r := &Run{}
	if err := json.Unmarshal([]byte(text), &r.kept); err != nil {
		return nil, fmt.Errorf("run: %w", err)
	}
	if r.kept.Version != runVersion {
		return nil, fmt.Errorf("run: version %d; known is %d", r.kept.Version, runVersion)
	}
	s, err := ParseLink(r.kept.Set, c)
	if err != nil {
		return nil, fmt.Errorf("run: %w", err)
	}
	s.Name, r.Class = r.kept.Name, r.kept.Class
	if r.Warmup, err = NewWarmup(s, c); err != nil {
		return nil, fmt.Errorf("run: %w", err)
	}
	if ends := r.latest(); !ends.IsZero() && !now.Before(ends) {
		r.kept.Longer = true
	}
	return r, r.check()
}

var errRun = errors.New("run: it does not fit its set")

// check reports a run that was tampered with.
func (r *Run) check() error {
	k, n := &r.kept, len(r.Warmup.Tasks)
	if k.Task < -1 || k.Task > n || k.Reached < 0 || k.Reached > n || len(k.Hands) != k.Reached ||
		k.Task >= k.Reached && k.Task < n || k.Step < 0 || k.Step > r.lastStep() {
		return errRun
	}
	for i, hands := range k.Hands {
		if len(hands) != len(r.Warmup.Tasks[i].Choices) {
			return errRun
		}
		for _, h := range hands {
			if !h.Valid() {
				return errRun
			}
		}
	}
	return nil
}

// Ends is when the warm-up is to be over: as long after the first task was reached as
// it was said to last; zero before that.
func (r *Run) Ends() time.Time { return r.after(r.Warmup.Lasts()) }

// latest is when it is over at the latest: the set's minutes after the first task was
// reached; zero before that. What would last past it is left out, and not what is a
// little late by [Run.Ends].
func (r *Run) latest() time.Time { return r.after(time.Duration(r.Warmup.Minutes) * time.Minute) }

func (r *Run) after(d time.Duration) time.Time {
	if r.kept.Begun.IsZero() {
		return time.Time{}
	}
	return r.kept.Begun.Add(max(d, r.Warmup.Lasts()))
}

// Task returns the task of the stage and which it is, from 0; nil at WalkIn and After.
func (r *Run) Task() (*Task, int) {
	i := r.kept.Task
	if i < 0 || i >= len(r.Warmup.Tasks) {
		return nil, i
	}
	return &r.Warmup.Tasks[i], i
}

// Place is where a run stands: which task, and which step of it. It tells two places
// apart, and nothing else.
type Place struct{ Task, Step int }

// Place returns where the run stands.
func (r *Run) Place() Place { return Place{r.kept.Task, r.kept.Step} }

// Stage tells where the run stands.
func (r *Run) Stage() Stage {
	t, i := r.Task()
	switch step := r.kept.Step; {
	case t == nil && i < 0:
		return WalkIn
	case t == nil:
		return After
	case step == 0:
		return Asking
	case step <= len(t.Choices):
		return Counting
	case step == len(t.Choices)+1:
		return Telling
	}
	return Hearing
}

// Answer is which answer hands are counted for, from 0; -1 where none are.
func (r *Run) Answer() int {
	if r.Stage() != Counting {
		return -1
	}
	return r.kept.Step - 1
}

// lastStep is the last step of the task that the run stands at.
func (r *Run) lastStep() int {
	t, _ := r.Task()
	switch {
	case t == nil:
		return 0
	case t.Kind.Counted():
		return len(t.Choices) + 2
	}
	return 1
}
