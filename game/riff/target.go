package riff

import "groundbeat/game/rhythm"

// near is how near, in thousandths, a riff must come to what is asked for the
// search to end. tries is how many riffs are looked at for each way to be busy; but
// only hopeless of them if all hide more than is asked, or all less.
const (
	near     = 10
	tries    = 12
	hopeless = 2
)

// Hidden returns a riff that hides the base by target, from 0 to 1, as [Hide]
// finds over its first cycles (1 to MaxCycles) at bpm beats a minute: the first
// that does so to a hundredth among those that can be made of the seed, or the one
// that comes nearest. Bare and Filled are what they are and hide what they hide.
//
// The same arguments give the same riff for ever, as long as [Version] stays. The
// target is taken in whole thousandths, and so is what is compared with it.
func Hidden(c *rhythm.Cycle, level Level, cycles int, seed uint64, target float64, bpm int) (Riff, error) {
	r, err := New(c, level, seed)
	if err != nil || level <= Filled {
		return r, err
	}
	wanted := 0 // also for what is no number
	if target > 0 {
		wanted = int(float64(min(target, 1)*1000) + 0.5) // not fused: the same on every machine
	}
	best, least, most := r, 1000, 0
	off := 1001
	for try := 0; try < tries && (try < hopeless || least <= wanted && wanted <= most); try++ {
		r.seed = seed
		if try > 0 {
			r.seed = draw(seed, level, forTarget, try).source.Uint64()
		}
		for r.busy = 0; r.busy <= mostBusy; r.busy++ {
			p, err := r.At(bpm).Cycles(0, cycles)
			if err != nil {
				return Riff{}, err
			}
			hide := HideThousandths(c, p, bpm)
			least, most = min(least, hide), max(most, hide)
			if d := max(hide-wanted, wanted-hide); d < off {
				best, off = r, d
			}
			if off <= near {
				return best, nil
			}
		}
	}
	return best, nil
}

// PlayHidden is [Play] of the riff that [Hidden] finds for those cycles, as two
// hands can play it at bpm.
func PlayHidden(c *rhythm.Cycle, level Level, cycles int, seed uint64, target float64, bpm int) (Part, error) {
	r, err := Hidden(c, level, cycles, seed, target, bpm)
	if err != nil {
		return Part{}, err
	}
	return r.At(bpm).Cycles(0, cycles)
}
