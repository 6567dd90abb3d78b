package stat

import (
	"math"

	"groundbeat/scoring"
)

// Trend follows a number over time: an exponentially weighted moving average,
// in which the latest day counts Weight, the one before (1−Weight) Weight, and
// so on:
//
//	zᵢ = λxᵢ + (1−λ)zᵢ₋₁,  var zᵢ = λ² var xᵢ + (1−λ)² var zᵢ₋₁
//
// (Roberts, Control chart tests based on geometric moving averages,
// Technometrics 1, 239–250, 1959; NIST/SEMATECH e-Handbook of Statistical
// Methods, 6.3.2.4). For days of equal variance σ² after a known start var zᵢ is
// σ² λ/(2−λ) (1−(1−λ)²ⁱ). Days are independent; what changes, it follows
// late: 1/λ days make up two thirds of it.
//
// The zero Trend has no weight and cannot be used: begin with [Starting].
type Trend struct {
	Weight   float64 // λ, above 0, at most 1
	Value    float64
	Variance float64 // of Value, for independent days
	Days     int     // that went into it
	begun    bool
}

// Starting returns a Trend without any day. It panics unless 0 < weight ≤ 1.
func Starting(weight float64) Trend {
	if !(weight > 0 && weight <= 1) {
		panic("stat: a weight beyond 0 to 1")
	}
	return Trend{Weight: weight}
}

// From returns the Trend beginning at a value that is known exactly.
func (t Trend) From(value float64) Trend {
	t.Value, t.begun = value, true
	return t
}

// With returns the Trend after a day with a value and its standard error. The
// first day is where a Trend begins that has no other beginning.
func (t Trend) With(value, err float64) Trend {
	mustBeFinite("values", []float64{value, err})
	t.Days++
	if !t.begun {
		t.Value, t.Variance, t.begun = value, err*err, true
		return t
	}
	w, rest := t.Weight, 1-t.Weight
	t.Value = w*value + rest*t.Value
	t.Variance = w*w*err*err + rest*rest*t.Variance
	return t
}

// WithShare returns the Trend of a share after a day with k right of n. Its
// standard error is taken as √(p̃(1−p̃)/n) with the middle p̃ of [Wilson]'s
// interval: with p = k/n it would be 0 on a day without mistakes. It panics
// unless 0 ≤ k ≤ n and n > 0.
func (t Trend) WithShare(k, n int) Trend {
	if n < 1 {
		panic("stat: a day without trials")
	}
	low, high := Wilson(k, n)
	p := (low + high) / 2
	return t.With(float64(k)/float64(n), math.Sqrt(p*(1-p)/float64(n)))
}

// Estimate returns the latest value, ± 1.96 standard errors.
func (t Trend) Estimate() scoring.Estimate {
	if t.Days < 1 {
		return scoring.Unknown(0, 1)
	}
	half := normal * math.Sqrt(t.Variance)
	return scoring.Estimated(t.Value, t.Value-half, t.Value+half, t.Days, 1)
}
