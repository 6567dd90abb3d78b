package rhythm

import (
	"fmt"
	"strings"
	"unicode"
)

// A Stroke is what a drum does in one step, in the letters that drummers write.
type Stroke byte

// The strokes. Light strokes fill the gaps between the others.
const (
	Dum      Stroke = 'D' // low, full, away from the rim
	Tek      Stroke = 'T' // high, dry, at the rim
	Sak      Stroke = 'S' // slap: loud, without ring
	LightTek Stroke = 't' // a soft tek
	Ka       Stroke = 'k' // a soft stroke at the rim by the other hand
	Rest     Stroke = '-' // nothing
)

const strokes = "DTStk-"

// Low reports whether the stroke is a dum.
func (s Stroke) Low() bool { return s == Dum }

// High reports whether the stroke sounds and is no dum: a tek, slap or ka.
func (s Stroke) High() bool { return s.Sounds() && !s.Low() }

// Sounds reports whether the stroke is one of the six and not a rest.
func (s Stroke) Sounds() bool { return s.valid() && s != Rest }

// Light reports whether the stroke is a soft one that fills a gap.
func (s Stroke) Light() bool { return s == LightTek || s == Ka }

// String returns the stroke's letter.
func (s Stroke) String() string { return string(rune(s)) }

func (s Stroke) valid() bool { return strings.IndexByte(strokes, byte(s)) >= 0 }

// A Pattern is a run of strokes, one for each step.
type Pattern []Stroke

// scanPattern reads strokes such as "DT-TD-T-". Blanks and "|" between strokes are
// skipped. It returns the strokes and, for each, its column in s, in runes from 1; the
// error has only a column: the place of the first mark that is no stroke.
func scanPattern(s string) (p Pattern, columns []int, err *Error) {
	column := 0
	for _, r := range s {
		column++
		switch {
		case unicode.IsSpace(r) || r == '|':
		case strings.ContainsRune(strokes, r):
			p, columns = append(p, Stroke(r)), append(columns, column)
		default:
			return nil, nil, &Error{Column: column, Msg: unknownStroke(r)}
		}
	}
	if len(p) == 0 {
		return nil, nil, &Error{Column: column + 1, Msg: "a pattern needs at least one stroke"}
	}
	return p, columns, nil
}

// unknownStroke says what is wrong and, for the usual slips, what to write.
func unknownStroke(r rune) string {
	hint := "strokes are D, T, S, t, k and - for a rest"
	switch r {
	case 'd':
		hint = "a dum is written 'D'"
	case 's':
		hint = "a slap is written 'S'"
	case 'K':
		hint = "ka is a light stroke: 'k'"
	case '.', '_', '0', '–', '—', '−', '‐', '‑':
		hint = "a rest is written '-', a plain hyphen"
	case '#':
		hint = "a comment needs a line of its own"
	}
	return fmt.Sprintf("unknown stroke %s; %s", quoteRune(r), hint)
}

// quoteRune shows a mark between single quotes, or by number if it is invisible.
func quoteRune(r rune) string {
	if !unicode.IsPrint(r) {
		return fmt.Sprintf("%U", r)
	}
	return "'" + string(r) + "'"
}

// String returns the strokes' letters without blanks.
func (p Pattern) String() string {
	b := make([]byte, len(p))
	for i, s := range p {
		b[i] = byte(s)
	}
	return string(b)
}

// Dums returns the steps, from 0, on which a dum falls, in order.
func (p Pattern) Dums() []int { return p.Pulses(Stroke.Low).Onsets() }

// Pulses marks the steps with a stroke of one kind: [Stroke.Low], [Stroke.High]
// or [Stroke.Sounds].
func (p Pattern) Pulses(kind func(Stroke) bool) Pulses {
	pulses := make(Pulses, len(p))
	for i, s := range p {
		pulses[i] = kind(s)
	}
	return pulses
}
