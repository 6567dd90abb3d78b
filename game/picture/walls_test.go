package picture

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// Each row of a wall has every stroke of its own once, by its letter, wrapped or not, and
// there are as many counts as steps.
func TestWallHasEveryStroke(t *testing.T) {
	for _, c := range everyRhythm(t) {
		for _, columns := range []int{0, (c.Steps() + 1) / 2} {
			l := &Wall{Counts: CountsOf(c.Base()), Rows: []WallRow{{Base: c.Skeleton}}, Columns: columns, Groups: c.Grouping}
			p := drawn(l)
			require.Equal(t, lettersOf(c.Skeleton), strokesOn(p), c.ID)
			require.Len(t, written(p), c.Steps()+len(strokesOn(p)), c.ID)
			l.Rows = append(l.Rows, l.Rows[0])
			require.Len(t, strokesOn(drawn(l)), 2*len(lettersOf(c.Skeleton)))
		}
	}
}

// Letters are as large as can be read from the back, on a wall of any rhythm.
func TestWallCanBeRead(t *testing.T) {
	chance := rand.New(rand.NewPCG(5, 1))
	for _, c := range everyRhythm(t) {
		for range 6 {
			for _, s := range drawn(wallBy(t, c, chance)).Shapes {
				if s.Kind == KindText {
					require.GreaterOrEqual(t, s.Size, wallLetter, c.ID)
				}
			}
		}
	}
}

// No two discs or rings of a row lie over one another.
func TestWallLeavesRoom(t *testing.T) {
	for _, c := range everyRhythm(t) {
		var all []int
		for i := range c.Steps() {
			all = append(all, i)
		}
		p := drawn(&Wall{Counts: CountsOf(c.Base()), Rows: []WallRow{{Base: c.Skeleton, Circled: all}}, Columns: 8})
		rings := inked(p, InkSweep, KindRing)
		require.Len(t, rings, c.Steps())
		for i := range rings[1:] {
			if rings[i].Y == rings[i+1].Y {
				require.GreaterOrEqual(t, rings[i+1].X-rings[i].X+1e-9, rings[i].R+rings[i+1].R, c.ID)
			}
		}
		for _, dum := range inked(p, InkBass, KindDot) {
			require.Less(t, dum.R, rings[0].R, "a ring is round its stroke")
		}
	}
}

// The step that is heard is marked once, under its count; where less motion was asked for,
// the stroke that was heard last, and before the first of a cycle the last of the one
// before.
func TestWallMarksWhatIsHeard(t *testing.T) {
	base := pattern(t, "-DT-D---")
	for step := range 8 {
		l := &Wall{Counts: inFour, Rows: []WallRow{{Base: base}}, Live: true, Step: step, Columns: 4}
		bars := inked(drawn(l), InkBrass, KindLine)
		require.Len(t, bars, 1)
		require.InDelta(t, (float64(step%4)+0.5)/4, (bars[0].X+bars[0].X2)/2, 1e-9)
		l.Calm = true
		bars = inked(drawn(l), InkBrass, KindLine)
		require.Len(t, bars, 1)
		last := []int{4, 1, 2, 2, 4, 4, 4, 4}[step]
		require.InDelta(t, (float64(last%4)+0.5)/4, (bars[0].X+bars[0].X2)/2, 1e-9, "at %d", step)
		line := &Line{Base: base, Counts: inFour, Calm: true, Step: step}
		require.Equal(t, last, line.stands(), "as on any line")
		l.Live = false
		require.Empty(t, inked(drawn(l), InkBrass, KindLine))
	}
}

// The line from where a stroke was to where it went runs from row to row, between the
// rings round both.
func TestMovedGoesFromRingToRing(t *testing.T) {
	for _, moved := range [][2]int{{2, 3}, {3, 2}, {0, 7}} {
		l := &Wall{Counts: inFour, Moved: moved, Rows: []WallRow{
			{Base: pattern(t, "DT-TD-T-"), Circled: []int{moved[0]}}, {Base: pattern(t, "DT-TD-T-"), Circled: []int{moved[1]}}}}
		p := drawn(l)
		rings, lines := inked(p, InkSweep, KindRing), inked(p, InkSweep, KindLine)
		require.Len(t, rings, 2)
		require.Len(t, lines, 1)
		require.Greater(t, lines[0].Y2, lines[0].Y, "downwards")
		require.Equal(t, moved[0] < moved[1], lines[0].X < lines[0].X2)
		require.Greater(t, lines[0].Y, rings[0].Y)
		require.Less(t, lines[0].Y2, rings[1].Y)
	}
	l := &Wall{Counts: inFour, Rows: []WallRow{{Base: pattern(t, "DT-TD-T-")}, {Base: pattern(t, "DT-TD-T-")}}}
	require.Empty(t, inked(drawn(l), InkSweep, KindLine), "where nothing was moved there is none")
	l.Moved, l.Columns = [2]int{3, 4}, 4
	require.Empty(t, inked(drawn(l), InkSweep, KindLine), "nor over the end of a line")
}

// Names stand before two rows where there is room for them, and a bar before the one that
// is heard.
func TestWallNames(t *testing.T) {
	rows := func(n int) *Wall {
		return &Wall{Counts: numbered(n), Rows: []WallRow{{Name: "First", Base: make(rhythm.Pattern, n), Heard: true}, {Name: "Then", Base: make(rhythm.Pattern, n)}}}
	}
	for n := 4; n <= 16; n++ {
		l := rows(n)
		for _, r := range l.Rows {
			for i := range r.Base {
				r.Base[i] = rhythm.Rest
			}
		}
		p := drawn(l)
		named := n <= wallNamed
		require.Equal(t, named, len(written(p)) == n+2, n)
		require.Equal(t, named, len(inked(p, InkBrass, KindLine)) == 1)
	}
	l := rows(8)
	l.Rows = l.Rows[:1]
	require.False(t, l.named(), "one row alone needs no name")
}

// Of what a lead drum plays nothing is lost on a wall: each stroke has its mark, letter or
// bar, wherever the line wraps.
func TestWallHasEveryStrokeOfTheLead(t *testing.T) {
	chance := rand.New(rand.NewPCG(5, 2))
	for _, c := range everyRhythm(t) {
		cycle := riffBy(t, c, chance)
		for _, columns := range []int{0, (c.Steps() + 1) / 2} {
			l := &Wall{Counts: CountsOf(c.Base()), Columns: columns, Rows: []WallRow{{Base: c.Skeleton}, {Lead: cycle.Strokes}}}
			p := drawn(l)
			marks := len(inked(p, InkLead, KindLine)) + len(inked(p, InkLead, KindDot))
			require.Equal(t, len(cycle.Strokes), marks, c.ID)
		}
	}
}

// In words a wall has each row, by its name if it has one; what a lead drum plays is not
// counted up.
func TestWallInWords(t *testing.T) {
	w := words(t)
	l := &Wall{Counts: inFour, Rows: []WallRow{{Base: pattern(t, "DT-TD-T-")}}}
	require.Equal(t, "Dum on 1 and 3; tek on 1 &, 2 & and 4.", l.Twin(w))
	l.Rows[0].Name = "bass"
	l.Rows = append(l.Rows, WallRow{Name: "lead", Lead: RiffOf(riffed(), 8, 1).Strokes})
	require.Equal(t, "bass: Dum on 1 and 3; tek on 1 &, 2 & and 4. lead: The lead drum’s own strokes.", l.Twin(w))
}
