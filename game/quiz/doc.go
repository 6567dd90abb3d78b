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
// # Sources
//
// Pelánek, Applications of the Elo rating system in adaptive educational systems,
// Computers & Education 98, 169–179, 2016.
package quiz
