package session

import (
	"errors"
	"io"
	"slices"
	"strings"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring/diary"
	"groundbeat/scoring/history"
)

// journal is the screen Practice diary.
type journal struct {
	*desk
	output  string // whose rounds are told
	figures diary.Figures
	parts   []func(*diary.Figures) // of the figures, still to be worked out, one in a frame
	coming  diary.Figures
	counted bool // the figures were worked out once

	next    [][]quiz.Step // what is offered
	minutes int
	typed   string
	merging string
	erasing view.Erase

	preview  *host.Preview
	own      bool // all of the file belongs to the person who is chosen
	imported host.Imported
	problem  error // what went wrong last
	file     io.Reader
}

func newJournal(d *desk) *journal { return &journal{desk: d, minutes: 10} }

func (x *journal) lay() {
	x.typed, x.merging, x.erasing, x.problem = "", "", view.EraseNothing, nil
	if x.desk.learner.err != nil { // perhaps it can be read now
		x.desk.learner.read()
	}
	x.output = x.desk.outputName()
	x.count()
	x.desk.Diary.LastImport(func(i host.Imported, err error) { x.imported, x.desk.stale = i, true })
}

// count works out the figures and what is offered anew, a part in a frame: all at once
// they would hold up the page. It waits for the days and for the rounds.
func (x *journal) count() {
	book := x.desk.learner.book
	if x.desk.exercise != x || !x.desk.learner.has.days || !x.desk.learner.has.rounds {
		x.parts, x.counted = nil, false
		return
	}
	if outputs := book.Outputs(); len(outputs) > 0 && !slices.Contains(outputs, x.output) {
		x.output = outputs[0]
	}
	x.coming = diary.Figures{}
	x.parts = append(book.Parts(x.output),
		func(f *diary.Figures) { f.Practised = book.Practised() }, // days, on whatever output
		func(*diary.Figures) { x.offer() })
}

// offer finds what is offered next: what is due, what is mixed up, what is new or lies
// at the edge, and something that goes well.
func (x *journal) offer() {
	k := x.desk.learner.known()
	x.next = quiz.Offers(k.Practice(20, x.desk.learner.pool(k), x.desk.Wall.Seed()), mostOffered)
}

// mostOffered is how much is offered at most, besides what goes well.
const mostOffered = 3

func (x *journal) tap(*host.Tap)      {}
func (x *journal) interrupted(string) {}

func (x *journal) draw(string) *view.Picture { return nil }

func (x *journal) tick(float64) bool {
	if len(x.parts) == 0 {
		return false
	}
	part := x.parts[0]
	x.parts = x.parts[1:]
	part(&x.coming)
	if len(x.parts) > 0 {
		return false
	}
	x.figures, x.counted = x.coming, true
	return true
}

func (x *journal) screen() view.Screen {
	l := &x.desk.learner
	m := &view.Diary{
		Who: l.who.ID, Typed: x.typed, Merging: x.merging, Reading: !x.counted && l.err == nil,
		Rounds: l.kept(), Behind: l.days.Behind, Figures: x.figures, Today: l.today(), Rhythms: x.all(),
		Minutes: x.minutes, Silent: !x.desk.Sound.Audible(), SetAside: l.days.Aside, Newer: l.days.Newer, MayGo: l.days.MayGo, Erasing: x.erasing, Notes: x.desk.notes(),
		Invented: l.who.Name == view.Invented,
	}
	m.Problem, m.Failed = x.named()
	if i := x.imported; i.Rounds > 0 {
		m.Imported = view.Imported{File: i.File, Day: i.When.Format(time.DateOnly), Rounds: i.Rounds}
	}
	m.Figures.Output = x.output
	for _, p := range l.people {
		m.People = append(m.People, view.Person(p))
	}
	if l.book != nil {
		m.Outputs = l.book.Outputs()
	}
	for _, s := range x.next {
		m.Next = append(m.Next, view.NextOf(s))
	}
	if p := x.preview; p != nil {
		m.Import = shownImport(p, x.own)
	}
	return m.Screen(x.desk.Words)
}

// shownImport is what a file would bring, as the page shows it.
func shownImport(p *host.Preview, own bool) *view.Import {
	in := &view.Import{File: p.File, New: p.New, Here: p.There, Newer: len(p.Newer), People: p.People, Own: own}
	for _, err := range p.Broken {
		b := view.Broken{Why: err.Error()}
		var at *history.Error
		if errors.As(err, &at) {
			b = view.Broken{Line: at.Line, Why: strings.TrimPrefix(at.Field+": "+at.Msg, ": ")}
		}
		in.Broken = append(in.Broken, b)
	}
	return in
}

func (x *journal) all() (all []*rhythm.Cycle) {
	for _, id := range x.desk.Rhythms().IDs() {
		all = append(all, x.desk.learner.cycle(id))
	}
	return all
}

// named is what is wrong with a nickname, and failed whether it is anything else that
// went wrong.
func (x *journal) named() (p view.NameProblem, failed bool) {
	switch err := x.problem; {
	case err == nil:
		return view.NameFine, x.desk.learner.err != nil
	case errors.Is(err, host.ErrNoName):
		return view.NameMissing, false
	case errors.Is(err, host.ErrLongName):
		return view.NameLong, false
	case errors.Is(err, host.ErrNameUsed):
		return view.NameUsed, false
	case errors.Is(err, host.ErrNobody):
		return view.NameGone, false
	}
	return view.NameFine, true
}
