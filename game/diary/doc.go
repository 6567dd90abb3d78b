// Package diary turns finished rounds into what a practice diary shows: days, and the
// figures that rest on them.
//
//	d := new(diary.Day)
//	d.Add(round)                       // each round of one calendar day
//	text := d.Format()                 // kept; a year of them is read in a moment
//
//	b := diary.New(cycle)              // cycle finds a rhythm by the name of its file
//	b.Put(day)                         // each day
//	b.Add(round)                       // and what is finished from now on
//	f := b.Figures(b.Outputs()[0])
//
// A [Day] holds what the figures need of each of its rounds, and nothing else: a
// twentieth of the records. In which order rounds are added does not matter, and what
// is put together from days is exactly what the records themselves would give.
//
// # What is measured
//
// Results of different outputs are never put together, and within one output:
//
//	[Accuracy]  answers by name, dums tapped      shares, see stat.Share and stat.ShareInRounds
//	[Fingers]   how taps lie about the dums       stat.OfRounds, of the latest right rounds
//	[Mixed]     what was said for what            stat.Share, of the latest answers
//	[Reach]     how much riff is heard through    threshold.Find
//	[Practice]  what was practised, by day
//	[Met]       what came of a rhythm, by day, for spaced review
//
// Each number is known from a least number of observations on: [LeastAnswered],
// [LeastTapped], [LeastMixed], [LeastHeard]. Stretches of time are weeks, put together
// until each has as many.
//
// Rounds in which a help for the ear was used count everywhere but for Reach, about
// which they tell nothing; those whose clock was an estimate everywhere but for Fingers.
// Rounds of a kind that this package does not know count as practice only.
//
// Rounds in which dums were to be tapped and no tap came ([history.Tried]) count as practice only.
//
// Where the drums fall silent a round counts for [history.Right] and [Met] only: its dums are
// not there to be heard.
//
// In rounds with stops the stop and the 1 after the silence are no dums of the rhythm
// going round: they count for [history.Right] only.
//
// Where difficulty follows the player, shares of right answers stay where they are
// while she learns: then Reach tells more than Accuracy.
//
// # The text of a day
//
// A day is one JSON object on one line, in UTF-8. Shown here on many:
//
//	{
//	 "v": 2,                     version of this format
//	 "day": "2026-01-31",        the player's own date, as written in the rounds
//	 "outputs": [{               ascending by name
//	   "output": "studio",       as in the rounds; "" unknown
//	   "rounds": [{              in the order of their times
//	     "at": 66720,            s since midnight, as written in the round
//	     "kind": "change",       as in the round, and so are "rhythm" to "said"
//	     "rhythm": "maqsum",     absent where one stroke alone was played
//	     "to": "saidi",          what it changed to; absent where it did not
//	     "riff": "riffing",
//	     "hide": 0.583,          absent where it is not known
//	     "choices": 3,           how many; absent where there were none
//	     "said": "saidi",        absent where nothing was, or of what was not heard
//	     "right": true           see history.Right; absent where not
//	   }, {
//	     "at": 66755,
//	     "kind": "carry",
//	     "rhythm": "maqsum",
//	     "riff": "bare",
//	     "untried": true         no tap came, see history.Tried; absent where one did
//	   }, {
//	     "at": 66790,
//	     "kind": "dums",
//	     "rhythm": "maqsum",
//	     "riff": "bare",
//	     "helped": true,         a help for the ear was used; absent where not
//	     "tapped": {             of rounds in which dums are tapped
//	       "bpm": 96,
//	       "window": 100,        ms
//	       "coarse": true,       the clock was an estimate; absent where not
//	       "places": [0, 8, 8],  of the dums that were tapped; or null: off any grid
//	       "offsets": [4250, -7990, 12000],  their taps, µs, less set-up: + behind
//	       "out": 1,             dums left out
//	       "added": 2            taps that belong to no dum
//	     }
//	   }]
//	 }]
//	}
//
// Places are in quarters of a beat: the first counted from the first dum that was asked
// for, each other from the one before. A beat has at most four steps, so that these
// are whole numbers whatever the rhythm, and dums that were left out, or not asked for
// in a break of the drummer's, leave no doubt which of the cycle a tap belongs to.
//
// # Versions and damage
//
// The text is made from the records and can be made anew at any time. So nothing is
// ever added within a version: whatever is to be known besides raises it. Version 2 takes
// a change that may have been hit by chance as not heard, see [history.Right]. A newer text
// is reported as *[history.Newer]; one that cannot be read as *[history.Error], with
// its place. Either way: make the day from its records.
//
// Not goals: to make records from days, and to keep what is wrong in them.
//
// # Tried
//
// A made-up learner of 30 days is found again by TestLearnerIsFound, which has the table.
// Others practise what the program chooses for them, round by round through the real code,
// and have their diaries read (TestThirtyDays in package diaryview; its flag -invented DIR
// writes one's rounds as a file that the page can take in, and the pictures of her diary).
// Of 10,000 rounds reading takes 20 ms, and the slowest part of the figures 4 ms for each
// kind of round (natively; BenchmarkTenThousandRounds).
//
// A number that is to be known of each round besides: a member of entry or tapped, its line
// here, its check, and a new [Version].
package diary
