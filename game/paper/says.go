package paper

import (
	"math"
	"slices"
	"strconv"

	"groundbeat/game/rhythm"
)

// says is what of some answers was heard.
func (e *Ear) says(offered []string) string {
	heard := e.all()
	switch {
	case slices.Contains(offered, "dum"):
		return map[bool]string{true: "dum", false: "tek"}[heard[0].Low()]
	case slices.Contains(offered, "same"):
		return map[bool]string{true: "same", false: "different"}[twice(heard)]
	case e.noticed > 0:
		return e.became(offered)
	}
	if _, err := strconv.Atoi(offered[0]); err == nil {
		return strconv.Itoa(len(e.strokes(rhythm.Stroke.Low, true, e.since, e.b.Wall.Now())))
	}
	return e.which(offered, heard)
}

// twice reports whether the same was heard twice.
func twice(heard []Strike) bool {
	half := len(heard) / 2
	if len(heard)%2 != 0 {
		return false
	}
	for i := range half {
		a, b := heard[i], heard[half+i]
		if a.Low() != b.Low() || math.Abs((a.At-heard[0].At)-(b.At-heard[half].At)) > near {
			return false
		}
	}
	return true
}

// which of some rhythms fits what was heard best, at whatever tempo.
func (e *Ear) which(offered []string, heard []Strike) string {
	return slices.MinFunc(offered, func(a, b string) int {
		return compare(misfit(e.b.Cycle(a), heard), misfit(e.b.Cycle(b), heard))
	})
}

func compare(a, b float64) int {
	switch {
	case a < b:
		return -1
	case a > b:
		return 1
	}
	return 0
}

// misfit is how far what was heard lies from a rhythm, in ms: the root mean square at
// the tempo at which first and last stroke fall together; infinite where there is a dum
// for a tek.
func misfit(c *rhythm.Cycle, heard []Strike) float64 {
	steps := strokes(c)
	place := func(i int) float64 { return float64(i/len(steps)*c.Steps() + steps[i%len(steps)] - steps[0]) }
	last := len(heard) - 1
	step := (heard[last].At - heard[0].At) / place(last)
	sum := 0.0
	for i, h := range heard {
		if h.Low() != c.Skeleton[steps[i%len(steps)]].Low() {
			return math.Inf(1)
		}
		sum += math.Pow(h.At-heard[0].At-place(i)*step, 2)
	}
	return math.Sqrt(sum / float64(len(heard)))
}

// became is which of some rhythms it has become: the one with the fewest strokes too
// many or too few, from the start of the eight in which it was another.
func (e *Ear) became(offered []string) string {
	s, _ := e.read()
	eight := s.ms(s.CyclesIn(1) * s.Steps())
	from := s.first + math.Floor((e.noticed-s.first+near)/eight)*eight
	heard := e.base(from-near, e.b.Wall.Now())
	wrong := func(id string) (n float64) {
		other := score{Cycle: e.b.Cycle(id), first: from, ends: heard[len(heard)-1].At + near}
		other.step = s.ms(s.StepsPerBeat()) / float64(other.StepsPerBeat())
		for _, h := range heard {
			if !other.plays(h) {
				n++
			}
		}
		for k := 0; ; k++ {
			for _, step := range strokes(other.Cycle) {
				due := from + other.ms(k*other.Steps()+step)
				if due > other.ends {
					return n
				}
				if !slices.ContainsFunc(heard, func(h Strike) bool { return math.Abs(h.At-due) < near }) {
					n++
				}
			}
		}
	}
	return slices.MinFunc(offered, func(a, b string) int { return compare(wrong(a), wrong(b)) })
}
