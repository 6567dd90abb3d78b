package coach

import (
	"math"

	"groundbeat/game/quiz"
	"groundbeat/scoring/history"
	"groundbeat/scoring/threshold"
)

// How the staircase on hide goes, in hundredths. All chosen; TestListeners says what
// they achieve.
const (
	coldStart = 5  // where an ear begins of which nothing is known
	warmer    = 10 // how far below a threshold from elsewhere it begins
	mostAsk   = 70 // the riffs of most rhythms hide 0.5 to 0.65 at the most, wahda's 0.74
	mostPlays = 60 // what is played where more is asked for lies near this, for every rhythm: khaliji's hide 0.48
	harder    = 2  // the last of the steps after a right answer
	near      = 15 // how far from what is to be asked an answer may lie and still move it: levels leave gaps
)

// sizes are factors on the steps: until the first turn, the second, and from then on.
// They are powers of two, so that no machine rounds levels otherwise than another.
var sizes = []float64{4, 2, 1}

// An Edge is where a player's ear is, in rounds of one kind on one output: how far
// the next riff may hide the base so that about as many answers are right as
// [threshold.Halfway] between chance and best. The package comment has the rule. It
// is replayed from finished rounds: the same rounds give the same Edge on every
// machine.
type Edge struct {
	Kind string
	// Level is the hide, in hundredths, to ask for with a rhythm like all others.
	Level int
	// Found is whether the staircase has turned since it began or was last eased:
	// Level is near the threshold, and not still on the way.
	Found bool

	at      int // Level in thousandths
	offsets quiz.Offsets
	trials  []trial
}

// EdgeOf returns the edge after rounds, in order, of one player on one output, of
// which those of the kind count, and the latest 300. warm is the player's threshold from elsewhere, in hundredths of
// hide, such as that of another kind of round: it begins a little below; 0 is none.
// today (2006-01-02) tells a pause since the last round; "" tells none.
func EdgeOf(kind string, rounds []history.Round, cycles Cycles, warm int, today string) Edge {
	w := startWalk(warm)
	trials := trialsOf(kind, rounds, cycles)
	for _, t := range trials {
		w.answer(t)
	}
	w.rest(parseDay(today))
	return Edge{
		Kind: kind, Level: ask(w.level(), 0), Found: w.stairs.Reversals > 0,
		at: w.level(), offsets: w.offsets, trials: trials,
	}
}

// Hide returns the hide to ask for with a rhythm, in hundredths; with some of which
// one is drawn, for the mean of them, since what is asked must not tell which.
func (e Edge) Hide(rhythms ...string) int {
	sum := 0
	for _, r := range rhythms {
		sum += e.offsets.Of(r)
	}
	return ask(e.at, sum/max(1, len(rhythms)))
}

// A walk is a staircase on its way through trials.
type walk struct {
	stairs  *threshold.Staircase
	offsets quiz.Offsets
	last    day
	above   int // right answers less wrong ones far above it; see beyond
	from    int // the lowest hide of these right ones
}

func startWalk(warm int) *walk {
	start := coldStart
	if warm > 0 {
		start = max(coldStart, warm-warmer)
	}
	return &walk{stairs: stairsFrom(start), offsets: quiz.Offsets{}}
}

func stairsFrom(start int) *threshold.Staircase {
	return threshold.Begin(threshold.Rule{
		Start: float64(min(start, mostAsk)), High: mostAsk, Harder: harder, Run: 1, Target: .5, Sizes: sizes,
	})
}

// level is where the staircase is, in thousandths.
func (w *walk) level() int { return int(math.Round(w.stairs.Level() * 10)) }

// answer takes one trial. What is far below what would have been asked for, such as
// an easy round in between, moves nothing, whether it was right or not: right answers
// there say nothing about the edge, and to take only the wrong ones of them would push
// it down.
func (w *walk) answer(t trial) {
	w.rest(t.day)
	off := t.hide - min(ask(w.level(), w.offsets.Of(t.rhythm)), mostPlays)
	switch {
	case off < -near:
		return
	case off > near:
		w.beyond(t)
		return
	}
	w.above = 0
	target := threshold.Halfway(t.choices)
	w.stairs.Rule.Target = target
	w.stairs.Answer(t.right)
	if w.stairs.Reversals > 0 {
		w.offsets.Learn(t.rhythm, t.right, target, off)
	}
}

// beyond takes a trial far above what would have been asked for. One says nothing. But
// the rounds may begin in the middle, when much was heard through: so the walk begins
// anew there once more of them were right than wrong by two, with none near it between.
func (w *walk) beyond(t trial) {
	if !t.right {
		w.above = max(0, w.above-1)
		return
	}
	if w.above == 0 || t.hide < w.from {
		w.from = t.hide
	}
	if w.above++; w.above == 2 {
		w.stairs, w.above = stairsFrom(w.from), 0
	}
}

// ask is the hide to ask for, in hundredths, at a level with an offset, in
// thousandths.
func ask(level, offset int) int { return min(max((level+offset+5)/10, 0), mostAsk) }

// restDays is from how many days on there was a pause. Then it begins again easier by
// ease hundredths, as often as the pause is restDays, twice as many and so on, up to
// mostEase times.
const restDays, ease, mostEase = 14, 5, 4

// rest tells that it is a day. After a pause it goes on easier, and with the great
// steps of the beginning, so that the ear is found again soon, wherever it is.
func (w *walk) rest(today day) {
	pause := today.since(w.last)
	if pause >= restDays {
		w.stairs = stairsFrom(max(0, int(math.Round(w.stairs.Level()))-ease*easings(pause)))
	}
	if today != 0 {
		w.last = today
	}
}

// easings is how many times easier it is after a pause of some days.
func easings(pause int) int {
	n := 0
	for days := restDays; days <= pause && n < mostEase; days *= 2 {
		n++
	}
	return n
}
