package diaryview

import (
	"groundbeat/game/diary"
	"groundbeat/game/picture"
	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// hideFilled is the most that a filled lead drum hides (package riff).
const hideFilled = 0.15

// hideTop is the top of the scale: few riffs hide more.
const hideTop = 0.75

// reachLevel is the plainest riff level that hides the base so far, as a rule.
func reachLevel(hide float64) string {
	switch {
	case hide < riff.HideLittle:
		return view.LevelBare
	case hide < hideFilled:
		return view.LevelFilled
	case hide < riff.HideSome:
		return view.LevelOrnamented
	case hide < riff.HideMuch:
		return view.LevelRiffing
	}
	return view.LevelSolo
}

// reachRules divide the scale where one level gives way to the next, each level's
// word in the middle of its part.
func reachRules(w say.Words) []rule {
	return []rule{
		{0, w.Say("level-bare"), true},
		{(riff.HideLittle + hideFilled) / 2, w.Say("level-filled"), false}, {hideFilled, "", true},
		{(hideFilled + riff.HideSome) / 2, w.Say("level-ornamented"), false}, {riff.HideSome, "", true},
		{(riff.HideSome + riff.HideMuch) / 2, w.Say("level-riffing"), false}, {riff.HideMuch, "", true},
		{(riff.HideMuch + hideTop) / 2, w.Say("level-solo"), false},
	}
}

// reached draws how much riff is heard through in one kind of round.
func (d *Diary) reached(w say.Words, r diary.Reach, days timeline) *picture.Picture {
	t := &trend{title: sayKind(w, r.Kind), low: 0, high: hideTop, deep: 0.6, days: days, rules: reachRules(w),
		from: say.Day(w, days.first, d.Today), to: say.Day(w, days.last, d.Today),
		points: heards(r, d.Today)}
	if level := reachLevel(r.Now.Low); level == reachLevel(r.Now.High) {
		t.value = levelName(w, level)
	}
	p := &picture.Picture{}
	t.draw(p)
	p.Twin = d.sayReached(w, t.known())
	return p
}

// heards are the stretches of days that tell enough; if none does, the latest answers.
func heards(r diary.Reach, today string) []point {
	var all []point
	for _, s := range r.Spans {
		if s.Hide.Known {
			all = append(all, point{s.From, s.To, s.Hide})
		}
	}
	if len(all) == 0 {
		return []point{{today, today, r.Now}}
	}
	return all
}

func (d *Diary) sayReached(w say.Words, known []point) string {
	var all []string
	for _, at := range known {
		all = append(all, w.Say("trend-days", "days", say.Days(w, at.from, at.to, d.Today),
			"value", levelName(w, reachLevel(at.Value)), "between", sayLevels(w, at.Estimate)))
	}
	return w.Say("reach-twin", "list", say.List(w, all))
}

// levelName is the name of a riff level.
func levelName(w say.Words, level string) string {
	name, _ := view.SayLevel(w, level)
	return name
}

// sayLevels says the levels from the low to the high end of an interval.
func sayLevels(w say.Words, e scoring.Estimate) string {
	low, high := levelName(w, reachLevel(e.Low)), levelName(w, reachLevel(e.High))
	if low == high {
		return low
	}
	return w.Say("from-to", "from", low, "to", high)
}

// findReach says how much riff is heard through, of the kind of round that was
// practised most: whether it has become more, if the intervals of the first and the
// latest days do not meet; and how sure that is.
func (d *Diary) findReach(w say.Words) finding {
	all := known(d.Figures.Reach, func(r diary.Reach) bool { return r.Now.Known })
	if len(all) == 0 {
		return finding{}
	}
	r := all[0]
	spans := heards(r, d.Today)
	now := sayLevels(w, r.Now)
	c := claim{says: saysHeard, kind: r.Kind, level: reachLevel(r.Now.Low)}
	switch first, last := spans[0].Estimate, spans[len(spans)-1].Estimate; {
	case apart(first, last):
		c.says = saysHeardMore
		return finding{w.Say("reach-more", "kind", sayKind(w, r.Kind), "level", now), []claim{c}}
	case apart(last, first):
		c.says = saysHeardLess
		return finding{w.Say("reach-less", "kind", sayKind(w, r.Kind), "level", now), []claim{c}}
	}
	return finding{w.Say("reach-now", "kind", sayKind(w, r.Kind), "level", now), []claim{c}}
}

// reachTable is the pictures of what is heard through as a table.
func (d *Diary) reachTable(w say.Words) view.Item {
	it := view.Item{ID: "reach-table", Role: view.RoleTable, Name: w.Say("reach"), Columns: []string{
		w.Say("column-kind"), w.Say("column-days"), w.Say("level"), w.Say("column-between")}}
	for _, r := range d.Figures.Reach {
		for _, s := range r.Spans {
			row := []string{sayKind(w, r.Kind), say.Days(w, s.From, s.To, d.Today), w.Say("too-few-yet"), view.None}
			if s.Hide.Known {
				row[2], row[3] = levelName(w, reachLevel(s.Hide.Value)), sayLevels(w, s.Hide)
			}
			it.Rows = append(it.Rows, row)
		}
	}
	return it
}

// sayKind says what kind of round it was, as package history names it; one that is not
// known here is called by that name.
func sayKind(w say.Words, kind string) string {
	if _, known := history.KindOf(kind); !known {
		return kind
	}
	if f, _ := quiz.FormOf(quiz.Ask(kind)); f.Rung {
		return view.SayAsk(w, kind)
	}
	return view.SayScreen(w, kind)
}
