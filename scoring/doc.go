// Package scoring compares the taps of a player with the strokes that were
// asked for.
//
// Strokes and taps are times on one line, as [time.Duration] from any common
// origin. Every comparison is made in whole nanoseconds: in seconds as
// float64, |1.05 − 1.00| ≤ 0.05 is false.
//
// The offset of a tap is tap − stroke: + behind, − ahead.
//
// # Matching
//
// [Match] pairs taps with strokes one to one. A tap belongs to the nearest stroke, if it
// lies no further from it than the window; the edge of the window is inside. A tap exactly
// half way between two strokes belongs to the earlier one, as if behind it. In a gap of an
// odd number of nanoseconds there is no half way: both strokes get the whole part of the
// half. Of strokes at one and the same time the first owns the taps up to and at that time,
// the last those after it.
//
// Of the taps of one stroke the nearest counts, of two equally near the earlier, and the
// others are added. Pairs never cross: a later tap never belongs to an earlier stroke. The
// time and the memory needed are linear in the number of strokes and taps, however
// closely they lie.
//
// # Score
//
// [Score] takes the player's set-up mean off the taps before it matches them,
// and leaves the raw offsets in the pairs. The accuracy is the Gaussian beat
// accuracy of Cemgil, Kappen, Desain and Honing (On tempo tracking: tempogram
// representation and Kalman filtering, Journal of New Music Research 28(4),
// 259–273, 2000), with one-to-one matching; see [Result].
package scoring
