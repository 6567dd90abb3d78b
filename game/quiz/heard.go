package quiz

import (
	"groundbeat/game/riff"
	"groundbeat/scoring"
	"groundbeat/scoring/threshold"
)

// rhythmsApart is how far thresholds of rhythms lie apart, as a standard deviation of
// hide: chosen.
const rhythmsApart = .07

// Thresholds are looked for from where not even the bare base is told half way between
// chance and best, up to what riffs hide at the most.
const lowest, highest = -.2, .8

// Through is how much riff one hears through, in one word.
type Through uint8

// The words, by the limits of package riff.
const (
	ThroughUnknown Through = iota // too few answers
	ThroughBare                   // the base alone, or hardly hidden
	ThroughLittle                 // riffs that hide it a little
	ThroughSome                   // somewhat
	ThroughMuch                   // much
)

// Heard is how much riff a player hears through.
type Heard struct {
	Kind string // of round
	// Hide is where answers are right half way between chance and best, 0 to 1, with
	// its uncertainty; unknown from fewer than [threshold.LeastTrials] answers.
	Hide    scoring.Estimate
	Through Through
}

// Heard returns how much riff the player hears through, over all rhythms: from all
// answers together, wherever they were ([threshold.Find]).
func (e Edge) Heard() Heard { return e.heard(e.found(e.trials, threshold.Search{})) }

// HeardOf returns it for one rhythm, drawn towards that of all the more the fewer
// answers there are; unknown where that is.
func (e Edge) HeardOf(rhythm string) Heard {
	all := e.found(e.trials, threshold.Search{})
	if !all.Known {
		return e.heard(scoring.Unknown(all.N, all.Least))
	}
	var some []trial
	for _, t := range e.trials {
		if t.rhythm == rhythm {
			some = append(some, t)
		}
	}
	return e.heard(e.found(some, threshold.Search{Expected: all.Value, Spread: rhythmsApart}))
}

func (e Edge) found(trials []trial, s threshold.Search) scoring.Estimate {
	s.Low, s.High = lowest, highest
	all := make([]threshold.Trial, len(trials))
	for i, t := range trials {
		all[i] = threshold.Trial{Level: float64(t.hide) / 100, Right: t.right, Choices: t.choices}
	}
	return threshold.Find(all, s).Level
}

// heard is what an estimate says; what is less than the bare base is the bare base.
func (e Edge) heard(h scoring.Estimate) Heard {
	h.Value, h.Low, h.High = max(h.Value, 0), max(h.Low, 0), max(h.High, 0)
	return Heard{Kind: e.Kind, Hide: h, Through: through(h)}
}

func through(h scoring.Estimate) Through {
	switch {
	case !h.Known:
		return ThroughUnknown
	case h.Value < riff.HideLittle:
		return ThroughBare
	case h.Value < riff.HideSome:
		return ThroughLittle
	case h.Value < riff.HideMuch:
		return ThroughSome
	}
	return ThroughMuch
}
