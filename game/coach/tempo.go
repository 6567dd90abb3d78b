package coach

import (
	"math"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
	"groundbeat/scoring/threshold"
)

// Tempo is how fast of a rhythm's own range: 0 its slow tempo, Usual its usual one,
// Fastest its fast one, and in equal parts between. So one ladder serves all rhythms.
type Tempo int

// The ends of the ladder, and the middle.
const (
	Slowest Tempo = 0
	Usual   Tempo = 100
	Fastest Tempo = 200
)

// How the ladder goes: up by a tenth of the way to the usual tempo after a right
// round, down by three tenths after a wrong one, so that three of four are right
// (Kaernbach 1991): to practise it should go well more often than to measure.
const (
	startTempo  = 30
	fasterStep  = 10
	tempoTarget = .75
	nearTempo   = 30 // how far from it a round may lie and still move it
	tempoEase   = 30 // how much slower it begins after a pause
)

// TempoOf returns the tempo for tapping after rounds, in order, of one player on one
// output: a staircase like that of [EdgeOf], over tapped rounds of rhythms of the
// pool whose riff hides the base a little at most, since otherwise it is the riff
// that is tapped wrong, not the tempo. After a pause it begins slower.
func TempoOf(rounds []history.Round, pool []*rhythm.Cycle, today string) Tempo {
	byID, m := byID(pool), reaches{}
	s, last := ladderFrom(startTempo), day(0)
	rest := func(d day) {
		if d.since(last) >= restDays {
			s = ladderFrom(max(0, tempoOn(s)-tempoEase))
		}
		if d != 0 {
			last = d
		}
	}
	for _, r := range rounds {
		if k, _ := history.KindOf(r.Kind); !k.Along {
			continue
		}
		t, ok := m.trialOf(r, func(id string) *rhythm.Cycle { return byID[id] })
		if !ok || t.hide >= int(100*riff.HideSome) {
			continue
		}
		rest(t.day)
		if off := tempoAt(byID[t.rhythm], r.BPM) - tempoOn(s); off <= nearTempo && off >= -nearTempo {
			s.Answer(t.right)
		}
	}
	rest(parseDay(today))
	return tempoOn(s)
}

func ladderFrom(start Tempo) *threshold.Staircase {
	return threshold.Begin(threshold.Rule{
		Start: float64(start), High: float64(Fastest), Harder: fasterStep, Run: 1, Target: tempoTarget, Sizes: sizes,
	})
}

func tempoOn(s *threshold.Staircase) Tempo { return Tempo(math.Round(s.Level())) }

// BPM returns the tempo for a rhythm, in beats a minute, within what a round allows.
func (t Tempo) BPM(c *rhythm.Cycle) int {
	from, to, part := c.Tempo.Slow, c.Tempo.Usual, int(min(max(t, Slowest), Fastest))
	if t > Usual {
		from, to, part = c.Tempo.Usual, c.Tempo.Fast, part-int(Usual)
	}
	return min(max(from+((to-from)*part+50)/100, round.MinBPM), round.MaxBPM)
}

// tempoAt returns where beats a minute lie in a rhythm's range; beyond it, Slowest
// or Fastest.
func tempoAt(c *rhythm.Cycle, bpm int) Tempo {
	part := func(from, to int) Tempo { return Tempo(100 * (bpm - from) / max(1, to-from)) }
	switch {
	case bpm <= c.Tempo.Slow:
		return Slowest
	case bpm >= c.Tempo.Fast:
		return Fastest
	case bpm < c.Tempo.Usual:
		return part(c.Tempo.Slow, c.Tempo.Usual)
	}
	return Usual + part(c.Tempo.Usual, c.Tempo.Fast)
}

// byID returns rhythms by their ids.
func byID(pool []*rhythm.Cycle) map[string]*rhythm.Cycle {
	all := make(map[string]*rhythm.Cycle, len(pool))
	for _, c := range pool {
		all[c.ID] = c
	}
	return all
}
