package diary

import (
	"cmp"
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// LatestRounds is how many rounds of a rhythm Fingers rest on at most: hands change.
const LatestRounds = 60

// Fingers returns how taps lay about the dums of each rhythm on an output. It rests on
// the rounds that came out right: in others a tap may lie beside a dum by accident.
func (b *Book) Fingers(output string) []Fingers {
	rounds, practised := map[string][]dated{}, map[string]int{}
	for _, r := range b.rounds(output) {
		if r.Tapped != nil && r.Right && !r.Tapped.Coarse {
			rounds[r.Rhythm] = append(rounds[r.Rhythm], r)
			practised[r.Rhythm]++
		}
	}
	var all []Fingers
	for _, id := range mostFirst(practised) {
		of := rounds[id]
		all = append(all, b.fingers(id, of[max(0, len(of)-LatestRounds):]))
	}
	return all
}

// fingers measures rounds of one rhythm, of which there is one at least.
func (b *Book) fingers(id string, rounds []dated) Fingers {
	f := Fingers{
		Rhythm: id, From: rounds[0].day, To: rounds[len(rounds)-1].day, Rounds: len(rounds),
		Bins: make([]int, 2*Reached/BinWidth),
	}
	cycle := b.cycle(id)
	played := make([]stat.Played, len(rounds))
	for i, r := range rounds {
		f.Taps += len(r.Tapped.Offsets)
		f.Out, f.Added = f.Out+r.Tapped.Out, f.Added+r.Tapped.Added
		for _, o := range r.Tapped.Offsets {
			f.Bins[bin(o)]++
		}
		played[i] = r.Tapped.played(cycle)
	}
	m := stat.OfRounds(played)
	f.Bias, f.Spread = m.Bias, m.Spread
	if cycle != nil {
		f.Counts = counts(cycle, m.Counts)
	}
	return f
}

// bin returns the bin of an offset in µs.
func bin(offset int) int {
	const width = BinWidth * 1000
	from := offset + Reached*1000
	return min(max(0, from)/width, 2*Reached/BinWidth-1)
}

// counts gives the dums of a cycle what was measured of them.
func counts(c *rhythm.Cycle, measured []scoring.Estimate) []Count {
	var all []Count
	for k, step := range c.Dums() {
		count := Count{Step: step, Offset: scoring.Unknown(0, LeastTapped)}
		if k < len(measured) {
			count.Offset = measured[k]
		}
		all = append(all, count)
	}
	return all
}

// played returns the taps as package stat measures them. The strokes are those that
// were tapped.
func (t *tapped) played(c *rhythm.Cycle) stat.Played {
	p := stat.Played{Pairs: make([]scoring.Pair, len(t.Offsets)), Counts: t.counts(c)}
	for i, o := range t.Offsets {
		p.Pairs[i] = scoring.Pair{Stroke: i, Tap: i, Offset: time.Duration(o) * time.Microsecond}
	}
	return p
}

// counts returns which dum of the cycle each tap belongs to, or nil where that is not
// certain.
//
// A round begins with whole cycles: the drummer breaks off and rolls at the ends of
// phrases only. So the first dum that is asked for is the first of the cycle, and all
// others must lie on dums from there. Where they do not, the only other first dum
// with which they do is taken; where several would fit, none.
func (t *tapped) counts(c *rhythm.Cycle) []int {
	if c == nil || t.Places == nil {
		return nil
	}
	dums := c.Dums()
	var fit [][]int
	for k := range dums {
		if all := t.countsFrom(c, dums, k); all != nil {
			fit = append(fit, all)
			if k == 0 {
				break
			}
		}
	}
	if len(fit) != 1 {
		return nil
	}
	return fit[0]
}

// countsFrom is counts if the first dum asked for is the cycle's kth, nil where that is
// impossible.
func (t *tapped) countsFrom(c *rhythm.Cycle, dums []int, k int) []int {
	quarters := 4 / c.StepsPerBeat() // in a step
	all := make([]int, len(t.Places))
	at := dums[k] * quarters
	for i, place := range t.Places {
		at += place
		if at%quarters != 0 {
			return nil
		}
		dum, found := slices.BinarySearchFunc(dums, at/quarters%c.Steps(), cmp.Compare[int])
		if !found {
			return nil
		}
		all[i] = dum
	}
	return all
}
