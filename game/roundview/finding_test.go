package roundview

import (
	"fmt"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"groundbeat/scoring"
)

func one(count string, asked, tapped int, mean, spread time.Duration) picture.CountResult {
	return picture.CountResult{Count: count, Asked: asked, Tapped: tapped, Mean: mean * ms, Spread: spread * ms}
}

// What is expected here follows from the rules stated at the constants; the
// sentences are the product's own.
func TestFinding(t *testing.T) {
	w := words(t)
	leaning := func(mean, low, high float64) scoring.Estimate { return scoring.Estimated(mean, low, high, 16, 6) }
	for _, c := range []struct {
		name string
		r    Result
		want string
	}{
		{"nothing", Result{Asked: 16, LeftOut: 16, Counts: []picture.CountResult{one("1", 8, 0, 0, 0), one("3", 8, 0, 0, 0)}},
			"No taps came. Tap each dum: space, any letter, or the drumhead."},
		{"a count left out goes before added taps", Result{Asked: 16, Landed: 9, LeftOut: 7, Added: 6,
			Counts: []picture.CountResult{one("1", 8, 7, 2, 9), one("3", 8, 2, 60, 5)}},
			"Your 3 is left out 6 times of 8. Listen for the low stroke there."},
		{"half the time, and by chance: no count is blamed", Result{Asked: 8, On: 6, Landed: 6, LeftOut: 2, Lean: leaning(0, -5, 5),
			Counts: []picture.CountResult{one("1", 4, 2, 0, 9), one("3", 4, 4, 0, 5)}},
			"You are steady: 6 of 8 on the dum."},
		{"many left out, of each count alike", Result{Asked: 16, Landed: 9, LeftOut: 7,
			Counts: []picture.CountResult{one("1", 8, 5, 2, 9), one("3", 8, 4, 1, 5)}},
			"7 of 16 dums are left out. Listen for each low stroke."},
		{"left out once is no habit", Result{Asked: 16, On: 15, Landed: 15, LeftOut: 1, Spread: 10 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 0, 9), one("3", 8, 7, 0, 9)}},
			"You are steady: 15 of 16 on the dum."},
		{"added", Result{Asked: 16, On: 16, Landed: 16, Added: 4, Measured: true, Lean: leaning(40, 35, 45), Spread: 5 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 40, 5)}},
			"4 taps came where no dum is. Wait for the low strokes."},
		{"added, and nobody knows how late the sound is", Result{Asked: 16, On: 2, Landed: 4, LeftOut: 2, Added: 14},
			"14 taps came where no dum is. Wait for the low strokes. If you did, your sound is late: Set-up measures how late, and takes it off."},
		{"few added are let pass", Result{Asked: 16, On: 16, Landed: 16, Added: 3, Spread: 5 * ms},
			"You are steady: 16 of 16 on the dum."},
		{"all far behind", Result{Asked: 16, Added: 16, LeftOut: 16, Far: new(182 * ms)},
			"All your taps come about 180 ms behind: probably your loudspeaker or headphones, not you. Set-up measures it once and takes it off."},
		{"all far behind the set-up", Result{Asked: 16, Added: 16, LeftOut: 16, Far: new(182 * ms), Measured: true},
			"All your taps come about 180 ms behind, though your set-up is taken off. " +
				"Does the sound come from somewhere else now? Choose that output in Set-up, or measure it."},
		{"few taps", Result{Asked: 4, On: 3, Landed: 4, Bias: 50 * ms, Spread: 1 * ms,
			Counts: []picture.CountResult{one("1", 2, 2, 50, 1), one("3", 2, 2, 50, 1)}},
			"Too few taps to say more. Play one more round."},
		{"a count behind", Result{Asked: 16, On: 9, Landed: 16, Measured: true, Spread: 28 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, -6, 12), one("3", 8, 8, 41, 15)}},
			"Your 3 comes about 40 ms behind."},
		{"a count ahead", Result{Asked: 16, On: 9, Landed: 16, Measured: true, Spread: 28 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, -33, 12), one("2 &", 8, 8, 9, 15)}},
			"Your 1 comes about 35 ms ahead."},
		{"a count behind where nobody knows how late the sound is", Result{Asked: 16, On: 9, Landed: 16, Spread: 28 * ms, Lean: leaning(17, -2, 36),
			Counts: []picture.CountResult{one("1", 8, 8, -6, 12), one("3", 8, 8, 41, 15)}},
			"Your 3 comes about 45 ms behind your 1."},
		{"a count behind the others, which lean too", Result{Asked: 24, On: 9, Landed: 24, Measured: true, Spread: 28 * ms, Lean: leaning(41, 30, 52),
			Counts: []picture.CountResult{one("1", 8, 8, 26, 12), one("1 &", 8, 8, 71, 15), one("3", 8, 8, 28, 12)}},
			"Your 1 & comes about 45 ms behind your other dums."},
		{"a count that scatters more than it lies apart", Result{Asked: 12, On: 9, Landed: 12, Measured: true, Lean: leaning(14, -8, 36), Spread: 35 * ms,
			Counts: []picture.CountResult{one("1", 6, 6, -3, 12), one("3", 6, 6, 31, 60)}},
			"You are steady: 9 of 12 on the dum."},
		{"few on, and no more to say", Result{Asked: 12, On: 8, Landed: 12, Measured: true, Lean: leaning(14, -8, 36), Spread: 35 * ms},
			"8 of 12 on the dum; no clear lean."},
		{"all behind", Result{Asked: 16, On: 3, Landed: 16, Measured: true, Lean: leaning(32, 25, 39), Spread: 12 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 30, 12), one("3", 8, 8, 34, 12)}},
			"You are about 30 ms behind throughout."},
		{"all behind where nobody knows how late the sound is", Result{Asked: 16, On: 3, Landed: 16, Lean: leaning(32, 25, 39), Spread: 12 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 30, 12), one("3", 8, 8, 34, 12)}},
			"All your taps come about 30 ms behind: probably your loudspeaker or headphones, not you. Set-up measures it once and takes it off."},
		{"and a count apart from the others", Result{Asked: 16, On: 3, Landed: 16, Lean: leaning(32, 25, 39), Spread: 12 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 12, 12), one("3", 8, 8, 52, 12)}},
			"All your taps come about 30 ms behind: probably your loudspeaker or headphones, not you. Set-up measures it once and takes it off. Apart from that: " +
				"Your 3 comes about 40 ms behind your 1."},
		{"all ahead", Result{Asked: 16, On: 3, Landed: 16, Measured: true, Lean: leaning(-48, -55, -41), Spread: 12 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, -50, 12), one("3", 8, 8, -46, 12)}},
			"You are about 50 ms ahead throughout."},
		{"a lean by chance", Result{Asked: 16, On: 12, Landed: 16, Measured: true, Lean: leaning(18, -1, 37), Spread: 35 * ms},
			"You are steady: 12 of 16 on the dum."},
		{"spread", Result{Asked: 16, On: 6, Landed: 16, Measured: true, Lean: leaning(3, -20, 26), Spread: 47 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 1, 47), one("3", 8, 8, 5, 47)}},
			"Your taps are spread by about 45 ms. Slower makes it easier to place them."},
		{"a spread by chance", Result{Asked: 8, On: 5, Landed: 8, Measured: true, Lean: leaning(3, -20, 26), Spread: 42 * ms},
			"5 of 8 on the dum; no clear lean."},
		{"steady", Result{Asked: 16, On: 16, Landed: 16, Measured: true, Lean: leaning(3, -3, 9), Spread: 12 * ms,
			Counts: []picture.CountResult{one("1", 8, 8, 1, 12), one("3", 8, 8, 5, 12)}},
			"You are steady: 16 of 16 on the dum."},
	} {
		t.Run(c.name, func(t *testing.T) { require.Equal(t, c.want, Finding(c.r, w)) })
	}
}

// The way to Set-up is there where it would help, and nowhere else.
func TestRemedy(t *testing.T) {
	w := words(t)
	leaning := scoring.Estimated(32, 25, 39, 16, 6)
	for _, c := range []struct {
		r    Result
		sent bool
	}{
		{Result{Asked: 16, Landed: 16, Lean: leaning}, true},
		{Result{Asked: 16, Landed: 16, Lean: leaning, Measured: true}, false},
		{Result{Asked: 16, Landed: 16, Lean: scoring.Estimated(32, -5, 69, 16, 6)}, false},
		{Result{Asked: 16, Added: 16, Far: new(182 * ms)}, true},
		{Result{Asked: 16, Added: 16, Far: new(182 * ms), Measured: true}, true},
		{Result{Asked: 16, Landed: 3, Added: 12}, true},
		{Result{Asked: 16, Landed: 3, Added: 12, Measured: true}, false},
		{Result{Asked: 16}, false},
	} {
		require.Equal(t, c.sent, c.r.remedy(w).ID == "to-set-up", "%+v", c.r)
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
	w, _ := say.Load(assets.Words)
	r := Result{Asked: 16, On: 9, Landed: 16, Measured: true, Spread: 28 * time.Millisecond,
		Counts: []picture.CountResult{
			{Count: "1", Asked: 8, Tapped: 8, Mean: -6 * time.Millisecond, Spread: 12 * time.Millisecond},
			{Count: "3", Asked: 8, Tapped: 8, Mean: 41 * time.Millisecond, Spread: 15 * time.Millisecond},
		}}
	fmt.Println(Finding(r, w))
	// Output: Your 3 comes about 40 ms behind.
}
