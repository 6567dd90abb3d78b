package view

import (
	"slices"

	"groundbeat/game/rhythm"
)

// Dums is what a screen of the exercise Dums is made from.
type Dums struct {
	Phase  Phase
	Rhythm RhythmName
	Base   rhythm.Pattern // one cycle
	Counts []string       // the count of each step of the cycle
	Groups []int          // beats of each group of an odd metre
	Hidden bool           // the strokes are asked by ear alone, before the round too

	// Any: the rhythm is chosen anew for each round and not named before the
	// review. Rhythm, Base and Counts are those of the round; Ready shows nothing
	// of them.
	Any       bool
	From      string   // out of which rhythms, with Any
	FromNames []string // the names of From's ids, if it joins ids; else of no account
	Core      []Option // the most used rhythms, and Any; see RhythmOption and AnyOption
	More      []Option // the rest

	BPM, Slow, Fast int      // counts a minute: now, and the ends of what is offered; with Any and Ready 0: the usual
	Eights          int      // length
	Level           string   // LevelBare to LevelSolo
	Levels          []string // levels offered; fewer than two: no choice is shown
	Hide            int      // how far the riff hides the base, LeastHide to MostHide; 0: as it comes
	Hides           *float64 // how far the riff at hand does, as predicted, 0 to 1; nil: not known
	Volume          int      // 0 to 100; below 0: there is no sound to set
	Balance         int      // −100, the lead drum alone, to 100, the bass drum alone
	Help            Help
	Lengths         []int // lengths offered, rising; empty: 1, 2, 4, 8

	Columns int // steps in a row of the whiteboard line; see Columns
	Notes   []Note
	Round   int // number of the round, which taps carry; 0: none

	Result *Result // when Reviewing
	Review *Review // when Reviewing
	Again  Again   // when Reviewing
	Why    Why     // when Voided
}

// AnyOption is the choice of a rhythm that is not named before the review.
func AnyOption(w Words) Option { return Option{Value: Any, Label: w.Say("rhythm-any")} }

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
	if d.Any && d.Phase == Ready || d.Phase == Voided { // what does not count is asked once more
		return Head{Hidden: true}
	}
	h := Head{Base: d.Base, Counts: d.Counts, Groups: d.Groups, Hidden: d.Hidden || d.Phase == Playing}
	if d.Phase == Reviewing {
		h.Hidden, h.Review = false, d.Review
	}
	return h
}

// page is the page's title before the review. With Any it names no rhythm.
func (d *Dums) page(w Words) string {
	if d.Any {
		return w.Say("dums-any-page")
	}
	return w.Say("dums-page", "rhythm", d.Rhythm.Name)
}

func (d *Dums) ready(w Words) Screen {
	items := slices.Concat(d.title(w), []Item{
		{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary},
		rhythms(w, d.Core, d.More, d.value()), moreRhythms(w, d.More, d.value()), d.settings(w),
	}, notes(w, d.Notes))
	return ready(w, ScreenDums, d.page(w), items)
}

// long is the screen before a round of another exercise whose strokes are tapped: of one
// rhythm, in lengths of its own, and with a riff as it comes.
func (d *Dums) long(w Words, screen, page, name, how string, lengths []int) Screen {
	items := slices.Concat([]Item{
		title(w, name, d.Rhythm), {ID: "how", Role: RoleText, Text: how}, d.head(w), d.line(w),
		{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary},
		rhythms(w, d.Core, d.More, d.Rhythm.ID), moreRhythms(w, d.More, d.Rhythm.ID),
		settings(tempo(w, w.Say("tempo-name"), d.BPM, d.Slow, d.Fast), volume(w, d.Volume),
			length(w, d.Eights, lengths), balance(w, d.Balance, d.Volume), leadDrum(w, d.Level, d.Levels, noHide, nil)),
	}, notes(w, d.Notes))
	return ready(w, screen, page, items)
}

// title is what Ready shows of the rhythm, and what to do.
func (d *Dums) title(w Words) []Item {
	if d.Any {
		how := w.Say("dums-any-how")
		if offBase(d.Level) {
			how = w.Say("dums-any-how-riff")
		}
		return []Item{title(w, w.Say("dums-any-heading"), RhythmName{}), {ID: "how", Role: RoleText, Text: how}, d.head(w)}
	}
	how := w.Say("dums-how")
	if offBase(d.Level) {
		how = w.Say("dums-how-riff")
	}
	return []Item{title(w, w.Say("dums-heading", "rhythm", d.Rhythm.Name), d.Rhythm),
		{ID: "how", Role: RoleText, Text: how}, d.head(w), d.line(w)}
}

// value is the option of the choice of rhythms that is taken.
func (d *Dums) value() string {
	if d.Any {
		return Any
	}
	return d.Rhythm.ID
}

func (d *Dums) settings(w Words) Item {
	if d.Any {
		at := w.Say("dums-any-tempo")
		if d.BPM > 0 {
			at = w.Say("tempo-each", "tempo", w.Say("tempo", "bpm", d.BPM))
		}
		return settings(from(w, d.From, d.FromNames), Item{ID: "tempo-any", Role: RoleText, Text: at, Look: LookNote},
			volume(w, d.Volume), length(w, d.Eights, d.Lengths), balance(w, d.Balance, d.Volume),
			leadDrum(w, d.Level, d.Levels, d.Hide, nil))
	}
	return settings(tempo(w, w.Say("tempo-name"), d.BPM, d.Slow, d.Fast), volume(w, d.Volume),
		length(w, d.Eights, d.Lengths), balance(w, d.Balance, d.Volume), leadDrum(w, d.Level, d.Levels, d.Hide, d.Hides))
}

func (d *Dums) playing(w Words) Screen {
	return tapping(page(w, ScreenDums, d.page(w), nil), w, d.what(w), d.Round, d.head(w), d.Help.buttons(w, d.Volume)...)
}

// what says what to do while the round is played.
func (d *Dums) what(w Words) string {
	if d.Any {
		return w.Say("playing-any")
	}
	return w.Say("playing-dums", "rhythm", plain(d.Rhythm.Name))
}

func (d *Dums) voided(w Words) Screen {
	return voided(w, ScreenDums, sayWhy(w, d.Why), d.head(w), d.once(w), d.change(w))
}

func (d *Dums) head(w Words) Item {
	h := d.Head()
	return stage(w, h.Twin(w))
}

func (d *Dums) line(w Words) Item {
	l := Line{Base: d.Base, Counts: d.Counts, Groups: d.Groups, Columns: d.Columns, Hidden: d.Hidden}
	if d.Phase == Reviewing {
		l.Hidden, l.Review, l.Legend = false, d.Review, legendOf(w)
	}
	return still(w, "line", &l)
}

func legendOf(w Words) Legend {
	return Legend{Ahead: w.Say("ahead"), On: w.Say("on"), Behind: w.Say("behind"),
		LeftOut: w.Say("left-out"), Added: w.Say("added"), Mean: w.Say("mean"), Scale: w.Say("scale")}
}

func (d *Dums) once(w Words) Item {
	return Item{ID: "once", Role: RoleButton, Name: w.Say("once-more"), Action: ActOnce, Look: LookPrimary}
}

func (d *Dums) change(w Words) Item {
	return Item{ID: "change", Role: RoleButton, Name: w.Say("change"), Action: ActChange, Look: LookQuiet}
}
