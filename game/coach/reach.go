package coach

import (
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// reachedCycles is over how many cycles it is found how far riffs hide the base: one
// phrase. Package round asks for four, which takes four times as long.
const reachedCycles = 4

// Riffs is what was found out about the riffs of rhythms: how far a level can hide the
// base, and how many strokes it has. Each takes about a millisecond to find, and stays as
// it is for as long as the cycle. The zero Riffs knows nothing yet. It is not safe for
// concurrent use.
type Riffs struct {
	reaches reaches
	counts  map[leveled]int
}

// leveled is a rhythm at a level.
type leveled struct {
	cycle *rhythm.Cycle
	level riff.Level
}

// strokes is what the function [strokes] returns.
func (m *Riffs) strokes(c *rhythm.Cycle, level riff.Level) int {
	n, known := m.counts[leveled{c, level}]
	if !known {
		n = quiz.Strokes(c, level)
		m.counts[leveled{c, level}] = n
	}
	return n
}

// begun returns the riffs, ready to be added to; nil is new ones.
func (m *Riffs) begun() *Riffs {
	if m == nil {
		m = new(Riffs)
	}
	if m.reaches == nil {
		m.reaches, m.counts = reaches{}, map[leveled]int{}
	}
	return m
}

// reaches is how far a level can hide the base of a rhythm, in hundredths, at its usual
// tempo, with what chance one seed has: each found when it is first needed.
type reaches map[leveled]int

func (m reaches) of(c *rhythm.Cycle, level riff.Level) int {
	what := leveled{c, level}
	if _, known := m[what]; !known {
		m[what] = reach(c, level)
	}
	return m[what]
}

func reach(c *rhythm.Cycle, level riff.Level) int {
	p, err := riff.PlayHidden(c, level, reachedCycles, 0, 1, c.Tempo.Usual)
	if err != nil {
		panic("quiz: " + err.Error()) // every level is available
	}
	return (riff.HideThousandths(c, p, c.Tempo.Usual) + 5) / 10
}

// riffFor returns the riff that hides the base of rhythms by so many hundredths: the
// lowest level that reaches it with at least half of them, and the hide to ask of it;
// 0 for bare and filled, which hide what they hide. What no level reaches is asked of
// Solo, which comes as near as it can.
func (m reaches) riffFor(hide int, rhythms []*rhythm.Cycle) (riff.Level, int) {
	level := riff.Bare
	for level < riff.Solo && !m.reached(hide, rhythms, level) {
		level++
	}
	if level <= riff.Filled {
		return level, 0
	}
	return level, min(hide, round.MaxHide)
}

// reached reports whether a level hides the base of half of some rhythms so far.
func (m reaches) reached(hide int, rhythms []*rhythm.Cycle, level riff.Level) bool {
	n := 0
	for _, c := range rhythms {
		if m.of(c, level) >= hide {
			n++
		}
	}
	return 2*n >= len(rhythms)
}
