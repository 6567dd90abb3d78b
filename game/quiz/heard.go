package quiz

import (
	"groundbeat/game/riff"
	"groundbeat/scoring"
	"groundbeat/scoring/diary"
	"groundbeat/scoring/threshold"
)

// rhythmsApart is how far thresholds of rhythms lie apart, as a standard deviation of
// hide: chosen.
const rhythmsApart = .07

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
	// its uncertainty; unknown from fewer than [diary.LeastHeard] answers.
	Hide    scoring.Estimate
	Through Through
}

// Heard returns how much riff the player hears through, over all rhythms: from the
// latest answers together, wherever they were ([threshold.Find]).
func (e Edge) Heard() Heard {
	latest := e.trials[max(0, len(e.trials)-diary.LatestHeard):]
	if len(latest) < diary.LeastHeard {
		return e.heard(scoring.Unknown(len(latest), diary.LeastHeard))
	}
	h := found(latest, threshold.Search{High: 1})
	h.Least = diary.LeastHeard
	return e.heard(h)
}

// HeardOf returns it for one rhythm, drawn towards that of all the more the fewer
// answers there are; unknown where that is, or where there are none.
func (e Edge) HeardOf(rhythm string) Heard {
	all := e.Heard()
	if !all.Hide.Known {
		return all
	}
	var some []trial
	for _, t := range e.trials {
		if t.rhythm == rhythm {
			some = append(some, t)
		}
	}
	return e.heard(found(some, threshold.Search{High: 1, Expected: all.Hide.Value, Spread: rhythmsApart}))
}

func found(trials []trial, s threshold.Search) scoring.Estimate {
	all := make([]threshold.Trial, len(trials))
	for i, t := range trials {
		all[i] = threshold.Trial{Level: float64(t.hide) / 100, Right: t.right, Choices: t.choices}
	}
	return threshold.Find(all, s).Level
}

func (e Edge) heard(h scoring.Estimate) Heard {
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
