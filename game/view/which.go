package view

import (
	"fmt"
	"slices"
	"strconv"

	"groundbeat/game/rhythm"
)

// Which is what the screens of the exercise Which rhythm? are made from, and of
// its lower rungs. The answer is in the model only when Reviewing, so that no
// screen before can give it away: until then Right, Said, BPM, Sides and
// Differences are empty, and if they are not, nothing is made of them.
type Which struct {
	Phase Phase  // Ready, Playing, Waiting, Reviewing, Voided
	Ask   string // AskRhythm, AskStroke, AskHowMany or AskSame

	// Before.
	Answers   int      // how many names, 2 to 4; AskRhythm only
	From      string   // FromFive, FromEven, FromAll, or ids joined by points
	FromNames []string // the names of those ids; of no account with the words
	Fewer     *Fewer   // why some questions have fewer names; nil: none has
	Eights    int      // length
	Level     string   // LevelBare to LevelSolo
	Levels    []string // levels offered; fewer than two: no choice is shown
	Hide      int      // how far the riff hides the base, LeastHide to MostHide; 0: as it comes
	Volume    int      // 0 to 100; below 0: there is no sound, and nothing can be asked
	Balance   int      // −100, the lead drum alone, to 100, the bass drum alone
	Help      Help
	Notes     []Note

	// While asked.
	CountIn  bool     // the first step is not heard yet: no answer is taken
	Choices  []Option // in the order shown; Value is the id, Label a rhythm's name
	Second   bool     // of AskSame the second half is heard
	Repeated bool     // it is heard once more now: the button that was pressed rests
	Repeat   bool     // the question can be heard once more when it is over

	// After. Right and Said are choices: for AskRhythm id and name of a rhythm,
	// for AskStroke "dum" or "tek", for AskHowMany a number, for AskSame "same" or
	// "different". Labels count for rhythms only; the rest is said here.
	Right, Said Option
	BPM         int // counts a minute
	Sides       []Side
	Differences []rhythm.Difference // between the first side and the second
	Again       Again
	Board       float64 // about how wide both sides are together, in CSS pixels; 0: as wide as they like
	Why         Why     // when Voided
}

// Screen returns the screen of the question's phase.
func (q *Which) Screen(w Words) Screen {
	switch q.Phase {
	case Playing, Waiting:
		return q.asking(w)
	case Reviewing:
		return q.answered(w)
	case Voided:
		return voided(w, ScreenWhich, q.sayWhy(w), q.head(w), nextQuestion(w), changeQuestion(w))
	}
	return q.ready(w)
}

// Head returns what the drumhead shows while asked: the drum and nothing on it,
// since strokes and counts would tell. The painter adds the count-in, no sweep.
func (q *Which) Head() Head { return Head{Hidden: true} }

func (q *Which) head(w Words) Item {
	h := q.Head()
	return stage(w, h.Twin(w))
}

func (q *Which) ready(w Words) Screen {
	items := []Item{
		heading("heading", sayAsk(w, q.Ask)),
		{ID: "how", Role: RoleText, Text: q.asked().how(w, offBase(q.Level))},
		q.head(w),
		{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary, Disabled: q.Volume < 0},
		{ID: "ask", Role: RoleChoice, Name: w.Say("ask"), Action: ActAsk, Value: q.Ask, Options: asks(w)},
		q.settings(w),
	}
	items = append(items, notesWithout(w, q.Notes, w.Say("which-no-sound"))...)
	return ready(w, ScreenWhich, sayAsk(w, q.Ask), items)
}

func asks(w Words) []Option {
	var all []Option
	for _, ask := range Asks() {
		all = append(all, Option{ask, sayAsk(w, ask)})
	}
	return all
}

// settings are those that matter for what is asked: a single stroke comes from
// no rhythm, and how many dums is asked of one cycle.
func (q *Which) settings(w Words) Item {
	var answers, few, eights, rhythms, level Item
	form := q.form()
	if form.Named {
		answers = q.answers(w)
		few = q.Fewer.say(w)
	}
	if !form.Once {
		eights = length(w, q.Eights, nil)
	}
	if form.Pool {
		rhythms, level = from(w, q.From, q.FromNames), leadDrum(w, q.Level, q.Levels, q.Hide, nil)
	}
	return settings(answers, few, rhythms, eights, volume(w, q.Volume), balance(w, q.Balance, q.Volume), level)
}

// answers is the choice of how many names; at most as many as the rhythms that a
// link asked for.
func (q *Which) answers(w Words) Item {
	most := MostAnswers
	if !slices.Contains(fromWords, q.From) && len(q.FromNames) > 0 {
		most = max(LeastAnswers, min(most, len(q.FromNames)))
	}
	it := Item{ID: "answers", Role: RoleChoice, Name: w.Say("answers"), Action: ActAnswers, Value: fmt.Sprint(q.Answers)}
	for n := LeastAnswers; n <= most; n++ {
		label := fmt.Sprint(n)
		if n > LeastAnswers { // a question has two at least
			label = w.Say("answers-up-to", "n", n)
		}
		it.Options = append(it.Options, Option{fmt.Sprint(n), label})
	}
	it.Value = chosen(it.Options, it.Value)
	return it
}

// asking returns the screen while the question is heard and an answer awaited.
// One screen for both, so that nothing under the fingers changes. It has the
// question, the drum, the choices as lines, and the way out.
func (q *Which) asking(w Words) Screen {
	items := []Item{heading("heading", sayAsk(w, q.Ask)), q.half(w), q.head(w), q.choices(w), q.help(w)}
	if q.Repeat {
		items = append(items, Item{ID: "repeat", Role: RoleButton, Name: w.Say("hear-once-more"), Action: ActRepeat,
			Disabled: q.Phase == Playing})
	}
	items = append(items, Item{ID: "stop", Role: RoleButton, Name: w.Say("stop"), Action: ActStop, Look: LookQuiet})
	s := page(w, ScreenWhich, sayAsk(w, q.Ask), items)
	s.Escape, s.Keys = ActStop, q.digits()
	if q.Repeated {
		s.Focus = "heading" // away from the button that rests
	}
	return s
}

// half says which of the two that may differ is heard.
func (q *Which) half(w Words) Item {
	switch {
	case !q.form().Halves:
		return Item{}
	case q.Phase == Waiting:
		return reason("half", w.Say("same-heard"))
	case q.Second:
		return reason("half", w.Say("same-hear-then"))
	}
	return reason("half", w.Say("same-hear-first"))
}

// help is the help for the ear; of one stroke there is nothing to help with.
func (q *Which) help(w Words) Item {
	if !q.form().Pool || q.Volume < 0 {
		return Item{}
	}
	return Item{ID: "helps", Role: RoleGroup, Look: LookRow, Name: w.Say("helps"),
		Children: []Item{q.Help.alone(w, q.Phase == Playing && !q.CountIn), q.Help.hands(w)}}
}

func (q *Which) choices(w Words) Item {
	it := Item{ID: "choices", Role: RoleGroup, Look: LookLines, Name: w.Say("choices")}
	for i, c := range q.Choices {
		it.Children = append(it.Children, Item{ID: fmt.Sprintf("choice-%d", i+1), Role: RoleButton,
			Name: q.say(w, c), Action: ActAnswer, Value: c.Value, Disabled: q.CountIn, Look: q.look()})
	}
	return it
}

// look lets a choice show the digit that chooses it; what is a number shows itself.
func (q *Which) look() string {
	if q.asked().numbers {
		return ""
	}
	return LookDigit
}

// digits are the keys that choose: of numbers each its own, of names 1 the first.
func (q *Which) digits() (keys []Key) {
	for i, c := range q.Choices {
		digit := strconv.Itoa(i + 1)
		if q.asked().numbers {
			digit = c.Value
		}
		if !q.CountIn {
			keys = append(keys, Key{digit, ActAnswer, c.Value})
		}
	}
	return keys
}

// say says a choice.
func (q *Which) say(w Words, o Option) string { return q.asked().say(w, o) }

// sayWhy says why a question does not count; there are no taps here.
func (q *Which) sayWhy(w Words) string {
	if q.Why == WhyCut {
		return w.Say("void-cut-heard")
	}
	return sayWhy(w, q.Why)
}

func nextQuestion(w Words) Item {
	return Item{ID: "next-question", Role: RoleButton, Name: w.Say("next"), Action: ActNext, Look: LookPrimary}
}

func changeQuestion(w Words) Item {
	return Item{ID: "change", Role: RoleButton, Name: w.Say("change"), Action: ActChange, Look: LookQuiet}
}
