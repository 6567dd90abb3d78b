package view

import (
	"fmt"
	"math"
	"slices"
	"time"

	"groundbeat/game/rhythm"
)

// Change is what the screens of the exercise Hear the change are made from. What it
// becomes, and whether and when, is in the model only when Reviewing: until then
// Result, Sides and Differences are empty, and if they are not, nothing is made of
// them.
type Change struct {
	Phase Phase // Ready, Playing, Waiting (to what?), Reviewing, Voided

	// Before. Rhythm, Base and Counts are those of the rhythm that is played first;
	// with Any it is chosen anew for each round and named only afterwards.
	Rhythm    RhythmName
	Base      rhythm.Pattern
	Counts    []string
	Groups    []int // beats of each group of an odd metre
	Any       bool
	Core      []Option // the most used rhythms, and Any; see RhythmOption and AnyOption
	More      []Option // the rest
	Answers   int      // how many names, LeastAnswers to MostAnswers
	From      string   // what it may become: FromFive, FromEven, FromAll, or ids joined by points
	FromNames []string // the names of those ids; of no account with the words
	Fewer     *Fewer   // why some rounds have fewer names; nil: none has
	Eights    int      // length, LeastLong to MostLong
	Level     string   // LevelBare to LevelSolo
	Levels    []string // levels offered; fewer than two: no choice is shown
	Volume    int      // 0 to 100; below 0: there is no sound, and nothing can be asked
	Balance   int      // −100, the lead drum alone, to 100, the bass drum alone
	Help      Help
	Columns   int // steps in a row of the whiteboard line; see Columns
	Notes     []Note
	Round     int // number of the round, which presses carry; 0: none

	Choices []Option // while "To what?" is asked, in the order shown: id and name

	// After. Sides are what was played first, if it changed what it became, and if that is
	// another what was said that it became.
	Result      *ChangeResult
	Sides       []Side
	Differences []rhythm.Difference // between the first side and the second
	BPM         int                 // counts a minute
	Again       Again
	Board       float64 // about how wide both sides are together, in CSS pixels; 0: as wide as they like
	Why         Why     // when Voided
}

// ChangeResult is how a change was noticed.
type ChangeResult struct {
	To     Option // what it became, id and name; empty: it did not change
	Eight  int    // the eight in which it changed, from 1
	Heard  bool
	Chance bool          // heard, but by a press that may as well have come by chance
	Late   time.Duration // from the first stroke that differs to the press, the set-up's mean taken off
	Counts float64       // Late in counts
	Eighth time.Duration // likewise from the start of the eight
	Early  int           // presses before it could be heard, or with nothing to hear
	Said   Option        // what was said that it became; empty where nothing was asked
	SetUp  *time.Duration
}

// longLengths are the lengths offered where something happens in the middle, in
// eights.
var longLengths = []int{4, 6, 8}

// Screen returns the screen of the round's phase.
func (c *Change) Screen(w Words) Screen {
	switch c.Phase {
	case Playing:
		return c.playing(w)
	case Waiting:
		return c.asked(w)
	case Reviewing:
		return c.reviewing(w)
	case Voided:
		return voided(w, ScreenChange, sayWhy(w, c.Why), c.head(w), nextQuestion(w), changeQuestion(w))
	}
	return c.ready(w)
}

// Head returns what the drumhead shows: before the round the rhythm that is played
// first, and while it is played the drum and nothing on it. A sweep, counts or
// strokes would tell of the change to the eye. The painter adds the count-in and
// the marks of presses.
func (c *Change) Head() Head {
	if c.Phase != Ready || c.Any {
		return Head{Hidden: true}
	}
	return Head{Base: c.Base, Counts: c.Counts, Groups: c.Groups}
}

func (c *Change) head(w Words) Item {
	h := c.Head()
	return stage(w, h.Twin(w))
}

func (c *Change) ready(w Words) Screen {
	head := []Item{title(w, w.Say("change-heading", "rhythm", c.Rhythm.Name), c.Rhythm), {ID: "how", Role: RoleText, Text: w.Say("change-how")}, c.head(w)}
	value := c.Rhythm.ID
	if c.Any {
		head[0], value = title(w, w.Say("change-any-heading"), RhythmName{}), Any
	} else {
		head = append(head, still(w, "line", &Line{Base: c.Base, Counts: c.Counts, Groups: c.Groups, Columns: c.Columns}))
	}
	first := rhythms(w, c.Core, c.More, value)
	first.Name = w.Say("change-first")
	others := from(w, c.From, c.FromNames)
	others.Name = w.Say("change-from")
	items := slices.Concat(head, []Item{
		{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary, Disabled: c.Volume < 0},
		first, moreRhythms(w, c.More, value),
		settings(others, c.answers(w), c.Fewer.say(w), length(w, c.Eights, longLengths), volume(w, c.Volume),
			balance(w, c.Balance, c.Volume), leadDrum(w, c.Level, c.Levels, noHide, nil)),
	}, notesWithout(w, c.Notes, w.Say("which-no-sound")))
	return ready(w, ScreenChange, w.Say("nav-change"), items)
}

// answers is the choice of how many names.
func (c *Change) answers(w Words) Item {
	q := Which{Answers: c.Answers, From: c.From, FromNames: c.FromNames}
	return q.answers(w)
}

func (c *Change) playing(w Words) Screen {
	s := tapping(page(w, ScreenChange, w.Say("nav-change"), nil), w, w.Say("playing-change"), c.Round, c.head(w), c.Help.buttons(w, c.Volume)...)
	s.Find("tap").Name = w.Say("change-area")
	return s
}

// asked returns the screen that asks what it has become.
func (c *Change) asked(w Words) Screen {
	q := Which{Ask: AskRhythm, Choices: c.Choices}
	s := page(w, ScreenChange, w.Say("nav-change"), []Item{heading("heading", w.Say("change-to-what")), c.head(w), q.choices(w),
		{ID: "stop", Role: RoleButton, Name: w.Say("stop"), Action: ActStop, Look: LookQuiet}})
	s.Escape, s.Keys = ActStop, q.digits()
	return s
}

// reviewing returns the screen after the round: what came of it in a sentence, what it
// became; where the rhythms differ, on the line, and each to be heard in turn. The rest
// is shown when opened.
func (c *Change) reviewing(w Words) Screen {
	q := &Which{Ask: AskRhythm, Sides: c.Sides, Differences: c.Differences, Volume: c.Volume, Again: c.Again, Board: c.Board, BPM: c.BPM}
	items := []Item{heading("heading", c.Finding(w)), c.became(w), c.early(w), q.plainly(w), q.beside(w), q.shown(w),
		{ID: "next", Role: RoleGroup, Look: LookRow, Children: []Item{nextQuestion(w), c.once(w), changeQuestion(w)}},
		inWords(w, c.inWords(w, q)...)}
	return review(page(w, ScreenChange, w.Say("nav-change"), append(items, notes(w, c.Notes)...)), q.hearing())
}

// inWords is what is shown when opened.
func (c *Change) inWords(w Words, q *Which) []Item {
	var items []Item
	if len(c.Sides) > 1 {
		items = []Item{q.differences(w), listenForIn(w, c.Sides[1].Rhythm)}
	}
	if c.Result.Heard && c.Result.Early > 0 && !c.Result.Chance {
		items = append(items, Item{ID: "early-counts", Role: RoleText, Look: LookNote, Text: w.Say("change-early-counts")})
	}
	if items = append(items, c.measured(w), q.at(w)); c.Result.Heard {
		items = append(items, takenOff(w, c.Result.SetUp))
	}
	return items
}

// Finding says in one sentence how the change was noticed, or that there was none.
func (c *Change) Finding(w Words) string {
	r := c.Result
	switch counts := int(math.Round(r.Counts)); {
	case r.To == (Option{}) && r.Early == 0:
		return w.Say("change-none")
	case r.To == (Option{}):
		return w.Say("change-none-pressed", "n", r.Early)
	case !r.Heard:
		return w.Say("change-left-out", "rhythm", plain(r.To.Label), "eight", r.Eight)
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
func (c *Change) became(w Words) Item {
	r := c.Result
	first := ""
	if len(c.Sides) > 0 {
		first = plain(c.Sides[0].Rhythm.Name)
	}
	switch to := plain(r.To.Label); {
	case !r.Heard:
		return Item{}
	case r.Said == r.To:
		return reason("became", w.Say("change-became", "first", first, "second", to))
	default:
		return reason("became", w.Say("change-became-said", "first", first, "second", to, "said", plain(r.Said.Label)))
	}
}

// early says that presses came before there was anything to hear, and what follows.
func (c *Change) early(w Words) Item {
	switch r := c.Result; {
	case r.Early == 0 || r.To == (Option{}):
		return Item{}
	case r.Chance:
		return reason("early", w.Say("change-chance-why"))
	case r.Heard: // the finding says it
		return Item{}
	default:
		return reason("early", w.Say("change-early", "n", r.Early))
	}
}

// measured gives the exact times.
func (c *Change) measured(w Words) Item {
	if !c.Result.Heard {
		return Item{}
	}
	return Item{ID: "measured", Role: RoleText, Look: LookNote, Text: w.Say("change-measured", "ms", wholeMs(c.Result.Late),
		"counts", fmt.Sprintf("%.1f", c.Result.Counts), "eight", wholeMs(c.Result.Eighth))}
}

func (c *Change) once(w Words) Item {
	return Item{ID: "once", Role: RoleButton, Name: w.Say("once-more"), Action: ActOnce}
}
