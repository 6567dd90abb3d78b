package coach

import (
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// How much easier, in hundredths of hide, and slower the first step is than the edge.
const easierFirst, slowerFirst = 15, 25

// opening is the first step: what goes well, a little easier; while nothing does, the
// easiest rhythm, bare and slowly.
func (p *planner) opening() Step {
	w := p.goesWell
	switch {
	case p.fresh():
		return p.tap(p.easiest(), bare, Slowest, ReasonFirst)
	case w.N == 0:
		return p.tap(p.easiest(), bare, Slowest, ReasonEasy)
	}
	c := p.byID[w.Rhythm]
	if f, _ := quiz.FormOf(quiz.Ask(w.Kind)); f.Named {
		a := p.riffOf(p.names, easierFirst, c)
		if g := p.around(c, p.own, a.level, quiz.MinAnswers, quiz.Lean{Apart: true}); g != nil {
			return p.name(g, a, ReasonWell)
		}
	}
	return p.tap(c, p.riffOf(p.taps, easierFirst, c), max(Slowest, p.tempo-slowerFirst), ReasonWell)
}

func (p *planner) easiest() *rhythm.Cycle {
	best := p.own[0]
	for _, c := range p.own {
		if easier(c, best) < 0 {
			best = c
		}
	}
	return best
}

// due is what is due, one after the other: tapped, and then told by name once the lower
// rungs hold.
func (p *planner) due(i int) (Step, bool) {
	named := len(p.loose) == 0 && i%2 == 1
	if len(p.loose) == 0 {
		i /= 2
	}
	if i >= len(p.dues) {
		return Step{}, false
	}
	d := p.dues[i]
	c := p.byID[d.Rhythm]
	if named {
		a := p.noMore(d, p.names)
		if g := p.around(c, p.own, a.level, p.answers(), p.lean); g != nil {
			return p.name(g, a, ReasonDue), true
		}
	}
	return p.tap(c, p.noMore(d, p.taps), min(Usual, p.tempo), ReasonDue), true
}

// noMore returns the riff at the level of what is due that hides as much as it can, but
// no more than lies at an edge.
func (p *planner) noMore(d Due, e Edge) asked {
	c := p.byID[d.Rhythm]
	a := p.riffOf(e, 0, c)
	switch {
	case a.level <= d.Level:
		return a
	case d.Level <= riff.Filled:
		return asked{level: d.Level}
	}
	return asked{d.Level, p.riffs.reaches.of(c, d.Level)}
}

// mixUp is the worst mix-up of two rhythms of the pool, in turn: told by name between
// the two, then the dums of each.
func (p *planner) mixUp(i int) (Step, bool) {
	for _, m := range p.Mixed.Worst {
		a, b := p.byID[m.Played], p.byID[m.Said]
		if a == nil || b == nil || a == b || !m.Share.Known || m.Share.Value*100 < quiz.LeastOften {
			continue
		}
		easy := p.riffOf(p.names, easierFirst, a, b)
		both := []*rhythm.Cycle{a, b}
		if i%2 == 0 {
			if g := p.around(a, both, easy.level, quiz.MinAnswers, p.lean); g != nil {
				return p.name(g, easy, ReasonMixUp), true
			}
		}
		c := both[i/2%2]
		return p.tap(c, p.riffOf(p.taps, easierFirst, c), min(Usual, p.tempo), ReasonMixUp), true
	}
	return Step{}, false
}

// begin is for somebody new: one of the lower rungs, then a rhythm, bare and slowly,
// and so on.
func (p *planner) begin(i int) (Step, bool) {
	if i%2 == 0 {
		return p.rung(p.loose[i/2%len(p.loose)], ReasonFirst), true
	}
	return p.tap(p.own[(i/2+1)%len(p.own)], bare, Slowest, ReasonFirst), true
}

// manyDue is from how many things that are due on nothing new is begun.
const manyDue = 4

// unmet is a rhythm that is new: bare, slowly and then less so.
func (p *planner) unmet(i int) (Step, bool) {
	if p.next == nil || i > 1 || len(p.loose) > 0 || len(p.dues) >= manyDue {
		return Step{}, false
	}
	return p.tap(p.next, bare, []Tempo{Slowest, Usual / 2}[i], ReasonFirst), true
}

// edge asks for as much riff as is just heard through: of one rhythm after the other
// its dums are tapped, then a name is told; where lower rungs do not hold, one of
// them comes between.
func (p *planner) edge(i int) (Step, bool) {
	why, n := ReasonEdge, 2
	if p.fresh() {
		why = ReasonFirst
	}
	if len(p.loose) > 0 {
		n = 3
	}
	switch turn := i / n; i % n {
	case 1:
		a := p.riffOf(p.names, 0, p.own...)
		if g := p.around(nil, p.own, a.level, p.answers(), p.lean); g != nil {
			return p.name(g, a, why), true
		}
	case 2:
		if why == ReasonEdge {
			why = ReasonRung
		}
		return p.rung(p.loose[turn%len(p.loose)], why), true
	}
	c := p.own[i/n%len(p.own)]
	return p.tap(c, p.riffOf(p.taps, 0, c), min(Usual, p.tempo), why), true
}

// faster is one rhythm after the other three times, the rarest first, bare: slower than
// the ladder of tempo, on it, and a little faster.
func (p *planner) faster(i int) (Step, bool) {
	c := p.rare[(i/3+1)%len(p.rare)]
	at := max(Slowest, p.tempo-2*fasterStep) + []Tempo{0, 2 * fasterStep, 3 * fasterStep}[i%3]
	return p.tap(c, bare, min(at, Fastest), ReasonTempo), true
}

// slow is the last step: the slowest of the player's rhythms at its slow tempo, bare.
func (p *planner) Slow() Step {
	slowest := p.own[0]
	for _, c := range p.own {
		if c.Tempo.Usual < slowest.Tempo.Usual {
			slowest = c
		}
	}
	return p.tap(slowest, bare, Slowest, ReasonSlow)
}
