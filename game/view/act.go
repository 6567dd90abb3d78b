package view

import "groundbeat/scoring/history"

// The ids of the screens, as links and the row at the foot of a screen name them; of the
// screen of a kind of round the kind's.
const (
	ScreenHome     = "home"
	ScreenDums     = history.Dums
	ScreenListen   = "listen"
	ScreenWhich    = history.Which
	ScreenChange   = history.Change
	ScreenStop     = history.Stop
	ScreenCarry    = history.Carry
	ScreenDiary    = "diary"
	ScreenPractice = "practice"
	ScreenSetUp    = "set-up"
	ScreenCheck    = "sound-check"
	ScreenClass    = "class"
)

// The action ids. After each: where it is, and what its value is.
const (
	ActGo     = "go"     // to another screen: its id
	ActHome   = "home"   // to Home
	ActFirst  = "first"  // Home: to the first round, which begins at once; see FirstRound
	ActOpen   = "open"   // open the nearest link that is allowed
	ActExport = "export" // hand over a file of all rounds
	ActReload = "reload" // load the page anew
	ActTheme  = "theme"  // which palette is used: "system" or one of the themes

	ActSaveWaiting = "save-waiting" // hand over a file of the rounds that wait to be kept

	ActBegin  = "begin"  // start the round with its count-in; Set-up: of the output of this name, if any
	ActStop   = "stop"   // leave the round, or stop what is heard; nothing is kept
	ActTap    = "tap"    // a tap; its time is the event's own
	ActOnce   = "once"   // the same round once more
	ActSlower = "slower" // the same round, slower
	ActNext   = "next"   // another round or question, begun at once
	ActChange = "change" // back to Ready

	ActPlay   = "play"   // Listen: play until stopped
	ActAnswer = "answer" // Which: the id of the choice
	ActRepeat = "repeat" // Which: the question is heard once more
	ActHear   = "hear"   // reviewing: Which: the id of the side to be heard; Dums: the round
	ActDrums  = "drums"  // reviewing: which drums are heard: DrumsBoth, DrumsBass or DrumsLead
	ActSlowly = "slowly" // reviewing: heard slowly: "yes", or "" for no

	ActAlone = "alone" // the bass drum alone for one eight: "yes", or "" for both again
	ActHands = "hands" // the drummer's hands over the drumhead: "yes", or "" for no

	ActRhythm  = "rhythm"  // the id of a rhythm, or Any
	ActTempo   = "tempo"   // counts a minute
	ActEights  = "eights"  // length, "1" to "32"
	ActLevel   = "level"   // LevelBare to LevelSolo
	ActHide    = "hide"    // how far the riff hides the base, "0" to "100"; 0: as it comes
	ActVolume  = "volume"  // 0 to 100
	ActBalance = "balance" // −100, the lead drum alone, to 100, the bass drum alone
	ActAsk     = "ask"     // what is asked: AskRhythm and so on
	ActAnswers = "answers" // how many names, "2" to "4"
	ActFrom    = "from"    // out of which rhythms: FromFive and so on, or ids joined by points
	ActFile    = "file"    // the name of a file, a line feed, and its text

	ActStrike = "strike" // Sound check: one stroke of both drums, at once: "dum" or "tek"; Home: one of each
	ActHears  = "hears"  // Sound check: whether the dum is heard: CheckYes or CheckNo
	ActBass   = "bass"   // Sound check: the balance towards the bass drum, 0 to MostBass
	ActLater  = "later"  // Sound check: how long pictures wait for the sound, in ms: + later, − earlier
	ActMono   = "mono"   // Sound check: both drums in the middle: "yes", or "" for no

	ActSetUpName   = "set-up-name"   // Set-up: the name of the output to be measured
	ActSetUpKeep   = "set-up-keep"   // Set-up, reviewing: keep what was measured, under this name
	ActSetUpUse    = "set-up-use"    // Set-up, Sound check: use from now on what is kept under this name
	ActSetUpForget = "set-up-forget" // Set-up: forget what is kept under this name
)

// ByEscape is the value of what the key Escape did.
const ByEscape = "escape"

// The action ids of Class.
const (
	ActClassBegin   = "class-begin"   // to the walk-in of a set: the ID of a ClassSet, or "" for what is put together
	ActClassResume  = "class-resume"  // to where the warm-up that was left stands
	ActClassLeave   = "class-leave"   // back to where it is got ready; where it stands is kept
	ActClassNext    = "class-next"    // on: plays what is asked, or goes on by one stage
	ActClassBack    = "class-back"    // back by one stage
	ActClassOnce    = "class-once"    // what belongs to the stage is heard once more; "stop" to end it
	ActClassSkip    = "class-skip"    // on to the next task
	ActClassBlank   = "class-blank"   // blank the screen, or show it
	ActClassHands   = "class-hands"   // one more key of what is counted; see quiz.Hands.Press
	ActClassGoOn    = "class-go-on"   // after the end, on with what was left out
	ActClassName    = "class-name"    // the class's nickname
	ActClassKind    = "class-kind-"   // followed by a kind: it is asked: "yes", or "" for no
	ActClassMinutes = "class-minutes" // how long
	ActClassSeed    = "class-seed"    // the number of the warm-up; "" for a new one
	ActClassSetName = "class-set-name"
	ActClassSave    = "class-save"    // keep the set under its name
	ActClassForget  = "class-forget"  // forget the set of that name
	ActClassFile    = "class-file"    // hand over the set as a file
	ActClassLetters = "class-letters" // letters are keys: "yes", or "" for no
	ActClassCSV     = "class-csv"     // hand over the class's diary for a spreadsheet
	ActClassJSON    = "class-json"    // hand over the class's diary as it is kept
	ActPrint        = "print"         // print the page
	ActFull         = "full"          // fill the display with the page, or no longer
)

// The live pictures, by the place they are drawn in.
const (
	PlaceHead  = "head"   // the drumhead
	PlaceLine  = "line"   // Listen, while it plays: the whiteboard line
	PlaceHeadA = "head-a" // Which, reviewing: the first side
	PlaceHeadB = "head-b" // Which, reviewing: the second side
)

// Any stands for a rhythm that is chosen anew for each round and not named
// before the review.
const Any = "any"

// What the screen Which asks, by the ids of the kinds of round.
const (
	AskRhythm  = history.Which   // which rhythm?
	AskStroke  = history.Stroke  // dum or tek?
	AskHowMany = history.HowMany // how many dums?
	AskSame    = history.Same    // same or different?
)

// Asks lists what can be asked, the one with names first, then from the lowest
// rung up.
func Asks() (all []string) {
	for _, q := range questions {
		all = append(all, q.ask)
	}
	return all
}

// Out of which rhythms a question is made.
const (
	FromFive = "five" // the five most used
	FromEven = "even" // all whose cycles go into eights
	FromAll  = "all"  // the odd metres too
)

// The riff levels, as links name them.
const (
	LevelBare       = "bare"
	LevelFilled     = "filled"
	LevelOrnamented = "ornamented"
	LevelRiffing    = "riffing"
	LevelSolo       = "solo"
)

// The action ids of the Practice diary, and of a practice that is under way.
const (
	ActDiaryWho      = "diary-who"       // whose diary: the ID of a person
	ActDiaryName     = "diary-name"      // the nickname that is being typed
	ActDiaryAdd      = "diary-add"       // another person, of the nickname that is typed
	ActDiaryRename   = "diary-rename"    // the one whose diary it is gets that nickname
	ActDiaryMerge    = "diary-merge"     // ask whether to put a person's rounds to these: the ID
	ActDiaryMergeYes = "diary-merge-yes" // do so: the ID
	ActDiaryMergeNo  = "diary-merge-no"  // do not
	ActDiaryOutput   = "diary-output"    // the name of the output whose rounds are told
	ActDiaryNext     = "diary-next"      // begin one of what is next: its place in Diary.Next, from 0
	ActDiaryMinutes  = "diary-minutes"   // how long a practice is
	ActDiaryPractise = "diary-practise"  // begin a practice of so many minutes
	ActDiaryExport   = "diary-export"    // hand over a file of a person's rounds: the ID; "" for everybody's
	ActDiaryCSV      = "diary-csv"       // the same for a spreadsheet
	ActDiaryImport   = "diary-import"    // show what a file would bring: its name, a line feed, and its text
	ActDiaryOwn      = "diary-own"       // all in it belongs to the one whose diary it is: "yes", or "" for no
	ActDiaryTake     = "diary-take"      // add what is new in it
	ActDiaryLeave    = "diary-leave"     // do not
	ActDiaryUndo     = "diary-undo"      // take back what was just added
	ActDiaryErase    = "diary-erase"     // ask whether to erase all of a person's rounds: the ID; "" for everybody's
	ActDiaryEraseYes = "diary-erase-yes" // do so: the same
	ActDiaryEraseNo  = "diary-erase-no"  // do not

	ActPracticeAsk  = "practice-ask"  // a new rhythm was met: on to what is asked
	ActPracticeNext = "practice-next" // on to the next round of it
	ActPracticeEnd  = "practice-end"  // leave the practice
)

// Phase is where a round stands.
type Phase uint8

// The phases of a round. The count-in and the playing are one screen, so that
// nothing under the fingers changes.
const (
	Ready Phase = iota
	Playing
	Waiting // the sound is over, and an answer is awaited; not in Dums
	Reviewing
	Voided
)
