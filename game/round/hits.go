package round

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// countInStrength is how firmly the lead drum strikes 5 6 7 8.
const countInStrength = 0.5

// Hits are the strokes of both drums from the count-in on, as frames of the
// stream; base is the frame of the passage's first. A roll is many hits.
func (p *Passage) Hits(rate audio.SampleRate, base int64) []audio.Hit {
	var hits []audio.Hit
	// A loop of cycles has other variations in each.
	seed := func() uint64 { return mix(p.seed, uint64(p.parts[0].First)<<32|uint64(len(hits))) }
	add := func(v audio.Voice, at time.Duration, strength float64) {
		hits = append(hits, audio.Hit{
			Frame: base + rate.Frame(at), Voice: v, Strength: float32(strength), Seed: seed(),
		})
	}
	if p.countIn {
		for beat := -CountInBeats; beat < 0; beat++ {
			add(audio.LeadTek, p.at(0, beat*p.parts[0].Rhythm.StepsPerBeat()), countInStrength)
		}
	}
	for i := range p.parts {
		for _, s := range p.parts[i].Bass {
			add(bassVoice(s), p.strike(i, s), s.Strength)
		}
		for _, s := range p.parts[i].Lead {
			if s.Roll == 0 {
				add(leadVoice(s), p.strike(i, s), s.Strength)
				continue
			}
			hits = append(hits, p.roll(i, s, rate, base, seed())...)
		}
	}
	return hits
}

// roll is a roll of a section, hit by hit.
func (p *Passage) roll(i int, s riff.Stroke, rate audio.SampleRate, base int64, seed uint64) []audio.Hit {
	from, to := rate.Frame(p.strike(i, s)), rate.Frame(p.strike(i, s.End()))
	return audio.Roll{
		Frame: base + from, Length: to - from,
		From: float32(s.Strength), To: float32(s.Swell), Seed: seed,
	}.Hits(rate)
}

// strike is when a stroke of a section falls. Strokes between steps are taken
// from their own place too, not from the step before.
func (p *Passage) strike(i int, s riff.Stroke) time.Duration {
	if s.Sub == 0 {
		return p.at(i, s.Step)
	}
	if i == 0 && p.countIn {
		s.Step += CountInBeats * p.parts[0].Rhythm.StepsPerBeat()
		return s.At(p.parts[0].Rhythm, p.bpm)
	}
	return p.parts[i].from + s.At(p.parts[i].Rhythm, p.bpm)
}

func bassVoice(s riff.Stroke) audio.Voice {
	if s.Sound.Low() {
		return audio.BassDum
	}
	return audio.BassTek
}

func leadVoice(s riff.Stroke) audio.Voice {
	switch s.Sound {
	case rhythm.Dum:
		return audio.LeadDum
	case rhythm.Ka:
		return audio.LeadKa
	case rhythm.Sak:
		return audio.LeadSak
	default:
		return audio.LeadTek
	}
}

// mix turns a seed and a stroke's number into a seed of its own: the finaliser
// of SplitMix64 (Steele, Lea and Flood, "Fast splittable pseudorandom number
// generators", 2014).
func mix(seed, n uint64) uint64 {
	z := seed + (n+1)*0x9e3779b97f4a7c15
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}
