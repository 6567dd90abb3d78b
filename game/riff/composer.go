package riff

import (
	"slices"

	"groundbeat/game/rhythm"
)

// A composer makes the cycles of a riff one by one; it keeps the theme that it
// worked out last.
type composer struct {
	Riff
	theme theme
	which int // the theme's number, from 1; 0: none yet
}

// played is one cycle of both drums, in ticks from its first step.
type played struct {
	lead line
	bass line  // where the cycle is open; elsewhere the base
	open *Span // in steps of the cycle, or nil
}

// cycle makes the i-th cycle.
func (m *composer) cycle(i int) played {
	kind, phrase := m.bar(i)
	c := draw(m.seed, m.level, forBar, i)
	if kind == led { // the same fill each time
		c = draw(m.seed, m.level, forLead, phrase/themePhrases)
	}
	l := m.line(kind, phrase, c)
	p := played{lead: l}
	switch kind {
	case broken:
		p = m.breakOff(l, c)
	case rolled:
		p = m.roll(l)
	}
	if m.level > Filled {
		p.lead.swell(swellTo[m.level] - 12 + 12*(i%m.phrase+1)/m.phrase)
		m.thin(p.lead, m.bpm)
		p.lead.hand(m.cell)
	}
	return p
}

// swellTo is how firm, in percent, high strokes have become in the last cycle of a
// phrase; in each before they are softer.
var swellTo = [...]int{Ornamented: 112, Riffing: 100, Solo: 100}

// line is what the lead drum plays in a cycle, but for what is declared open.
func (m *composer) line(kind bar, phrase int, c chance) line {
	switch {
	case m.level == Filled && m.Rhythm().Filled != nil:
		return m.lay(m.Rhythm().Filled)
	case m.level <= Filled:
		return m.lay(m.Rhythm().Skeleton)
	}
	t := m.themeOf(phrase)
	l := t.of(kind)
	switch kind {
	case asked:
		m.air(l)
	case led:
		m.fill(l, t, c, m.lead())
	case crowned:
		m.fill(l, t, c, m.crown())
	}
	m.settle(l)
	return l
}

// fill plays a fill from a tick to the end: of those that the level has, from one
// that chance takes on, the first that is nothing the theme says anyway.
func (m *composer) fill(l line, t theme, c chance, from int) {
	kinds := fills[m.level]
	first := c.below(len(kinds))
	for i := range kinds {
		m.shape.fill(l, c, m.level, kinds[(first+i)%len(kinds)], from)
		m.settle(l)
		if !slices.EqualFunc(l, t.plain, struck.like) && !slices.EqualFunc(l, t.varied, struck.like) {
			return
		}
	}
}

// themeOf is the theme of a phrase.
func (m *composer) themeOf(phrase int) theme {
	n := phrase / themePhrases
	if m.which == n+1 {
		return m.theme
	}
	c := draw(m.seed, m.level, forTheme, n)
	m.which = n + 1
	if m.level == Ornamented {
		m.theme = m.ornamentedTheme(c, m.busy)
	} else {
		m.theme = m.riffTheme(c, m.level, m.busy)
	}
	return m.theme
}

// of returns a copy of the line that a bar begins from.
func (t theme) of(kind bar) line {
	switch kind {
	case stated, asked, led:
		return slices.Clone(t.plain)
	case answered:
		return slices.Clone(t.other)
	}
	return slices.Clone(t.varied)
}

// air leaves the end of a cycle to the bass drum, but for one stroke that asks; at
// Ornamented it takes out the light strokes only.
func (m *composer) air(l line) {
	from := m.tail(m.length / 3)
	if from == 0 {
		from = m.led()
	}
	for at := from; at < len(l); at++ {
		if m.level != Ornamented && at > from || l[at].sound.Light() {
			l[at] = struck{}
		}
	}
}

// lead is where the short fill begins: on the last beat at Ornamented.
func (m *composer) lead() int {
	if m.level == Ornamented {
		return max(0, m.length-max(m.beat, 4*m.cell))
	}
	return m.led()
}

// crown is where the long fill begins: two beats or more from the end at
// Ornamented, four at the others.
func (m *composer) crown() int {
	if m.level == Ornamented {
		return m.tail(8 * m.cell)
	}
	return m.tail(4 * m.beat)
}

// settle holds the line to its level: every dum of the base and no other at
// Ornamented, none of the base's at Solo.
func (m *composer) settle(l line) {
	for at := range l {
		switch low := l[at].sound.Low(); {
		case m.level == Solo && low && m.dum(at):
			l.put(at, m.instead(at), accentForce)
		case m.level == Ornamented && low && !m.dum(at):
			l.put(at, rhythm.Tek, plainForce)
		case m.level == Ornamented && !low && m.dum(at):
			m.say(l, at)
		}
	}
}

// say puts a dum of the base into a line, and makes room for it where nothing was
// struck.
func (m *composer) say(l line, at int) {
	for i := max(0, at-m.cell+1); l[at].force == 0 && i < min(len(l), at+m.cell); i++ {
		if !m.dum(i) {
			l[i] = struck{}
		}
	}
	l.put(at, rhythm.Dum, firmForce)
}

// addTo adds the cycle to a part as its i-th.
func (p played) addTo(part *Part, s *shape, i int) {
	before := i * s.cycle.Steps()
	for at, struck := range p.lead {
		if struck.force > 0 {
			part.Lead = append(part.Lead, struck.stroke(before, at))
		}
	}
	for step, sound := range s.cycle.Skeleton {
		bass := bassStroke(sound)
		if p.open != nil && p.open.Contains(step) {
			bass = p.bass[step*TicksPerStep]
		}
		if bass.force > 0 {
			part.Bass = append(part.Bass, bass.stroke(before, step*TicksPerStep))
		}
	}
	if p.open != nil {
		part.Open = append(part.Open, Span{before + p.open.From, before + p.open.To, p.open.Kind})
	}
}

// bassStroke is what the bass drum makes of a stroke of the skeleton.
func bassStroke(s rhythm.Stroke) struck {
	switch {
	case s.Low():
		return struck{sound: rhythm.Dum, force: firmForce}
	case s.Sounds():
		return struck{sound: rhythm.Tek, force: softForce}
	}
	return struck{}
}

// stroke is what is struck at a tick of a cycle that begins at a step. Its
// strength is the nearest float64 to the force in thousandths, on every machine.
func (s struck) stroke(before, at int) Stroke {
	return Stroke{
		Step: before + at/TicksPerStep, Sub: at % TicksPerStep, Sound: s.sound,
		Strength: float64(s.force) / 1000, Roll: s.roll, Swell: float64(s.swell) / 1000,
	}
}
