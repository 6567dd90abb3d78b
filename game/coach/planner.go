package coach

import (
	"cmp"
	"math/rand/v2"
	"slices"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
	"groundbeat/scoring/recall"
)

// A planner puts steps together for one player.
type planner struct {
	Known
	pool     []*rhythm.Cycle // those that can be asked, by id
	byID     map[string]*rhythm.Cycle
	own      []*rhythm.Cycle // those that the player has met, similar ones side by side
	rare     []*rhythm.Cycle // the same, those practised least of late first
	next     *rhythm.Cycle   // the one to meet next; nil if there is none
	taps     Edge
	names    Edge
	tempo    Tempo
	lean     quiz.Lean
	loose    []quiz.Ask // lower rungs that do not hold
	goesWell Well
	dues     []Due
	riffs    *Riffs
	r        *rand.Rand
}

// firstRhythms is with how many rhythms one begins.
const firstRhythms = 3

func newPlanner(k Known, pool []*rhythm.Cycle, seed uint64) *planner {
	k.Rounds = tried(k.Rounds)
	p := &planner{Known: k, r: quiz.Draw(seed, 7), loose: loose(k.Rounds), riffs: k.Riffs.begun()}
	for _, c := range quiz.Candidates(pool, 0, riff.Bare) {
		p.pool = append(p.pool, c.Cycle)
	}
	p.byID = byID(p.pool)
	p.taps, p.names = k.Edge(history.Dums), k.Edge(history.Which)
	p.tempo = TempoOf(k.Rounds, p.pool, k.Today)
	p.lean = k.Lean()
	p.goesWell = k.well(p.byID)
	p.meet()
	p.forget()
	return p
}

// meet finds the player's own rhythms and the next one. Who has met fewer than three
// gets the easiest besides.
func (p *planner) meet() {
	var unmet []*rhythm.Cycle
	for _, c := range p.pool {
		if p.met(c.ID) {
			p.own = append(p.own, c)
		} else {
			unmet = append(unmet, c)
		}
	}
	slices.SortStableFunc(unmet, easier)
	n := min(max(0, firstRhythms-len(p.own)), len(unmet))
	p.own, unmet = append(p.own, unmet[:n]...), unmet[n:]
	if len(unmet) > 0 {
		p.next = unmet[0]
	}
	p.rare = p.rarest()
	if len(p.own) > 0 && !p.fresh() {
		p.own = sideBySide(p.own, slices.Index(p.own, p.rare[0]))
	}
}

// rarest returns the player's own rhythms by how little they were practised of late. A
// practice has room for a few only: taken in any other turn, those that are like many
// others would come every day, and some never.
func (p *planner) rarest() []*rhythm.Cycle {
	rounds := map[string]int{}
	for _, r := range p.Rounds {
		rounds[r.Rhythm]++
	}
	rare := slices.Clone(p.own)
	if !p.fresh() { // of a first practice the order is that in which they are met
		p.r.Shuffle(len(rare), func(i, j int) { rare[i], rare[j] = rare[j], rare[i] })
	}
	slices.SortStableFunc(rare, func(a, b *rhythm.Cycle) int { return cmp.Compare(rounds[a.ID], rounds[b.ID]) })
	return rare
}

// easier orders rhythms as one meets them: the most used first, odd metres last,
// those of fewer dums before others.
func easier(a, b *rhythm.Cycle) int {
	return cmp.Or(quiz.Order(!a.Core, !b.Core), quiz.Order(a.Odd(), b.Odd()), cmp.Compare(len(a.Dums()), len(b.Dums())))
}

// sideBySide orders rhythms from one on such that each is followed by the one most
// like it that is left: what is similar is practised in turn, so that the ear hears
// what makes the difference.
func sideBySide(some []*rhythm.Cycle, from int) []*rhythm.Cycle {
	left := slices.Clone(some)
	all := []*rhythm.Cycle{left[from]}
	left = slices.Delete(left, from, from+1)
	for len(left) > 0 {
		last := all[len(all)-1]
		i := 0
		for j, c := range left {
			if quiz.Apart(last, c) < quiz.Apart(last, left[i]) {
				i = j
			}
		}
		all, left = append(all, left[i]), slices.Delete(left, i, i+1)
	}
	return all
}

// edgeDays is for how many days what lies at the edge, or on the level below, is not
// due: it is missed about half of the times, as it should be, and comes in its turn.
const edgeDays = 3

// mostDue is how much that is due one practice has room for.
const mostDue = 8

// forget finds what is due of the pool, each rhythm once: at the level that was the
// most forgotten.
func (p *planner) forget() {
	for _, d := range DueOn(p.Met, p.Today) {
		if len(p.dues) == mostDue {
			return
		}
		if p.byID[d.Rhythm] == nil || slices.ContainsFunc(p.dues, func(o Due) bool { return o.Rhythm == d.Rhythm }) {
			continue
		}
		if p.outdone(d) {
			continue
		}
		edge := p.riffOf(p.taps, 0, p.byID[d.Rhythm]).level
		if d.Level+1 < edge || d.Days >= edgeDays {
			p.dues = append(p.dues, d)
		}
	}
}

// outdone reports whether more than what is due was told right since: who hears a
// rhythm through a solo has not forgotten it bare.
func (p *planner) outdone(d Due) bool {
	for what, days := range byDay(p.Met, parseDay(p.Today)) {
		if what.rhythm != d.Rhythm || what.level <= d.Level {
			continue
		}
		if slices.ContainsFunc(days, func(m meeting) bool {
			return parseDay(p.Today).since(m.day) < d.Days && m.grade() >= recall.Right
		}) {
			return true
		}
	}
	return false
}

// fresh reports whether the player is new.
func (p *planner) fresh() bool { return len(p.Rounds) == 0 }

// asked is a riff to ask for.
type asked struct {
	level riff.Level
	hide  int
}

var bare = asked{level: riff.Bare}

// riffOf returns the riff to ask for with rhythms: of an edge, so many hundredths
// easier; bare for somebody new.
func (p *planner) riffOf(e Edge, easier int, rhythms ...*rhythm.Cycle) asked {
	if p.fresh() {
		return bare
	}
	var ids []string
	for _, c := range rhythms {
		ids = append(ids, c.ID)
	}
	level, hide := p.riffs.reaches.riffFor(max(0, e.Hide(ids...)-easier), rhythms)
	return asked{level, hide}
}

// tap returns a step in which the dums of a rhythm are tapped.
func (p *planner) tap(c *rhythm.Cycle, a asked, at Tempo, why Reason) Step {
	s := Step{
		Kind: history.Dums, Rhythms: []string{c.ID}, Level: a.level, Hide: a.hide,
		BPM: at.BPM(c), Eights: stepEights, Seed: p.seed(), Reason: why,
	}
	s.length(c)
	return s
}

// name returns a step in which one of some rhythms is told by name.
func (p *planner) name(choices quiz.Group, a asked, why Reason) Step {
	var ids []string
	var of []*rhythm.Cycle
	for _, c := range choices {
		ids, of = append(ids, c.ID), append(of, c.Cycle)
	}
	slices.Sort(ids)
	s := Step{
		Kind: history.Which, Rhythms: ids, Level: a.level, Hide: a.hide,
		Eights: stepEights, Seed: p.seed(), Reason: why,
	}
	s.length(of...)
	return s
}

// seeds are as large as a script reads exactly, and never 0.
const mostSeed = 1<<53 - 1

func (p *planner) seed() uint64 { return 1 + p.r.Uint64N(mostSeed) }

// rung returns a step of a lower rung.
func (p *planner) rung(ask quiz.Ask, why Reason) Step {
	s := Step{Kind: string(ask), Eights: quiz.RungEights, Seed: p.seed(), Reason: why}
	if f, _ := quiz.FormOf(ask); !f.Pool {
		s.length()
		return s
	}
	for _, c := range p.own {
		s.Rhythms = append(s.Rhythms, c.ID)
	}
	slices.Sort(s.Rhythms)
	s.length(p.own...)
	return s
}

// around returns choices among rhythms for names at a level: a rhythm and what the
// lean puts beside it; of a nil rhythm around one that is drawn. There are none where
// it goes together with none.
func (p *planner) around(c *rhythm.Cycle, among []*rhythm.Cycle, level riff.Level, answers int, l quiz.Lean) quiz.Group {
	g := quiz.Group(quiz.CandidatesOf(among, 0, level, p.riffs.strokes))
	g.Pair(quiz.ApartAtAnySpeed)
	anchors := slices.DeleteFunc(slices.Clone(g), func(o quiz.Candidate) bool {
		return c != nil && o.ID != c.ID || !slices.Contains(o.Fits, true)
	})
	if len(anchors) == 0 {
		return nil
	}
	anchor := l.Anchor(p.r, anchors)
	return quiz.Nearby(p.r, quiz.Largest(anchor, g.Rivals(anchor, l), answers))
}

// answers is among how many names is chosen: of two until the lower rungs hold, of
// four once the latest names were nearly all told.
func (p *planner) answers() int {
	switch {
	case len(p.loose) > 0:
		return quiz.MinAnswers
	case latest(history.Which, p.Rounds) >= rungRight:
		return quiz.MaxAnswers
	}
	return quiz.MinAnswers + 1
}
