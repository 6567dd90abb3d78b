package clock

import "math/bits"

// jump is the change of offset between neighbouring readings, in ms, that
// counts as scatter. Steady devices hold ±0.1 ms, read in units of 0.1 ms.
const jump = 0.25

// scatter tells noisy readings from steady ones by themselves: it remembers
// for the last 64 readings whether each jumped from its predecessor. A step
// is one jump; noise jumps most of the time.
type scatter struct {
	jumps uint64 // newest in bit 0
	n     int    // of the last 64
	noisy bool
}

// add notes the change of offset (ms, not negative) and reports whether the
// judgement changed. Noisy: more than a quarter jumped, from the fourth change
// on, so that the first readings of a noisy device are not believed for long.
// Steady again: fewer than one in twenty of a full 64.
func (s *scatter) add(change float64) bool {
	s.jumps <<= 1
	if change > jump {
		s.jumps |= 1
	}
	s.n = min(s.n+1, 64)
	ones := bits.OnesCount64(s.jumps)
	switch {
	case !s.noisy && s.n >= 4 && ones*4 > s.n:
		s.noisy = true
		return true
	case s.noisy && s.n == 64 && ones*20 < s.n:
		s.noisy = false
		return true
	}
	return false
}
