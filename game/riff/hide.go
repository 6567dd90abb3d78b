package riff

import "groundbeat/game/rhythm"

// Three limits of [Hide] divide riffs into four: those that hardly hide the base,
// and those that hide it a little, somewhat, and much. They are round numbers where
// the lead drum begins to do something else, over the supplied rhythms and 200 seeds
// (TestLimitsOfHide): below HideLittle are only Bare and forms with a light stroke
// or two; no riff below Riffing, that is, none with every dum of the base and no
// other, reaches HideSome, and nine in ten at Riffing do; HideMuch is reached by one
// in two hundred of these, and by three in four of Solo, which never say the base.
const (
	HideLittle = 0.02
	HideSome   = 0.25
	HideMuch   = 0.50
)

// Hide returns how much the lead drum of a part is predicted to hide the dums of
// the base, from 0 (not at all, as at Bare) to 1, at bpm beats a minute. It is
// [HideThousandths] as a fraction.
func Hide(c *rhythm.Cycle, p Part, bpm int) float64 {
	return float64(HideThousandths(c, p, bpm)) / 1000
}

// HideThousandths returns [Hide] in thousandths, 0 to 1000. Nothing but whole
// numbers goes into it, so that it is the same on every machine. c is the rhythm of
// the part, bpm the tempo, from 1 to 83,333, else it panics.
//
// What hides a dum is taken from what is published on hearing:
//
//   - Rivals: dums of the lead drum off the base. A rhythm is disguised by the same
//     sounds between its own, at irregular times (Turgeon, Bregman and Roberts,
//     "Rhythmic masking release", Journal of Experimental Psychology: Human
//     Perception and Performance 31, 939–953, 2005).
//   - Fusion: a high stroke of the lead drum at the same moment. High and low that
//     begin together are harder to hear apart than in turn, however far apart they
//     lie (Micheyl, Hanson, Demany, Shamma and Oxenham, "Auditory stream segregation
//     for alternating and synchronous tones", the same journal 39, 1568–1580, 2013);
//     which of two came first is told right three times in four only from 22 ms on
//     (mazurka.org.uk/experiments, "onset"; Hirsh, 1959, has some 20).
//   - Masking: by a dum of the lead drum shortly before. It falls with the logarithm
//     of the delay, in dB (Jesteadt, Bacon and Lehman, "Forward masking as a
//     function of frequency, masker level, and signal delay", Journal of the
//     Acoustical Society of America 71, 950–962, 1982), and is over after 200 ms
//     (Zwicker and Fastl, Psychoacoustics; from memory). High strokes put a
//     hundredth of a dum's energy or less where dums lie (TestHighStrokesDoNotMask)
//     and do not count; what comes after a dum masks it for 20 ms at most, which is
//     fusion here.
//   - Crowd: high strokes beside the base, which an ear can let pass, since they lie
//     more than a critical band above (Dowling, "The perception of interleaved
//     melodies", Cognitive Psychology 5, 322–337, 1973).
//   - Syncopation of the lead drum's full strokes above that of the base: listeners
//     then move the beat ([Syncopation]).
//
// A dum that the lead drum strikes too is stated, not hidden: neither fused nor
// masked; one that it passes over is heard from the bass drum alone, some 3 dB softer.
//
// How these add up is our own: each lets some part of the dum through, and what is
// heard of it is the product. Its rivals cost what the F-measure loses when every
// dum counts as the base's, n/(n + 2) with n for each of its own, times 0.8, since
// the two drums differ in pitch. The other weights are chosen. So this is a
// prediction: onset detectors agree with its ranks, most of which are the levels'
// (TestHideAgainstSound, in package round, says how far); for ears that is open until
// results of players confirm it.
//
// It is the mean over the dums of the base outside the open spans, as far as rivals,
// crowd, fusion and masking go; 0 if there are no such dums. Strokes in open spans
// do not count; a roll outside one counts as its first stroke.
func HideThousandths(c *rhythm.Cycle, p Part, bpm int) int {
	base, lead := p.Base(), Part{Bass: p.Lead, Open: p.Open}.Base()
	moments := momentsOf(heardOf(c, base, bpm))
	if len(moments) == 0 {
		return 0
	}
	gather(moments, heardOf(c, lead, bpm), heardOf(c, base, bpm))
	sum := 0
	for i := range moments {
		sum += moments[i].shown()
	}
	shown := through(sum/len(moments), syncopationWeight, unsettled(c, p, lead))
	return (whole - shown + whole/2000) / (whole / 1000)
}

// whole is a dum that nothing hides, in millionths.
const whole = 1_000_000

// How much of a dum, in thousandths, each thing hides at most.
const (
	aloneWeight       = 150
	fusionWeight      = 300
	maskingWeight     = 300
	rivalsWeight      = 800
	crowdWeight       = 400
	syncopationWeight = 150
)

// Of how many firm strokes for each dum, in thousandths, half the weight is felt.
const (
	rivalsHalf = 2000
	crowdHalf  = 5000
)

// through returns what is left of something shown, in millionths, if up to weight
// hides it, by degree; both in thousandths.
func through(shown, weight, degree int) int {
	return shown * (whole - weight*degree) / whole
}

// saturated is how near, in thousandths, something has come to all that it can do,
// of which it does one half at half.
func saturated(amount, half int) int { return 1000 * amount / (amount + half) }

// shown is how much of the dum is heard, in millionths.
func (m *moment) shown() int {
	shown := through(whole, rivalsWeight, saturated(m.rivals, rivalsHalf))
	shown = through(shown, crowdWeight, saturated(m.crowd, crowdHalf))
	if m.stated {
		return shown
	}
	shown = through(shown, aloneWeight, 1000)
	shown = through(shown, fusionWeight, m.fused)
	return through(shown, maskingWeight, m.masked)
}
