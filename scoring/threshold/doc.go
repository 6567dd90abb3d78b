// Package threshold finds how difficult something may be until it can no
// longer be told: levels go in, right and wrong answers come out.
//
// A [Staircase] chooses the level of each trial; [Find] estimates the
// threshold from all trials together, wherever they were, with its
// uncertainty. What a level is, and whether a higher one is harder, is the
// user's: how much a riff hides, a tempo, a logarithm of either.
//
// # Listener
//
// Both suppose that the share of right answers falls with difficulty as
//
//	P(x) = γ + (1 − γ − λ) / (1 + e^((x−α)/β))
//
// (here for higher levels being harder) with the chance γ = 1/choices, the
// lapses λ (wrong answers however easy), the threshold α at which P is half way
// between chance and best, and β, how gradual the fall is. (Wichmann and Hill,
// The psychometric function: I, Perception & Psychophysics 63, 1293–1313, 2001.)
//
// # Where to settle
//
// A staircase settles where the share of right answers is its target. With two
// to four choices the target that costs least and says most about α is
// [Halfway] between chance and best: 73 % of two, 65 % of three, 60 % of four.
// "Three right, one wrong" with equal steps, the usual recipe, does not land at
// its nominal 79 %, and would be nearly chance itself with two choices and a
// one-down rule; steps of a ratio made for the target do land.
//
// # Not goals
//
// No procedure that chooses each level from the whole fit: a staircase can be
// explained to a player, gives the same level for the same answers on every
// machine, and loses little.
package threshold
