package diary

import (
	"cmp"
	"slices"

	"groundbeat/scoring/stat"
)

const (
	// LeastMixed is from how many times on, that a rhythm was played, it is told what
	// it is mixed up with.
	LeastMixed = stat.LeastTrials
	// LatestAnswers is how many answers Mixed goes back for: what was mixed up long
	// ago may be told apart by now.
	LatestAnswers = 300
	// leastSaid is how often a wrong name must be said to be no slip.
	leastSaid = 2
)

// Mixed returns what was said for what was played on an output.
func (b *Book) Mixed(output string) Mixed {
	answers := latestAnswers(b.rounds(output))
	m := Mixed{Rhythms: inMixed(answers)}
	for range m.Rhythms {
		m.Said = append(m.Said, make([]int, len(m.Rhythms)))
	}
	for _, a := range answers {
		played, _ := a.named()
		m.Said[slices.Index(m.Rhythms, played)][slices.Index(m.Rhythms, a.Said)]++
	}
	m.Worst = m.worst()
	return m
}

// latestAnswers returns the latest rounds in which a rhythm was told, of whole days.
func latestAnswers(rounds []dated) []dated {
	n, from := 0, 0
	for i := len(rounds) - 1; i >= 0; i-- {
		if n >= LatestAnswers && rounds[i].day != rounds[i+1].day {
			from = i + 1
			break
		}
		if _, told := rounds[i].named(); told {
			n++
		}
	}
	return slices.DeleteFunc(rounds[from:], func(r dated) bool {
		_, told := r.named()
		return !told
	})
}

// inMixed returns the rhythms played or said, the most played first.
func inMixed(answers []dated) []string {
	often := map[string]int{}
	for _, a := range answers {
		played, _ := a.named()
		often[played]++
		often[a.Said] += 0
	}
	return mostFirst(often)
}

// worst returns the mix-ups, the worst first.
func (m Mixed) worst() []MixUp {
	type ranked struct {
		MixUp
		said, rank int
	}
	var all []ranked
	for i, row := range m.Said {
		played := 0
		for _, n := range row {
			played += n
		}
		for j, n := range row {
			if i != j && played >= LeastMixed && n >= leastSaid {
				up := MixUp{Played: m.Rhythms[i], Said: m.Rhythms[j], Share: stat.Share(n, played)}
				all = append(all, ranked{up, n, len(all)})
			}
		}
	}
	slices.SortFunc(all, func(x, y ranked) int {
		return cmp.Or(cmp.Compare(y.Share.Value, x.Share.Value), cmp.Compare(y.said, x.said), cmp.Compare(x.rank, y.rank))
	})
	var worst []MixUp
	for _, r := range all {
		worst = append(worst, r.MixUp)
	}
	return worst
}
