package screens

import (
	"strconv"
	"strings"

	"groundbeat/game/diaryview"
	"groundbeat/game/host"
	"groundbeat/game/view"
)

func (x *Diary) Act(action, value string) {
	number, _ := strconv.Atoi(value)
	who := x.s.Learner.Who.ID
	switch action {
	case view.ActDiaryNext:
		if number >= 0 && number < len(x.next) {
			x.s.Practice.Begin(x.next[number])
		}
	case view.ActDiaryMinutes:
		x.minutes = number
	case view.ActDiaryOutput:
		x.output = value
		x.Count()
	case view.ActDiaryName:
		x.typed = value
	case view.ActDiaryAdd:
		x.s.Diary.AddPerson(x.typed, func(_ host.Person, err error) { x.came(err) })
	case view.ActDiaryRename:
		x.s.Diary.Rename(who, x.typed, x.came)
	case view.ActDiaryMerge:
		x.merging = value
	case view.ActDiaryMergeNo:
		x.merging = ""
	case view.ActDiaryMergeYes:
		x.merging = ""
		x.s.Diary.Merge(value, who, x.came)
	case view.ActDiaryErase:
		x.erasing = diaryview.EraseOne
		if value == host.Everybody {
			x.erasing = diaryview.EraseEverybody
		}
	case view.ActDiaryEraseNo:
		x.erasing = diaryview.EraseNothing
	case view.ActDiaryEraseYes:
		x.erasing = diaryview.EraseNothing
		x.s.Diary.Erase(value, x.came)
	case view.ActDiaryExport:
		x.s.Diary.ExportLines(value, x.saved)
	case view.ActDiaryCSV:
		x.s.Diary.ExportSheet(value, x.saved)
	default:
		x.take(action, value)
	}
}

// take answers what has to do with a file that was opened.
func (x *Diary) take(action, value string) {
	switch action {
	case view.ActDiaryImport:
		name, _, _ := strings.Cut(value, "\n")
		if x.s.File == nil {
			return
		}
		x.s.Diary.Import(name, x.s.File, func(p host.Preview, err error) {
			if x.saved(err); err == nil {
				x.preview, x.own = &p, false
			}
		})
		x.s.File = nil
	case view.ActDiaryTake:
		x.preview = nil
		x.s.Diary.Accept(x.own, func(i host.Imported, err error) { x.imported = i; x.came(err) })
	case view.ActDiaryOwn:
		x.own = value != ""
	case view.ActDiaryLeave:
		x.preview = nil
	case view.ActDiaryUndo:
		x.imported = host.Imported{}
		x.s.Diary.Undo(x.came)
	}
}

// came reads the diary anew after something was changed in it.
func (x *Diary) came(err error) {
	if x.saved(err); err == nil {
		x.typed = ""
		x.s.Learner.Read()
	}
}

// saved says what went wrong, if anything did.
func (x *Diary) saved(err error) { x.problem, x.s.Stale = err, true }
