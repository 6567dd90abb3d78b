package diary

import (
	"math"
	"slices"
	"strconv"

	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// entry is what a day keeps of a round. The package comment gives the meaning of every
// field, under its name in the text.
type entry struct {
	At      int      `json:"at"`
	Kind    string   `json:"kind"`
	Rhythm  string   `json:"rhythm,omitempty"`
	To      string   `json:"to,omitempty"`
	Riff    string   `json:"riff"`
	Hide    *float64 `json:"hide,omitempty"`
	Choices int      `json:"choices,omitempty"`
	Said    string   `json:"said,omitempty"`
	Right   bool     `json:"right,omitempty"`
	Untried bool     `json:"untried,omitempty"`
	Helped  bool     `json:"helped,omitempty"`
	Tapped  *tapped  `json:"tapped,omitempty"`
}

// tapped is what a day keeps of the taps of a round.
type tapped struct {
	BPM     int     `json:"bpm"`
	Window  float64 `json:"window"`
	Coarse  bool    `json:"coarse,omitempty"`
	Places  []int   `json:"places"`
	Offsets []int   `json:"offsets"`
	Out     int     `json:"out"`
	Added   int     `json:"added"`
}

func entryOf(r history.Round) entry {
	e := entry{
		At: clock(r.When), Kind: r.Kind, Rhythm: r.Rhythm, To: r.To, Riff: r.Riff, Hide: r.Hide,
		Choices: len(r.Choices), Said: history.Said(r), Right: history.Right(r), Untried: !history.Tried(r),
		Helped: r.Helps.Balance != 0 || r.Helps.Bass != 0 || r.Helps.Hands,
	}
	if k, _ := history.KindOf(r.Kind); k.Along {
		e.Tapped = tappedIn(r)
	}
	return e
}

// clock returns the seconds since midnight of a time as in 2006-01-02T15:04:05Z.
func clock(when string) int {
	of := func(from int) int {
		n, err := strconv.Atoi(when[from : from+2])
		if err != nil {
			panic("diary: a round at " + when)
		}
		return n
	}
	return 3600*of(11) + 60*of(14) + of(17)
}

// named returns which rhythm was to be told by name, and reports whether one was told:
// where a change was not heard, nothing was asked.
func (e *entry) named() (rhythm string, told bool) {
	k, _ := history.KindOf(e.Kind)
	if e.Said == "" || k.Named == nil {
		return "", false
	}
	return k.Named(e.asked(nil)), true
}

// asked is what was asked in the round. Of a rhythm of which nothing is known, and where
// the taps are not kept, nothing can be said of one who taps from anywhere.
func (e *entry) asked(c *rhythm.Cycle) history.Asked {
	return history.Asked{Rhythm: e.Rhythm, To: e.To, Choices: e.Choices, Place: func() int {
		if c == nil || e.Tapped == nil {
			return 0
		}
		return guesses(c, e.Tapped.BPM, e.Tapped.Window)
	}}
}

// met returns which rhythm the round was about, "" for none: where it changed, what it
// became. Of a round of a kind that is not known nothing is met.
func (e *entry) met() string {
	if _, known := history.KindOf(e.Kind); !known {
		return ""
	}
	if e.To != "" {
		return e.To
	}
	return e.Rhythm
}

// tappedIn keeps the taps of a round that belong to its dums.
func tappedIn(r history.Round) *tapped {
	t := &tapped{BPM: r.BPM, Window: r.Window, Coarse: r.Coarse, Offsets: []int{}, Added: r.Added}
	landings := landings(r)
	places, onGrid := quarters(r)
	t.Out = len(r.Strokes) - len(landings)
	last := 0
	kept := []int{}
	for _, tap := range r.Taps {
		if tap.Stroke == nil || slices.Contains(landings, *tap.Stroke) {
			continue
		}
		at := places[*tap.Stroke]
		kept, last = append(kept, at-last), at
		off := math.Round((*tap.Offset - r.Setup) * 1000)
		t.Offsets = append(t.Offsets, int(min(max(off, -most), most)))
		t.Out--
	}
	if onGrid {
		t.Places = kept
	}
	return t
}

// landings are the strokes of a round with stops that are no dums of its rhythm going
// round: each stop, and the 1 after it.
func landings(r history.Round) []int {
	var all []int
	for _, b := range r.Breaks {
		all = append(all, b.Stop, b.Back)
	}
	return all
}

// gridSlack is how far, in ms, a stroke may lie from its quarter of a beat: it sounds
// in a whole frame, which may be a third of a millisecond long.
const gridSlack = 1

// quarters returns the place of each stroke in quarters of a beat from the first, and
// reports whether they lie there.
func quarters(r history.Round) (places []int, onGrid bool) {
	onGrid = true
	quarter := 60 / float64(4*r.BPM) // s
	for i, s := range r.Strokes {
		since := s - r.Strokes[0]
		at := int(math.Round(since / quarter))
		onGrid = onGrid && math.Abs(since-float64(at)*quarter) <= gridSlack/1000. && (i == 0 || at > places[i-1])
		places = append(places, at)
	}
	return places, onGrid
}
