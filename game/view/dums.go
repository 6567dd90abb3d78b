package view

import (
	"fmt"
	"strconv"

	"groundbeat/game/rhythm"
)

// Phase is where a round of Dums stands.
type Phase uint8

// The phases of a round. The count-in and the playing are one screen, so that
// nothing under the fingers changes.
const (
	Ready Phase = iota
	Playing
	Reviewing
	Voided
)

// The action ids of Dums.
const (
	ActBegin  = "begin"  // start the round with its count-in
	ActTap    = "tap"    // a tap; its time is the event's own
	ActStop   = "stop"   // leave the round; nothing is kept
	ActOnce   = "once"   // the same round once more
	ActSlower = "slower" // the same round, slower
	ActChange = "change" // back to Ready
	ActTempo  = "tempo"  // the slider's new number, counts a minute
	ActEights = "eights" // the choice's new value, "1" to "8"
	ActOpen   = "open"   // open the nearest link that is allowed
	ActVolume = "volume" // the slider's new number, 0 to 100
	ActExport = "export" // hand over a file of all rounds
)

// PlaceHead is the id of the live picture of the drumhead.
const PlaceHead = "head"

// Note is an aside at the foot of a screen.
type Note uint8

// The notes.
const (
	NoteQuiet   Note = iota // the sound starts quietly; once for each person
	NoteNoSound             // no sound here
	NoteNotKept             // storage is blocked
	NoteCoarse              // the clock is coarse
	NoteNoSetUp             // no set-up for this output
)

// Why says why a round does not count.
type Why uint8

// The reasons.
const (
	WhyCut    Why = iota // a gap in the sound
	WhyHidden            // the page was out of sight
	WhyPaused            // the audio context was interrupted
	WhySilent            // no sound came at all
)

// Dums is what a screen of the exercise Dums is made from.
type Dums struct {
	Phase  Phase
	Rhythm RhythmName
	Base   rhythm.Pattern // one cycle
	Counts []string       // the count of each step of the cycle
	Hidden bool           // the strokes are asked by ear alone, before the round too

	BPM, Slow, Fast int   // counts a minute: now, and the ends of what is offered
	Eights          int   // length
	Volume          int   // 0 to 100; below 0: there is no sound to set
	Lengths         []int // lengths offered; empty: 1, 2, 4, 8

	Columns int // steps in a row of the whiteboard line; see Columns
	Notes   []Note
	Round   int // number of the round, which taps carry; 0: none

	Result *Result // when Reviewing
	Review *Review // when Reviewing
	Why    Why     // when Voided
}

// RhythmName is how a rhythm is written.
type RhythmName struct {
	ID, Name string
	Script   string // in its own script; empty if unknown
	Lang     string // of Script, BCP 47
	Dir      string // of Script
}

// Screen returns the screen of the round's phase.
func (d *Dums) Screen(w Words) Screen {
	switch d.Phase {
	case Playing:
		return d.playing(w)
	case Reviewing:
		return d.reviewing(w)
	case Voided:
		return d.voided(w)
	}
	return d.ready(w)
}

// Head returns what the drumhead shows between the rounds. While one is played,
// the painter adds the sweep, the count-in and the marks of taps.
func (d *Dums) Head() Head {
	h := Head{Base: d.Base, Counts: d.Counts, Hidden: d.Hidden || d.Phase == Playing}
	if d.Phase == Reviewing {
		h.Hidden, h.Review = false, d.Review
	}
	return h
}

// screen returns a screen of this exercise with all that they share.
func (d *Dums) screen(w Words, title string, items ...Item) Screen {
	return Screen{ID: "dums", Title: title + " – " + w.Say("product"),
		Lang: w.Say("language"), Dir: w.Say("direction"), Items: items}
}

func (d *Dums) ready(w Words) Screen {
	items := []Item{
		{ID: "title", Role: RoleGroup, Look: LookRow, Children: present([]Item{
			heading("heading", w.Say("dums-heading", "rhythm", d.Rhythm.Name)), d.script()})},
		{ID: "how", Role: RoleText, Text: w.Say("dums-how")},
		d.head(w), d.line(w),
		{ID: "settings", Role: RoleGroup, Look: LookRow, Children: present([]Item{d.tempo(w), d.volume(w), d.length(w)})},
		{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary},
	}
	return d.screen(w, w.Say("dums-page", "rhythm", d.Rhythm.Name), append(present(items), notes(w, d.Notes)...)...)
}

func (d *Dums) playing(w Words) Screen {
	s := d.screen(w, w.Say("dums-page", "rhythm", d.Rhythm.Name),
		Item{ID: "tap", Role: RoleTapArea, Name: w.Say("dums-area"), Action: ActTap, Look: LookStage, Value: d.round(),
			Children: []Item{d.head(w)}},
		Item{ID: "stop", Role: RoleButton, Name: w.Say("stop"), Action: ActStop, Look: LookQuiet})
	s.Focus, s.Escape = "tap", ActStop
	return s
}

func (d *Dums) round() string {
	if d.Round == 0 {
		return ""
	}
	return strconv.Itoa(d.Round)
}

func (d *Dums) voided(w Words) Screen {
	s := d.screen(w, w.Say("void-page"),
		heading("heading", w.Say("void-heading")),
		Item{ID: "why", Role: RoleText, Text: sayWhy(w, d.Why), Look: LookWarning},
		Item{ID: "kept", Role: RoleText, Text: w.Say("void-nothing")},
		Item{ID: "again", Role: RoleGroup, Look: LookRow, Children: []Item{d.once(w), d.change(w)}})
	s.Escape = ActChange
	return s
}

func sayWhy(w Words, why Why) string {
	switch why {
	case WhyHidden:
		return w.Say("void-hidden")
	case WhyPaused:
		return w.Say("void-paused")
	case WhySilent:
		return w.Say("void-silent")
	}
	return w.Say("void-cut")
}

func (d *Dums) head(w Words) Item {
	h := d.Head()
	return Item{ID: "head", Role: RolePicture, Name: w.Say("head-name"), Text: h.Twin(w),
		Place: PlaceHead, Aspect: 1, Look: LookStage}
}

func (d *Dums) line(w Words) Item {
	l := Line{Base: d.Base, Counts: d.Counts, Columns: d.Columns, Hidden: d.Hidden}
	if d.Phase == Reviewing {
		l.Hidden, l.Review, l.Legend = false, d.Review, legendOf(w)
	}
	p := &Picture{}
	l.Draw(p)
	p.Twin = l.Twin(w)
	return Item{ID: "line", Role: RolePicture, Name: w.Say("line-name"), Text: p.Twin,
		Picture: p, Aspect: p.Aspect(), Look: LookBoard}
}

func legendOf(w Words) Legend {
	return Legend{Ahead: w.Say("ahead"), On: w.Say("on"), Behind: w.Say("behind"),
		LeftOut: w.Say("left-out"), Added: w.Say("added"), Mean: w.Say("mean"), Scale: w.Say("scale")}
}

func (d *Dums) script() Item {
	if d.Rhythm.Script == "" {
		return Item{}
	}
	return Item{ID: "script", Role: RoleText, Text: d.Rhythm.Script, Lang: d.Rhythm.Lang,
		Dir: d.Rhythm.Dir, Look: LookScript}
}

func (d *Dums) tempo(w Words) Item {
	return Item{ID: "tempo", Role: RoleSlider, Name: w.Say("dums-tempo"), Action: ActTempo,
		Min: float64(d.Slow), Max: float64(d.Fast), Step: 1, Num: float64(d.BPM),
		Value: w.Say("tempo", "bpm", d.BPM)}
}

func (d *Dums) volume(w Words) Item {
	if d.Volume < 0 {
		return Item{}
	}
	return Item{ID: "volume", Role: RoleSlider, Name: w.Say("volume"), Action: ActVolume,
		Min: 0, Max: 100, Step: 5, Num: float64(d.Volume), Value: w.Say("percent", "n", d.Volume)}
}

func (d *Dums) length(w Words) Item {
	it := Item{ID: "eights", Role: RoleChoice, Name: w.Say("dums-length"), Action: ActEights,
		Value: fmt.Sprint(d.Eights)}
	lengths, offered := d.Lengths, false
	if len(lengths) == 0 {
		lengths = []int{1, 2, 4, 8}
	}
	for _, n := range lengths {
		offered = offered || n == d.Eights
		if !offered && n > d.Eights { // a link may ask for another
			it.Options, offered = append(it.Options, lengthOption(w, d.Eights)), true
		}
		it.Options = append(it.Options, lengthOption(w, n))
	}
	if !offered {
		it.Options = append(it.Options, lengthOption(w, d.Eights))
	}
	return it
}

func lengthOption(w Words, n int) Option {
	return Option{Value: fmt.Sprint(n), Label: w.Say("eights", "n", n)}
}

func (d *Dums) once(w Words) Item {
	return Item{ID: "once", Role: RoleButton, Name: w.Say("once-more"), Action: ActOnce, Look: LookPrimary}
}

func (d *Dums) change(w Words) Item {
	return Item{ID: "change", Role: RoleButton, Name: w.Say("change"), Action: ActChange, Look: LookQuiet}
}

func heading(id, name string) Item {
	return Item{ID: id, Role: RoleHeading, Level: 1, Name: name}
}

// present leaves out items without a role.
func present(items []Item) []Item {
	kept := items[:0]
	for _, it := range items {
		if it.Role != RoleNone {
			kept = append(kept, it)
		}
	}
	return kept
}

func notes(w Words, all []Note) []Item {
	var items []Item
	for _, n := range all {
		items = append(items, Item{ID: fmt.Sprintf("note-%d", n), Role: RoleText, Look: LookNote, Text: sayNote(w, n)})
	}
	return items
}

func sayNote(w Words, n Note) string {
	switch n {
	case NoteNoSound:
		return w.Say("note-no-sound")
	case NoteNotKept:
		return w.Say("note-not-kept")
	case NoteCoarse:
		return w.Say("note-coarse")
	case NoteNoSetUp:
		return w.Say("note-no-set-up")
	}
	return w.Say("note-quiet")
}
