package view

import (
	"fmt"
	"strconv"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
)

// ClassAfter is what the page after a warm-up is made from.
type ClassAfter struct {
	Entry   quiz.Entry
	Earlier []quiz.Entry // of the same class, oldest first
	Left    int          // tasks that were left out
	Names   map[string]string
	Sheet   []*rhythm.Cycle // what the home sheet is about
	Dates   []string        // the days of Earlier, as they are shown
	Today   string
	Seed    uint64
	Unkept  bool // the diary could not be kept
	Letters bool
}

// Screen returns the page: what to dance to today in two sentences, what the room knew
// and what it mixed up, how much riff it hears through, its earlier warm-ups, and the
// home sheet.
func (a *ClassAfter) Screen(w Words) Screen {
	f := quiz.FiguresOf(a.Entry)
	items := []Item{heading("heading-after", w.Say("class-after"))}
	for i, text := range a.advice(w) {
		items = append(items, Item{ID: fmt.Sprintf("advice-%d", i+1), Role: RoleText, Text: text, Look: LookFinding})
	}
	items = append(items, a.knew(w, f), a.mixed(w, f), a.goOn(w), a.ways(w), a.table(w), a.earlier(w),
		Item{ID: "no-interval", Role: RoleText, Look: LookNote, Text: w.Say("class-no-interval")})
	if a.Unkept {
		items = append(items, Item{ID: "unkept", Role: RoleText, Look: LookWarning, Text: w.Say("class-not-kept")})
	}
	items = append(items, a.sheet(w))
	s := page(w, "class-after", w.Say("class"), items)
	s.Escape = ActClassLeave
	s.Keys = clicks(ActClassLeave, ActClassBack)
	return s
}

func (a *ClassAfter) name(id string) string {
	if n := a.Names[id]; n != "" {
		return plain(n)
	}
	return id
}

// advice is what to dance to today, in two sentences at most.
func (a *ClassAfter) advice(w Words) []string {
	ad := quiz.DanceTo(a.Entry)
	if ad.Rhythm == "" {
		return nil
	}
	level, _ := sayLevel(w, ad.Riff)
	first := w.Say("class-dance-played", "rhythm", a.name(ad.Rhythm))
	if ad.Known {
		first = w.Say("class-dance", "rhythm", a.name(ad.Rhythm), "level", level)
	}
	if ad.Apart.Played == "" {
		return []string{first}
	}
	return []string{first, w.Say("class-apart", "played", a.name(ad.Apart.Played), "taken", a.name(ad.Apart.TakenFor))}
}

// knew says how many of the questions that were counted the room knew, and through how
// much riff.
func (a *ClassAfter) knew(w Words, f quiz.Figures) Item {
	if f.Of == 0 {
		return Item{ID: "knew", Role: RoleText, Text: w.Say("class-uncounted")}
	}
	it := Item{ID: "figures", Role: RoleGroup, Look: LookFigures, Children: []Item{
		figure("knew", w.Say("class-knew"), w.Say("of", "n", f.Knew, "of", f.Of))}}
	for _, l := range f.Levels {
		name, _ := sayLevel(w, l.Riff)
		it.Children = append(it.Children, figure("level-"+l.Riff, w.Say("class-named-under", "level", name), w.Say("of", "n", l.Knew, "of", l.Of)))
	}
	return it
}

func (a *ClassAfter) mixed(w Words, f quiz.Figures) Item {
	if len(f.Mixed) == 0 {
		return Item{}
	}
	list := Item{ID: "mixed", Role: RoleList, Name: w.Say("class-mixed")}
	for i, p := range f.Mixed {
		list.Children = append(list.Children, Item{ID: fmt.Sprintf("mixed-%d", i+1), Role: RoleListItem,
			Text: w.Say("class-mixed-up", "n", p.Times, "played", a.name(p.Played), "taken", a.name(p.TakenFor))})
	}
	return list
}

func (a *ClassAfter) goOn(w Words) Item {
	if a.Left == 0 {
		return Item{}
	}
	return Item{ID: "left", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "left-out", Role: RoleText, Text: w.Say("class-left", "n", a.Left)},
		{ID: "go-on", Role: RoleButton, Name: w.Say("class-go-on"), Action: ActClassGoOn}}}
}

func (a *ClassAfter) ways(w Words) Item {
	return Item{ID: "ways", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "print", Role: RoleButton, Name: w.Say("class-print"), Action: ActPrint},
		{ID: "csv", Role: RoleButton, Name: w.Say("class-csv"), Action: ActClassCSV},
		{ID: "json", Role: RoleButton, Name: w.Say("class-json"), Action: ActClassJSON},
		{ID: "back", Role: RoleButton, Name: w.Say("class-back"), Action: ActClassBack},
		{ID: "leave", Role: RoleButton, Name: w.Say("class-leave"), Action: ActClassLeave}}}
}

// table is question by question what was played and how many hands went up.
func (a *ClassAfter) table(w Words) Item {
	it := Item{ID: "questions", Role: RoleTable, Name: w.Say("class-table", "n", fmt.Sprint(a.Seed)),
		Columns: []string{w.Say("class-column-nth"), w.Say("class-column-what"), w.Say("rhythm"), w.Say("level"), w.Say("class-column-hands")}}
	for i, d := range a.Entry.Tasks {
		level, _ := sayLevel(w, d.Riff)
		it.Rows = append(it.Rows, []string{strconv.Itoa(i + 1), sayTask(w, d.Kind), a.name(d.Rhythm), level, a.hands(w, d)})
	}
	details := Item{ID: "details", Role: RoleDetails, Name: w.Say("class-details"), Children: []Item{it}}
	return details
}

// hands are those of one question: what was right is told first.
func (a *ClassAfter) hands(w Words, d quiz.Done) string {
	text := ""
	for _, right := range []bool{true, false} {
		for i, id := range d.Choices {
			if (id == d.Right) != right || d.Hands[i] == "" {
				continue
			}
			name := a.name(id)
			if d.Kind == quiz.BaseOrRiff {
				name = sayBase(w, id)
			}
			one := w.Say("class-hands-were", "answer", name, "n", sayHands(w, d.Hands[i]))
			if right {
				one = w.Say("class-right-were", "answer", name, "n", sayHands(w, d.Hands[i]))
			}
			if text != "" {
				text += "; "
			}
			text += one
		}
	}
	if text == "" {
		return none
	}
	return text
}

// earlier is this warm-up beside the class's earlier ones.
func (a *ClassAfter) earlier(w Words) Item {
	if len(a.Earlier) == 0 {
		return Item{}
	}
	it := Item{ID: "earlier", Role: RoleTable, Name: w.Say("class-earlier"),
		Columns: []string{w.Say("class-column-day"), w.Say("class-knew"), w.Say("class-column-through")}}
	row := func(day string, e quiz.Entry) {
		f := quiz.FiguresOf(e)
		through := none
		if t := f.Through(); t != "" {
			through, _ = sayLevel(w, t)
		}
		it.Rows = append(it.Rows, []string{day, w.Say("of", "n", f.Knew, "of", f.Of), through})
	}
	for i, e := range a.Earlier {
		row(a.Dates[i], e)
	}
	row(a.Today, a.Entry)
	return it
}

// sheet is what the dancers take home: printed alone.
func (a *ClassAfter) sheet(w Words) Item {
	it := Item{ID: "sheet", Role: RoleGroup, Name: w.Say("class-sheet"), Children: []Item{
		subheading("sheet-heading", w.Say("class-sheet")), {ID: "sheet-how", Role: RoleText, Text: w.Say("class-sheet-how")}}}
	for _, c := range a.Sheet {
		n := NameOf(c)
		l := lineOf(c, c.Base(), nil, 0)
		one := Item{ID: "sheet-" + c.ID, Role: RoleGroup, Children: []Item{{ID: "sheet-" + c.ID + "-name", Role: RoleHeading, Level: 3, Name: n.Name}}}
		if n.Script != "" {
			one.Children = append(one.Children, Item{ID: "sheet-" + c.ID + "-script", Role: RoleText, Text: n.Script, Lang: n.Lang, Dir: n.Dir, Look: LookScript})
		}
		one.Children = append(one.Children, still(w, "sheet-"+c.ID+"-line", &l))
		if c.Listen != "" {
			one.Children = append(one.Children, Item{ID: "sheet-" + c.ID + "-listen", Role: RoleText, Text: w.Say("listen-for", "what", c.Listen)})
		}
		one.Children = append(one.Children, Item{ID: "sheet-" + c.ID + "-link", Role: RoleLink, Name: w.Say("class-sheet-link"),
			Value: DefaultAddress(ScreenDums).WithRhythm(c.ID).String()})
		it.Children = append(it.Children, one)
	}
	return it
}
