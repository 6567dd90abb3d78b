package stat

import (
	"math"
	"slices"

	"groundbeat/scoring"
)

// LeastInformation is the least number of answers for [Transmitted]: with 60
// its intervals held the true number in 93 to 99 of 100 simulated cases, among
// two to four rhythms and whether much or little came through, with 40 only in
// 85.
const LeastInformation = 60

// Transmission is how much of what was played came through in what was said.
type Transmission struct {
	// Bits is the information transmitted, less its bias in small samples: 0
	// nothing came through, 1 one of two families of rhythms was told.
	Bits scoring.Estimate
	// Plain is the same with its bias, which is always upward.
	Plain float64
	// Played is the information in what was played: what could have come
	// through at most. Of four rhythms played equally often it is 2.
	Played float64
}

// Transmitted returns the mutual information of what was played and what was
// said, in bits,
//
//	I = Σ p(i,j) log₂ p(i,j)/(p(i)p(j))
//
// (Miller and Nicely, An analysis of perceptual confusions among some English
// consonants, JASA 27, 338–352, 1955): who confuses the members of a family but
// never the families has lost only the bits within. Bits is I less
//
//	(r−1)(c−1) / (2n ln 2)
//
// with the numbers of rows and columns that are not empty, and not below 0
// (Miller, Note on the bias of information estimates, in Quastler, Information
// Theory in Psychology, 95–100, 1955). With Madow's count of the cells that are
// not empty in place of all, as is also done, 0.03 to 0.08 bits of bias are left
// with 60 answers among four rhythms, and 0.01 to 0.03 with this.
//
// The interval is Bits ± 1.96 √(v + (r−1)(c−1)/2(n ln 2)²), not below 0 nor
// above Played, with the variance v of the jackknife over answers (Miller, The
// jackknife: a review, Biometrika 61, 1–15, 1974) and the variance that I has
// where nothing comes through, when the first is too small.
func Transmitted(c Confusions) Transmission {
	p, played, said, n := c.shares()
	t := Transmission{Plain: information(p, played, said), Played: entropy(played), Bits: scoring.Unknown(n, LeastInformation)}
	if n < LeastInformation {
		return t
	}
	freedom := float64((filled(played) - 1) * (filled(said) - 1))
	scale := float64(n) * math.Ln2
	value := min(max(0, t.Plain-freedom/(2*scale)), t.Played)
	half := normal * math.Sqrt(c.jackknife(n)+freedom/(2*scale*scale))
	t.Bits = scoring.Estimated(value, max(0, value-half), min(value+half, t.Played), n, LeastInformation)
	return t
}

// information returns the mutual information of a table of shares, in bits.
func information(p [][]float64, played, said []float64) float64 {
	var bits float64
	for i := range p {
		for j, v := range p[i] {
			if v > 0 {
				bits += v * math.Log2(v/(played[i]*said[j]))
			}
		}
	}
	return max(0, bits) // −1e−17
}

// jackknife returns the variance of the information: it is found anew without
// each answer in turn, once for those alike.
func (c Confusions) jackknife(n int) float64 {
	var sum, squares float64
	for i, row := range c {
		for j, k := range row {
			if k == 0 {
				continue
			}
			p, played, said, _ := c.without(i, j).shares()
			bits := information(p, played, said)
			sum += float64(k) * bits
			squares += float64(k) * bits * bits
		}
	}
	f := float64(n)
	return max(0, squares/f-sum/f*sum/f) * (f - 1)
}

// without returns the table without one answer.
func (c Confusions) without(i, j int) Confusions {
	rest := make(Confusions, len(c))
	for k := range c {
		rest[k] = slices.Clone(c[k])
	}
	rest[i][j]--
	return rest
}

// entropy returns −Σ p log₂ p.
func entropy(p []float64) float64 {
	var h float64
	for _, v := range p {
		if v > 0 {
			h -= v * math.Log2(v)
		}
	}
	return h
}

// filled counts what is above 0.
func filled(p []float64) int {
	n := 0
	for _, v := range p {
		if v > 0 {
			n++
		}
	}
	return n
}
