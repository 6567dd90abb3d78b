package diaryview

import (
	"maps"
	"slices"
	"strconv"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// The picture of practice, in parts of its width.
const (
	daysShown = 14 // the latest; all are in the table
	daysSmall = 0.037
	daysRow   = 0.075  // from one day to the next
	daysApart = 0.04   // between the longest date and the first bead
	daysRight = 0.90   // and end
	daysBead  = 0.0105 // a bead at most: where a day has many rounds, those of all days stand closer
)

// practised draws the days on which there was practice, the latest first: a bead for
// each round, full where it was tapped, open where it was answered.
func (d *Diary) practised(w say.Words) *picture.Picture {
	days := d.Figures.Practised
	days = days[:min(len(days), daysShown)]
	p, left := &picture.Picture{}, 0.0
	for _, day := range days {
		left = max(left, 1.12*picture.WideOf(say.Day(w, day.Day, d.Today), daysSmall)+daysApart)
	}
	most := 0
	for _, day := range days {
		most = max(most, day.Rounds)
	}
	apart := min(0.030, (daysRight-left)/(1.1*float64(most)))
	for i, day := range days {
		y := 0.035 + daysRow*float64(i)
		p.Text(picture.InkBone, 0, y, daysSmall, say.Day(w, day.Day, d.Today)).At(picture.AnchorStart)
		beads(p, day, left, y, apart)
		p.Text(picture.InkBone, 1, y, daysSmall, strconv.Itoa(day.Rounds)).At(picture.AnchorEnd)
	}
	y := 0.035 + daysRow*float64(len(days)) + 0.02
	p.Dot(picture.InkBass, left, y, daysBead)
	p.Text(picture.InkDim, left+0.025, y, daysSmall, w.Say("days-tapped")).At(picture.AnchorStart)
	x := left + 0.025 + picture.WideOf(w.Say("days-tapped"), daysSmall) + 0.06
	p.Ring(picture.InkBass, x, y, daysBead-0.002, 0.004)
	p.Text(picture.InkDim, x+0.025, y, daysSmall, w.Say("days-answered")).At(picture.AnchorStart)
	p.Height = y + 0.035
	p.Twin = w.Say("days-twin", "list", say.List(w, d.sayPractised(w, days)))
	return p
}

// beads draws the rounds of one day, five and five.
func beads(p *picture.Picture, day diary.Practice, left, y, apart float64) {
	tapped := 0
	for kind, n := range day.Kinds {
		if k, _ := history.KindOf(kind); k.Play == history.Tapped {
			tapped += n
		}
	}
	size := min(daysBead, 0.42*apart)
	for i := range day.Rounds {
		x := left + apart*(float64(i)+0.5*float64(i/5))
		if i < tapped {
			p.Dot(picture.InkBass, x, y, size)
		} else {
			p.Ring(picture.InkBass, x, y, 0.8*size, 0.4*size)
		}
	}
}

func (d *Diary) sayPractised(w say.Words, days []diary.Practice) []string {
	var all []string
	for _, day := range days {
		all = append(all, w.Say("trend-day", "days", say.Day(w, day.Day, d.Today), "value", w.Say("rounds", "n", day.Rounds)))
	}
	return all
}

// findPractised says how many rounds on how many days, and since when.
func (d *Diary) findPractised(w say.Words) string {
	days := d.Figures.Practised
	if len(days) == 0 {
		return ""
	}
	rounds := 0
	for _, day := range days {
		rounds += day.Rounds
	}
	if len(days) == 1 {
		return w.Say("days-one", "rounds", w.Say("rounds", "n", rounds), "day", say.Day(w, days[0].Day, d.Today))
	}
	return w.Say("days-many", "rounds", w.Say("rounds", "n", rounds), "days", len(days),
		"day", say.Day(w, days[len(days)-1].Day, d.Today))
}

// practisedTable is the picture of practice as a table.
func (d *Diary) practisedTable(w say.Words) view.Item {
	it := view.Item{ID: "days-table", Role: view.RoleTable, Name: w.Say("days"), Columns: []string{
		w.Say("column-day"), w.Say("column-rounds"), w.Say("column-kind")}}
	for _, day := range d.Figures.Practised {
		var kinds []string
		for _, kind := range slices.Sorted(maps.Keys(day.Kinds)) {
			kinds = append(kinds, w.Say("kind-times", "kind", sayKind(w, kind), "n", day.Kinds[kind]))
		}
		it.Rows = append(it.Rows, []string{say.Day(w, day.Day, d.Today), strconv.Itoa(day.Rounds), say.List(w, kinds)})
	}
	return it
}
