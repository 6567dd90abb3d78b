package coach

import (
	"cmp"
	"math"
	"slices"

	"groundbeat/game/diary"
	"groundbeat/game/riff"
	"groundbeat/scoring/recall"
)

// Retain is the probability of being told right at which a rhythm is due again:
// lower than the usual 0.9, since there is little time and much to practise. Chosen.
const Retain = 0.85

// Due is a rhythm at a riff level that was learnt once and is due again.
type Due struct {
	Rhythm string
	Level  riff.Level
	Days   int     // since it was last met
	Recall float64 // probability, 0 to 1, that it is told right today
}

// DueOn returns what is due on a day (2006-01-02), the most forgotten first, from
// what came of each rhythm and level day by day, in any order. One day is one
// meeting. What has no day, no level or no rounds is passed over, and so is what
// came after that day: a clock was wrong.
func DueOn(met []diary.Met, today string) []Due {
	now := parseDay(today)
	if now == 0 {
		return nil
	}
	var all []Due
	for what, days := range byDay(met, now) {
		if d := what.on(now, days); millionths(d.Recall) <= millionths(Retain) {
			all = append(all, d)
		}
	}
	slices.SortFunc(all, func(a, b Due) int {
		// Not to the last bits, which may differ between machines.
		return cmp.Or(cmp.Compare(millionths(a.Recall), millionths(b.Recall)), cmp.Compare(a.Rhythm, b.Rhythm), cmp.Compare(a.Level, b.Level))
	})
	return all
}

func millionths(p float64) int { return int(math.Round(p * 1e6)) }

// learnt is what has a memory of its own.
type learnt struct {
	rhythm string
	level  riff.Level
}

// meeting is what came of it on a day.
type meeting struct {
	day      day
	right, n int
}

// byDay returns the meetings of each, one a day, in order.
func byDay(met []diary.Met, now day) map[learnt][]meeting {
	all := map[learnt][]meeting{}
	for _, m := range met {
		level, err := riff.ParseLevel(m.Riff)
		on := parseDay(m.Day)
		if err != nil || on == 0 || on > now || m.Rhythm == "" || m.Right < 0 || m.Right > m.N || m.N == 0 {
			continue
		}
		what := learnt{m.Rhythm, level}
		i := slices.IndexFunc(all[what], func(o meeting) bool { return o.day == on })
		if i < 0 {
			all[what] = append(all[what], meeting{on, m.Right, m.N})
			continue
		}
		all[what][i].right += m.Right
		all[what][i].n += m.N
	}
	for _, days := range all {
		slices.SortFunc(days, func(a, b meeting) int { return cmp.Compare(a.day, b.day) })
	}
	return all
}

// on returns how a thing stands on a day after its meetings, of which there is one.
func (l learnt) on(now day, days []meeting) Due {
	model := recall.Default()
	var m recall.Memory
	last := days[0].day
	for _, d := range days {
		m = model.After(m, float64(d.day.since(last)), d.grade())
		last = d.day
	}
	since := now.since(last)
	return Due{Rhythm: l.rhythm, Level: l.level, Days: since, Recall: model.Recall(m, float64(since))}
}

// grade is how a day's meeting went, by the share of right rounds: missed below six
// in ten, which guessing reaches; fluent only if all of four or more were right.
func (m meeting) grade() recall.Grade {
	switch {
	case 10*m.right < 6*m.n:
		return recall.Missed
	case 10*m.right < 8*m.n:
		return recall.Labour
	case m.right == m.n && m.n >= 4:
		return recall.Fluent
	}
	return recall.Right
}
