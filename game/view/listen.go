package view

import (
	"slices"
	"strings"

	"groundbeat/game/rhythm"
)

// Listen is what the screen Listen is made from: a rhythm, played for as long as
// one likes.
type Listen struct {
	Rhythm *rhythm.Cycle // as Parse makes it
	Core   []Option      // the most used rhythms; see RhythmOption
	More   []Option      // the rest, and the player's own

	Playing         bool
	BPM, Slow, Fast int             // counts a minute: now, and the ends of what is offered
	Level           string          // LevelBare to LevelSolo
	Levels          []string        // levels offered; fewer than two: no choice is shown
	Hide            int             // how far the riff hides the base, LeastHide to MostHide; 0: as it comes
	Hides           *float64        // how far the riff at hand does, as predicted, 0 to 1; nil: not known
	Riff            RiffCycle       // what the lead drum plays in the cycle that is heard, or in the first; empty at LevelBare
	Sounds          []rhythm.Stroke // what it plays in all cycles, as [SoundsOf] has them
	Rolls           bool            // whether it rolls in any
	Balance         int             // −100, the lead drum alone, to 100, the bass drum alone
	Help            Help
	Volume          int // 0 to 100; below 0: there is no sound to set

	Problem string  // where and why the player's own file could not be read
	Board   float64 // about how wide the whiteboard line is, in CSS pixels; 0: as wide as it likes
	Notes   []Note
}

// Screen returns the screen. Whether it plays changes one button, so that the
// focus stays where it is.
func (l *Listen) Screen(w Words) Screen {
	name := NameOf(l.Rhythm)
	items := []Item{
		title(w, name.Name, name), l.role(), l.head(w), l.line(w), l.letters(w), l.listenFor(w), l.differ(w), l.play(w),
		l.help(w),
		rhythms(w, l.Core, l.More, name.ID), moreRhythms(w, l.More, name.ID), l.own(w), l.settings(w), sources(w, l.Rhythm),
	}
	items = append(items, notesWithout(w, l.Notes, w.Say("listen-no-sound"))...)
	s := ready(w, ScreenListen, w.Say("listen-page", "rhythm", name.Name), items)
	if l.Playing {
		s.Escape = ActStop
	}
	return s
}

// Head returns what the drumhead shows; the painter adds the sweep.
func (l *Listen) Head() Head {
	return Head{Base: l.Rhythm.Skeleton, Riff: l.Riff, Counts: CountsOf(l.Rhythm.Base()), Groups: l.Rhythm.Grouping}
}

// filled returns what the lead drum plays more than the base; nil if it does not.
func (l *Listen) filled() rhythm.Pattern {
	if l.Level != LevelFilled {
		return nil
	}
	return l.Rhythm.Filled
}

func (l *Listen) role() Item {
	if l.Rhythm.Role == "" {
		return Item{}
	}
	return Item{ID: "role", Role: RoleText, Text: sentence(l.Rhythm.Role)}
}

func (l *Listen) head(w Words) Item {
	h := l.Head()
	return stage(w, h.Twin(w))
}

// Line returns what the whiteboard line shows. While it plays it is drawn by the
// painter, who adds the step that is heard, and what the lead drum plays there.
func (l *Listen) Line(w Words) Line {
	width := l.Board
	if l.Level != LevelBare {
		width = max(0, width-gutterWide)
	}
	form := l.Rhythm.Base()
	if l.riffs() {
		form = fine(l.Rhythm)
	}
	line := lineOf(l.Rhythm, form, l.filled(), width)
	if line.Wide = l.Board; l.riffs() {
		line.Riff = l.Riff
	}
	if l.riffs() || len(line.Lead) > 0 {
		line.Names = [2]string{w.Say("bass-drum"), w.Say("lead-drum")}
	}
	return line
}

// riffs reports whether the lead drum plays what no pattern holds.
func (l *Listen) riffs() bool { return Riffs(l.Level) }

// fine is a form of a rhythm with the counts that a riff is told by: & between beats,
// and e and a besides where the base itself has an &.
func fine(c *rhythm.Cycle) rhythm.Form {
	perBeat := min(4, 2*c.StepsPerBeat())
	return c.Form(make(rhythm.Pattern, perBeat*c.Beats()))
}

func (l *Listen) line(w Words) Item {
	line := l.Line(w)
	it := still(w, "line", &line)
	if l.Playing {
		it.Picture, it.Place = nil, PlaceLine
	}
	return it
}

// help is the help for the ear.
func (l *Listen) help(w Words) Item {
	items := []Item{l.Help.hands(w)}
	if l.Volume >= 0 {
		items = append([]Item{l.Help.alone(w, l.Playing)}, items...)
	}
	return Item{ID: "helps", Role: RoleGroup, Look: LookRow, Name: w.Say("helps"), Children: items}
}

// letters says what the letters of the line mean, those that it has and no others, and
// the bar of a roll.
func (l *Listen) letters(w Words) Item {
	sounds := map[rhythm.Stroke]bool{}
	for _, s := range slices.Concat(l.Rhythm.Skeleton, l.filled(), l.Sounds) {
		sounds[s] = true
	}
	var all []string
	for _, s := range explained {
		if sounds[s] {
			all = append(all, sayLetter(w, s))
		}
	}
	if l.Rolls {
		all = append(all, w.Say("letter-roll"))
	}
	return Item{ID: "letters", Role: RoleText, Look: LookNote, Text: strings.Join(all, " · ")}
}

// sayLetter says what a stroke's letter stands for.
func sayLetter(w Words, s rhythm.Stroke) string {
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

func (l *Listen) listenFor(w Words) Item {
	if l.Rhythm.Listen == "" {
		return Item{}
	}
	return Item{ID: "listen", Role: RoleText, Text: w.Say("listen-for", "what", l.Rhythm.Listen)}
}

func (l *Listen) differ(w Words) Item {
	if !l.Rhythm.Differ {
		return Item{}
	}
	return Item{ID: "differ", Role: RoleText, Text: w.Say("sources-differ"), Look: LookNote}
}

// play is one button in two states.
func (l *Listen) play(w Words) Item {
	it := Item{ID: "play", Role: RoleButton, Name: w.Say("play"), Action: ActPlay, Look: LookPrimary}
	if l.Playing {
		it.Name, it.Action = w.Say("stop"), ActStop
	}
	return it
}

func (l *Listen) settings(w Words) Item {
	levels := l.Levels
	if len(l.Rhythm.Filled) == 0 {
		levels = slices.DeleteFunc(slices.Clone(levels), func(level string) bool { return level == LevelFilled })
	}
	return settings(tempo(w, sayTempoOf(w, l.Rhythm.Tempo.Beat), l.BPM, l.Slow, l.Fast), l.usual(w),
		balance(w, l.Balance, l.Volume), volume(w, l.Volume), leadDrum(w, l.Level, levels, l.Hide, l.Hides))
}

// usual says how fast the rhythm is played by itself.
func (l *Listen) usual(w Words) Item {
	t := l.Rhythm.Tempo
	it := Item{ID: "usual", Role: RoleText, Look: LookNote,
		Text: w.Say("usual", "bpm", t.Usual, "slow", t.Slow, "fast", t.Fast)}
	if t.About {
		it.Text = w.Say("usual-about", "bpm", t.Usual, "slow", t.Slow, "fast", t.Fast)
	}
	return it
}

// sayTempoOf names a slider of the tempo: a number of counts says nothing unless
// one knows what a count is.
func sayTempoOf(w Words, beat string) string {
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
func (l *Listen) own(w Words) Item {
	it := Item{ID: "own", Role: RoleGroup, Children: []Item{
		{ID: "file", Role: RoleFile, Name: w.Say("own-rhythm"), Action: ActFile},
		{ID: "own-how", Role: RoleText, Look: LookNote, Text: w.Say("own-how", "lines", ownLines)},
		{ID: "problem", Role: RoleStatus, Live: LivePolite, Look: LookWarning},
	}}
	if l.Problem != "" {
		it.Children[2].Text = w.Say("own-problem", "problem", l.Problem)
	}
	return it
}

// Meeting is the screen on which a rhythm is met in a practice, before it is asked: it is
// heard and seen, with what to listen for, and nothing else can be set.
func (l *Listen) Meeting(w Words) Screen {
	name := NameOf(l.Rhythm)
	play := l.play(w)
	play.Look = ""
	if !l.Playing {
		play.Name = w.Say("hear-once-more")
	}
	if l.Volume < 0 {
		play = Item{}
	}
	items := []Item{
		title(w, w.Say("meet-heading", "rhythm", plain(name.Name)), name), l.role(), l.head(w), l.line(w), l.listenFor(w), l.differ(w), play,
		{ID: "ask-me", Role: RoleButton, Name: w.Say("meet-on"), Action: ActPracticeAsk, Look: LookPrimary},
	}
	if l.Volume >= 0 {
		items = append(items, settings(volume(w, l.Volume)))
	}
	s := page(w, ScreenListen, w.Say("meet-heading", "rhythm", plain(name.Name)), append(items, notesWithout(w, l.Notes, w.Say("listen-no-sound"))...))
	s.Escape = ActPracticeEnd
	if l.Playing {
		s.Escape = ActStop
	}
	return s
}
