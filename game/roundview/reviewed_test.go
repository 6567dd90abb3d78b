package roundview

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/view"
)

// Count by count the table has what was tapped of how many, a mean from one tap on and a
// spread from two; a last row has the whole where there are several.
func TestTableByCount(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(6, 1))
	for _, c := range everyRhythm(t) {
		r := playedBy(t, c, chance)
		out := ResultOf(r, ReviewOf(r))
		rows := byCount(w, out).Rows
		whole := 0
		if out.Landed > 1 && len(out.Counts) > 1 {
			whole = 1
			require.Equal(t, w.Say("of", "n", out.Landed, "of", out.Asked), rows[len(rows)-1][1])
		}
		require.Len(t, rows, len(out.Counts)+whole, c.ID)
		for i, k := range out.Counts {
			require.Equal(t, []string{k.Count, w.Say("of", "n", k.Tapped, "of", k.Asked)}, rows[i][:2])
			require.Equal(t, k.Tapped < 1, rows[i][2] == view.None)
			require.Equal(t, k.Tapped < 2, rows[i][3] == view.None)
		}
	}
}

// Tap by tap an offset stands where there is one, and what became of it in words, each
// state in its own.
func TestTableTapByTap(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	d := &Dums{Result: &Result{}}
	for s := TapOn; s <= TapAdded; s++ {
		said := d.sayState(w, s)
		require.False(t, seen[said], said)
		seen[said] = true
		d.Result.Taps = append(d.Result.Taps, TapResult{Eight: int(s) + 1, Count: "3", State: s, Offset: -7 * ms})
	}
	for i, row := range d.oneByOne(w).Rows {
		require.Equal(t, []string{fmt.Sprint(i + 1), "3"}, row[:2])
		require.Equal(t, TapState(i) >= TapLeftOut, row[2] == view.None)
		if row[2] != view.None {
			require.Equal(t, "−7 ms", row[2])
		}
	}
}

// After a round of a rhythm that was not named another comes next; of one that was, the
// same once more: one filled button either way.
func TestNextAfterARound(t *testing.T) {
	w := words(t)
	for _, any := range []bool{false, true} {
		d := dums(t, view.Reviewing)
		d.Any = any
		filled := 0
		for _, it := range d.next(w) {
			if it.Look == view.LookPrimary {
				filled++
				require.Equal(t, map[bool]string{false: view.ActOnce, true: view.ActNext}[any], it.Action)
			}
		}
		require.Equal(t, 1, filled)
	}
}

// Of many breaks and rolls the first few are told, and how many there are besides; never
// that there is one more, which could as well be told.
func TestOpenedAreTold(t *testing.T) {
	w := words(t)
	for n := range 9 {
		var spans []picture.OpenSteps
		var at []OpenResult
		for i := range n {
			spans, at = append(spans, picture.OpenSteps{From: 16 * i, To: 16*i + 4, Roll: i%2 == 1}), append(at, OpenResult{Eight: 10 + i, Count: "1"})
		}
		said := (&Result{}).sayOpened(w, spans, at)
		require.Equal(t, n == 0, said == "")
		told := n
		if n > mostOpened+1 {
			told = mostOpened
		}
		for i := range n {
			if i < told {
				require.Contains(t, said, fmt.Sprint(10+i))
			} else {
				require.NotContains(t, said, fmt.Sprint(10+i))
			}
		}
	}
}

// A round is offered slower until it is at its slowest, and from there on no more.
func TestSlowerEndsAtTheSlowest(t *testing.T) {
	w := words(t)
	for bpm, disabled := range map[int]bool{61: false, 60: true, 59: true} {
		d := dums(t, view.Reviewing) // 60 at the slowest
		d.BPM = bpm
		require.Equal(t, disabled, d.slower(w).Disabled, bpm)
	}
}
