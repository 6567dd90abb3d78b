// Package stat measures samples: how far ahead or behind taps lie, how steady
// they are, how often answers are right. Every number is a [scoring.Estimate]:
// with an interval that holds the true number in 95 of 100 cases, with the size
// of its sample, and with the least sample that would do.
//
// The special functions behind the quantiles are those of
// [gonum.org/v1/gonum/mathext]. gonum's stat is the reference of the tests, but not
// in the program: it would add a fifth to what the page weighs.
//
// # One round
//
// [Played.Bias] measures the taps of one round, [OfRounds] those of many rounds of
// one rhythm on one output, [Carried] taps that were carried on without the
// drums. Offsets are in ms, less the player's set-up mean: + behind, − ahead.
//
// # Intervals
//
//	[Played.Bias]        Student's t, widened for taps that follow one another
//	[Spread]             χ², for normally distributed values
//	[Apart]              Student's t, of all groups together (Bonferroni)
//	[Beside], [Against]  Student's t, of single values together (Bonferroni), or at the fewest degrees of freedom
//	[Share]              Wilson
//	[ShareInRounds]      Wilson, as many answers as the rounds are unlike
//
// Taps in a round are not independent: who is late once is late next time
// (where a player corrects 0.6 to 0.4 of each asynchrony, the model of Vorberg and
// Wing, Modeling variability and dependence in timing, 1996, gives correlations of
// 0.3 to 0.5, by our reckoning). At 0.5 Student's interval for a mean of 16 taps holds the true mean in
// 74 of 100 cases instead of 95; widened as [mean] says, in 92. Spread is not
// widened: for one round it is for looking at.
// Over many rounds [OfRounds] treats the rounds as the observations, and so
// does not depend on what happens within one.
//
// # Least samples
//
// Each function says from how many observations on it tells something, in the
// constants Least…, and why. From there on the intervals held the true number in
// 90 to 99 of 100 simulated cases, mostly in 94 to 96; TestCoverage has the table.
//
// # Not goals
//
// No tests of significance beyond Fisher's: an interval says more. No
// correction for looking at many numbers at once but in [Apart] and [LeftOut], which are
// made for that: of twenty intervals one is wrong.
package stat
