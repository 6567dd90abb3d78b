// Package clock tells which frame of the sound stream was heard when.
//
// It is fed with readings of the audio device's output time stamp (context
// time, performance time, running?) and with the places of the stream's blocks
// on the context's frames, and asked for the stream frame at a performance
// time. It is pure: it reads no clock and knows no device.
//
// # Steady readings
//
// Chromium's readings hold ±0.1 ms for tens of seconds and then may step by
// 2 to 10 ms. A time is answered by the last reading at or before it. Up to
// eight readings since the last step are averaged; a change of more than 0.4 ms
// in one reading is a step and is followed at once. Between steps Heard never
// falls as its time grows. Errors stay below 0.2 ms from the first reading on.
//
// # Noisy readings
//
// Firefox's readings scatter over 26 ms. Noise is recognised after four
// readings, by the readings themselves: more than a quarter of the last 64 jump
// by over 0.25 ms. Then a robust straight line through up to the last five
// minutes answers (see fit). What no filter can know is the middle of the noise
// itself: it is a constant of the browser (some 5 to 10 ms) that belongs into
// the player's set-up mean. Beside that constant the error at the newest
// reading, 74 readings a second, device rate 0 or ±100 ppm, 40 seeds, in ms
// (TestRecoveryTable prints it):
//
//	after                    1 s   5 s  10 s  30 s  60 s 120 s 300 s
//	Firefox-like    median  0.71  0.31  0.25  0.21  0.21  0.13  0.06
//	independent     95 %    1.68  1.01  0.86  0.72  0.54  0.32  0.21
//	batches of      median  0.36  0.27  0.22  0.24  0.12  0.06  0.05
//	21 ms           95 %    1.63  0.85  0.66  0.58  0.36  0.16  0.13
//	Gaussian, 1 ms  median  0.07  0.08  0.06  0.03  0.03  0.01  0.01
//	                95 %    0.20  0.21  0.13  0.10  0.07  0.04  0.03
//	whole ms        median  0.04  0.02  0.02  0.01  0.01  0.00  0.00
//	                95 %    0.11  0.08  0.06  0.05  0.02  0.01  0.01
//
// So 0.2 ms takes five minutes of independent Firefox-like noise and two of the
// batches that probably cause it; within ten seconds it is a millisecond. The
// error is about half of that for times in the middle of what has been read:
// ask again at the end of a round. A step of 6 ms under such noise is seen
// after four or five seconds; one below about 3 ms is not, and is smeared over
// the window instead.
//
// # Stamps
//
// What a browser says of its output is checked before it becomes a reading ([Clock.Stamp]):
// Chromium's is right; Firefox's has the latency taken off both times, which is put on
// again; WebKitGTK's has a performance time that is none, in whose place the context's
// current time less the stated latency is taken, coarsely: its renderer takes 43 ms at
// once, and says nothing of what lies behind it.
//
// # Interruptions
//
// A suspension, or a device that restarts without a word, parts what follows
// from all before: no reading and no block is used across, times in between are
// errors, and blocks that had been scheduled but not heard are forgotten. After
// a suspension the blocks must therefore be placed anew, best in a new epoch.
// Blocks placed while the context does not run count for the time after. A new
// line through noisy readings starts as well.
//
// A new epoch alone forgets the blocks that were not heard yet; readings, and
// the line through noisy ones, go on. A new context must be announced by a
// reading that is not running.
//
// # Memory
//
// Kept are 32,768 readings (nine minutes of 60 a second), the runs of blocks
// that ended less than five minutes before the newest and at most 256 of them
// (unbroken sound is one run, however long), and 32 lines.
package clock
