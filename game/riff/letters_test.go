package riff_test

import (
	"cmp"
	"slices"
	"strings"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// letters writes one cycle of a drum as drummers do, beat by beat: on the steps
// of the filled form, "-" where nothing is struck; a beat in threes in brackets,
// "(TktTtk)" being six; one on a finer grid in square ones. "~" begins a roll.
func letters(c *rhythm.Cycle, strokes []riff.Stroke, cycle int) string {
	beat := c.StepsPerBeat() * riff.TicksPerStep
	at := map[int]string{}
	for _, s := range inCycle(c, strokes, cycle) {
		letter := s.Sound.String()
		if s.Roll > 0 {
			letter = "~"
		}
		at[s.Step*riff.TicksPerStep+s.Sub] = letter
	}
	var beats []string
	for from := 0; from < c.Steps()*riff.TicksPerStep; from += beat {
		beats = append(beats, beatOf(at, from, beat))
	}
	return strings.Join(beats, " ")
}

func beatOf(at map[int]string, from, beat int) string {
	plain := riff.TicksPerStep / 2
	if beat > 2*riff.TicksPerStep {
		plain = riff.TicksPerStep
	}
	for _, grid := range []struct {
		ticks       int
		left, right string
	}{{plain, "", ""}, {plain * 2 / 3, "(", ")"}, {plain / 2, "[", "]"}} {
		if line, all := onTicks(at, from, beat, grid.ticks); all {
			return grid.left + line + grid.right
		}
	}
	line, _ := onTicks(at, from, beat, 1)
	return "[" + line + "]"
}

// onTicks writes a beat on every so many ticks, and reports whether that is all.
func onTicks(at map[int]string, from, beat, ticks int) (line string, all bool) {
	all = true
	for i := from; i < from+beat; i++ {
		switch letter, struck := at[i]; {
		case (i-from)%ticks != 0:
			all = all && !struck
		case struck:
			line += letter
		default:
			line += "-"
		}
	}
	return line, all
}

// inCycle are the strokes of one cycle, from its own first step.
func inCycle(c *rhythm.Cycle, strokes []riff.Stroke, cycle int) []riff.Stroke {
	from, _ := slices.BinarySearchFunc(strokes, cycle*c.Steps(), beforeStep)
	to, _ := slices.BinarySearchFunc(strokes, (cycle+1)*c.Steps(), beforeStep)
	all := slices.Clone(strokes[from:to])
	for i := range all {
		all[i].Step -= cycle * c.Steps()
	}
	return all
}

func beforeStep(s riff.Stroke, step int) int { return cmp.Compare(s.Step, step) }
