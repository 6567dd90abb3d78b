package screens

import (
	"errors"
	"slices"
	"strings"
	"time"

	"groundbeat/game/coach"
	"groundbeat/game/control"
	"groundbeat/game/diary"
	"groundbeat/game/diaryview"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Diary is the screen Practice diary.
type Diary struct {
	s       *control.Shared
	output  string // whose rounds are told
	figures diary.Figures
	parts   []func(*diary.Figures) // of the figures, still to be worked out, one in a frame
	coming  diary.Figures
	counted bool // the figures were worked out once

	next    [][]coach.Step // what is offered
	minutes int
	typed   string
	merging string
	erasing diaryview.Erase

	preview  *host.Preview
	own      bool // all of the file belongs to the person who is chosen
	imported host.Imported
	problem  error // what went wrong last
}

func NewDiary(s *control.Shared) *Diary { return &Diary{s: s, minutes: 10} }

func (x *Diary) Prepare() {
	x.typed, x.merging, x.erasing, x.problem = "", "", diaryview.EraseNothing, nil
	if x.s.Learner.Err != nil { // perhaps it can be read now
		x.s.Learner.Read()
	}
	x.output = x.s.OutputName()
	x.Count()
	x.s.Diary.LastImport(func(i host.Imported, err error) { x.imported, x.s.Stale = i, true })
}

// Count works out the figures and what is offered anew, a part in a frame: all at once
// they would hold up the page. It waits for the days and for the rounds.
func (x *Diary) Count() {
	book := x.s.Learner.Book
	if x.s.Address.Screen != view.ScreenDiary || !x.s.Learner.Countable() {
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
func (x *Diary) offer() {
	k := x.s.Known()
	x.next = coach.Offers(k.Practice(20, x.s.Learner.Pool(k), x.s.Wall.Seed()), mostOffered)
}

// mostOffered is how much is offered at most, besides what goes well.
const mostOffered = 3

func (x *Diary) Interrupt(string) {}

func (x *Diary) Draw(string) *picture.Picture { return nil }

func (x *Diary) Tick(float64) bool {
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

func (x *Diary) Screen() view.Screen {
	l := &x.s.Learner
	m := &diaryview.Diary{
		Who: l.Who.ID, Typed: x.typed, Merging: x.merging, Reading: !x.counted && l.Err == nil,
		Rounds: l.Kept(), Behind: l.Days.Behind, Figures: x.figures, Today: l.Today(), Rhythms: x.s.Cycles(),
		Minutes: x.minutes, Silent: !x.s.Sound.Audible(), SetAside: l.Days.Aside, Newer: l.Days.Newer, MayGo: l.Days.MayGo, Erasing: x.erasing, Notes: x.s.Notes(),
		Invented: l.Who.Name == diaryview.Invented,
	}
	m.Problem, m.Failed = x.named()
	if i := x.imported; i.Rounds > 0 {
		m.Imported = diaryview.Imported{File: i.File, Day: i.When.Format(time.DateOnly), Rounds: i.Rounds}
	}
	m.Figures.Output = x.output
	for _, p := range l.People {
		m.People = append(m.People, diaryview.Person(p))
	}
	if l.Book != nil {
		m.Outputs = l.Book.Outputs()
	}
	for _, s := range x.next {
		m.Next = append(m.Next, diaryview.NextOf(s))
	}
	if p := x.preview; p != nil {
		m.Import = shownImport(p, x.own)
	}
	return m.Screen(x.s.Words)
}

// shownImport is what a file would bring, as the page shows it.
func shownImport(p *host.Preview, own bool) *diaryview.Import {
	in := &diaryview.Import{File: p.File, New: p.New, Here: p.There, Newer: len(p.Newer), People: p.People, Own: own}
	for _, err := range p.Broken {
		b := diaryview.Broken{Why: err.Error()}
		var at *history.Error
		if errors.As(err, &at) {
			b = diaryview.Broken{Line: at.Line, Why: strings.TrimPrefix(at.Field+": "+at.Msg, ": ")}
		}
		in.Broken = append(in.Broken, b)
	}
	return in
}

// named is what is wrong with a nickname, and failed whether it is anything else that
// went wrong.
func (x *Diary) named() (p diaryview.NameProblem, failed bool) {
	switch err := x.problem; {
	case err == nil:
		return diaryview.NameFine, x.s.Learner.Err != nil
	case errors.Is(err, host.ErrNoName):
		return diaryview.NameMissing, false
	case errors.Is(err, host.ErrLongName):
		return diaryview.NameLong, false
	case errors.Is(err, host.ErrNameUsed):
		return diaryview.NameUsed, false
	case errors.Is(err, host.ErrNobody):
		return diaryview.NameGone, false
	}
	return diaryview.NameFine, true
}
