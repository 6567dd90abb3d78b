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
// [Match] pairs taps with strokes one to one. A tap may be paired with a
// stroke when it lies in that stroke's [Window]; the edge of the window is
// inside. Of all the ways to pair them it takes
//
//  1. one with the most pairs, so that a tap that could only belong to one
//     stroke is not lost because another tap took that stroke;
//  2. of those, one with the smallest sum of |offset|: where two taps fall in
//     one window, the nearer counts and the other is added;
//  3. of those, the one with the earliest taps and the earliest strokes: of
//     two taps equally near, the earlier counts.
//
// Pairs never cross: a later tap never belongs to an earlier stroke. The time
// and the memory needed are linear in the number of strokes and taps, however
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
