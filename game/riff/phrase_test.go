package riff_test

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// perPhrase is how many cycles a phrase has: an eight or longer makes a phrase of
// two.
func perPhrase(c *rhythm.Cycle) int {
	if !c.Odd() && c.Beats() >= 8 {
		return 2
	}
	return 4
}

// A theme is stated and said again: of its cycles, sixteen or eight, most are like
// some other; and the last of a phrase of four is never like the first.
func TestPhrasesRepeatAndTheFourthDiffers(t *testing.T) {
	eachRiff(t, riff.Ornamented, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		phrase := perPhrase(c)
		for theme := 0; theme < cyclesHeld; theme += 4 * phrase {
			seen := map[string]int{}
			for i := range 4 * phrase {
				seen[letters(c, p.Lead, theme+i)]++
			}
			repeated := 0
			for _, n := range seen {
				if n > 1 {
					repeated += n
				}
			}
			if 2*repeated < 4*phrase {
				t.Fatalf("the theme from cycle %d: only %d cycles are heard again", theme, repeated)
			}
		}
		for i := 0; i < cyclesHeld; i += phrase {
			first, last := letters(c, p.Lead, i), letters(c, p.Lead, i+phrase-1)
			if first == last && !open(p, (i+phrase)*c.Steps()-1) {
				t.Fatalf("the phrase from cycle %d ends as it began: %s", i, first)
			}
		}
	})
}

// Themes change: the second of a riff is not the first again.
func TestThemesChange(t *testing.T) {
	eachRiff(t, riff.Riffing, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		var themes [2]string
		for i := range 4 * perPhrase(c) {
			themes[0] += letters(c, p.Lead, i)
			themes[1] += letters(c, p.Lead, i+4*perPhrase(c))
		}
		if themes[0] == themes[1] {
			t.Fatal(themes[0])
		}
	})
}

// After every fill, break and roll something full lands on the 1: where the base
// strikes there, and anyway in a riff of the lead drum's own.
func TestFillsResolveOnTheOne(t *testing.T) {
	eachRiff(t, riff.Ornamented, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		ones := 0
		for _, s := range p.Lead {
			if s.Step%c.Steps() == 0 && s.Sub == 0 && !s.Sound.Light() {
				ones++
			}
		}
		require.Equal(t, cyclesHeld, ones)
	})
}

// The theme, said again two cycles later in its first phrase, is firmer.
func TestStrokesSwell(t *testing.T) {
	eachRiff(t, riff.Ornamented, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		if perPhrase(c) == 4 {
			require.Equal(t, letters(c, p.Lead, 0), letters(c, p.Lead, 2))
			require.Greater(t, high(c, p, 2), high(c, p, 0))
		}
	})
}

// high is the strength of all high strokes of a cycle.
func high(c *rhythm.Cycle, p riff.Part, cycle int) float64 {
	sum := 0.0
	for _, s := range inCycle(c, p.Lead, cycle) {
		if s.Sound.High() {
			sum += s.Strength
		}
	}
	return sum
}

// Odd metres are felt in their groups: at Riffing and Solo each group of the metre
// begins with a full stroke in most cycles.
func TestGroupsAreHeard(t *testing.T) {
	eachRiff(t, riff.Riffing, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		if c.Grouping == nil {
			return
		}
		at := 0
		for _, beats := range c.Grouping {
			full := 0
			for _, s := range p.Lead {
				if s.Step%c.Steps() == at && s.Sub == 0 && !s.Sound.Light() {
					full++
				}
			}
			if full < cyclesHeld/2 {
				t.Fatalf("the group on step %d begins with a full stroke in %d cycles", at, full)
			}
			at += beats * c.StepsPerBeat()
		}
	})
}

// Of what the generator's vocabulary names, everything is played somewhere: slaps,
// doubles, sixes, dums beside the base's, air, breaks and rolls.
func TestVocabularyIsPlayed(t *testing.T) {
	found := map[string]bool{}
	eachRiff(t, riff.Ornamented, func(t *testing.T, c *rhythm.Cycle, level riff.Level, p riff.Part) {
		for i, s := range p.Lead {
			found["slap"] = found["slap"] || s.Sound == rhythm.Sak
			found["dum off the base"] = found["dum off the base"] || s.Sound.Low() && !open(p, s.Step) && !c.Skeleton[s.Step%c.Steps()].Low()
			found["third"] = found["third"] || s.Sub%3 != 0
			found["double"] = found["double"] || s.Sub%6 == 3
			if i > 0 && s.Step-p.Lead[i-1].Step > c.Steps()/4 && !open(p, s.Step-1) {
				found["air"] = true
			}
		}
		for _, o := range p.Open {
			found[o.Kind.String()] = true
		}
	})
	var names []string
	for name, is := range found {
		if is {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	require.Equal(t, []string{"air", "break", "double", "dum off the base", "roll", "slap", "third"}, names)
}
