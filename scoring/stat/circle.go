package stat

import (
	"math"
	"time"

	"groundbeat/scoring"
)

// LeastCircle is the least number of directions: from 5 on Rayleigh's test, as
// approximated here, keeps its level (4.8 to 5.3 % at 5 %, 0.9 to 1.0 % at 1 %).
const LeastCircle = 5

// Circle tells where on a circle directions lie, in turns: 0 to 1 once round.
type Circle struct {
	// Mean is the mean direction, 0 or more and less than 1; its interval goes
	// from it to both sides, at most a quarter of a turn, and may pass 0 or 1.
	// It is not known where the directions are so scattered that a quarter
	// turn does not hold the true one.
	Mean scoring.Estimate
	// Resultant is how close together the directions lie: 1 all in one, 0 for
	// directions that cancel out. Its interval is made for directions that
	// are normally distributed and not too scattered; otherwise it is wide.
	Resultant scoring.Estimate
	// Rayleigh is the probability that directions without any preference lie
	// so close together by chance; 1 where there are too few.
	Rayleigh float64
}

// Turns returns where in cycles of a length times lie, in turns from their
// beginning, 0 or more and less than 1. It panics on a length that is not
// above 0.
func Turns(times []time.Duration, cycle time.Duration) []float64 {
	if cycle <= 0 {
		panic("stat: a cycle needs a length")
	}
	turns := make([]float64, len(times))
	for i, t := range times {
		turns[i] = float64(((t%cycle)+cycle)%cycle) / float64(cycle)
	}
	return turns
}

// Around measures independent directions. With the angles θ = 2π·turn,
//
//	C = Σ cos θ, S = Σ sin θ, Mean = atan2(S, C), Resultant R = √(C²+S²)/n
//
// (Mardia and Jupp, Directional Statistics, 2000, §2.3). The interval of Mean
// is ± arcsin(t(n−1) √(δ/(n−1))) with the dispersion δ = (1−m)/2R², m the mean
// of cos 2(θ−Mean) (Fisher and Lewis, Estimating the common mean direction of
// several circular or spherical distributions with differing dispersions,
// Biometrika 70, 333–341, 1983; with t and n−1 in place of the normal quantile
// and n it holds in small samples too). That of Resultant rests on
// ν(1−R)/(1−ρ) being nearly of χ² distribution, with ν = n−1 for close
// directions (Mardia and Jupp, §4.8) and fewer where the sample says that
// 1−R is more uncertain, ν = 2(1−R)²/var R, var R = (1−2R²+m)/2n.
//
// Rayleigh is exp(√(1+4n+4n²(1−R²)) − (1+2n)) (Zar, Biostatistical Analysis,
// 5th ed., 2010, eq. 27.4).
//
// A resultant says nothing across tempi: the same scatter in ms is more of a
// short cycle. Take the beat as cycle, or report ms.
func Around(turns []float64) Circle {
	mustBeFinite("turns", turns)
	n := len(turns)
	if n < LeastCircle {
		none := scoring.Unknown(n, LeastCircle)
		return Circle{none, none, 1}
	}
	direction, r := resultant(turns)
	second := secondMoment(turns, direction)
	return Circle{
		Mean:      meanDirection(direction, r, second, n),
		Resultant: closeness(r, second, n),
		Rayleigh:  rayleigh(r, n),
	}
}

// resultant returns the mean direction in turns, 0 or more and less than 1,
// and the resultant.
func resultant(turns []float64) (direction, r float64) {
	var c, s float64
	for _, t := range turns {
		sin, cos := math.Sincos(2 * math.Pi * t)
		c, s = c+cos, s+sin
	}
	direction = math.Atan2(s, c) / (2 * math.Pi)
	if direction < 0 {
		direction++
	}
	if direction >= 1 { // −1e−20 + 1
		direction = 0
	}
	return direction, min(1, math.Hypot(c, s)/float64(len(turns)))
}

// secondMoment returns the mean cosine of twice the angles from a direction.
func secondMoment(turns []float64, direction float64) float64 {
	var sum float64
	for _, t := range turns {
		sum += math.Cos(4 * math.Pi * (t - direction))
	}
	return sum / float64(len(turns))
}

func meanDirection(direction, r, second float64, n int) scoring.Estimate {
	dispersion := (1 - second) / (2 * r * r)
	sine := student(float64(n-1)) * math.Sqrt(max(0, dispersion)/float64(n-1))
	if !(sine < 1) { // at r = 0 it is infinite or NaN
		return scoring.Unknown(n, LeastCircle)
	}
	half := math.Asin(sine) / (2 * math.Pi)
	return scoring.Estimated(direction, direction-half, direction+half, n, LeastCircle)
}

func closeness(r, second float64, n int) scoring.Estimate {
	f, freedom := float64(n), float64(n-1)
	if variance := (1 - 2*r*r + second) / (2 * f); variance > 0 {
		freedom = max(1, min(freedom, 2*(1-r)*(1-r)/variance))
	}
	few, many := chiSquared(freedom)
	apart := (1 - r) * f / (f - 1) * freedom
	return scoring.Estimated(r, max(0, 1-apart/few), max(0, 1-apart/many), n, LeastCircle)
}

func rayleigh(r float64, n int) float64 {
	f := float64(n)
	return min(1, math.Exp(math.Sqrt(1+4*f+4*f*f*(1-r*r))-(1+2*f)))
}
