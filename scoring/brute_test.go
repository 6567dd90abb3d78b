package scoring

import (
	"slices"
	"time"
)

// allowed says whether a tap lies in the window of stroke i, straight from
// the definition.
func allowed(strokes []time.Duration, i int, tap, within time.Duration) bool {
	d := tap - strokes[i]
	if d.Abs() > within {
		return false
	}
	if i > 0 { // must be nearer to this stroke than to the one before
		if gap := strokes[i] - strokes[i-1]; d < 0 && 2*-d >= gap || gap == 0 && d <= 0 {
			return false
		}
	}
	if i+1 < len(strokes) { // and not further than from the next
		if gap := strokes[i+1] - strokes[i]; d > 0 && 2*d > gap {
			return false
		}
	}
	return true
}

// brute lists every matching with the most pairs and, of those, the smallest
// sum of |offset|, crossing ones included.
func brute(strokes, taps []time.Duration, within time.Duration) (all [][]Pair, cost time.Duration) {
	most := -1
	used := make([]bool, len(taps))
	var now []Pair
	var try func(i int, sum time.Duration)
	try = func(i int, sum time.Duration) {
		if i == len(strokes) {
			if len(now) > most || len(now) == most && sum < cost {
				most, cost, all = len(now), sum, nil
			}
			if len(now) == most && sum == cost {
				all = append(all, slices.Clone(now))
			}
			return
		}
		try(i+1, sum)
		for j, tap := range taps {
			if used[j] || !allowed(strokes, i, tap, within) {
				continue
			}
			used[j] = true
			now = append(now, Pair{i, j, tap - strokes[i]})
			try(i+1, sum+(tap-strokes[i]).Abs())
			now = now[:len(now)-1]
			used[j] = false
		}
	}
	try(0, 0)
	return all, cost
}

func total(pairs []Pair) (sum time.Duration) {
	for _, p := range pairs {
		sum += p.Offset.Abs()
	}
	return sum
}
