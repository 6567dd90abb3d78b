package roundview

import (
	"slices"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Dums is what a screen of the exercise Dums is made from.
type Dums struct {
	Kind   string // of the round, and so of the screen; "": Dums
	Phase  view.Phase
	Rhythm view.RhythmName
	Base   rhythm.Pattern // one cycle
	Counts []string       // the count of each step of the cycle
	Groups []int          // beats of each group of an odd metre
	Hidden bool           // the strokes are asked by ear alone, before the round too

	// Any: the rhythm is chosen anew for each round and not named before the
	// review. Rhythm, Base and Counts are those of the round; Ready shows nothing
	// of them.
	Any       bool
	From      string        // out of which rhythms, with Any
	FromNames []string      // the names of From's ids, if it joins ids; else of no account
	Core      []view.Option // the most used rhythms, and Any; see RhythmOption and AnyOption
	More      []view.Option // the rest

	BPM, Slow, Fast int      // counts a minute: now, and the ends of what is offered; with Any and Ready 0: the usual
	Eights          int      // length
	Level           string   // LevelBare to LevelSolo
	Levels          []string // levels offered; fewer than two: no choice is shown
	Hide            int      // how far the riff hides the base, LeastHide to MostHide; 0: as it comes
	Hides           *float64 // how far the riff at hand does, as predicted, 0 to 1; nil: not known
	Volume          int      // 0 to 100; below 0: there is no sound to set
	Balance         int      // −100, the lead drum alone, to 100, the bass drum alone
	Help            view.Help
	Lengths         []int // lengths offered, rising; empty: 1, 2, 4, 8

	Columns int // steps in a row of the whiteboard line; see Columns
	Notes   []view.Note
	Round   int // number of the round, which taps carry; 0: none

	Result *Result         // when Reviewing
	Review *picture.Review // when Reviewing
	Replay Replay          // when Reviewing
	Why    view.Why        // when Voided
}

// AnyOption is the choice of a rhythm that is not named before the review.
func AnyOption(w say.Words) view.Option {
	return view.Option{Value: view.Any, Label: w.Say("rhythm-any")}
}

// Screen returns the screen of the round's phase.
func (d *Dums) Screen(w say.Words) view.Screen {
	switch d.Phase {
	case view.Playing:
		return d.playing(w)
	case view.Reviewing:
		return d.reviewing(w)
	case view.Voided:
		return d.voided(w)
	}
	return d.ready(w)
}

// Head returns what the drumhead shows between the rounds. While one is played,
// the painter adds the sweep, the count-in and the marks of taps.
func (d *Dums) Head() picture.Head {
	if d.Any && d.Phase == view.Ready || d.Phase == view.Voided { // what does not count is asked once more
		return picture.Head{Hidden: true}
	}
	h := picture.Head{Base: d.Base, Counts: d.Counts, Groups: d.Groups, Hidden: d.Hidden || d.Phase == view.Playing}
	if d.Phase == view.Reviewing {
		h.Hidden, h.Review = false, d.Review
	}
	return h
}

// page is the page's title before the review. With Any it names no rhythm.
func (d *Dums) page(w say.Words) string { return tappingOf(d.Kind).page(w, d.named()) }

func (d *Dums) ready(w say.Words) view.Screen {
	items := slices.Concat(d.title(w), []view.Item{
		{ID: "begin", Role: view.RoleButton, Name: w.Say("begin"), Action: view.ActBegin, Look: view.LookPrimary},
		view.Rhythms(w, d.Core, d.More, d.value()), view.MoreRhythms(w, d.More, d.value()), d.settings(w),
	}, view.Notes(w, d.Notes))
	return view.ReadyScreen(w, d.screen(), d.page(w), items)
}

// long is the screen before a round of another exercise whose strokes are tapped: of one
// rhythm, in lengths of its own, and with a riff as it comes.
func (d *Dums) long(w say.Words, lengths []int) view.Screen {
	items := slices.Concat(d.title(w), []view.Item{
		{ID: "begin", Role: view.RoleButton, Name: w.Say("begin"), Action: view.ActBegin, Look: view.LookPrimary},
		view.Rhythms(w, d.Core, d.More, d.Rhythm.ID), view.MoreRhythms(w, d.More, d.Rhythm.ID),
		view.Settings(view.Tempo(w, w.Say("tempo-name"), d.BPM, d.Slow, d.Fast), view.Volume(w, d.Volume),
			view.Length(w, d.Eights, lengths), view.Balance(w, d.Balance, d.Volume), view.LeadDrum(w, d.Level, d.Levels, view.NoHide, nil)),
	}, view.Notes(w, d.Notes))
	return view.ReadyScreen(w, d.screen(), d.page(w), items)
}

// title is what Ready shows of the rhythm, and what to do.
func (d *Dums) title(w say.Words) []view.Item {
	said, shown, line := tappingOf(d.Kind), d.Rhythm, view.Item{}
	if d.Any {
		shown = view.RhythmName{}
	} else {
		line = d.line(w)
	}
	return []view.Item{view.Title(w, said.heading(w, d.named()), shown),
		{ID: "how", Role: view.RoleText, Text: said.how(w, d.named(), view.OffBase(d.Level))}, d.head(w), line}
}

// value is the option of the choice of rhythms that is taken.
func (d *Dums) value() string {
	if d.Any {
		return view.Any
	}
	return d.Rhythm.ID
}

func (d *Dums) settings(w say.Words) view.Item {
	if d.Any {
		at := w.Say("dums-any-tempo")
		if d.BPM > 0 {
			at = w.Say("tempo-each", "tempo", w.Say("tempo", "bpm", d.BPM))
		}
		return view.Settings(view.From(w, d.From, d.FromNames), view.Item{ID: "tempo-any", Role: view.RoleText, Text: at, Look: view.LookNote},
			view.Volume(w, d.Volume), view.Length(w, d.Eights, d.Lengths), view.Balance(w, d.Balance, d.Volume),
			view.LeadDrum(w, d.Level, d.Levels, d.Hide, nil))
	}
	return view.Settings(view.Tempo(w, w.Say("tempo-name"), d.BPM, d.Slow, d.Fast), view.Volume(w, d.Volume),
		view.Length(w, d.Eights, d.Lengths), view.Balance(w, d.Balance, d.Volume), view.LeadDrum(w, d.Level, d.Levels, d.Hide, d.Hides))
}

func (d *Dums) playing(w say.Words) view.Screen {
	said := tappingOf(d.Kind)
	s := view.Tapping(view.Page(w, d.screen(), d.page(w), nil), w, said.playing(w, view.Plain(d.named())), d.Round, d.head(w), d.Help.Buttons(w, d.Volume)...)
	s.Find("tap").Name = said.found(w, foundArea)
	return s
}

func (d *Dums) voided(w say.Words) view.Screen {
	return view.VoidScreen(w, d.screen(), view.SayWhy(w, d.Why), d.head(w), d.once(w), d.change(w))
}

func (d *Dums) head(w say.Words) view.Item {
	h := d.Head()
	return view.Stage(w, h.Twin(w))
}

func (d *Dums) line(w say.Words) view.Item {
	l := picture.Line{Base: d.Base, Counts: d.Counts, Groups: d.Groups, Columns: d.Columns, Hidden: d.Hidden}
	if d.Phase == view.Reviewing {
		l.Hidden, l.Review, l.Legend = false, d.Review, d.legend(w)
	}
	return view.Still(w, "line", &l)
}

func (d *Dums) legend(w say.Words) picture.Legend {
	return picture.Legend{Ahead: w.Say("ahead"), On: tappingOf(d.Kind).found(w, foundOn), Behind: w.Say("behind"),
		LeftOut: w.Say("left-out"), Added: w.Say("added"), Mean: w.Say("mean"), Scale: w.Say("scale")}
}

func (d *Dums) once(w say.Words) view.Item {
	return view.Item{ID: "once", Role: view.RoleButton, Name: w.Say("once-more"), Action: view.ActOnce, Look: view.LookPrimary}
}

func (d *Dums) change(w say.Words) view.Item {
	return view.Item{ID: "change", Role: view.RoleButton, Name: w.Say("change"), Action: view.ActChange, Look: view.LookQuiet}
}
