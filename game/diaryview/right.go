package diaryview

import (
	"math"

	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// rights are the figures of accuracy of one kind: told by name, or tapped.
func (d *Diary) rights(tapped bool) []diary.Accuracy {
	var all []diary.Accuracy
	for _, a := range d.Figures.Accuracy {
		if a.Tapped == tapped {
			all = append(all, a)
		}
	}
	return all
}

// right draws how often one rhythm was right, over the same days as the others.
func (d *Diary) right(w say.Words, a diary.Accuracy, days timeline) *picture.Picture {
	t := &trend{title: d.name(a.Rhythm), low: 0, high: 1, deep: panelDeep, days: days, points: points(a),
		from: say.Day(w, days.first, d.Today), to: say.Day(w, days.last, d.Today),
		rules: []rule{{1, w.Say("right-all"), true}, {0.5, w.Say("right-half"), true}, {0, w.Say("right-none"), true}}}
	known := t.known()
	t.value = sayShare(w, known[len(known)-1].Value)
	p := &picture.Picture{}
	t.draw(p)
	p.Twin = sayRight(w, a.Tapped, known, d.Today)
	return p
}

// points are the stretches of days that tell enough; if none does, all together.
func points(a diary.Accuracy) []point {
	var all []point
	for _, s := range a.Spans {
		if s.Share.Known {
			all = append(all, point{s.From, s.To, s.Share})
		}
	}
	if len(all) == 0 {
		return []point{{a.All.From, a.All.To, a.All.Share}}
	}
	return all
}

func sayRight(w say.Words, tapped bool, known []point, today string) string {
	var all []string
	for _, at := range known {
		all = append(all, w.Say("trend-days", "days", say.Days(w, at.from, at.to, today),
			"value", sayShare(w, at.Value), "between", sayBetween(w, at.Estimate)))
	}
	if tapped {
		return w.Say("tapped-twin", "list", say.List(w, all))
	}
	return w.Say("right-twin", "list", say.List(w, all))
}

// sayShare says a part: "36 %".
func sayShare(w say.Words, part float64) string { return w.Say("percent", "n", ofHundred(part)) }

// ofHundred is a part in whole hundredths.
func ofHundred(part float64) int { return int(math.Round(100 * part)) }

// sayBetween says the interval of a part: "67 to 91 %".
func sayBetween(w say.Words, e scoring.Estimate) string {
	return w.Say("percent-between", "low", ofHundred(e.Low), "high", ofHundred(e.High))
}

// findRight says the one thing that accuracy tells of rhythms: which one has become
// surer since the first stretch of days, or less sure of what was no harder; else which one is surer than
// another; else that they are alike as far as this tells. Two are told apart only
// where their intervals do not meet.
func (d *Diary) findRight(w say.Words, tapped bool) finding {
	all := known(d.rights(tapped), func(a diary.Accuracy) bool { return a.All.Share.Known })
	if len(all) == 0 {
		return finding{}
	}
	if which, was, is := changed(all); which != "" {
		return d.sayChanged(w, tapped, which, was, is)
	}
	best, least := all[0], all[0]
	for _, a := range all {
		if a.All.Share.Low > best.All.Share.Low {
			best = a
		}
		if a.All.Share.High < least.All.Share.High {
			least = a
		}
	}
	switch {
	case apart(least.All.Share, best.All.Share):
		return d.sayApart(w, best, least)
	case len(all) == 1 && tapped:
		return finding{text: w.Say("tapped-one", "rhythm", d.name(all[0].Rhythm), "between", sayBetween(w, all[0].All.Share))}
	case len(all) == 1:
		return finding{text: w.Say("right-one", "rhythm", d.name(all[0].Rhythm), "between", sayBetween(w, all[0].All.Share))}
	case tapped:
		return finding{text: w.Say("tapped-alike"), claims: []claim{{says: saysAlike, skill: skillDums}}}
	}
	return finding{text: w.Say("right-alike"), claims: []claim{{says: saysAlike, skill: skillNames}}}
}

// Two stretches of days are compared as they are if their riffs differ by less than
// likeRiffs of a level and their tempi by less than likeTempi. Own choices.
const likeRiffs, likeTempi = 0.5, 0.05

// harder reports whether the riffs of b were fuller than those of a, or its tempi faster.
func harder(a, b diary.Span) bool {
	return b.Full-a.Full > likeRiffs || b.BPM > (1+likeTempi)*a.BPM
}

// changed is the rhythm that has changed most since the first stretch of days, as it was
// and as it is; "" where none has beyond doubt. That less was
// right of what was harder, or more of what was easier, is no change of the player's.
func changed(all []diary.Accuracy) (which string, was, is float64) {
	most := 0.0
	for _, a := range all {
		spans := known(a.Spans, func(s diary.Span) bool { return s.Share.Known })
		if len(spans) == 0 {
			continue
		}
		first, last := spans[0], spans[len(spans)-1]
		by := last.Share.Value - first.Share.Value
		if by < 0 && harder(first, last) || by > 0 && harder(last, first) {
			continue
		}
		if (apart(first.Share, last.Share) || apart(last.Share, first.Share)) && math.Abs(by) > most {
			most, which, was, is = math.Abs(by), a.Rhythm, first.Share.Value, last.Share.Value
		}
	}
	return which, was, is
}

func (d *Diary) sayChanged(w say.Words, tapped bool, rhythm string, was, is float64) finding {
	c := claim{says: saysMore, rhythm: rhythm, part: is}
	if is < was {
		c.says = saysLess
	}
	name, then, now := d.name(rhythm), sayShare(w, was), sayShare(w, is)
	switch {
	case !tapped && is > was:
		return finding{w.Say("right-surer", "rhythm", name, "was", then, "is", now), []claim{c}}
	case !tapped:
		return finding{w.Say("right-less", "rhythm", name, "was", then, "is", now), []claim{c}}
	}
	c.skill = skillDums
	if is > was {
		return finding{w.Say("tapped-more", "rhythm", name, "was", then, "is", now), []claim{c}}
	}
	return finding{w.Say("tapped-fewer", "rhythm", name, "was", then, "is", now), []claim{c}}
}

func (d *Diary) sayApart(w say.Words, best, least diary.Accuracy) finding {
	of, high, low := skillNames, best.All.Share.Value, least.All.Share.Value
	text := w.Say("right-apart", "most", d.name(best.Rhythm), "least", d.name(least.Rhythm), "high", sayShare(w, high), "low", sayShare(w, low))
	if best.Tapped {
		of = skillDums
		text = w.Say("tapped-apart", "most", d.name(best.Rhythm), "least", d.name(least.Rhythm), "high", sayShare(w, high), "low", sayShare(w, low))
	}
	return finding{text, []claim{{says: saysMost, skill: of, rhythm: best.Rhythm, part: high}, {says: saysLeast, skill: of, rhythm: least.Rhythm, part: low}}}
}

// apart reports whether all of a's interval lies below b's.
func apart(a, b scoring.Estimate) bool { return a.Known && b.Known && a.High < b.Low }

// known are those of which the figure is known.
func known[T any](all []T, is func(T) bool) []T {
	var some []T
	for _, one := range all {
		if is(one) {
			some = append(some, one)
		}
	}
	return some
}

// rightTable is the pictures of accuracy as a table.
func (d *Diary) rightTable(w say.Words, id string, tapped bool) view.Item {
	name, right := w.Say("table-right"), w.Say("column-right")
	if tapped {
		name, right = w.Say("table-tapped"), w.Say("column-not-missed")
	}
	it := view.Item{ID: id, Role: view.RoleTable, Name: name, Columns: []string{
		w.Say("rhythm"), w.Say("column-days"), right, w.Say("column-between")}}
	for _, a := range d.rights(tapped) {
		for _, s := range a.Spans {
			row := []string{d.name(a.Rhythm), say.Days(w, s.From, s.To, d.Today), view.None, w.Say("too-few-yet")}
			if s.Share.Known {
				row[2], row[3] = w.Say("of", "n", s.Right, "of", s.N), sayBetween(w, s.Share)
			}
			it.Rows = append(it.Rows, row)
		}
	}
	return it
}
