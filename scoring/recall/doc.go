// Package recall says when something learnt is due again: a rhythm at a level,
// say, that was told right last Tuesday.
//
// It is the memory model FSRS-6 with its default weights (Ye, Su and Cao, A
// stochastic shortest path algorithm for optimizing spaced repetition
// scheduling, KDD 2022; the formulas of version 6 are those of "The
// Algorithm", open-spaced-repetition project, 2025). Each thing learnt has two
// numbers, a [Memory]: its stability S, the days after which it is recalled
// with probability 0.9, and its difficulty D, 1 to 10. With t days since it was
// last met
//
//	R(t) = (1 + f t/S)^(−w₂₀),  f = 0.9^(−1/w₂₀) − 1
//
// What is met early gains little, what is met just before it is forgotten
// gains much, and a miss costs most of the stability.
//
// Half-life regression (Settles and Meeder, ACL 2016) was the alternative. It
// has to be trained on a learner's own history before it says anything; this
// model has weights that were fitted on many learners, and starts at once. They
// were learnt from vocabulary cards: for the ear they are a guess, and the
// simulated and real accuracy at the time of review should be compared with
// what was asked for.
//
// Time comes in as days between meetings. Nothing here knows what a rhythm is.
package recall
