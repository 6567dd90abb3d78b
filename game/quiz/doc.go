// Package quiz chooses the next question: what is played, its right answer and
// its wrong ones. It is pure: the same rhythms, settings and seed give the same
// question for ever.
//
// # Which rhythm?
//
// Three rules make a question fair.
//
// There is one right answer. Two rhythms that could be taken for one another are
// never choices of one question, neither as the right one and a wrong one nor as
// two wrong ones (of which a player could think that it must be neither). They
// could be if their skeletons, which the bass drum plays at every level, are the
// same strokes at some speed for as long as one of them is heard: maqsum and
// fallahi, malfuf and wahda, baladi and masmudi kabir. All strokes that are no
// dums count alike, and the silence before the first stroke does not count.
//
// Nothing but the sound tells which is right. The choices are drawn first, one
// rhythm and those that are most easily mixed up with it; then any of them, each
// with the same chance, is played. So none of them stands out, not even the one
// that is like all the others.
//
// Density tells nothing. The strokes heard in a second (the moments at which the
// lead drum strikes; the bass drum strikes with it) are drawn from the range in
// which every one of the choices can be played within its own range of tempo,
// and in the same way whichever of them is right. The tempo follows from that:
// with 2 strokes a second maqsum has 96 beats a minute and ayyub 60. Rhythms
// without such a common range are never choices of one such question, and so there
// may be fewer choices than were asked for: maqsum is never slow enough to be
// masmudi kabir. All that is left is that the tempo is a whole number of beats a
// minute, less than one away from the exact one.
//
// Where there are fewer, and the questions are filled ([Lean.Fill]), as many as were
// asked for are taken that can be played at one tempo, each within its own range: then
// neither the tempo nor the beat tells, and how many strokes there are in it is heard,
// as it is wherever the drums play. So of the five most used, played bare, there are
// four names, maqsum and çiftetelli among them; from ornamented on, where the lead drum
// is as dense over one as over the other, density tells nothing at all.
//
// What this does not hide is for the caller: a count-in tells the tempo of the
// beat, and a length in whole eights is longer where the beat is slower, so
// there should be no count-in, and the answer should not have to wait for the
// end. At level Filled the bass drum alone may be sparser for one choice than
// for another: who hears that much has heard the rhythm. And a player who sets
// the tempo gets all choices at that tempo, with as many strokes as they have.
//
// [Lean.Names] says how many names there are, and why not as many as were asked for.
//
// # Hear the change
//
// A change is heard at a tempo that is known by then, which both rhythms, and all
// choices, have in common. So when its questions are filled, two that are the same
// strokes at two speeds may be choices of one, if they are played within their own
// ranges of tempo: baladi and masmudi kabir at 100.
//
// # Seeds
//
// A seed stands for a question, and for ever: those from before questions were filled for
// the ones without it. A link says which are meant.
//
// # The lower rungs
//
// Stroke, HowMany and Same ask with the same chance for each answer that can be
// right: dum or tek; each number of dums, from 1 to 4, that a rhythm of the pool
// has; same or different.
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
// # Wrong answers that teach
//
// [Lean] puts wrong answers in order. While a lower rung does not hold, those that
// are least alike come first; then the family; and before it whatever the player
// mixes up, as it shows. Choices are still drawn before the right one among them, and
// the three rules above hold as before. Of somebody of whom nothing is known the
// questions are those of [Next].
//
// Similar rhythms are practised in turn, not one after the other is done: that is
// what tells them apart (Brunmair and Richter, Similarity matters, Psychological
// Bulletin 145, 1029–1052, 2019: interleaving helps by g = 0.42, more where
// categories are similar).
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
package quiz
