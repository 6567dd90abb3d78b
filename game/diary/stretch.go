package diary

import "time"

// MostSpans is the most stretches that one thing is shown in. Where weeks would make
// more of them, two weeks are taken as one, or four, and so on.
const MostSpans = 26

// MostHeard is MostSpans for Reach, whose numbers take longer to find.
const MostHeard = 12

// stretch is a run of trials, [from, to) of those given.
type stretch struct{ from, to int }

// stretches parts trials, given by their days (ascending), into runs of whole weeks,
// Monday to Sunday, with at least so many trials each, and most runs at most. A run
// ends with the first week in which it has enough; what is left at the end belongs to
// the last. So the stretches of long ago stay as they were while new days come.
func stretches(days []string, least, most int) []stretch {
	for weeks := 1; ; weeks *= 2 {
		if all := byWeeks(days, weeks, least); len(all) <= most {
			return all
		}
	}
}

func byWeeks(days []string, weeks, least int) []stretch {
	var all []stretch
	from := 0
	for i := range days {
		last := i == len(days)-1
		switch {
		case !last && (days[i] == days[i+1] || week(days[i])/weeks == week(days[i+1])/weeks):
		case i+1-from >= least || last && len(all) == 0:
			all, from = append(all, stretch{from, i + 1}), i+1
		case last:
			all[len(all)-1].to = i + 1
		}
	}
	return all
}

// week numbers the weeks; a week begins on a Monday. 1970 began on a Thursday.
func week(day string) int {
	t, err := time.Parse(time.DateOnly, day)
	if err != nil {
		panic("diary: " + err.Error()) // days are checked when they come in
	}
	days := int(t.Unix() / (24 * 3600)) // from 1970 on; before that rounded up
	return (days + 3) / 7
}
