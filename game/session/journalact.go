package session

import (
	"strconv"
	"strings"

	"groundbeat/game/host"
	"groundbeat/game/view"
)

func (x *journal) act(action, value string) {
	number, _ := strconv.Atoi(value)
	who := x.desk.learner.who.ID
	switch action {
	case view.ActDiaryNext:
		if number < len(x.next) {
			x.desk.through(x.next[number])
		}
	case view.ActDiaryMinutes:
		x.minutes = number
	case view.ActDiaryOutput:
		x.output = value
		x.count()
	case view.ActDiaryName:
		x.typed = value
	case view.ActDiaryAdd:
		x.desk.Diary.AddPerson(x.typed, func(_ host.Person, err error) { x.came(err) })
	case view.ActDiaryRename:
		x.desk.Diary.Rename(who, x.typed, x.came)
	case view.ActDiaryMerge:
		x.merging = value
	case view.ActDiaryMergeNo:
		x.merging = ""
	case view.ActDiaryMergeYes:
		x.merging = ""
		x.desk.Diary.Merge(value, who, x.came)
	case view.ActDiaryErase:
		x.erasing = view.EraseOne
		if value == host.Everybody {
			x.erasing = view.EraseEverybody
		}
	case view.ActDiaryEraseNo:
		x.erasing = view.EraseNothing
	case view.ActDiaryEraseYes:
		x.erasing = view.EraseNothing
		x.desk.Diary.Erase(value, x.came)
	case view.ActDiaryExport:
		x.desk.Diary.ExportLines(value, x.saved)
	case view.ActDiaryCSV:
		x.desk.Diary.ExportSheet(value, x.saved)
	default:
		x.take(action, value)
	}
}

// take answers what has to do with a file that was opened.
func (x *journal) take(action, value string) {
	switch action {
	case view.ActDiaryImport:
		name, _, _ := strings.Cut(value, "\n")
		if x.file == nil {
			return
		}
		x.desk.Diary.Import(name, x.file, func(p host.Preview, err error) {
			if x.saved(err); err == nil {
				x.preview, x.own = &p, false
			}
		})
		x.file = nil
	case view.ActDiaryTake:
		x.preview = nil
		x.desk.Diary.Accept(x.own, func(i host.Imported, err error) { x.imported = i; x.came(err) })
	case view.ActDiaryOwn:
		x.own = value != ""
	case view.ActDiaryLeave:
		x.preview = nil
	case view.ActDiaryUndo:
		x.imported = host.Imported{}
		x.desk.Diary.Undo(x.came)
	}
}

// came reads the diary anew after something was changed in it.
func (x *journal) came(err error) {
	if x.saved(err); err == nil {
		x.typed = ""
		x.desk.learner.read()
	}
}

// saved says what went wrong, if anything did.
func (x *journal) saved(err error) { x.problem, x.desk.stale = err, true }
