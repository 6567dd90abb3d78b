package recall

import (
	"fmt"
	"math"
)

// Grade is how a meeting went.
type Grade int

const (
	Missed Grade = iota + 1 // wrong
	Labour                  // right, but late or with help
	Right                   // right
	Fluent                  // right at once
)

// Memory is what is known of one thing learnt. The zero Memory is of a thing
// never met.
type Memory struct {
	Stability  float64 // days until it is recalled with probability 0.9; 0.001 to 36,500
	Difficulty float64 // 1 easy to 10 hard
}

// Met reports whether the thing was ever met.
func (m Memory) Met() bool { return m.Stability > 0 }

// Model is the weights of the memory model.
type Model [21]float64

// Default returns the default weights of FSRS-6.
func Default() Model {
	return Model{
		0.212, 1.2931, 2.3065, 8.2956, // stability after the first meeting, by grade
		6.4133, 0.8334, 3.0194, 0.001, // difficulty
		1.8722, 0.1666, 0.796, // stability after a right answer
		1.4835, 0.0614, 0.2629, 1.6483, // after a miss
		0.6014, 1.8729, // Labour and Fluent
		0.5425, 0.0912, 0.0658, // on the same day
		0.1542, // forgetting
	}
}

// The bounds of stability, in days, and of difficulty.
const (
	leastStability, mostStability   = 0.001, 36500
	leastDifficulty, mostDifficulty = 1, 10
)

// Recall returns the probability, 0 to 1, that a thing is recalled so many
// days after it was last met; 0 for one never met.
func (w Model) Recall(m Memory, days float64) float64 {
	if !m.Met() {
		return 0
	}
	return math.Pow(1+w.factor()*max(0, days)/m.Stability, -w[20])
}

// factor is f, by which Recall is 0.9 after as many days as the stability.
func (w Model) factor() float64 { return math.Pow(.9, -1/w[20]) - 1 }

// After returns the memory after a meeting so many days after the last one (of
// no meaning for the first). Less than a day is the same day. It panics on a
// grade that is none and on days that are negative or not finite.
func (w Model) After(m Memory, days float64, g Grade) Memory {
	if g < Missed || g > Fluent {
		panic(fmt.Sprintf("recall: grade %d", int(g)))
	}
	if !(days >= 0) || math.IsInf(days, 0) {
		panic(fmt.Sprintf("recall: %v days", days))
	}
	if !m.Met() {
		return bounded(w[g-1], w.firstDifficulty(g))
	}
	return bounded(w.nextStability(m, days, g), w.nextDifficulty(m.Difficulty, g))
}

// bounded returns a memory within the bounds.
func bounded(stability, difficulty float64) Memory {
	return Memory{
		Stability:  min(max(stability, leastStability), mostStability),
		Difficulty: min(max(difficulty, leastDifficulty), mostDifficulty),
	}
}

// firstDifficulty is D₀ = w₄ − e^(w₅(G−1)) + 1, not bounded.
func (w Model) firstDifficulty(g Grade) float64 {
	return w[4] - math.Exp(w[5]*float64(g-1)) + 1
}

// nextDifficulty moves the difficulty by −w₆(G−3)(10−D)/9, and then a little,
// w₇, towards that of a thing that was fluent from the first.
func (w Model) nextDifficulty(d float64, g Grade) float64 {
	moved := d - w[6]*float64(g-Right)*(10-d)/9
	return w[7]*w.firstDifficulty(Fluent) + (1-w[7])*moved
}

func (w Model) nextStability(m Memory, days float64, g Grade) float64 {
	switch {
	case days < 1:
		return w.sameDay(m.Stability, g)
	case g == Missed:
		return w.missed(m, w.Recall(m, days))
	}
	return w.recalled(m, w.Recall(m, days), g)
}

// sameDay is S e^(w₁₇(G−3+w₁₈)) S^(−w₁₉), and not less than S for a right
// answer.
func (w Model) sameDay(s float64, g Grade) float64 {
	gain := math.Exp(w[17]*(float64(g-Right)+w[18])) * math.Pow(s, -w[19])
	if g >= Right {
		gain = max(gain, 1)
	}
	return s * gain
}

// missed is w₁₁ D^(−w₁₂) ((S+1)^w₁₃ − 1) e^(w₁₄(1−R)), and not more than what a
// miss on the same day would leave.
func (w Model) missed(m Memory, r float64) float64 {
	s := w[11] * math.Pow(m.Difficulty, -w[12]) * (math.Pow(m.Stability+1, w[13]) - 1) * math.Exp(w[14]*(1-r))
	return min(s, m.Stability/math.Exp(w[17]*w[18]))
}

// recalled is S (1 + e^w₈ (11−D) S^(−w₉) (e^(w₁₀(1−R)) − 1) · w₁₅ or w₁₆).
func (w Model) recalled(m Memory, r float64, g Grade) float64 {
	gain := math.Exp(w[8]) * (11 - m.Difficulty) * math.Pow(m.Stability, -w[9]) * math.Expm1(w[10]*(1-r))
	switch g {
	case Labour:
		gain *= w[15]
	case Fluent:
		gain *= w[16]
	}
	return m.Stability * (1 + gain)
}
