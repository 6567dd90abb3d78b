package view

import "fmt"

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
func (d *Diary) keep(w Words) []Item {
	ways := []Item{{ID: "import", Role: RoleFile, Name: w.Say("diary-import"), Action: ActDiaryImport}}
	if d.Rounds > 0 {
		ways = []Item{
			{ID: "export", Role: RoleButton, Name: w.Say("diary-export"), Action: ActDiaryExport, Value: d.Who},
			{ID: "csv", Role: RoleButton, Name: w.Say("diary-csv"), Action: ActDiaryCSV, Value: d.Who}, ways[0],
			{ID: "erase", Role: RoleButton, Name: w.Say("erase", "who", d.nickname(w, d.Who)), Action: ActDiaryErase, Value: d.Who, Look: LookQuiet}}
	}
	items := []Item{subheading("keep", w.Say("keep")), d.preview(w), d.imported(w),
		{ID: "keep-ways", Role: RoleGroup, Look: LookRow, Children: ways}, d.keepAll(w)}
	if d.SetAside > 0 {
		items = append(items, Item{ID: "set-aside", Role: RoleText, Text: w.Say("diary-set-aside", "n", d.SetAside), Look: LookWarning})
	}
	if d.Newer > 0 {
		items = append(items, Item{ID: "newer", Role: RoleText, Text: w.Say("diary-newer", "n", d.Newer), Look: LookNote})
	}
	if d.MayGo {
		items = append(items, Item{ID: "may-go", Role: RoleText, Text: w.Say("diary-may-go"), Look: LookNote})
	}
	return append(present(items), Item{ID: "here", Role: RoleText, Text: w.Say("diary-here"), Look: LookNote})
}

// keepAll is the same of everybody, where there are several.
func (d *Diary) keepAll(w Words) Item {
	if len(d.People) < 2 {
		return Item{}
	}
	return Item{ID: "everybody", Role: RoleDetails, Name: w.Say("everybody"), Children: []Item{
		{ID: "everybody-ways", Role: RoleGroup, Look: LookRow, Children: []Item{
			{ID: "export-all", Role: RoleButton, Name: w.Say("everybody-export"), Action: ActDiaryExport},
			{ID: "csv-all", Role: RoleButton, Name: w.Say("everybody-csv"), Action: ActDiaryCSV},
			{ID: "erase-all", Role: RoleButton, Name: w.Say("everybody-erase"), Action: ActDiaryErase, Look: LookQuiet}}}}}
}

// preview says what a file would bring, before anything is changed.
func (d *Diary) preview(w Words) Item {
	if d.Import == nil {
		return Item{}
	}
	in := d.Import
	list := Item{ID: "found", Role: RoleList}
	add := func(id, text string) {
		list.Children = append(list.Children, Item{ID: "found-" + id, Role: RoleListItem, Text: text})
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
	it := Item{ID: "preview", Role: RoleGroup, Look: LookMatter, Name: w.Say("found-in", "file", in.File), Children: []Item{
		{ID: "preview-name", Role: RoleHeading, Level: 3, Name: w.Say("found-in", "file", in.File)}, list}}
	if len(in.Broken) > 0 {
		it.Children = append(it.Children, in.places(w))
	}
	if len(in.People) > 0 {
		it.Children = append(it.Children, d.whose(w))
	}
	it.Children = append(it.Children, Item{ID: "preview-do", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "take", Role: RoleButton, Name: w.Say("found-take", "n", in.New), Action: ActDiaryTake, Look: LookPrimary, Disabled: in.New == 0},
		{ID: "leave", Role: RoleButton, Name: w.Say("found-leave"), Action: ActDiaryLeave}}})
	return it
}

// whose says of whom the rounds of a file are, and lets all of them belong to the one
// whose diary it is.
func (d *Diary) whose(w Words) Item {
	return Item{ID: "whose", Role: RoleGroup, Look: LookLines, Children: []Item{
		{ID: "whose-names", Role: RoleText, Text: w.Say("found-people", "list", sayList(w, d.Import.People))},
		{ID: "own", Role: RoleCheckBox, Name: w.Say("found-own", "who", d.nickname(w, d.Who)), Action: ActDiaryOwn, Checked: d.Import.Own}}}
}

// places says where the broken lines are, and why they cannot be read.
func (in *Import) places(w Words) Item {
	list := Item{ID: "broken", Role: RoleList}
	for i, b := range in.Broken {
		if i == mostBroken {
			list.Children = append(list.Children, Item{ID: "broken-more", Role: RoleListItem, Text: w.Say("opened-more", "n", len(in.Broken)-i)})
			break
		}
		list.Children = append(list.Children, Item{ID: fmt.Sprintf("broken-%d", i+1), Role: RoleListItem,
			Text: w.Say("broken-line", "line", b.Line, "why", b.Why)})
	}
	return Item{ID: "broken-lines", Role: RoleDetails, Name: w.Say("broken-where"), Children: []Item{list}}
}

// imported says what came from a file last, and offers to take it back.
func (d *Diary) imported(w Words) Item {
	in := d.Imported
	if in.Rounds == 0 {
		return Item{}
	}
	return Item{ID: "imported", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "imported-text", Role: RoleStatus, Live: LivePolite,
			Text: w.Say("imported", "n", in.Rounds, "file", in.File, "day", sayDay(w, in.Day, d.Today))},
		{ID: "undo", Role: RoleButton, Name: w.Say("imported-undo"), Action: ActDiaryUndo}}}
}
