package audio

import (
	"cmp"
	"math"
	"slices"
)

// A zero is a mode of the ideal round membrane: m nodal diameters, n nodal
// circles (the rim counts), and j, the n-th positive zero of the Bessel
// function J_m. The frequency of the ideal mode is in proportion to j.
type zero struct {
	m, n int
	j    float64
}

// zeros returns the count lowest modes, lowest first (Abramowitz & Stegun,
// "Handbook of Mathematical Functions", 1964, table 9.5). It brackets each
// zero by a sign change and halves the bracket.
func zeros(count int) []zero {
	// About j²/8 modes lie below j (Weyl's law, counting the two of each
	// m > 0 as one), somewhat fewer where the rim tells: hence the 4.
	limit := 4 + math.Sqrt(8*float64(count))
	var all []zero
	for m := 0; float64(m) < limit; m++ {
		all = appendZeros(all, m, limit)
	}
	slices.SortFunc(all, func(a, b zero) int { return cmp.Compare(a.j, b.j) })
	return all[:count]
}

// appendZeros appends the zeros of J_m below limit. No zero lies below m, and
// no two of one m are closer than 3 apart, so that steps of one half miss none.
func appendZeros(all []zero, m int, limit float64) []zero {
	const step = 0.5
	n := 0
	here := math.Jn(m, float64(m)+step)
	for x := float64(m) + step; x < limit; x += step {
		next := math.Jn(m, x+step)
		if here*next < 0 {
			n++
			all = append(all, zero{m, n, bisect(m, x, x+step, here < 0)})
		}
		here = next
	}
	return all
}

// bisect returns the zero between lo and hi, within 10⁻¹².
func bisect(m int, lo, hi float64, rising bool) float64 {
	for range 40 {
		mid := lo + (hi-lo)/2
		if (math.Jn(m, mid) < 0) == rising {
			lo = mid
		} else {
			hi = mid
		}
	}
	return lo + (hi-lo)/2
}

// norm returns the factor that gives the mode's shape a mean square of one
// over the head (Fletcher & Rossing, ch. 3).
func (z zero) norm() float64 {
	f := 1 / math.Abs(math.Jn(z.m+1, z.j))
	if z.m > 0 {
		f *= math.Sqrt2
	}
	return f
}
