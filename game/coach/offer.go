package coach

import "slices"

// offered are the reasons for which something of a practice is offered by itself, the
// most useful first.
var offered = []Reason{ReasonRung, ReasonDue, ReasonMixUp, ReasonFirst, ReasonEdge, ReasonTempo}

// Offers returns what of the steps of a practice is offered by itself: the first of each
// reason, so many at most, and besides them something that goes well. Each is one step;
// but a rhythm from slow to faster is all of these steps.
func Offers(steps []Step, most int) (all [][]Step) {
	for _, why := range append(slices.Clone(offered), ReasonWell) {
		i := slices.IndexFunc(steps, func(s Step) bool { return s.Reason == why })
		if i >= 0 && (len(all) < most || why == ReasonWell) {
			all = append(all, asOne(steps[i:]))
		}
	}
	return all
}

// asOne are the steps that belong to the first: those of a rhythm from slow to faster.
func asOne(steps []Step) []Step {
	n := 1
	for steps[0].Reason == ReasonTempo && n < len(steps) && steps[n].Reason == ReasonTempo && slices.Equal(steps[n].Rhythms, steps[0].Rhythms) {
		n++
	}
	return steps[:n]
}
