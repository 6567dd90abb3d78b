// Package coach chooses what a player practises next, and how hard it is: what is due, what
// she mixes up, what lies at the edge of what she hears, and a practice of some minutes as a
// course of steps. All of it is made anew from the finished rounds each time: nothing is
// kept, and the same rounds give the same on every machine.
//
// # How far the riff may hide the base
//
// [Edge] asks for as much riff as is just heard through. It is a staircase on hide,
// replayed from the finished rounds of one kind on one output. It goes a step harder
// after a right answer, and after a wrong one as far easier as lets it settle where
// the share of right answers is half way between chance and best
// ([threshold.Halfway]): 73 % of two names, 65 % of three, 60 % of four, and of dums
// that are tapped, which are right by chance once in 6 to 13 times ([diary.Choices]),
// 52 to 56 %. There one answer says most about the threshold, and it is the same
// threshold however many names there are. So the steps are unequal (the weighted
// up-down method, Kaernbach 1991). Equal steps would settle at 50 % after one right
// answer, which of two names is chance itself, at 71 % after two in a row, at 79 %
// after three (Levitt 1971); and where steps are not small they miss even that
// (García-Pérez 1998).
//
// Steps are 0.02, and four times and twice as great until it has turned once and
// twice. Greater ones find the ear sooner and then wander further from it: with 0.04
// riffs lay 0.12 from the threshold of their rhythm in the root mean square, of two
// names, against 0.09.
//
// Rhythms differ. Each has an offset from the staircase, learnt from its own answers
// with falling weight, so that few answers move it little; and all rhythms together
// move the staircase, so that none starves ([Edge.Hide]).
//
// An answer far from what would have been asked moves nothing, whether right or wrong;
// it counts in the diary ([diary.Reach]) all the same. But where riffs far above it are heard through
// more often than not, the staircase begins anew there: only some weeks of rounds are
// looked at, and the first of them may be of a practised ear. A round in which the ear was helped counts in
// neither. Levels leave gaps between what they can hide, up to 0.15, and no rhythm's
// riffs hide more than 0.5 to 0.75: the lowest level that reaches is asked for.
//
// A kind of round that is new begins 0.10 below the edge of one that was found. After a
// pause of two weeks it goes on 0.05 easier, of four 0.10, of eight 0.15, of sixteen or
// more 0.20, and with the great steps of the beginning. All this is chosen.
//
// Simulated listeners are recovered as the table of TestListeners says: after 150
// answers to 0.02 to 0.04 of hide in the root mean square.
//
// # Tempo
//
// [Tempo] is where between slow, usual and fast a rhythm is tapped: one ladder for
// all. It settles where three in four rounds are right: to measure, half would do, but
// it is for practice.
//
// # What is due
//
// [DueOn] is spaced review of each rhythm at each riff level, by the memory model
// FSRS-6 (package recall; half-life regression, Settles and Meeder, ACL 2016, would
// need training first). A day is one meeting. That gaps should grow with what is to
// last is well found (Cepeda, Vul, Rohrer, Wixted and Pashler, Spacing effects in
// learning, Psychological Science 19, 1095–1102, 2008: the best gap falls from some
// 20 to 40 % of a week to 5 to 10 % of a year). That the weights hold for ears is not.
// What lies at the edge is missed half of the times on purpose; so a practice lets it
// come in its turn, and takes it as due only after three days without it. Nor is a
// level due where a higher one of the same rhythm was told right since.
//
// What was practised least of late begins, at the edge and in the ladder of tempo;
// there is room for a few rhythms only each day.
//
// # A practice
//
// [Known.Practice] is a list of steps, one round each. It begins with what goes well
// and ends with a slow rhythm; between them it takes what is due, the worst mix-up, a
// new rhythm, the edge and the ladder of tempo, in shares of the time. The plan is made beforehand, from the records
// alone; who asks again after a round gets it from where the player is then. On the way
// through it a [Course] asks nothing harder that was not shown to be within reach: a
// round in which no tap came is evidence of nothing ([history.Tried]), there and in all of
// the above.
//
// # Sources
//
// Kaernbach, Simple adaptive testing with the weighted up-down method, Perception &
// Psychophysics 49, 227–229, 1991. Levitt, Transformed up-down methods in
// psychoacoustics, JASA 49, 467–477, 1971. García-Pérez, Forced-choice staircases with
// fixed step sizes, Vision Research 38, 1861–1881, 1998. Pelánek, Applications of the
// Elo rating system in adaptive educational systems, Computers & Education 98,
// 169–179, 2016.
package coach
