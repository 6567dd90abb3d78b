package warmup

import (
	"slices"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// mostStrength tames what a room hears: a closing accent is no firmer than a firm
// stroke, 1.9 dB below the firmest there is. Own choice.
const mostStrength = 0.8

// How long things are heard, in eights.
const (
	sayEights    = 4 // two with the line, two without it
	walkEights   = 4 // two, one in silence, one more
	stopEights   = 6
	oneEights    = 2
	baseEights   = 3
	turnEights   = 1
	underEights  = 2
	walkSilentAt = 2 // the eight, from 0, in which the drums drop out
)

// handsUpLasts is how long a rhythm is heard whose name is asked: a length in eights
// would tell the tempo, and so something of the rhythm. It is what three eights last
// at 100 counts a minute.
const handsUpLasts = 3 * 8 * time.Minute / 100

// Passage returns what the room hears when the task is asked, at so many of 100 of its
// tempo (a slower one is never below [round.MinBPM]), and when it is cut off; 0 is at
// its end.
func (t Task) Passage(percent int) (*round.Passage, time.Duration, error) {
	bpm := slower(t.BPM, percent)
	switch t.Kind {
	case CatchTheStop:
		p, err := round.NewStoppedPassage(t.stops(bpm), true)
		return room(p, err)
	case WalkAndClap:
		p, err := t.play(bpm, t.Level, true, eights(t.Rhythm, walkEights))
		if err == nil {
			eight := t.Rhythm.CyclesIn(1) * t.Rhythm.Steps()
			p = p.Quieted(walkSilentAt*eight, (walkSilentAt+1)*eight)
		}
		return room(p, err)
	case WhatChanged:
		return room(t.play(bpm, t.Level, true, eights(t.Rhythm, 1), eights(t.Other, 1)))
	case FindTheOne:
		return room(t.play(bpm, t.Level, false, t.turned()))
	case SayIt:
		return room(t.play(bpm, t.Level, true, eights(t.Rhythm, sayEights)))
	case BaseOrRiff:
		return room(t.play(bpm, t.Level, true, eights(t.Rhythm, baseEights)))
	}
	cycles := int(handsUpLasts/t.Rhythm.Length(bpm)) + 1
	p, _, err := room(t.play(bpm, t.Level, false, round.Section{Rhythm: t.Rhythm, Cycles: cycles}))
	return p, handsUpLasts, err
}

// stops is the question in which the drums break off.
func (t Task) stops(bpm int) round.Setting {
	return round.Setting{Kind: round.Stops, Rhythm: t.Rhythm, BPM: bpm, Eights: stopEights, Level: t.Level, Seed: t.Seed}
}

// turned are cycles that end with the stroke on which it breaks off, and so begin
// anywhere.
func (t Task) turned() round.Section {
	c := *t.Rhythm
	c.Variants = nil
	turn := func(p rhythm.Pattern) rhythm.Pattern {
		fine := len(p) / t.Rhythm.Steps()
		at := (t.Last + 1) * fine
		p = slices.Concat(p[at:], p[:at])
		for i := 1; i < fine; i++ {
			p[len(p)-i] = rhythm.Rest // nothing comes after it
		}
		return p
	}
	c.Skeleton = turn(c.Skeleton)
	if c.Filled != nil {
		c.Filled = turn(c.Filled)
	}
	return eights(&c, oneEights)
}

// A Turn is one of what is heard in turn when the answer is known.
type Turn struct {
	ID     string        // of its choice; of what is no choice ""
	Rhythm *rhythm.Cycle // what the bass drum holds
	*round.Passage
}

// Turns returns what is heard in turn when the answer is known: what was right, then
// the choice of an ID that was taken for it; without one, the right one alone.
func (t Task) Turns(other string) ([]Turn, error) {
	switch t.Kind {
	case WhatChanged:
		return t.turns(Turn{"", t.Rhythm, nil}, Turn{t.Right, t.Other, nil})
	case BaseOrRiff:
		return t.turns(Turn{OnBase, t.Rhythm, nil}, Turn{OffBase, t.Rhythm, nil})
	}
	all := []Turn{{t.Right, t.Rhythm, nil}}
	if c, ok := t.Choice(other); ok && c.Rhythm != nil && other != t.Right {
		all = append(all, Turn{other, c.Rhythm, nil})
	}
	return t.turns(all...)
}

func (t Task) turns(all ...Turn) ([]Turn, error) {
	for i := range all {
		bpm, level := t.BPM, min(t.Level, riff.Filled)
		if c, ok := t.Choice(all[i].ID); ok && c.BPM != 0 {
			bpm = c.BPM
		}
		if all[i].ID == OffBase {
			level = riff.Solo
		}
		p, err := t.play(bpm, level, i == 0 && t.Kind != HandsUp, eights(all[i].Rhythm, turnEights))
		if err != nil {
			return nil, err
		}
		all[i].Passage = p.Tamed(mostStrength)
	}
	return all, nil
}

// Replay returns what is heard once more, now that it is known: under the riff.
func (t Task) Replay() (*round.Passage, error) {
	level, all := t.Under, []round.Section{eights(t.Rhythm, underEights)}
	switch t.Kind {
	case WhatChanged:
		level, all = t.Level, []round.Section{eights(t.Rhythm, 1), eights(t.Other, 1)}
	case BaseOrRiff:
		level = t.Level
	}
	p, _, err := room(t.play(t.BPM, level, true, all...))
	return p, err
}

func (t Task) play(bpm int, level riff.Level, countIn bool, all ...round.Section) (*round.Passage, error) {
	return round.NewPassage(bpm, level, t.Seed, countIn, all...)
}

// room is a passage as it is heard in a room.
func room(p *round.Passage, err error) (*round.Passage, time.Duration, error) {
	if err != nil {
		return nil, 0, err
	}
	return p.Tamed(mostStrength), 0, nil
}

func eights(c *rhythm.Cycle, n int) round.Section {
	return round.Section{Rhythm: c, Cycles: c.CyclesIn(n)}
}

func slower(bpm, percent int) int { return max(round.MinBPM, bpm*percent/100) }

// LineUntil is up to when the whiteboard line stands of what is spoken: for the first
// half.
func LineUntil(p *round.Passage) time.Duration { return p.Start() + (p.End()-p.Start())/2 }
