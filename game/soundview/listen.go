package soundview

import (
	"slices"
	"strings"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Listen is what the screen Listen is made from: a rhythm, played for as long as
// one likes.
type Listen struct {
	Rhythm *rhythm.Cycle // as Parse makes it
	Core   []view.Option // the most used rhythms; see RhythmOption
	More   []view.Option // the rest, and the player's own

	Playing         bool
	BPM, Slow, Fast int               // counts a minute: now, and the ends of what is offered
	Level           string            // LevelBare to LevelSolo
	Levels          []string          // levels offered; fewer than two: no choice is shown
	Hide            int               // how far the riff hides the base, LeastHide to MostHide; 0: as it comes
	Hides           *float64          // how far the riff at hand does, as predicted, 0 to 1; nil: not known
	Riff            picture.RiffCycle // what the lead drum plays in the cycle that is heard, or in the first; empty at LevelBare
	Sounds          []rhythm.Stroke   // what it plays in all cycles, as [SoundsOf] has them
	Rolls           bool              // whether it rolls in any
	Balance         int               // −100, the lead drum alone, to 100, the bass drum alone
	Help            view.Help
	Volume          int // 0 to 100; below 0: there is no sound to set

	Problem string  // where and why the player's own file could not be read
	Board   float64 // about how wide the whiteboard line is, in CSS pixels; 0: as wide as it likes
	Notes   []view.Note
}

// Screen returns the screen. Whether it plays changes one button, so that the
// focus stays where it is.
func (l *Listen) Screen(w say.Words) view.Screen {
	name := view.NameOf(l.Rhythm)
	items := []view.Item{
		view.Title(w, name.Name, name), l.role(), l.head(w), l.line(w), l.letters(w), l.listenFor(w), l.differ(w), l.play(w),
		l.help(w),
		view.Rhythms(w, l.Core, l.More, name.ID), view.MoreRhythms(w, l.More, name.ID), l.own(w), l.settings(w), sources(w, l.Rhythm),
	}
	items = append(items, view.NotesWithout(w, l.Notes, w.Say("listen-no-sound"))...)
	s := view.ReadyScreen(w, view.ScreenListen, w.Say("listen-page", "rhythm", name.Name), items)
	if l.Playing {
		s.Escape = view.ActStop
	}
	return s
}

// Head returns what the drumhead shows; the painter adds the sweep.
func (l *Listen) Head() picture.Head {
	return picture.Head{Base: l.Rhythm.Skeleton, Riff: l.Riff, Counts: picture.CountsOf(l.Rhythm.Base()), Groups: l.Rhythm.Grouping}
}

// filled returns what the lead drum plays more than the base; nil if it does not.
func (l *Listen) filled() rhythm.Pattern {
	if l.Level != view.LevelFilled {
		return nil
	}
	return l.Rhythm.Filled
}

func (l *Listen) role() view.Item {
	if l.Rhythm.Role == "" {
		return view.Item{}
	}
	return view.Item{ID: "role", Role: view.RoleText, Text: say.Sentence(l.Rhythm.Role)}
}

func (l *Listen) head(w say.Words) view.Item {
	h := l.Head()
	return view.Stage(w, h.Twin(w))
}

// Line returns what the whiteboard line shows. While it plays it is drawn by the
// painter, who adds the step that is heard, and what the lead drum plays there.
func (l *Listen) Line(w say.Words) picture.Line {
	width := l.Board
	if l.Level != view.LevelBare {
		width = max(0, width-picture.Gutter)
	}
	form := l.Rhythm.Base()
	if l.riffs() {
		form = fine(l.Rhythm)
	}
	line := picture.LineOf(l.Rhythm, form, l.filled(), width)
	if line.Wide = l.Board; l.riffs() {
		line.Riff = l.Riff
	}
	if l.riffs() || len(line.Lead) > 0 {
		line.Names = [2]string{w.Say("bass-drum"), w.Say("lead-drum")}
	}
	return line
}

// riffs reports whether the lead drum plays what no pattern holds.
func (l *Listen) riffs() bool { return view.Riffs(l.Level) }

// fine is a form of a rhythm with the counts that a riff is told by: & between beats,
// and e and a besides where the base itself has an &.
func fine(c *rhythm.Cycle) rhythm.Form {
	perBeat := min(4, 2*c.StepsPerBeat())
	return c.Form(make(rhythm.Pattern, perBeat*c.Beats()))
}

func (l *Listen) line(w say.Words) view.Item {
	line := l.Line(w)
	it := view.Still(w, "line", &line)
	if l.Playing {
		it.Picture, it.Place = nil, view.PlaceLine
	}
	return it
}

// help is the help for the ear.
func (l *Listen) help(w say.Words) view.Item {
	items := []view.Item{l.Help.HandsButton(w)}
	if l.Volume >= 0 {
		items = append([]view.Item{l.Help.AloneButton(w, l.Playing)}, items...)
	}
	return view.Item{ID: "helps", Role: view.RoleGroup, Look: view.LookRow, Name: w.Say("helps"), Children: items}
}

// letters says what the letters of the line mean, those that it has and no others, and
// the bar of a roll.
func (l *Listen) letters(w say.Words) view.Item {
	sounds := map[rhythm.Stroke]bool{}
	for _, s := range slices.Concat(l.Rhythm.Skeleton, l.filled(), l.Sounds) {
		sounds[s] = true
	}
	var all []string
	for _, s := range picture.Explained {
		if sounds[s] {
			all = append(all, sayLetter(w, s))
		}
	}
	if l.Rolls {
		all = append(all, w.Say("letter-roll"))
	}
	return view.Item{ID: "letters", Role: view.RoleText, Look: view.LookNote, Text: strings.Join(all, " · ")}
}

// sayLetter says what a stroke's letter stands for.
func sayLetter(w say.Words, s rhythm.Stroke) string {
	switch s {
	case rhythm.Dum:
		return w.Say("letter-dum")
	case rhythm.Tek:
		return w.Say("letter-tek")
	case rhythm.Sak:
		return w.Say("letter-sak")
	case rhythm.LightTek:
		return w.Say("letter-light-tek")
	}
	return w.Say("letter-ka")
}

func (l *Listen) listenFor(w say.Words) view.Item {
	if l.Rhythm.Listen == "" {
		return view.Item{}
	}
	return view.Item{ID: "listen", Role: view.RoleText, Text: w.Say("listen-for", "what", l.Rhythm.Listen)}
}

func (l *Listen) differ(w say.Words) view.Item {
	if !l.Rhythm.Differ {
		return view.Item{}
	}
	return view.Item{ID: "differ", Role: view.RoleText, Text: w.Say("sources-differ"), Look: view.LookNote}
}

// play is one button in two states.
func (l *Listen) play(w say.Words) view.Item {
	it := view.Item{ID: "play", Role: view.RoleButton, Name: w.Say("play"), Action: view.ActPlay, Look: view.LookPrimary}
	if l.Playing {
		it.Name, it.Action = w.Say("stop"), view.ActStop
	}
	return it
}

func (l *Listen) settings(w say.Words) view.Item {
	levels := l.Levels
	if len(l.Rhythm.Filled) == 0 {
		levels = slices.DeleteFunc(slices.Clone(levels), func(level string) bool { return level == view.LevelFilled })
	}
	return view.Settings(view.Tempo(w, sayTempoOf(w, l.Rhythm.Tempo.Beat), l.BPM, l.Slow, l.Fast), l.usual(w),
		view.Balance(w, l.Balance, l.Volume), view.Volume(w, l.Volume), view.LeadDrum(w, l.Level, levels, l.Hide, l.Hides))
}

// usual says how fast the rhythm is played by itself.
func (l *Listen) usual(w say.Words) view.Item {
	t := l.Rhythm.Tempo
	it := view.Item{ID: "usual", Role: view.RoleText, Look: view.LookNote,
		Text: w.Say("usual", "bpm", t.Usual, "slow", t.Slow, "fast", t.Fast)}
	if t.About {
		it.Text = w.Say("usual-about", "bpm", t.Usual, "slow", t.Slow, "fast", t.Fast)
	}
	return it
}

// sayTempoOf names a slider of the tempo: a number of counts says nothing unless
// one knows what a count is.
func sayTempoOf(w say.Words, beat string) string {
	switch beat {
	case "half":
		return w.Say("tempo-half")
	case "quarter":
		return w.Say("tempo-quarter")
	case "eighth":
		return w.Say("tempo-eighth")
	case "sixteenth":
		return w.Say("tempo-sixteenth")
	}
	return w.Say("tempo-name")
}

// ownLines are the lines of the shortest file that can be opened, as they are shown.
const ownLines = "name: mine · metre: 4/4 · skeleton: DT-TD-T- · tempo: 80 100 120 quarter · source: me"

// own is where the player's own rhythm is opened, what such a file is, and what was
// wrong with it.
func (l *Listen) own(w say.Words) view.Item {
	it := view.Item{ID: "own", Role: view.RoleGroup, Children: []view.Item{
		{ID: "file", Role: view.RoleFile, Name: w.Say("own-rhythm"), Action: view.ActFile},
		{ID: "own-how", Role: view.RoleText, Look: view.LookNote, Text: w.Say("own-how", "lines", ownLines)},
		{ID: "problem", Role: view.RoleStatus, Live: view.LivePolite, Look: view.LookWarning},
	}}
	if l.Problem != "" {
		it.Children[2].Text = w.Say("own-problem", "problem", l.Problem)
	}
	return it
}

// Meeting is the screen on which a rhythm is met in a practice, before it is asked: it is
// heard and seen, with what to listen for, and nothing else can be set.
func (l *Listen) Meeting(w say.Words) view.Screen {
	name := view.NameOf(l.Rhythm)
	play := l.play(w)
	play.Look = ""
	if !l.Playing {
		play.Name = w.Say("hear-once-more")
	}
	if l.Volume < 0 {
		play = view.Item{}
	}
	items := []view.Item{
		view.Title(w, w.Say("meet-heading", "rhythm", view.Plain(name.Name)), name), l.role(), l.head(w), l.line(w), l.listenFor(w), l.differ(w), play,
		{ID: "ask-me", Role: view.RoleButton, Name: w.Say("meet-on"), Action: view.ActPracticeAsk, Look: view.LookPrimary},
	}
	if l.Volume >= 0 {
		items = append(items, view.Settings(view.Volume(w, l.Volume)))
	}
	s := view.Page(w, view.ScreenListen, w.Say("meet-heading", "rhythm", view.Plain(name.Name)), append(items, view.NotesWithout(w, l.Notes, w.Say("listen-no-sound"))...))
	s.Escape = view.ActPracticeEnd
	if l.Playing {
		s.Escape = view.ActStop
	}
	return s
}
