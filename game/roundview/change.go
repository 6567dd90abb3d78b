package roundview

import (
	"fmt"
	"math"
	"slices"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Change is what the screens of the exercise Hear the change are made from. What it
// becomes, and whether and when, is in the model only when Reviewing: until then
// Result, Sides and Differences are empty, and if they are not, nothing is made of
// them.
type Change struct {
	Phase view.Phase // Ready, Playing, Waiting (to what?), Reviewing, Voided

	// Before. Rhythm, Base and Counts are those of the rhythm that is played first;
	// with Any it is chosen anew for each round and named only afterwards.
	Rhythm    view.RhythmName
	Base      rhythm.Pattern
	Counts    []string
	Groups    []int // beats of each group of an odd metre
	Any       bool
	Core      []view.Option // the most used rhythms, and Any; see RhythmOption and AnyOption
	More      []view.Option // the rest
	Answers   int           // how many names, LeastAnswers to MostAnswers
	From      string        // what it may become: FromFive, FromEven, FromAll, or ids joined by points
	FromNames []string      // the names of those ids; of no account with the words
	Fewer     *Fewer        // why some rounds have fewer names; nil: none has
	Eights    int           // length, LeastLong to MostLong
	Level     string        // LevelBare to LevelSolo
	Levels    []string      // levels offered; fewer than two: no choice is shown
	Volume    int           // 0 to 100; below 0: there is no sound, and nothing can be asked
	Balance   int           // −100, the lead drum alone, to 100, the bass drum alone
	Help      view.Help
	Columns   int // steps in a row of the whiteboard line; see Columns
	Notes     []view.Note
	Round     int // number of the round, which presses carry; 0: none

	Choices []view.Option // while "To what?" is asked, in the order shown: id and name

	// After. Sides are what was played first, if it changed what it became, and if that is
	// another what was said that it became.
	Result      *ChangeResult
	Sides       []Side
	Differences []rhythm.Difference // between the first side and the second
	BPM         int                 // counts a minute
	Replay      Replay
	Board       float64  // about how wide both sides are together, in CSS pixels; 0: as wide as they like
	Why         view.Why // when Voided
}

// ChangeResult is how a change was noticed.
type ChangeResult struct {
	To     view.Option // what it became, id and name; empty: it did not change
	Eight  int         // the eight in which it changed, from 1
	Heard  bool
	Chance bool          // heard, but by a press that may as well have come by chance
	Late   time.Duration // from the first stroke that differs to the press, the set-up's mean taken off
	Counts float64       // Late in counts
	Eighth time.Duration // likewise from the start of the eight
	Early  int           // presses before it could be heard, or with nothing to hear
	Said   view.Option   // what was said that it became; empty where nothing was asked
	SetUp  *time.Duration
}

// longLengths are the lengths offered where something happens in the middle, in
// eights.
var longLengths = []int{4, 6, 8}

// Screen returns the screen of the round's phase.
func (c *Change) Screen(w say.Words) view.Screen {
	switch c.Phase {
	case view.Playing:
		return c.playing(w)
	case view.Waiting:
		return c.asked(w)
	case view.Reviewing:
		return c.reviewing(w)
	case view.Voided:
		return view.VoidScreen(w, view.ScreenChange, view.SayWhy(w, c.Why), c.head(w), nextQuestion(w), changeQuestion(w))
	}
	return c.ready(w)
}

// Head returns what the drumhead shows: before the round the rhythm that is played
// first, and while it is played the drum and nothing on it. A sweep, counts or
// strokes would tell of the change to the eye. The painter adds the count-in and
// the marks of presses.
func (c *Change) Head() picture.Head {
	if c.Phase != view.Ready || c.Any {
		return picture.Head{Hidden: true}
	}
	return picture.Head{Base: c.Base, Counts: c.Counts, Groups: c.Groups}
}

func (c *Change) head(w say.Words) view.Item {
	h := c.Head()
	return view.Stage(w, h.Twin(w))
}

func (c *Change) ready(w say.Words) view.Screen {
	head := []view.Item{view.Title(w, w.Say("change-heading", "rhythm", c.Rhythm.Name), c.Rhythm), {ID: "how", Role: view.RoleText, Text: w.Say("change-how")}, c.head(w)}
	value := c.Rhythm.ID
	if c.Any {
		head[0], value = view.Title(w, w.Say("change-any-heading"), view.RhythmName{}), view.Any
	} else {
		head = append(head, view.Still(w, "line", &picture.Line{Base: c.Base, Counts: c.Counts, Groups: c.Groups, Columns: c.Columns}))
	}
	first := view.Rhythms(w, c.Core, c.More, value)
	first.Name = w.Say("change-first")
	others := view.From(w, c.From, c.FromNames)
	others.Name = w.Say("change-from")
	items := slices.Concat(head, []view.Item{
		{ID: "begin", Role: view.RoleButton, Name: w.Say("begin"), Action: view.ActBegin, Look: view.LookPrimary, Disabled: c.Volume < 0},
		first, view.MoreRhythms(w, c.More, value),
		view.Settings(others, c.answers(w), c.Fewer.say(w), view.Length(w, c.Eights, longLengths), view.Volume(w, c.Volume),
			view.Balance(w, c.Balance, c.Volume), view.LeadDrum(w, c.Level, c.Levels, view.NoHide, nil)),
	}, view.NotesWithout(w, c.Notes, w.Say("which-no-sound")))
	return view.ReadyScreen(w, view.ScreenChange, w.Say("nav-change"), items)
}

// answers is the choice of how many names.
func (c *Change) answers(w say.Words) view.Item {
	q := Which{Answers: c.Answers, From: c.From, FromNames: c.FromNames}
	return q.answers(w)
}

func (c *Change) playing(w say.Words) view.Screen {
	s := view.Tapping(view.Page(w, view.ScreenChange, w.Say("nav-change"), nil), w, w.Say("playing-change"), c.Round, c.head(w), c.Help.Buttons(w, c.Volume)...)
	s.Find("tap").Name = w.Say("change-area")
	return s
}

// asked returns the screen that asks what it has become.
func (c *Change) asked(w say.Words) view.Screen {
	q := Which{Ask: view.AskRhythm, Choices: c.Choices}
	s := view.Page(w, view.ScreenChange, w.Say("nav-change"), []view.Item{view.Heading("heading", w.Say("change-to-what")), c.head(w), q.choices(w),
		{ID: "stop", Role: view.RoleButton, Name: w.Say("stop"), Action: view.ActStop, Look: view.LookQuiet}})
	s.Escape, s.Keys = view.ActStop, q.digits()
	return s
}

// reviewing returns the screen after the round: what came of it in a sentence, what it
// became; where the rhythms differ, on the line, and each to be heard in turn. The rest
// is shown when opened.
func (c *Change) reviewing(w say.Words) view.Screen {
	q := &Which{Ask: view.AskRhythm, Sides: c.Sides, Differences: c.Differences, Volume: c.Volume, Replay: c.Replay, Board: c.Board, BPM: c.BPM}
	items := []view.Item{view.Heading("heading", c.Finding(w)), c.became(w), c.early(w), q.plainly(w), q.beside(w), q.shown(w),
		{ID: "next", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{nextQuestion(w), c.once(w), changeQuestion(w)}},
		inWords(w, c.inWords(w, q)...)}
	return review(view.Page(w, view.ScreenChange, w.Say("nav-change"), append(items, view.Notes(w, c.Notes)...)), q.hearing())
}

// inWords is what is shown when opened.
func (c *Change) inWords(w say.Words, q *Which) []view.Item {
	var items []view.Item
	if len(c.Sides) > 1 {
		items = []view.Item{q.differences(w), listenForIn(w, c.Sides[1].Rhythm)}
	}
	if c.Result.Heard && c.Result.Early > 0 && !c.Result.Chance {
		items = append(items, view.Item{ID: "early-counts", Role: view.RoleText, Look: view.LookNote, Text: w.Say("change-early-counts")})
	}
	if items = append(items, c.measured(w), q.at(w)); c.Result.Heard {
		items = append(items, takenOff(w, c.Result.SetUp))
	}
	return items
}

// Finding says in one sentence how the change was noticed, or that there was none.
func (c *Change) Finding(w say.Words) string {
	r := c.Result
	switch counts := int(math.Round(r.Counts)); {
	case r.To == (view.Option{}) && r.Early == 0:
		return w.Say("change-none")
	case r.To == (view.Option{}):
		return w.Say("change-none-pressed", "n", r.Early)
	case !r.Heard:
		return w.Say("change-left-out", "rhythm", view.Plain(r.To.Label), "eight", r.Eight)
	case r.Chance:
		return w.Say("change-chance", "n", r.Early)
	case counts == 0 && r.Early == 0:
		return w.Say("change-at-once")
	case counts == 0:
		return w.Say("change-soon-early")
	case r.Early > 0:
		return w.Say("change-heard-early", "n", counts)
	default:
		return w.Say("change-heard", "n", counts)
	}
}

// became says what it became, and what was said.
func (c *Change) became(w say.Words) view.Item {
	r := c.Result
	first := ""
	if len(c.Sides) > 0 {
		first = view.Plain(c.Sides[0].Rhythm.Name)
	}
	switch to := view.Plain(r.To.Label); {
	case !r.Heard:
		return view.Item{}
	case r.Said == r.To:
		return Reason("became", w.Say("change-became", "first", first, "second", to))
	default:
		return Reason("became", w.Say("change-became-said", "first", first, "second", to, "said", view.Plain(r.Said.Label)))
	}
}

// early says that presses came before there was anything to hear, and what follows.
func (c *Change) early(w say.Words) view.Item {
	switch r := c.Result; {
	case r.Early == 0 || r.To == (view.Option{}):
		return view.Item{}
	case r.Chance:
		return Reason("early", w.Say("change-chance-why"))
	case r.Heard: // the finding says it
		return view.Item{}
	default:
		return Reason("early", w.Say("change-early", "n", r.Early))
	}
}

// measured gives the exact times.
func (c *Change) measured(w say.Words) view.Item {
	if !c.Result.Heard {
		return view.Item{}
	}
	return view.Item{ID: "measured", Role: view.RoleText, Look: view.LookNote, Text: w.Say("change-measured", "ms", say.WholeMs(c.Result.Late),
		"counts", fmt.Sprintf("%.1f", c.Result.Counts), "eight", say.WholeMs(c.Result.Eighth))}
}

func (c *Change) once(w say.Words) view.Item {
	return view.Item{ID: "once", Role: view.RoleButton, Name: w.Say("once-more"), Action: view.ActOnce}
}
