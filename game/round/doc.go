// Package round is one question, from the count-in to the review, as a state
// machine without clock, sound or screen.
//
// All times in a round are durations from the round's first frame, which is
// the "5" of the count-in. They are computed from a stroke's index and never
// summed; those of the strokes to be tapped lie on the frames in which they
// sound. The caller tells the round what is being heard ([Round.Hear]) and
// when taps fell, on the same line; the round answers with its phase, with the
// hits to be sounded and, at the end, with the pairs and the score.
//
//	Ready ── Begin ──▶ CountIn ── Hear ──▶ Playing ── Hear ──▶ Review
//	                      │                   │
//	                      └────── Cut ────────┴──▶ Void
//
// A round that was cut (a gap in the sound, a hidden page, a device that went
// away, a stop) is void: it says why, and it is no result.
package round
