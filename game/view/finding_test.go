package view

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
)

func one(count string, asked, tapped int, mean, spread time.Duration) CountResult {
	return CountResult{Count: count, Asked: asked, Tapped: tapped, Mean: mean * ms, Spread: spread * ms}
}

// What is expected here follows from the rules stated at the constants; the
// sentences are the product's own.
func TestFinding(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		name string
		r    Result
		want string
	}{
		{"nothing", Result{Asked: 16, LeftOut: 16, Counts: []CountResult{one("1", 8, 0, 0, 0), one("3", 8, 0, 0, 0)}},
			"No taps came. Tap each dum: space, any letter, or the drumhead."},
		{"a count left out goes before added taps", Result{Asked: 16, Landed: 9, LeftOut: 7, Added: 6,
			Counts: []CountResult{one("1", 8, 7, 2, 9), one("3", 8, 2, 60, 5)}},
			"Your 3 is left out 6 times of 8. Listen for the low stroke there."},
		{"left out half the time", Result{Asked: 8, Landed: 6, LeftOut: 2,
			Counts: []CountResult{one("1", 4, 2, 0, 9), one("3", 4, 4, 0, 5)}},
			"Your 1 is left out 2 times of 4. Listen for the low stroke there."},
		{"left out once is no habit", Result{Asked: 16, On: 15, Landed: 15, LeftOut: 1, Spread: 10 * ms,
			Counts: []CountResult{one("1", 8, 8, 0, 9), one("3", 8, 7, 0, 9)}},
			"You are steady: 15 of 16 on the dum."},
		{"added", Result{Asked: 16, On: 16, Landed: 16, Added: 4, Bias: 40 * ms, Spread: 5 * ms,
			Counts: []CountResult{one("1", 8, 8, 40, 5)}},
			"4 taps came where no dum is. Wait for the low strokes."},
		{"few added are let pass", Result{Asked: 16, On: 16, Landed: 16, Added: 3, Spread: 5 * ms},
			"You are steady: 16 of 16 on the dum."},
		{"few taps", Result{Asked: 4, On: 3, Landed: 4, Bias: 50 * ms, Spread: 1 * ms,
			Counts: []CountResult{one("1", 2, 2, 50, 1), one("3", 2, 2, 50, 1)}},
			"Too few taps to say more. Play one more round."},
		{"a count behind", Result{Asked: 16, On: 9, Landed: 16, Bias: 17 * ms, Spread: 28 * ms,
			Counts: []CountResult{one("1", 8, 8, -6, 12), one("3", 8, 8, 41, 15)}},
			"Your 3 comes about 40 ms behind."},
		{"a count ahead", Result{Asked: 16, On: 9, Landed: 16, Bias: -10 * ms, Spread: 28 * ms,
			Counts: []CountResult{one("1", 8, 8, -33, 12), one("2 &", 8, 8, 14, 15)}},
			"Your 1 comes about 35 ms ahead."},
		{"a count that scatters more than it leans", Result{Asked: 16, On: 9, Landed: 11, Bias: 8 * ms, Spread: 35 * ms,
			Counts: []CountResult{one("1", 8, 8, 0, 12), one("3", 8, 3, 31, 60)}},
			"Your 3 is left out 5 times of 8. Listen for the low stroke there."},
		{"two standard errors are not reached", Result{Asked: 12, On: 9, Landed: 12, Bias: 14 * ms, Spread: 35 * ms,
			Counts: []CountResult{one("1", 6, 6, -3, 12), one("3", 6, 6, 31, 60)}},
			"You are steady: 9 of 12 on the dum."},
		{"all behind", Result{Asked: 16, On: 3, Landed: 16, Bias: 32 * ms, Spread: 12 * ms,
			Counts: []CountResult{one("1", 8, 8, 30, 12), one("3", 8, 8, 34, 12)}},
			"You are about 30 ms behind throughout."},
		{"all ahead", Result{Asked: 16, On: 3, Landed: 16, Bias: -48 * ms, Spread: 12 * ms,
			Counts: []CountResult{one("1", 8, 8, -50, 12), one("3", 8, 8, -46, 12)}},
			"You are about 50 ms ahead throughout."},
		{"spread", Result{Asked: 16, On: 6, Landed: 16, Bias: 3 * ms, Spread: 47 * ms,
			Counts: []CountResult{one("1", 8, 8, 1, 47), one("3", 8, 8, 5, 47)}},
			"Your taps are spread by about 45 ms. Slower makes it easier to place them."},
		{"steady", Result{Asked: 16, On: 16, Landed: 16, Bias: 3 * ms, Spread: 12 * ms,
			Counts: []CountResult{one("1", 8, 8, 1, 12), one("3", 8, 8, 5, 12)}},
			"You are steady: 16 of 16 on the dum."},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, Finding(c.r, w)) })
	}
}

func TestTally(t *testing.T) {
	got := played().Tally(pattern(t, "DT-TD-T-"), inFour)
	require.Equal(t, []string{"1", "3"}, []string{got[0].Count, got[1].Count})
	require.Equal(t, []int{8, 8, 8, 7}, []int{got[0].Asked, got[0].Tapped, got[1].Asked, got[1].Tapped})
	// Means by hand: (−31−12+4−9−28+6−2+8)/8 = −8; (52+47+30+61+12+44+38)/7 = 284/7.
	require.Equal(t, -8*ms, got[0].Mean)
	require.InDelta(t, 284.0/7, float64(got[1].Mean)/1e6, 1e-5)
	// Squares about −8: 529+16+144+1+400+196+36+256 = 1578; √(1578/7) = 15.014.
	require.InDelta(t, 15.014, float64(got[0].Spread)/1e6, 0.001)
}

func ExampleFinding() {
	w, _ := LoadWords(assets.Words)
	r := Result{Asked: 16, On: 9, Landed: 16, Bias: 17 * time.Millisecond, Spread: 28 * time.Millisecond,
		Counts: []CountResult{
			{Count: "1", Asked: 8, Tapped: 8, Mean: -6 * time.Millisecond, Spread: 12 * time.Millisecond},
			{Count: "3", Asked: 8, Tapped: 8, Mean: 41 * time.Millisecond, Spread: 15 * time.Millisecond},
		}}
	fmt.Println(Finding(r, w))
	// Output: Your 3 comes about 40 ms behind.
}
