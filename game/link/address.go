package link

import (
	"cmp"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/say"
	"groundbeat/game/view"
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

// target is what the links of a screen may say, and what they say where they are silent.
type target struct {
	Address                                            // the default
	has         []string                               // the parameters at every riff level
	least, most int                                    // eights
	any         bool                                   // the rhythm may be Any
	hides       bool                                   // it can be asked for how far the riff hides the base
	opens       func(w say.Words, l *WrongLink) string // says where a link leads; nil: to the screen
}

// targets are all screens that have links.
var targets = []target{
	{Address: Address{Screen: view.ScreenDums, Rhythm: "maqsum", Eights: 4, Riff: view.LevelBare}, has: oneRhythm,
		least: LeastEights, most: MostEights, any: true, hides: true, opens: opensRound},
	{Address: Address{Screen: view.ScreenListen, Rhythm: "maqsum", Riff: view.LevelBare}, hides: true, opens: opensListen,
		has: []string{"screen", "rhythm", "bpm", "riff", "seed"}},
	{Address: Address{Screen: view.ScreenWhich, Eights: 4, Riff: view.LevelBare, Ask: view.AskRhythm, Answers: 3, From: view.FromFive},
		has:   []string{"screen", "ask", "answers", "from", "bpm", "eights", "riff", "seed"},
		least: LeastEights, most: MostEights, hides: true, opens: opensAsk},
	{Address: Address{Screen: view.ScreenChange, Rhythm: "maqsum", Eights: 6, Riff: view.LevelBare, Answers: 3, From: view.FromFive},
		has:   []string{"screen", "rhythm", "answers", "from", "bpm", "eights", "riff", "seed"},
		least: LeastLong, most: MostLong, any: true},
	{Address: Address{Screen: view.ScreenStop, Rhythm: "maqsum", Eights: 6, Riff: view.LevelBare}, has: oneRhythm,
		least: LeastLong, most: MostLong},
	{Address: Address{Screen: view.ScreenCarry, Rhythm: "maqsum", Eights: 8, Riff: view.LevelBare}, has: oneRhythm,
		least: LeastLong, most: MostEights},
	{Address: Address{Screen: view.ScreenPractice, Minutes: 10}, has: []string{"screen", "minutes"}},
	{Address: Address{Screen: view.ScreenClass}, has: []string{"screen", "set"}},
	{Address: Address{Screen: view.ScreenDiary}, has: alone},
	{Address: Address{Screen: view.ScreenHome}, has: alone, opens: opensHome},
	{Address: Address{Screen: view.ScreenSetUp}, has: alone, opens: opensSetUp},
	{Address: Address{Screen: view.ScreenCheck}, has: alone, opens: opensCheck},
}

// oneRhythm are the parameters of a round of a rhythm that is named; alone that of a
// screen of which there is but one.
var (
	oneRhythm = []string{"screen", "rhythm", "bpm", "eights", "riff", "seed"}
	alone     = []string{"screen"}
)

// targetOf finds a screen; Dums where it is not known.
func targetOf(id string) target {
	i := slices.IndexFunc(targets, func(t target) bool { return t.Screen == id })
	return targets[max(0, i)]
}

// TakesAny reports whether the rhythm of a screen's links may be Any; TakesHide whether
// they may say how far the riff hides the base.
func TakesAny(screen string) bool  { return targetOf(screen).any }
func TakesHide(screen string) bool { return targetOf(screen).hides }

// may reports whether the screen's links may say something at every riff level.
func (t target) may(parameter string) bool { return slices.Contains(t.has, parameter) }

// DefaultAddress is where a link that names only its screen leads; Dums if that
// is not known.
func Default(screen string) Address { return targetOf(screen).Address }

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
func (a Address) riffs() bool { return view.Riffs(a.Riff) }

// hides reports whether it can be asked for how far the riff hides the base.
func (a Address) hides() bool {
	return a.riffs() && targetOf(a.Screen).hides
}

// always lists the parameters that belong to the address at every riff level.
func (a Address) always() []string {
	names := slices.Clone(targetOf(a.Screen).has)
	if i := slices.Index(names, "rhythm"); a.Rhythm == view.Any && !slices.Contains(names, "from") {
		names = slices.Insert(names, i+1, "from")
	}
	return names
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
	return cmp.Or(askWords[ask], ask)
}

var askWords = map[string]string{view.AskRhythm: "rhythm"}

// AddressOf returns the default address of a kind of round; Dums if that is not known.
func AddressOf(kind string) Address {
	a := Default(kind)
	if a.Screen != kind && slices.Contains(view.Asks(), kind) {
		a = Default(view.ScreenWhich)
		a.Ask = kind
	}
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
	to := Default(screen)
	if to.Riff != "" && a.Riff != "" {
		to.Riff = a.Riff
	}
	if to.hides() {
		to.Hide = a.Hide
	}
	of := targetOf(screen)
	if named := !of.may("answers"); to.Rhythm != "" && a.Rhythm != "" && a.Rhythm != view.Any && named {
		to.Rhythm, to.BPM = a.Rhythm, a.BPM
	}
	if to.Eights != 0 && a.Eights != 0 {
		to.Eights = max(of.least, min(of.most, a.Eights))
	}
	if slices.Contains(FromWords, a.From) && of.may("from") {
		to.From = a.From
	}
	return to
}

// WithRhythm returns the address with another rhythm, or with Any: its usual
// tempo, and From only where it belongs.
func (a Address) WithRhythm(id string) Address {
	a.Rhythm, a.BPM = id, 0
	switch {
	case targetOf(a.Screen).may("from"): // what it becomes is another matter
	case id != view.Any:
		a.From = ""
	case a.From == "":
		a.From = view.FromFive
	}
	return a
}

// Ids returns the ids that From joins; none for the words FromFive and so on.
func (a Address) Ids() []string {
	if a.From == "" || slices.Contains(FromWords, a.From) {
		return nil
	}
	return strings.Split(a.From, ".")
}

var FromWords = []string{view.FromFive, view.FromEven, view.FromAll}

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

// FirstRound returns the round that Home begins at one press: maqsum, one of the
// five most used, whose dums come evenly, two counts apart; with nothing in its
// gaps; a little slower than it is usually played; and two eights long, so that
// eight dums, a quarter of a minute with the count-in, bring a first review. Own
// choice.
func FirstRound() Address {
	return Address{Screen: view.ScreenDums, Rhythm: "maqsum", BPM: 88, Eights: 2, Riff: view.LevelBare}
}
