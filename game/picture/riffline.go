package picture

import (
	"math"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// riff writes what the lead drum plays under a row of the base, as on a whiteboard:
// each stroke's letter at its place in time, the larger the firmer, a dum on a disc, a
// roll as a bar that grows, and a dash where a step is silent. Three strokes in the
// time of two stand under a bracket with a 3.
func (b *board) riff(last int, y float64) {
	if len(b.Lead) > 0 || !b.twoRows() {
		return
	}
	for i := b.first; i < last; i++ {
		if !b.sounds(float64(i)) {
			x := b.x(float64(i))
			b.p.Line(InkDim, x-0.09*b.cell, y, x+0.09*b.cell, y, 0.035*b.cell)
		}
	}
	for i := range b.Riff.Strokes {
		s := &b.Riff.Strokes[i]
		switch at := b.at(i); {
		case s.Long > 0:
			b.roll(s, last, y)
		case at < float64(b.first)-0.001 || at > float64(last)-0.001:
		default:
			b.letter(s, b.x(at), y)
			b.triplet(i, y)
		}
	}
}

// at is where a stroke of the riff lies, in steps of the line.
func (b *board) at(i int) float64 { return b.Riff.Strokes[i].Turn * float64(b.steps) }

// sounds reports whether a stroke of the riff lies so near a step that a dash there
// would touch it, or a roll covers it.
func (b *board) sounds(step float64) bool {
	for i := range b.Riff.Strokes {
		at := b.at(i)
		if math.Abs(at-step) < 0.6 || at < step && step < at+b.Riff.Strokes[i].Long*float64(b.steps) {
			return true
		}
	}
	return false
}

// letter writes one stroke of the riff.
func (b *board) letter(s *RiffStroke, x, y float64) {
	size := (0.36 + 0.1*s.Strength) * b.cell
	if s.Sound.Low() {
		b.p.Dot(InkLead, x, y, 0.66*size)
		b.p.Text(InkGround, x, y, 0.86*size, "D").Strong()
		return
	}
	ink := InkBone
	if s.Sound.Light() || s.Strength < 0.5 {
		ink = InkDim
	}
	bar := (0.05 + 0.13*s.Strength) * b.cell
	b.p.Text(ink, x, y-0.04*b.cell, size, letters[s.Sound]).Strong()
	b.p.Line(InkLead, x-bar, y+0.30*b.cell, x+bar, y+0.30*b.cell, 0.07*b.cell)
}

// triplet draws the bracket below three strokes of which the given one is the first.
func (b *board) triplet(i int, y float64) {
	if i+2 >= len(b.Riff.Strokes) || b.Riff.Strokes[i+2].Long > 0 {
		return
	}
	from, middle, to := b.at(i), b.at(i+1), b.at(i+2)
	apart := middle - from
	if !whole(3*apart) || whole(2*apart) || !whole(2*from) || math.Abs(to-middle-apart) > 0.01 {
		return
	}
	left, right := b.x(from)-0.12*b.cell, b.x(to)+0.12*b.cell
	y, x := y+0.56*b.cell, b.x(middle)
	b.p.Line(InkDim, left, y, x-0.14*b.cell, y, 0.025*b.cell)
	b.p.Line(InkDim, x+0.14*b.cell, y, right, y, 0.025*b.cell)
	b.p.Line(InkDim, left, y-0.08*b.cell, left, y, 0.025*b.cell)
	b.p.Line(InkDim, right, y-0.08*b.cell, right, y, 0.025*b.cell)
	b.p.Text(InkDim, x, y, 0.3*b.cell, "3")
}

// whole reports whether a number of steps is whole, as far as rounding goes.
func whole(steps float64) bool { return math.Abs(steps-math.Round(steps)) < 0.01 }

// roll draws as much of a roll as lies in the row.
func (b *board) roll(s *RiffStroke, last int, y float64) {
	for i := range rollParts {
		part := float64(i) / rollParts
		from := (s.Turn + part*s.Long) * float64(b.steps)
		to := from + s.Long*float64(b.steps)/rollParts
		from, to = max(from, float64(b.first)-0.3), min(to, float64(last)-0.6)
		if to <= from {
			continue
		}
		high := (0.06 + 0.3*(s.Strength+part*(s.Swell-s.Strength))) * b.cell
		b.p.Line(InkLead, b.x(from), y, b.x(to), y, high)
	}
}

// SoundsOf returns what the lead drum plays in a part, each sound once, in the order in
// which a legend explains them, and whether it rolls.
func SoundsOf(part riff.Part) (sounds []rhythm.Stroke, rolls bool) {
	played := map[rhythm.Stroke]bool{}
	for _, s := range part.Lead {
		if s.Roll > 0 {
			rolls = true
			continue
		}
		played[s.Sound] = true
	}
	for _, s := range Explained {
		if played[s] {
			sounds = append(sounds, s)
		}
	}
	return sounds, rolls
}

// explained are the strokes in the order in which a legend explains them.
var Explained = [...]rhythm.Stroke{rhythm.Dum, rhythm.Tek, rhythm.Sak, rhythm.LightTek, rhythm.Ka}
