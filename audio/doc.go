// Package audio makes the sound of the two drums: a lead drum (darbuka) and
// a bass drum (dohola), synthesised as struck membranes and delivered as one
// endless two-channel stream. It is pure: no device, no clock, no files and
// no global randomness. The same hits give the same samples, whatever the
// sizes of the reads.
//
// # From hit to sample
//
// A [Hit] names a frame, a [Voice], a strength and a seed. Each drum is one
// bank of resonators, shared by all its strokes, as one head is: a stroke
// does not start a sound of its own but pushes the head once more, while it
// still rings from the strokes before.
//
//   - Modes (m,n) lie at the zeros of the Bessel functions, lowered by the
//     mass of the air they move (Fletcher & Rossing, "The Physics of Musical
//     Instruments", ch. 3 and 18). The lowest is split in two by the air in
//     the goblet: the low one is what one hears as the dum, the upper one is
//     what small loudspeakers leave of it. The goblet's own next mode rings
//     along.
//   - A stroke excites each mode by its shape at the place struck: near the
//     centre the round modes, at the rim the high ones. That alone is most
//     of the difference between dum and tek (Rossing, "Science of Percussion
//     Instruments").
//   - The push is a Hann pulse as long as the hand stays on the skin, for a
//     dum a quicker one within it, the slap, and a short burst of band-passed
//     noise for the skin against skin.
//   - No two strokes of a hand are equal: place, contact, force, slap, noise
//     and the tightness of the head stray a little, as the hit's seed says.
//   - The head is tighter while it swings far, so that the pitch of a firm
//     dum falls by a few per cent (after Marogna, Avanzini & Bank, DAFx 2010).
//   - A slap keeps the hand on the head, which damps every mode.
//   - A [Roll] is one stroke of the player's and many light hits.
//   - A small room answers each drum in its own channel, softly, from 6 ms
//     after the stroke on.
//
// Each mode is a two-pole resonator, the modal form of the Faust library
// physmodels.lib. Its sound is a damped sine; modes above 0.45 of the sample
// rate are left out, so that nothing aliases.
//
// # What the numbers are
//
// The pitches, decay times and levels are estimates. No published acoustic
// measurement of a darbuka or a dohola was found, nor of another goblet drum
// with its decay times; the air modes are calculated from usual sizes, the
// decay times are a choice, and the dohola is tuned somewhat lower than
// calculated so that the two drums stay apart. That the place and the time of
// contact make the sound of a goblet drum, and how, is a player's knowledge
// too (Mohajeri, "Notes on Tombak Acoustics", 2003).
//
// # From stream to file
//
// The stream knows no balance, no panning and no volume: these are gains, and
// belong to whoever plays it. For a file, [Render] and [Mix] do what a player
// does, [WriteWAV] writes it, and a [Meter] tells how loud it is.
//
// # What it does not do
//
// No compressor and no limiter: every voice has one level. No reading of
// files. No brushes, no tuning by hand.
package audio
