package classview

import (
	"fmt"
	"strconv"

	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// ClassAfter is what the page after a warm-up is made from.
type ClassAfter struct {
	Entry   warmup.Entry
	Earlier []warmup.Entry // of the same class, oldest first
	Left    int            // tasks that were left out
	Names   map[string]string
	Sheet   []*rhythm.Cycle // what the home sheet is about
	Dates   []string        // the days of Earlier, as they are shown
	Today   string
	Seed    uint64
	Unkept  bool // the diary could not be kept
}

// Screen returns the page: what to dance to today in two sentences, what the room knew
// and what it mixed up, how much riff it hears through, its earlier warm-ups, and the
// home sheet.
func (a *ClassAfter) Screen(w say.Words) view.Screen {
	f := warmup.FiguresOf(a.Entry)
	items := []view.Item{view.Heading("heading-after", w.Say("class-after"))}
	for i, text := range a.advice(w) {
		items = append(items, view.Item{ID: fmt.Sprintf("advice-%d", i+1), Role: view.RoleText, Text: text, Look: view.LookFinding})
	}
	items = append(items, a.knew(w, f), a.mixed(w, f), a.goOn(w), a.ways(w), a.table(w), a.earlier(w),
		view.Item{ID: "no-interval", Role: view.RoleText, Look: view.LookNote, Text: w.Say("class-no-interval")})
	if a.Unkept {
		items = append(items, view.Item{ID: "unkept", Role: view.RoleText, Look: view.LookWarning, Text: w.Say("class-not-kept")})
	}
	items = append(items, a.sheet(w))
	s := view.Page(w, "class-after", w.Say("class"), items)
	s.Escape = view.ActClassLeave
	s.Keys = clicks(view.ActClassLeave, view.ActClassBack)
	return s
}

func (a *ClassAfter) name(id string) string {
	if n := a.Names[id]; n != "" {
		return view.Plain(n)
	}
	return id
}

// advice is what to dance to today, in two sentences at most.
func (a *ClassAfter) advice(w say.Words) []string {
	ad := warmup.DanceTo(a.Entry)
	if ad.Rhythm == "" {
		return nil
	}
	level, _ := view.SayLevel(w, ad.Riff)
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
func (a *ClassAfter) knew(w say.Words, f warmup.Figures) view.Item {
	if f.Of == 0 {
		return view.Item{ID: "knew", Role: view.RoleText, Text: w.Say("class-uncounted")}
	}
	it := view.Item{ID: "figures", Role: view.RoleGroup, Look: view.LookFigures, Children: []view.Item{
		view.Figure("knew", w.Say("class-knew"), w.Say("of", "n", f.Knew, "of", f.Of))}}
	for _, l := range f.Levels {
		name, _ := view.SayLevel(w, l.Riff)
		it.Children = append(it.Children, view.Figure("level-"+l.Riff, w.Say("class-named-under", "level", name), w.Say("of", "n", l.Knew, "of", l.Of)))
	}
	return it
}

func (a *ClassAfter) mixed(w say.Words, f warmup.Figures) view.Item {
	if len(f.Mixed) == 0 {
		return view.Item{}
	}
	list := view.Item{ID: "mixed", Role: view.RoleList, Name: w.Say("class-mixed")}
	for i, p := range f.Mixed {
		list.Children = append(list.Children, view.Item{ID: fmt.Sprintf("mixed-%d", i+1), Role: view.RoleListItem,
			Text: w.Say("class-mixed-up", "n", p.Times, "played", a.name(p.Played), "taken", a.name(p.TakenFor))})
	}
	return list
}

func (a *ClassAfter) goOn(w say.Words) view.Item {
	if a.Left == 0 {
		return view.Item{}
	}
	return view.Item{ID: "left", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "left-out", Role: view.RoleText, Text: w.Say("class-left", "n", a.Left)},
		{ID: "go-on", Role: view.RoleButton, Name: w.Say("class-go-on"), Action: view.ActClassGoOn}}}
}

func (a *ClassAfter) ways(w say.Words) view.Item {
	return view.Item{ID: "ways", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "print", Role: view.RoleButton, Name: w.Say("class-print"), Action: view.ActPrint},
		{ID: "csv", Role: view.RoleButton, Name: w.Say("class-csv"), Action: view.ActClassCSV},
		{ID: "json", Role: view.RoleButton, Name: w.Say("class-json"), Action: view.ActClassJSON},
		{ID: "back", Role: view.RoleButton, Name: w.Say("class-back"), Action: view.ActClassBack},
		{ID: "leave", Role: view.RoleButton, Name: w.Say("class-leave"), Action: view.ActClassLeave}}}
}

// table is question by question what was played and how many hands went up.
func (a *ClassAfter) table(w say.Words) view.Item {
	it := view.Item{ID: "questions", Role: view.RoleTable, Name: w.Say("class-table", "n", fmt.Sprint(a.Seed)),
		Columns: []string{w.Say("class-column-nth"), w.Say("class-column-what"), w.Say("rhythm"), w.Say("level"), w.Say("class-column-hands")}}
	for i, d := range a.Entry.Tasks {
		level, _ := view.SayLevel(w, d.Riff)
		it.Rows = append(it.Rows, []string{strconv.Itoa(i + 1), sayTask(w, d.Kind), a.name(d.Rhythm), level, a.hands(w, d)})
	}
	details := view.Item{ID: "details", Role: view.RoleDetails, Name: w.Say("class-details"), Children: []view.Item{it}}
	return details
}

// hands are those of one question: what was right is told first.
func (a *ClassAfter) hands(w say.Words, d warmup.Done) string {
	text := ""
	for _, right := range []bool{true, false} {
		for i, id := range d.Choices {
			if (id == d.Right) != right || d.Hands[i] == "" {
				continue
			}
			name := a.name(id)
			if d.Kind == warmup.BaseOrRiff {
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
		return view.None
	}
	return text
}

// earlier is this warm-up beside the class's earlier ones.
func (a *ClassAfter) earlier(w say.Words) view.Item {
	if len(a.Earlier) == 0 {
		return view.Item{}
	}
	it := view.Item{ID: "earlier", Role: view.RoleTable, Name: w.Say("class-earlier"),
		Columns: []string{w.Say("class-column-day"), w.Say("class-knew"), w.Say("class-column-through")}}
	row := func(day string, e warmup.Entry) {
		f := warmup.FiguresOf(e)
		through := view.None
		if t := f.Through(); t != "" {
			through, _ = view.SayLevel(w, t)
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
func (a *ClassAfter) sheet(w say.Words) view.Item {
	it := view.Item{ID: "sheet", Role: view.RoleGroup, Name: w.Say("class-sheet"), Children: []view.Item{
		view.Subheading("sheet-heading", w.Say("class-sheet")), {ID: "sheet-how", Role: view.RoleText, Text: w.Say("class-sheet-how")}}}
	for _, c := range a.Sheet {
		n := view.NameOf(c)
		l := picture.LineOf(c, c.Base(), nil, 0)
		one := view.Item{ID: "sheet-" + c.ID, Role: view.RoleGroup, Children: []view.Item{{ID: "sheet-" + c.ID + "-name", Role: view.RoleHeading, Level: 3, Name: n.Name}}}
		if n.Script != "" {
			one.Children = append(one.Children, view.Item{ID: "sheet-" + c.ID + "-script", Role: view.RoleText, Text: n.Script, Lang: n.Lang, Dir: n.Dir, Look: view.LookScript})
		}
		one.Children = append(one.Children, view.Still(w, "sheet-"+c.ID+"-line", &l))
		if c.Listen != "" {
			one.Children = append(one.Children, view.Item{ID: "sheet-" + c.ID + "-listen", Role: view.RoleText, Text: w.Say("listen-for", "what", c.Listen)})
		}
		one.Children = append(one.Children, view.Item{ID: "sheet-" + c.ID + "-link", Role: view.RoleLink, Name: w.Say("class-sheet-link"),
			Value: link.Default(view.ScreenDums).WithRhythm(c.ID).String()})
		it.Children = append(it.Children, one)
	}
	return it
}
