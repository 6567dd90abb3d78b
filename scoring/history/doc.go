// Package history keeps finished rounds: one round is one line of JSON, a
// collection of rounds is a file of such lines (JSON Lines, UTF-8, by custom
// named *.jsonl).
//
// # A line
//
// A line is one JSON object. Shown here on many lines, with the tap round of
// version 1:
//
//	{
//	 "v": 1,                  version of this format
//	 "kind": "dums",          what was asked: to tap the dums
//	 "rhythm": "maqsum",      name of the rhythm's file
//	 "bpm": 96,               beats a minute, 20 to 300, of the rhythm's own beat
//	 "riff": "bare",          what the lead drum played
//	 "eights": 4,             length in dancers' eights (8 counts each), 1 to 512
//	 "seed": 7,               0 to 2⁵³−1; the same seed gives the same riff
//	 "strokes": [2.5, 3.75],  s in the stream: each dum asked for, ascending
//	 "taps": [{
//	   "at": 5123.4,          ms, the event's own time stamp
//	   "offset": 12.25,       ms, tap − stroke: + behind, − ahead; raw; or null
//	   "stroke": 0,           index into strokes, from 0; or null: added
//	   "frame": 120588,       frame of the stream heard at the tap, with fraction
//	   "reading": {           the clock reading by which frame was found
//	     "context": 3.2,      s, time of the sound device
//	     "performance": 5100  ms, the time line of "at" at that moment
//	   },
//	   "by": "key"            key, touch, mouse, pen, or click (sent by a screen reader)
//	 }],
//	 "setup": 8,              ms, the player's set-up mean: + behind
//	 "score": 0.662914,       0 to 1, Gaussian beat accuracy
//	 "id": "b2f1",            random; 1 to 64 of letters, digits, - and _
//	 "when": "2026-01-31T18:30:00+02:00",  end of the round, RFC 3339
//	 "output": "studio",      name the player gave the sound output; "" unknown
//	 "epoch": 1,              which run of the sound; frames count on from run to run
//	 "rate": 48000,           Hz, frames a second of the stream, 3000 to 768000
//	 "coarse": false,         true where the clock was only an estimate
//	 "window": 50,            ms to either side, 0 to 1000; half a gap at most
//	 "bias": null,            ms, mean of offset − setup: + behind, − ahead
//	 "spread": null,          ms, standard deviation (n−1)
//	 "median": null,          ms, of offset − setup
//	 "drift": null,           ms a minute: + falling behind, − rushing
//	 "matched": 1,            taps that belong to a stroke
//	 "out": 1,                strokes left out
//	 "added": 0               taps that belong to no stroke
//	}
//
// Such a round has one member more, which older lines have not; what was on the stroke in
// them was 25 ms:
//
//	{
//	 "close": 25              ms to either side: nearer than that a tap is on its stroke
//	}
//
// A round that is answered by a choice has other members in place of "strokes"
// to "score" and of "window" to "added":
//
//	{
//	 "v": 1,
//	 "kind": "which",         which rhythm? or "stroke", "how-many", "same", as below
//	 "rhythm": "maqsum",      what was played; "" where one stroke alone was
//	 "bpm": 96,
//	 "riff": "filled",
//	 "eights": 2,             for "same", of each half
//	 "seed": 7,
//	 "choices": ["baladi", "maqsum", "saidi"],  2 to 32, in the order shown
//	 "answer": "baladi",      one of them
//	 "right": false,
//	 "took": 5321.5,          ms from the first step heard to the answer; or null: before it
//	 "heard": 2.128,          cycles of the rhythm heard by then, with fraction
//	 "id": "b2f2",
//	 "when": "2026-01-31T18:32:00+02:00",
//	 "output": "studio",
//	 "epoch": 1,
//	 "rate": 48000,
//	 "coarse": false
//	}
//
// The choices are names of rhythms' files for "which", of which one is what was
// played; "dum" and "tek" for "stroke" (one stroke was heard); whole numbers for
// "how-many" (how many dums has one cycle?); "same" and "different" for "same"
// (the second half plays the rhythm again, or another).
//
// A round in which the rhythm may change has these in place of "choices" to
// "heard". It is pressed when the change is heard, and then answered:
//
//	{
//	 "v": 1,
//	 "kind": "change",
//	 "rhythm": "maqsum",      what was played first
//	 "bpm": 120,              of either rhythm
//	 "riff": "bare",
//	 "eights": 4,
//	 "seed": 7,
//	 "to": "baladi",          what it became; "": it did not change
//	 "after": 2,              how many eights were played before that; 0: it did not change
//	 "changes": 10,           s in the stream: the eight in which it did; or null
//	 "strokes": [10.25],      s: the first stroke that differs from the old rhythm going on, or is left out; or none
//	 "taps": [{               each press; the one that heard the change is the last
//	   "at": 5123.4,
//	   "offset": null,        ms, press − first stroke that differs; raw; null: too early, or nothing to hear
//	   "stroke": null,        0, or null likewise
//	   "frame": 228000,
//	   "reading": {"context": 3.2, "performance": 5100},
//	   "by": "key"
//	 }, {
//	   "at": 12123.4,
//	   "offset": 1500,
//	   "stroke": 0,
//	   "frame": 564000,
//	   "reading": {"context": 3.2, "performance": 5100},
//	   "by": "key"
//	 }],
//	 "setup": 8,
//	 "choices": ["baladi", "saidi"],  never the first rhythm
//	 "answer": "saidi",       one of them; "" where no change was heard, and nothing asked
//	 "right": false,          heard and said rightly; or no change, and no press
//	 "early": 1,              presses that heard nothing; absent where there were none
//	 "id": "b2f3",
//	 "when": "2026-01-31T18:34:00+02:00",
//	 "output": "studio",
//	 "epoch": 1,
//	 "rate": 48000,
//	 "coarse": false
//	}
//
// Older lines have no "early": it is the number of taps without a stroke. With how many
// of them a change still counts as heard, [scoring.Noticed] says; "right" and "answer"
// are what was pressed and said, however that came about.
//
// A round of kind "stop", in which the drummer breaks off now and then, is a tap
// round with two members more. Its strokes are the dums outside the breaks, each
// stop, and each 1 on which it goes on after the silence:
//
//	{
//	 "breaks": [{
//	   "from": 0.5,           s in the stream: the figure begins that leads to the stop
//	   "stop": 0,             index into strokes: the last stroke of the figure
//	   "counts": 2,           from the stop to where it goes on, 1 to 64
//	   "back": 1,             index into strokes: where it goes on, the next
//	   "taps": 0              added taps in the silence between
//	 }],
//	 "aside": []              taps along with the figures, or in rolls: neither scored nor counted
//	}
//
// A round of kind "carry", in which both drums fall silent for an eight now and then, is
// a tap round with one member more. Its strokes are the dums, those of the silences
// too, and its window is wider than that of other rounds:
//
//	{
//	 "silences": [{
//	   "from": 3.75,          s in the stream: the 1 of the eight in which the drums are silent
//	   "to": 5,               s in the stream: the 1 on which they come back
//	   "first": 1,            index into strokes: the first in the silence
//	   "last": 1              index into strokes: the last in it
//	 }]
//	}
//
// A round of any kind has these besides, each only where it has something to tell:
//
//	{
//	 "riffVersion": 1,        version of the riffs, of which the seed chose one
//	 "hideAsked": 60,         how far the riff was asked to hide the base, of 100
//	 "hide": 0.583,           how far it does, 0 to 1, as predicted from its strokes
//	 "helps": {               helps for the ear that were used; never counted against the player
//	   "balance": 40,         how far towards the bass drum, of 100; − the lead drum
//	   "bass": 2,             how often the bass drum was heard alone for one eight
//	   "hands": true          the drummer's hands were shown
//	 },
//	 "player": "Amira"        nickname of who played
//	}
//
// "player" is there in lines that were handed out: who played is known beside the
// kept line, so that a nickname can be changed without writing the lines anew.
// Without it, whoever takes the lines in says whose they are.
//
// The order of the members has no meaning. But for these last, all are there. offset and
// setup are kept apart: matching and score use offset − setup, and so do
// bias and median. bias, spread and median are null where fewer than two taps
// matched, drift where fewer than three did. What the figures mean exactly is
// told by package scoring. A round that was cut is no result, and has no line.
//
// Taps stand in the order in which they were heard, that is, by frame. The
// strokes that they belong to ascend too; a stroke has one tap at most. offset
// and stroke are null together.
//
// Numbers are rounded: milliseconds, frames and drift to 0.001, seconds to
// 10⁻⁹, the score to 10⁻⁶, hide to 0.001. NaN and infinities do not exist.
//
// # Versions
//
// Within a version members and kinds may be added, never changed: a reader keeps
// a member that it does not know, and writes it back; a line of a kind that it
// does not know is an error to it, and is handed back as it was. A line of a newer version
// is left alone and reported as [Newer].
//
// # A sheet
//
// Rounds can also be written as a table for a spreadsheet: comma-separated values after
// RFC 4180 (Shafranovich 2005), in UTF-8 with a byte order mark, one round a row under
// one row of names, lines ending in CR LF. A sheet is for looking at; it is not read
// again.
//
// A column has the name of a member, and its meaning and unit. What a round's kind does
// not have, and what is null, is an empty cell. Numbers have a decimal point. Besides:
//
//   - strokes, taps, breaks, silences, aside: how many there are
//   - choices: all, with spaces between
//   - reaction: ms from the first stroke that differs to the press that heard the
//     change, the offset of that press
//   - helps.balance, helps.bass, helps.hands: the members of helps
//
// Texts may come from a person or from another's file, and spreadsheets take some
// texts for formulas: one that begins as a formula does (= + - @ and their full-width
// forms, a tab or a line break) has an apostrophe before it (OWASP, "CSV Injection").
//
// # Goals
//
// Every line can be read alone, by a person and by any program. Nothing of the
// player's is lost: a line that cannot be read is reported with its place, and
// handed back as it was. [Parse] after [Format] gives the same round, and
// Format after Parse the same text for a line that Format wrote.
//
// # Not goals
//
// Member names are not matched in other cases ("BPM"), comments and several
// rounds on a line are not allowed, and a member may not appear twice: each
// would mean that two programs could read one line in two ways.
package history
