package stat

import (
	"gonum.org/v1/gonum/floats"
)

// steadyFrom is the number of intervals in a spell from which on a steady
// change of tempo is taken off: with fewer it would take off too much of what
// is sought.
const steadyFrom = 12

// part is what [Carried] needs of one spell: all in ms.
type part struct {
	left  []float64   // e: the intervals less what is taken off
	clock []float64   // (E/E₀)²
	off   [][]float64 // B: what is taken off, directions that are orthogonal and of length 1
	tempo float64     // k
}

// newPart prepares a spell; one of fewer than three intervals, or with all
// strokes at one time, tells nothing.
func newPart(s Spell, reference float64) (part, bool) {
	n := len(s.Pairs) - 1
	if n < 3 {
		return part{}, false
	}
	expected, between := make([]float64, n), make([]float64, n)
	for i := range n {
		a, b := s.Pairs[i], s.Pairs[i+1]
		expected[i] = milliseconds(s.Strokes[b.Stroke] - s.Strokes[a.Stroke])
		between[i] = expected[i] + milliseconds(b.Offset-a.Offset)
	}
	squares := floats.Dot(expected, expected)
	if squares == 0 {
		return part{}, false
	}
	p := part{clock: make([]float64, n), off: basis(expected), tempo: floats.Dot(between, expected) / squares}
	for i, e := range expected {
		p.clock[i] = e * e / (reference * reference)
	}
	p.left = between
	for _, b := range p.off {
		floats.AddScaled(p.left, -floats.Dot(b, p.left), b)
	}
	return p, true
}

// basis returns the directions that are taken off: the tempo, and from
// steadyFrom intervals on its steady change.
func basis(expected []float64) [][]float64 {
	tempo := scaled(expected)
	if len(expected) < steadyFrom {
		return [][]float64{tempo}
	}
	change, at := make([]float64, len(expected)), 0.
	for i, e := range expected {
		change[i] = e * (at + e/2)
		at += e
	}
	along := floats.Dot(change, tempo)
	for i := range change {
		change[i] -= along * tempo[i]
	}
	return [][]float64{tempo, scaled(change)}
}

// scaled returns x at length 1.
func scaled(x []float64) []float64 {
	length, s := floats.Norm(x, 2), make([]float64, len(x))
	for i, v := range x {
		s[i] = v / length
	}
	return s
}

// found returns Σe² and Σeₙeₙ₊₁.
func (p part) found() sums {
	var s sums
	for i, e := range p.left {
		s[0] += e * e
		if i > 0 {
			s[1] += e * p.left[i-1]
		}
	}
	return s
}

// forms returns the matrices of the quadratic forms Σe² and Σeₙeₙ₊₁ of the
// intervals: with P = I − BBᵀ they are P itself and PSP, where S has ½ beside
// its diagonal, PSP = S − BBᵀS − SBBᵀ + BBᵀSBBᵀ.
func (p part) forms() (squares, products [][]float64) {
	n := len(p.left)
	squares, products = square(n), square(n)
	for i := range n {
		squares[i][i] = 1
		if i > 0 {
			products[i][i-1], products[i-1][i] = .5, .5
		}
	}
	for _, b := range p.off {
		shifted := beside(b)
		addOuter(squares, -1, b, b)
		addOuter(products, -1, b, shifted)
		addOuter(products, -1, shifted, b)
		for _, c := range p.off {
			addOuter(products, floats.Dot(c, shifted), b, c)
		}
	}
	return squares, products
}

func square(n int) [][]float64 {
	a := make([][]float64, n)
	for i := range a {
		a[i] = make([]float64, n)
	}
	return a
}

// beside returns Sb: half the sum of both neighbours.
func beside(b []float64) []float64 {
	s := make([]float64, len(b))
	for i, v := range b {
		if i > 0 {
			s[i-1] += v / 2
		}
		if i < len(b)-1 {
			s[i+1] += v / 2
		}
	}
	return s
}

// addOuter adds f·xyᵀ to a.
func addOuter(a [][]float64, f float64, x, y []float64) {
	for i, v := range x {
		floats.AddScaled(a[i], f*v, y)
	}
}

// expected returns by how much Σe² grows with the clock's and with the hand's
// variance, and Σeₙeₙ₊₁ with each: traces of the form and of the covariance.
func (p part) expected() sums {
	var s sums
	squares, products := p.forms()
	for f, a := range [][][]float64{squares, products} {
		for i := range a {
			s[2*f] += a[i][i] * p.clock[i]
			s[2*f+1] += 2 * a[i][i]
			if i > 0 {
				s[2*f+1] -= 2 * a[i][i-1]
			}
		}
	}
	return s
}

// variances returns the variance of Σe², its covariance with Σeₙeₙ₊₁ (twice)
// and the variance of that, at variances of clock and hand: 2 tr(AΣBΣ).
func (p part) variances(clock, motor float64) sums {
	squares, products := p.forms()
	a, b := p.spread(squares, clock, motor), p.spread(products, clock, motor)
	return sums{2 * crossTrace(a, a), 2 * crossTrace(a, b), 2 * crossTrace(b, a), 2 * crossTrace(b, b)}
}

// spread returns a·Σ for the covariance Σ of the intervals, which is nothing
// beyond the diagonals next to its own.
func (p part) spread(a [][]float64, clock, motor float64) [][]float64 {
	n := len(a)
	out := square(n)
	for i := range n {
		for j := range n {
			out[i][j] = a[i][j] * (clock*p.clock[j] + 2*motor)
			if j > 0 {
				out[i][j] -= a[i][j-1] * motor
			}
			if j < n-1 {
				out[i][j] -= a[i][j+1] * motor
			}
		}
	}
	return out
}

// crossTrace returns the trace of a·b.
func crossTrace(a, b [][]float64) float64 {
	var sum float64
	for i := range a {
		for j := range b {
			sum += a[i][j] * b[j][i]
		}
	}
	return sum
}
