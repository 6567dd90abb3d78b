package round

import (
	"cmp"
	"slices"
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Strike is one strike of one of the lead drummer's hands, as it sounds.
type Strike struct {
	At       time.Duration // in the passage
	Sound    rhythm.Stroke // Dum, Sak, or one at the rim
	Strength float64       // above 0, to 1
	Hand     riff.Hand
}

// Strikes are what the lead drummer's hands do in the passage, in the order of
// time: the count-in with the strong hand, each stroke with the hand that
// [riff.Hands] gives it, and a roll with both in turn.
func (p *Passage) Strikes() []Strike {
	var all []Strike
	for beat := -CountInBeats; p.countIn && beat < 0; beat++ {
		all = append(all, Strike{p.at(0, beat*p.parts[0].Rhythm.StepsPerBeat()), rhythm.Tek, countInStrength, riff.Strong})
	}
	for i := range p.parts {
		lead := p.parts[i].Lead
		hands, _ := riff.Hands(p.parts[i].Rhythm, lead, p.bpm) // too fast for two: then as near as they come
		for k, s := range lead {
			if s.Roll == 0 {
				all = append(all, Strike{p.strike(i, s), s.Sound, s.Strength, hands[k]})
				continue
			}
			all = append(all, p.rolled(i, s)...)
		}
	}
	slices.SortStableFunc(all, func(a, b Strike) int { return cmp.Compare(a.At, b.At) })
	return all
}

// rolled is a roll, strike by strike, as it is scheduled.
func (p *Passage) rolled(i int, s riff.Stroke) []Strike {
	var all []Strike
	for n, hit := range p.roll(i, s, audio.Rate, 0, 0) {
		all = append(all, Strike{audio.Rate.Duration(hit.Frame), rhythm.Tek, float64(hit.Strength), riff.Hand(n % 2)})
	}
	return all
}
