package view

import (
	"net/url"
	"slices"
	"strconv"
	"strings"
)

// Address is what the link of a screen says. Which parameters a link has depends
// on its screen, and on nothing but it and Any; the fields of the others are
// zero. The screen Which has no rhythm: its link must not hold the answer.
type Address struct {
	Screen  string // ScreenDums, ScreenListen, ScreenWhich, ScreenSetUp
	Rhythm  string // id of a rhythm; for Dums also Any
	BPM     int    // counts a minute; 0: the rhythm's usual tempo, for Which a varied one
	Eights  int    // length in eights; Dums and Which
	Riff    string // riff level
	Seed    uint64 // of the round; 0: chosen anew
	Ask     string // what is asked; Which
	Answers int    // how many names to choose from; Which
	From    string // FromFive, FromEven, FromAll, or ids joined by points; Which, and Dums of Any
}

// Limits of the numbers in a link.
const (
	LeastBPM, MostBPM         = 40, 220
	LeastEights, MostEights   = 1, 32
	LeastAnswers, MostAnswers = 2, 4
	MostSeed                  = 1<<53 - 1 // scripts read whole numbers exactly up to here
)

// DefaultAddress is where a link that names only its screen leads; Dums if it
// names none, or one that is not known.
func DefaultAddress(screen string) Address {
	switch screen {
	case ScreenListen:
		return Address{Screen: ScreenListen, Rhythm: "maqsum", Riff: LevelBare}
	case ScreenWhich:
		return Address{Screen: ScreenWhich, Eights: 4, Riff: LevelBare, Ask: AskRhythm, Answers: 3, From: FromFive}
	case ScreenSetUp:
		return Address{Screen: ScreenSetUp}
	}
	return Address{Screen: ScreenDums, Rhythm: "maqsum", Eights: 4, Riff: LevelBare}
}

// Parameters lists the names of what the address's link may say, in its order.
func (a Address) Parameters() []string {
	switch {
	case a.Screen == ScreenListen:
		return []string{"screen", "rhythm", "bpm", "riff", "seed"}
	case a.Screen == ScreenWhich:
		return []string{"screen", "ask", "answers", "from", "bpm", "eights", "riff", "seed"}
	case a.Screen == ScreenSetUp:
		return []string{"screen"}
	case a.Rhythm == Any:
		return []string{"screen", "rhythm", "from", "bpm", "eights", "riff", "seed"}
	}
	return []string{"screen", "rhythm", "bpm", "eights", "riff", "seed"}
}

// every lists the names of all parameters.
var every = []string{"screen", "rhythm", "ask", "answers", "from", "bpm", "eights", "riff", "seed"}

// To returns the address of another screen with what it shares with this one:
// the riff level and the length, and between Listen and Dums the rhythm and its
// tempo. To its own screen it is itself.
func (a Address) To(screen string) Address {
	if screen == a.Screen {
		return a
	}
	to := DefaultAddress(screen)
	if to.Riff != "" && a.Riff != "" {
		to.Riff = a.Riff
	}
	if to.Rhythm != "" && a.Rhythm != "" && a.Rhythm != Any {
		to.Rhythm, to.BPM = a.Rhythm, a.BPM
	}
	if to.Eights != 0 && a.Eights != 0 {
		to.Eights = a.Eights
	}
	if slices.Contains(fromWords, a.From) && to.Screen == ScreenWhich {
		to.From = a.From
	}
	return to
}

// WithRhythm returns the address with another rhythm, or with Any: its usual
// tempo, and From only where it belongs.
func (a Address) WithRhythm(id string) Address {
	a.Rhythm, a.BPM = id, 0
	switch {
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
		if value == "0" {
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
		return a.Ask
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
	}
	return strconv.FormatUint(a.Seed, 10)
}
