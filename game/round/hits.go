package round

import (
	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// countInStrength is how firmly the lead drum strikes 5 6 7 8.
const countInStrength = 0.5

// Hits are the strokes of both drums from the count-in on, as frames of the
// stream; base is the frame of the "5".
func (r *Round) Hits(rate audio.SampleRate, base int64) []audio.Hit {
	var hits []audio.Hit
	add := func(v audio.Voice, step int, strength float64) {
		hits = append(hits, audio.Hit{
			Frame:    base + rate.Frame(r.at(step)),
			Voice:    v,
			Strength: float32(strength),
			Seed:     mix(r.Question.Seed, uint64(len(hits))),
		})
	}
	perBeat := r.Question.Rhythm.StepsPerBeat()
	for beat := -CountInBeats; beat < 0; beat++ {
		add(audio.LeadTek, beat*perBeat, countInStrength)
	}
	for _, s := range r.part.Bass {
		add(bassVoice(s), s.Step, s.Strength)
	}
	for _, s := range r.part.Lead {
		add(leadVoice(s), s.Step, s.Strength)
	}
	return hits
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
