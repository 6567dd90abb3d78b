package view

import (
	"cmp"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
)

// Address is what the link of a screen says. Which parameters a link has depends
// on its screen, and on nothing but it, Any and the riff level; the fields of the
// others are zero. The screen Which has no rhythm: its link must not hold the answer.
type Address struct {
	Screen  string // one of the ids ScreenDums and so on
	Rhythm  string // id of a rhythm; for Dums and Change also Any
	BPM     int    // counts a minute; 0: the rhythm's usual tempo, for Which a varied one
	Eights  int    // length in eights; all rounds
	Riff    string // riff level
	Hide    int    // how far the riff hides the base, LeastHide to MostHide; 0: as it comes
	Riffs   int    // version of the riffs that the seed was meant for; 0: this program's
	Asked   int    // version of the questions that the seed was meant for; 0: this program's; Which and Change
	Seed    uint64 // of the round; 0: chosen anew
	Ask     string // what is asked; Which
	Answers int    // how many names to choose from; Which and Change
	From    string // FromFive, FromEven, FromAll, or ids joined by points; Which, Change, and Dums of Any
	Minutes int    // how long a practice is to be; Practice
	Set     string // the set of a warm-up, as quiz.ParseLink takes it; "": none; Class
}

// Limits of the numbers in a link.
const (
	LeastBPM, MostBPM         = 40, 220
	LeastEights, MostEights   = 1, 32
	LeastLong, MostLong       = 4, 8 // eights of Change and Stop; of Carry LeastLong to MostEights
	LeastAnswers, MostAnswers = 2, 4
	LeastMinutes, MostMinutes = 5, 20
	MostSeed                  = 1<<53 - 1 // scripts read whole numbers exactly up to here
)

// DefaultAddress is where a link that names only its screen leads; Dums if that
// is not known.
func DefaultAddress(screen string) Address {
	switch screen {
	case ScreenListen:
		return Address{Screen: ScreenListen, Rhythm: "maqsum", Riff: LevelBare}
	case ScreenWhich:
		return Address{Screen: ScreenWhich, Eights: 4, Riff: LevelBare, Ask: AskRhythm, Answers: 3, From: FromFive}
	case ScreenChange:
		return Address{Screen: screen, Rhythm: "maqsum", Eights: 6, Riff: LevelBare, Answers: 3, From: FromFive}
	case ScreenCarry:
		return Address{Screen: screen, Rhythm: "maqsum", Eights: 8, Riff: LevelBare}
	case ScreenStop:
		return Address{Screen: screen, Rhythm: "maqsum", Eights: 6, Riff: LevelBare}
	case ScreenPractice:
		return Address{Screen: screen, Minutes: 10}
	case ScreenHome, ScreenSetUp, ScreenCheck, ScreenClass, ScreenDiary:
		return Address{Screen: screen}
	}
	return Address{Screen: ScreenDums, Rhythm: "maqsum", Eights: 4, Riff: LevelBare}
}

// Parameters lists the names of what the address's link may say, in its order.
func (a Address) Parameters() []string {
	names := a.always()
	if a.Answers != 0 {
		names = append(names, "q")
	}
	if !a.riffs() {
		return names
	}
	if i := slices.Index(names, "riff"); i > 0 && a.hides() {
		names = slices.Insert(names, i+1, "hide")
	}
	return append(names, "v")
}

// riffs reports whether the seed decides what the lead drum plays.
func (a Address) riffs() bool { return Riffs(a.Riff) }

// hides reports whether it can be asked for how far the riff hides the base.
func (a Address) hides() bool {
	return a.riffs() && slices.Contains([]string{ScreenDums, ScreenListen, ScreenWhich}, a.Screen)
}

// always lists the parameters that belong to the address at every riff level.
func (a Address) always() []string {
	switch {
	case a.Screen == ScreenListen:
		return []string{"screen", "rhythm", "bpm", "riff", "seed"}
	case a.Screen == ScreenWhich:
		return []string{"screen", "ask", "answers", "from", "bpm", "eights", "riff", "seed"}
	case a.Screen == ScreenChange:
		return []string{"screen", "rhythm", "answers", "from", "bpm", "eights", "riff", "seed"}
	case a.Screen == ScreenPractice:
		return []string{"screen", "minutes"}
	case a.Screen == ScreenClass:
		return []string{"screen", "set"}
	case a.Screen == ScreenHome, a.Screen == ScreenDiary, a.Screen == ScreenSetUp, a.Screen == ScreenCheck:
		return []string{"screen"}
	case a.Rhythm == Any:
		return []string{"screen", "rhythm", "from", "bpm", "eights", "riff", "seed"}
	}
	return []string{"screen", "rhythm", "bpm", "eights", "riff", "seed"}
}

// WithLevel returns the address with another riff level; Hide stays as far as it
// belongs to it.
func (a Address) WithLevel(level string) Address {
	a.Riff = level
	if !a.hides() {
		a.Hide = 0
	}
	return a
}

// askInLinks is how links name what the screen Which asks: which rhythm it is by a word
// of its own, all else by the id of the kind of round.
func askInLinks(ask string) string {
	if ask == AskRhythm {
		return "rhythm"
	}
	return ask
}

// AddressOf returns the default address of a kind of round; Dums if that is not known.
func AddressOf(kind string) Address {
	if !slices.Contains(Asks(), kind) {
		return DefaultAddress(kind)
	}
	a := DefaultAddress(ScreenWhich)
	a.Ask = kind
	return a
}

// every lists the names of all parameters.
var every = []string{"screen", "rhythm", "ask", "answers", "from", "bpm", "eights", "riff", "hide", "seed", "q", "v", "set", "minutes"}

// To returns the address of another screen with what it shares with this one:
// the riff level and the length, and between Listen and Dums the rhythm and its
// tempo; with the level how far the riff hides the base. To its own screen it is itself.
func (a Address) To(screen string) Address {
	if screen == a.Screen {
		return a
	}
	to := DefaultAddress(screen)
	if to.Riff != "" && a.Riff != "" {
		to.Riff = a.Riff
	}
	if to.hides() {
		to.Hide = a.Hide
	}
	if to.Rhythm != "" && a.Rhythm != "" && a.Rhythm != Any && to.Screen != ScreenChange {
		to.Rhythm, to.BPM = a.Rhythm, a.BPM
	}
	if to.Eights != 0 && a.Eights != 0 {
		least, most := eightsOf(screen)
		to.Eights = max(least, min(most, a.Eights))
	}
	if slices.Contains(fromWords, a.From) && (to.Screen == ScreenWhich || to.Screen == ScreenChange) {
		to.From = a.From
	}
	return to
}

// eightsOf are the fewest and the most eights of a screen's rounds.
func eightsOf(screen string) (least, most int) {
	switch screen {
	case ScreenChange, ScreenStop:
		return LeastLong, MostLong
	case ScreenCarry:
		return LeastLong, MostEights
	}
	return LeastEights, MostEights
}

// WithRhythm returns the address with another rhythm, or with Any: its usual
// tempo, and From only where it belongs.
func (a Address) WithRhythm(id string) Address {
	a.Rhythm, a.BPM = id, 0
	switch {
	case a.Screen == ScreenChange: // what it becomes is another matter
	case id != Any:
		a.From = ""
	case a.From == "":
		a.From = FromFive
	}
	return a
}

// Ids returns the ids that From joins; none for the words FromFive and so on.
func (a Address) Ids() []string {
	if a.From == "" || slices.Contains(fromWords, a.From) {
		return nil
	}
	return strings.Split(a.From, ".")
}

var fromWords = []string{FromFive, FromEven, FromAll}

// String returns the query of the address, with its question mark. A tempo or a
// seed of 0 is left out, and what does not belong to the screen.
func (a Address) String() string {
	var s strings.Builder
	for _, name := range a.Parameters() {
		value := a.value(name)
		if value == "0" || value == "" {
			continue
		}
		s.WriteString("&" + name + "=" + url.QueryEscape(value))
	}
	return "?" + strings.TrimPrefix(s.String(), "&")
}

func (a Address) value(name string) string {
	switch name {
	case "screen":
		return a.Screen
	case "rhythm":
		return a.Rhythm
	case "ask":
		return askInLinks(a.Ask)
	case "answers":
		return strconv.Itoa(a.Answers)
	case "from":
		return a.From
	case "bpm":
		return strconv.Itoa(a.BPM)
	case "eights":
		return strconv.Itoa(a.Eights)
	case "riff":
		return a.Riff
	case "hide":
		return strconv.Itoa(a.Hide)
	case "set":
		return a.Set
	case "q":
		if a.Seed == 0 || a.Asked == 1 { // from before there were versions
			return ""
		}
		return strconv.Itoa(cmp.Or(a.Asked, quiz.Version))
	case "minutes":
		return strconv.Itoa(a.Minutes)
	case "v":
		if a.Riffs == 0 && a.Seed != 0 {
			return strconv.Itoa(riff.Version)
		}
		return strconv.Itoa(a.Riffs)
	}
	return strconv.FormatUint(a.Seed, 10)
}
