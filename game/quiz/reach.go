package quiz

import (
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// reach is how far each level up to Riffing can hide the base of a rhythm, in
// hundredths, at its usual tempo, with what chance one seed has; what is more is asked
// of Solo.
type reach [riff.Solo]int

// reachedCycles is over how many cycles that is found: as package round does.
const reachedCycles = 16

func reachOf(c *rhythm.Cycle) reach {
	var all reach
	for level := range all {
		r, err := round.Riff(c, riff.Level(level), 0, 0, round.MaxHide)
		if err != nil {
			panic("quiz: " + err.Error()) // every level is available
		}
		p, err := r.At(c.Tempo.Usual).Cycles(0, reachedCycles)
		if err != nil {
			panic("quiz: " + err.Error())
		}
		all[level] = (riff.HideThousandths(c, p, c.Tempo.Usual) + 5) / 10
	}
	return all
}

// RiffFor returns the riff that hides the base of rhythms by so many hundredths: the
// lowest level that reaches it with at least half of them, and the hide to ask of it; 0 for bare and
// filled, which hide what they hide.
func RiffFor(hide int, rhythms ...*rhythm.Cycle) (riff.Level, int) {
	var all []reach
	for _, c := range rhythms {
		all = append(all, reachOf(c))
	}
	return riffFor(hide, all)
}

func riffFor(hide int, all []reach) (riff.Level, int) {
	for level := riff.Bare; level < riff.Solo; level++ {
		reached := 0
		for _, r := range all {
			if r[level] >= hide {
				reached++
			}
		}
		if 2*reached < len(all) {
			continue
		}
		if level <= riff.Filled {
			hide = 0
		}
		return level, hide
	}
	return riff.Solo, min(hide, round.MaxHide)
}
