package picture

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// In an odd metre rows end between groups, however narrow the line, and are as alike as
// they can be.
func TestRowsEndBetweenGroups(t *testing.T) {
	for _, c := range []struct {
		name    string
		groups  []int
		steps   int
		perBeat int
		width   float64
		columns int
		rows    []int // the first step of each
	}{
		{"all of 9/8 in one row", []int{2, 2, 2, 3}, 9, 1, 320, 9, []int{0}},
		{"9/8 with its &, on a phone", []int{2, 2, 2, 3}, 18, 2, 316, 10, []int{0, 8}},
		{"10/8, on a phone", []int{3, 2, 2, 3}, 20, 2, 316, 10, []int{0, 10}},
		{"7/8, on a phone", []int{3, 2, 2}, 14, 2, 316, 8, []int{0, 6}},
		{"narrower than a group", []int{2, 2, 2, 3}, 18, 2, 60, 6, []int{0, 4, 8, 12}},
	} {
		t.Run(c.name, func(t *testing.T) {
			columns := ColumnsOf(c.groups, c.steps, c.perBeat, c.width, false)
			require.Equal(t, c.columns, columns)
			b := board{Line: &Line{Groups: c.groups}, steps: c.steps, columns: columns}
			var rows []int
			for first := 0; first < c.steps; first = b.rowEnd(first) {
				rows = append(rows, first)
			}
			require.Equal(t, c.rows, rows)
		})
	}
	require.Equal(t, Columns(16, 4, 358, false), ColumnsOf(nil, 16, 4, 358, false), "else as ever")
}

// The drumhead ties the counts of each group together, the line has a bracket over it,
// and both say so in words; an even metre has neither.
func TestGroupsAreDrawnAndSaid(t *testing.T) {
	w := words(t)
	for id, want := range map[string]string{"roman-9": "2, 2, 2 and 3", "samai-thaqil": "3, 2, 2 and 3", "nawakht": "3, 2 and 2", "maqsum": ""} {
		c := supplied(t, id)
		l := listened{Rhythm: c, Level: levelBare}
		h, line := l.Head(), l.Line(w)
		p := Picture{}
		h.Draw(&p)
		arcs := 0
		for _, s := range p.Shapes {
			if s.Kind == KindArc && s.R == groupRadius {
				arcs++
			}
		}
		require.Len(t, c.Grouping, arcs, id)
		p = Picture{}
		line.Draw(&p)
		strong := 0 // counts that begin a group
		for _, s := range p.Shapes {
			if s.Kind == KindText && s.Bold && IsBeat(s.Text) {
				strong++
			}
		}
		if want == "" {
			require.Equal(t, c.Beats(), strong, id)
			require.NotContains(t, h.Twin(w)+line.Twin(w), "groups", id)
			continue
		}
		require.Equal(t, len(c.Grouping), strong, id)
		for _, said := range []string{h.Twin(w), line.Twin(w)} {
			require.Contains(t, said, "groups of "+want+".", id)
		}
	}
}

// Every stroke of a riff is a letter under its own count, or between two where it lies
// between them, on every level and in every rhythm; on a phone none is smaller than 11
// pixels, and no two of them touch.
func TestRiffIsWrittenInLetters(t *testing.T) {
	const phone = 358.0
	w := words(t)
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	for _, id := range all.IDs() {
		c, _ := all.Get(id)
		for _, level := range []riff.Level{riff.Ornamented, riff.Riffing, riff.Solo} {
			part, err := riff.Play(c, level, 16, 5)
			require.NoError(t, err)
			for n := range 16 {
				l := listened{Rhythm: c, Level: level.String(), Riff: RiffOf(part, c.Steps(), n), Board: phone}
				requireLetters(t, l.Line(w), phone, id)
			}
		}
	}
}

func requireLetters(t *testing.T, line Line, wide float64, id string) {
	t.Helper()
	p := Picture{}
	line.Draw(&p)
	counts := map[float64]string{} // by how high and how far right
	var written []Shape
	for _, s := range p.Shapes {
		switch {
		case s.Kind != KindText || s.Text == "3" && !s.Bold && s.Ink == InkDim:
		case strings.Contains("DTStk", s.Text) && s.Size < 0.47*stepWide(&line):
			written = append(written, s)
		default:
			counts[s.X] += s.Text
		}
	}
	strokes := 0
	for i, s := range line.Riff.Strokes {
		if s.Long > 0 {
			continue
		}
		require.Less(t, strokes, len(written), id)
		letter := written[strokes]
		strokes++
		require.Equal(t, s.Sound.String(), letter.Text, "%s, stroke %d", id, i)
		require.GreaterOrEqual(t, letter.Size*wide, 11.0, id)
		if at := s.Turn * float64(len(line.Counts)); whole(at) {
			require.Contains(t, above(counts, letter.X), line.Counts[int(at+0.5)], id)
		}
		if strokes > 1 && written[strokes-2].Y == letter.Y {
			require.Greater(t, (letter.X-written[strokes-2].X)*wide, 11.0, "%s, stroke %d", id, i)
		}
	}
	require.Len(t, written, strokes, id)
}

// stepWide is how wide a step of a line is drawn.
func stepWide(l *Line) float64 {
	b := board{Line: l, steps: len(l.Counts), columns: l.Columns}
	return (1 - b.gutter()) / (float64(b.longest()) + 0.2 + b.after())
}

// above is what is written straight above a place.
func above(counts map[float64]string, x float64) string {
	for at, text := range counts {
		if at > x-1e-9 && at < x+1e-9 {
			return text
		}
	}
	return "nothing"
}

// Both rows say whose they are; a line of the base alone needs no name.
func TestRowsAreNamed(t *testing.T) {
	w := words(t)
	for level, named := range map[string]bool{levelBare: false, levelFilled: true, levelSolo: true} {
		l := listened{Rhythm: supplied(t, "maqsum"), Level: level, Board: 358}
		line := l.Line(w)
		p := Picture{}
		line.Draw(&p)
		text := ""
		for _, s := range p.Shapes {
			if s.Kind == KindText && len(s.Text) > 1 {
				text += s.Text + " "
				require.InDelta(t, nameSize, s.Size*358, 0.01)
			}
		}
		if want := strings.Repeat("bass drum lead drum ", 2); named { // two rows on a phone
			require.Equal(t, want, text, level)
		} else {
			require.Empty(t, text, level)
		}
	}
}

// What the lead drum plays is said sound by sound.
func TestRiffInWords(t *testing.T) {
	said := riffLine(t, "maqsum", 1, 0).Twin(words(t))
	require.Contains(t, said, "The lead drum, the first time round: dum on 1 and 2 a; tek on 1 &, 4, 4 & and 4 a; sak on 3 &; light tek on 2 and just after 2 &;")
	require.Contains(t, riffLine(t, "maqsum", 2, 0).Twin(words(t)), "a roll from 3.")
}
