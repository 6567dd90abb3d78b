package history

import (
	"math"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

// Rounded to so many places a number is as near as it can be, is not changed by rounding
// it again, and is never the negative nothing.
func TestTo(t *testing.T) {
	chance := rand.New(rand.NewPCG(2, 1))
	for range 3000 {
		digits := chance.IntN(10)
		x := (chance.Float64() - 0.5) * math.Pow10(chance.IntN(7))
		got := to(x, digits)
		require.LessOrEqual(t, math.Abs(got-x), 0.5*math.Pow10(-digits)+1e-15*math.Abs(x), "%v to %d", x, digits)
		require.Equal(t, got, to(got, digits), "%v to %d", x, digits)
		require.False(t, got == 0 && math.Signbit(got))
	}
	require.False(t, math.Signbit(to(-0.0001, 3)))
	require.Equal(t, 1e300, to(1e300, 3), "what is out of every range stays, and is refused for what it is")
	require.True(t, math.IsInf(to(math.Inf(1), 3), 1))
	require.True(t, math.IsNaN(to(math.NaN(), 3)))
}

// Every number of every kind of round is kept at both ends of its range, and refused
// beyond them and where it is none, by its name.
func TestEveryNumberHasItsRange(t *testing.T) {
	checked := 0
	for _, r := range everyRound(t) {
		for i, f := range r.fields() {
			for _, beyond := range []float64{math.Nextafter(f.lo, math.Inf(-1)) - 1, f.hi*1.0001 + 1, math.NaN(), math.Inf(1), math.Inf(-1)} {
				other := r.clone()
				if !set(other.fields()[i], beyond) {
					continue
				}
				checked++
				_, err := Format(other)
				requireField(t, f.name, err)
			}
		}
	}
	require.Greater(t, checked, 300)
}

// set gives a field a number, and reports whether it can have that.
func set(f field, x float64) bool {
	whole := x == math.Trunc(x) && !math.IsInf(x, 0)
	switch v := f.at.(type) {
	case *int:
		if whole {
			*v = int(x)
		}
		return whole && !(f.extra && x == 0)
	case *float64:
		*v = x
		return !(f.extra && x == 0)
	case **float64:
		*v = &x
		return true
	}
	return false
}

// At both ends of its range a number of a record is right by itself.
func TestNumbersAtTheirEnds(t *testing.T) {
	for _, r := range everyRound(t) {
		for i, f := range r.fields() {
			for _, end := range []float64{f.lo, f.hi} {
				other := r.clone()
				if set(other.fields()[i], end) {
					require.NoError(t, other.fields()[i].check(), "%s: %s at %v", r.Kind, f.name, end)
				}
			}
		}
	}
}

// A copy of a round shares nothing with it that is ever written to.
func TestCloneSharesNothing(t *testing.T) {
	for _, r := range everyRound(t) {
		before, err := Format(r)
		require.NoError(t, err)
		c := r.clone()
		require.Equal(t, r, c)
		for i := range c.Strokes {
			c.Strokes[i] = -1
		}
		for i := range c.Taps {
			c.Taps[i] = Tap{}
		}
		for i := range c.Choices {
			c.Choices[i] = "another"
		}
		for i := range c.Breaks {
			c.Breaks[i] = Break{}
		}
		for i := range c.Silences {
			c.Silences[i] = Silence{}
		}
		after, err := Format(r)
		require.NoError(t, err)
		require.Equal(t, string(before), string(after), r.Kind)
	}
}

// Rounding replaces the numbers behind pointers, which a caller may still hold.
func TestRoundingLeavesTheCallersNumbers(t *testing.T) {
	bias := 1.23456789
	r := Round{Kind: Dums, Bias: &bias}
	roundAll(&r)
	require.Equal(t, 1.23456789, bias)
	require.Equal(t, 1.235, *r.Bias)
}

// What a kind has it does not have to others: no field of a kind is foreign to it, and
// each of another kind's is its own or foreign.
func TestForeignIsWhatOthersHave(t *testing.T) {
	for _, k := range Kinds {
		r := Round{Kind: k.ID}
		mine := map[string]bool{}
		for _, f := range r.fields() {
			if !f.extra {
				require.False(t, mine[f.name], "%s: %s twice", k.ID, f.name)
				mine[f.name] = true
			}
		}
		foreign := map[string]bool{}
		for _, f := range r.foreign() {
			require.False(t, mine[f.name], "%s: %s", k.ID, f.name)
			foreign[f.name] = true
		}
		for _, other := range Kinds {
			theirs := Round{Kind: other.ID}
			what, figures := theirs.own()
			for _, f := range append(what, figures...) {
				require.True(t, mine[f.name] || foreign[f.name], "%s: %s of %s", k.ID, f.name, other.ID)
			}
		}
	}
}
