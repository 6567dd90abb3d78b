package picture

import "groundbeat/game/rhythm"

// isBeat reports whether a count stands on a beat: a figure, not & e a.
func IsBeat(count string) bool { return count != "" && count[0] >= '0' && count[0] <= '9' }

// countName returns how the count of a step is said by itself: "3", or "3 &".
func CountName(counts []string, step int) string {
	for i := min(step, len(counts)-1); i >= 0; i-- {
		if IsBeat(counts[i]) && i < step {
			return counts[i] + " " + counts[step]
		}
		if IsBeat(counts[i]) {
			return counts[i]
		}
	}
	return at(counts, step)
}

func at(counts []string, i int) string {
	if i < 0 || i >= len(counts) {
		return ""
	}
	return counts[i]
}

// beats returns how many beats the counts have.
func Beats(counts []string) int {
	n := 0
	for _, c := range counts {
		if IsBeat(c) {
			n++
		}
	}
	return n
}

// Gap returns how many steps lie between one step and the nearest other one of the
// cycle that has a stroke of some sort, going round; the whole cycle if there is no other.
func Gap(base rhythm.Pattern, step int, of func(rhythm.Stroke) bool) int {
	n := len(base)
	for d := 1; d < n; d++ {
		if of(base[(step+d)%n]) || of(base[(step-d+n)%n]) {
			return d
		}
	}
	return n
}

// CountsOf returns the count of each step of a form.
func CountsOf(f rhythm.Form) []string {
	counts := make([]string, f.Steps())
	for i := range counts {
		counts[i] = f.Count(i)
	}
	return counts
}
