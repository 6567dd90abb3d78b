package diaryview

import (
	"fmt"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Import is what a file of rounds would bring.
type Import struct {
	File   string // its name
	New    int    // rounds that are not here
	Here   int    // rounds that are here already
	Newer  int    // rounds of a newer version, which cannot be taken
	Broken []Broken
	People []string // the nicknames that it names
	Own    bool     // all of it is to belong to the one whose diary is shown, whomever it names
}

// Broken is a line of a file that cannot be read.
type Broken struct {
	Line int    // from 1
	Why  string // as package history says it
}

// Imported is the import that can be taken back: the last.
type Imported struct {
	File   string
	Day    string // 2006-01-02
	Rounds int    // of it that are here; 0: there is none
}

// Erase says whose rounds are erased.
type Erase uint8

// Whose.
const (
	EraseNothing   Erase = iota
	EraseOne             // those of the one whose diary it is
	EraseEverybody       // those of all on this machine
)

// mostBroken is how many broken lines are told one by one.
const mostBroken = 5

// keep is the ways to keep the diary: as a file, for a spreadsheet, from a file, and
// to erase it; and what has to be known of what is kept.
func (d *Diary) keep(w say.Words) []view.Item {
	ways := []view.Item{{ID: "import", Role: view.RoleFile, Name: w.Say("diary-import"), Action: view.ActDiaryImport}}
	if d.Rounds > 0 {
		ways = []view.Item{
			{ID: "export", Role: view.RoleButton, Name: w.Say("diary-export"), Action: view.ActDiaryExport, Value: d.Who},
			{ID: "csv", Role: view.RoleButton, Name: w.Say("diary-csv"), Action: view.ActDiaryCSV, Value: d.Who}, ways[0],
			{ID: "erase", Role: view.RoleButton, Name: w.Say("erase", "who", d.nickname(w, d.Who)), Action: view.ActDiaryErase, Value: d.Who, Look: view.LookQuiet}}
	}
	items := []view.Item{view.Subheading("keep", w.Say("keep")), d.preview(w), d.imported(w),
		{ID: "keep-ways", Role: view.RoleGroup, Look: view.LookRow, Children: ways}, d.keepAll(w)}
	if d.SetAside > 0 {
		items = append(items, view.Item{ID: "set-aside", Role: view.RoleText, Text: w.Say("diary-set-aside", "n", d.SetAside), Look: view.LookWarning})
	}
	if d.Newer > 0 {
		items = append(items, view.Item{ID: "newer", Role: view.RoleText, Text: w.Say("diary-newer", "n", d.Newer), Look: view.LookNote})
	}
	if d.MayGo {
		items = append(items, view.Item{ID: "may-go", Role: view.RoleText, Text: w.Say("diary-may-go"), Look: view.LookNote})
	}
	return append(view.Present(items), view.Item{ID: "here", Role: view.RoleText, Text: w.Say("diary-here"), Look: view.LookNote})
}

// keepAll is the same of everybody, where there are several.
func (d *Diary) keepAll(w say.Words) view.Item {
	if len(d.People) < 2 {
		return view.Item{}
	}
	return view.Item{ID: "everybody", Role: view.RoleDetails, Name: w.Say("everybody"), Children: []view.Item{
		{ID: "everybody-ways", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
			{ID: "export-all", Role: view.RoleButton, Name: w.Say("everybody-export"), Action: view.ActDiaryExport},
			{ID: "csv-all", Role: view.RoleButton, Name: w.Say("everybody-csv"), Action: view.ActDiaryCSV},
			{ID: "erase-all", Role: view.RoleButton, Name: w.Say("everybody-erase"), Action: view.ActDiaryErase, Look: view.LookQuiet}}}}}
}

// preview says what a file would bring, before anything is changed.
func (d *Diary) preview(w say.Words) view.Item {
	if d.Import == nil {
		return view.Item{}
	}
	in := d.Import
	list := view.Item{ID: "found", Role: view.RoleList}
	add := func(id, text string) {
		list.Children = append(list.Children, view.Item{ID: "found-" + id, Role: view.RoleListItem, Text: text})
	}
	add("new", w.Say("found-new", "n", in.New))
	if in.Here > 0 {
		add("here", w.Say("found-here", "n", in.Here))
	}
	if in.Newer > 0 {
		add("newer", w.Say("found-newer", "n", in.Newer))
	}
	if len(in.Broken) > 0 {
		add("broken", w.Say("found-broken", "n", len(in.Broken)))
	}
	it := view.Item{ID: "preview", Role: view.RoleGroup, Look: view.LookMatter, Name: w.Say("found-in", "file", in.File), Children: []view.Item{
		{ID: "preview-name", Role: view.RoleHeading, Level: 3, Name: w.Say("found-in", "file", in.File)}, list}}
	if len(in.Broken) > 0 {
		it.Children = append(it.Children, in.places(w))
	}
	if len(in.People) > 0 {
		it.Children = append(it.Children, d.whose(w))
	}
	it.Children = append(it.Children, view.Item{ID: "preview-do", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "take", Role: view.RoleButton, Name: w.Say("found-take", "n", in.New), Action: view.ActDiaryTake, Look: view.LookPrimary, Disabled: in.New == 0},
		{ID: "leave", Role: view.RoleButton, Name: w.Say("found-leave"), Action: view.ActDiaryLeave}}})
	return it
}

// whose says of whom the rounds of a file are, and lets all of them belong to the one
// whose diary it is.
func (d *Diary) whose(w say.Words) view.Item {
	return view.Item{ID: "whose", Role: view.RoleGroup, Look: view.LookLines, Children: []view.Item{
		{ID: "whose-names", Role: view.RoleText, Text: w.Say("found-people", "list", say.List(w, d.Import.People))},
		{ID: "own", Role: view.RoleCheckBox, Name: w.Say("found-own", "who", d.nickname(w, d.Who)), Action: view.ActDiaryOwn, Checked: d.Import.Own}}}
}

// places says where the broken lines are, and why they cannot be read.
func (in *Import) places(w say.Words) view.Item {
	list := view.Item{ID: "broken", Role: view.RoleList}
	for i, b := range in.Broken {
		if i == mostBroken {
			list.Children = append(list.Children, view.Item{ID: "broken-more", Role: view.RoleListItem, Text: w.Say("opened-more", "n", len(in.Broken)-i)})
			break
		}
		list.Children = append(list.Children, view.Item{ID: fmt.Sprintf("broken-%d", i+1), Role: view.RoleListItem,
			Text: w.Say("broken-line", "line", b.Line, "why", b.Why)})
	}
	return view.Item{ID: "broken-lines", Role: view.RoleDetails, Name: w.Say("broken-where"), Children: []view.Item{list}}
}

// imported says what came from a file last, and offers to take it back.
func (d *Diary) imported(w say.Words) view.Item {
	in := d.Imported
	if in.Rounds == 0 {
		return view.Item{}
	}
	return view.Item{ID: "imported", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "imported-text", Role: view.RoleStatus, Live: view.LivePolite,
			Text: w.Say("imported", "n", in.Rounds, "file", in.File, "day", say.Day(w, in.Day, d.Today))},
		{ID: "undo", Role: view.RoleButton, Name: w.Say("imported-undo"), Action: view.ActDiaryUndo}}}
}
