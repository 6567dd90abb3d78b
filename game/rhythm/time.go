package rhythm

import (
	"math"
	"math/bits"
	"time"
)

// maxRate bounds bpm in At, far above anything played, so that the division
// cannot overflow.
const maxRate = 1_000_000

// At returns the time of a step from step 0 at bpm beats a minute (of
// [Tempo].Beat), to the nearest nanosecond:
//
//	step · 60·10⁹ / (bpm · steps per beat)
//
// It is computed in integers from the step's own number and rounded once, half
// away from zero, so that no error adds up however long the piece. Steps beyond
// the cycle lie in later cycles, negative steps before step 0 (−).
//
// The product is held in 128 bits; only the result is limited, to ±292 years.
// At panics beyond that, and for a bpm outside 1 to 1,000,000: both are the
// caller's mistakes.
func (c *Cycle) At(step, bpm int) time.Duration {
	return c.Base().At(step, bpm)
}

// Length returns the time of one cycle at bpm beats a minute, to the nearest
// nanosecond. n cycles last At(n·Steps(), bpm), which rounds once, not n·Length.
func (c *Cycle) Length(bpm int) time.Duration { return c.At(c.Steps(), bpm) }

// divide returns steps of a minute divided by rate, rounded half up.
func divide(steps, rate uint64) time.Duration {
	high, low := bits.Mul64(steps, uint64(time.Minute))
	low, carry := bits.Add64(low, rate/2, 0)
	high += carry
	if high >= rate {
		panic("rhythm: step beyond 292 years")
	}
	quotient, _ := bits.Div64(high, low, rate)
	if quotient > math.MaxInt64 {
		panic("rhythm: step beyond 292 years")
	}
	return time.Duration(quotient)
}
