package diary

import (
	"cmp"
	"slices"

	"groundbeat/game/riff"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// LeastAnswered is the least number of answers for a share of right ones, and
// LeastTapped the least number of rounds for a share of dums.
const (
	LeastAnswered = stat.LeastTrials
	LeastTapped   = stat.LeastRounds
)

// trial is what one round adds to a share.
type trial struct {
	day, riff string
	right, n  int
	bpm       int // of dums tapped
}

// subject is what a share is about: a rhythm told, or tapped.
type subject struct {
	rhythm string
	tapped bool
}

// Accuracy returns how often rhythms were told and dums tapped on an output.
func (b *Book) Accuracy(output string) []Accuracy {
	trials := map[subject][]trial{}
	for _, r := range b.rounds(output) {
		if s, t, ok := r.trial(); ok {
			trials[s] = append(trials[s], t)
		}
	}
	var all []Accuracy
	for s, of := range trials {
		all = append(all, s.accuracy(of))
	}
	slices.SortFunc(all, func(x, y Accuracy) int {
		return cmp.Or(cmp.Compare(y.Rounds, x.Rounds), cmp.Compare(x.Rhythm, y.Rhythm), compareBool(x.Tapped, y.Tapped))
	})
	return all
}

func compareBool(x, y bool) int {
	switch {
	case x == y:
		return 0
	case y:
		return -1
	}
	return 1
}

// trial returns what the round adds to a share, if anything.
func (r dated) trial() (subject, trial, bool) {
	if r.Untried {
		return subject{}, trial{}, false
	}
	if t := r.Tapped; t != nil {
		n := len(t.Offsets) + t.Out
		return subject{r.Rhythm, true}, trial{r.day, r.Riff, len(t.Offsets), n, t.BPM}, n > 0
	}
	rhythm, told := r.named()
	t := trial{day: r.day, riff: r.Riff, n: 1}
	if r.Right {
		t.right = 1
	}
	return subject{rhythm, false}, t, told
}

func (s subject) accuracy(trials []trial) Accuracy {
	a := Accuracy{Rhythm: s.rhythm, Tapped: s.tapped, Rounds: len(trials), All: s.span(trials)}
	days, byRiff := make([]string, len(trials)), map[string][]trial{}
	for i, t := range trials {
		days[i] = t.day
		byRiff[t.riff] = append(byRiff[t.riff], t)
	}
	for _, part := range stretches(days, s.least(), MostSpans) {
		a.Spans = append(a.Spans, s.span(trials[part.from:part.to]))
	}
	for name, of := range byRiff {
		a.Levels = append(a.Levels, Level{name, s.span(of)})
	}
	slices.SortFunc(a.Levels, func(x, y Level) int { return compareRiffs(x.Riff, y.Riff) })
	return a
}

// least is from how many rounds on a share is known.
func (s subject) least() int {
	if s.tapped {
		return LeastTapped
	}
	return LeastAnswered
}

// span puts trials together.
func (s subject) span(trials []trial) Span {
	p := Span{From: trials[0].day, To: trials[len(trials)-1].day}
	rights, of := make([]int, len(trials)), make([]int, len(trials))
	for i, t := range trials {
		rights[i], of[i] = t.right, t.n
		p.Right, p.N = p.Right+t.right, p.N+t.n
		p.BPM += float64(t.bpm) / float64(len(trials))
	}
	p.Share, p.Full = s.share(p, rights, of), full(trials)
	return p
}

// full is the mean riff level of trials; those of a level that is not known do not count.
func full(trials []trial) float64 {
	sum, n := 0, 0
	for _, t := range trials {
		if level, err := riff.ParseLevel(t.riff); err == nil {
			sum, n = sum+int(level), n+1
		}
	}
	return float64(sum) / float64(max(1, n))
}

func (s subject) share(p Span, rights, of []int) scoring.Estimate {
	if s.tapped {
		return stat.ShareInRounds(rights, of)
	}
	return stat.Share(p.Right, p.N)
}

// compareRiffs puts the names of riff levels in order; unknown ones come last.
func compareRiffs(x, y string) int {
	a, errA := riff.ParseLevel(x)
	b, errB := riff.ParseLevel(y)
	return cmp.Or(compareBool(errA != nil, errB != nil), cmp.Compare(a, b), cmp.Compare(x, y))
}
