package roundview

import (
	"fmt"
	"slices"
	"strconv"

	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Which is what the screens of the exercise Which rhythm? are made from, and of
// its lower rungs. The answer is in the model only when Reviewing, so that no
// screen before can give it away: until then Right, Said, BPM, Sides and
// Differences are empty, and if they are not, nothing is made of them.
type Which struct {
	Phase view.Phase // Ready, Playing, Waiting, Reviewing, Voided
	Ask   string     // AskRhythm, AskStroke, AskHowMany or AskSame

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
	Help      view.Help
	Notes     []view.Note

	// While asked.
	CountIn  bool          // the first step is not heard yet: no answer is taken
	Choices  []view.Option // in the order shown; Value is the id, Label a rhythm's name
	Second   bool          // of AskSame the second half is heard
	Repeated bool          // it is heard once more now: the button that was pressed rests
	Repeat   bool          // the question can be heard once more when it is over

	// After. Right and Said are choices: for AskRhythm id and name of a rhythm,
	// for AskStroke "dum" or "tek", for AskHowMany a number, for AskSame "same" or
	// "different". Labels count for rhythms only; the rest is said here.
	Right, Said view.Option
	BPM         int // counts a minute
	Sides       []Side
	Differences []rhythm.Difference // between the first side and the second
	Replay      Replay
	Board       float64  // about how wide both sides are together, in CSS pixels; 0: as wide as they like
	Why         view.Why // when Voided
}

// Screen returns the screen of the question's phase.
func (q *Which) Screen(w say.Words) view.Screen {
	switch q.Phase {
	case view.Playing, view.Waiting:
		return q.asking(w)
	case view.Reviewing:
		return q.answered(w)
	case view.Voided:
		return view.VoidScreen(w, view.ScreenWhich, q.sayWhy(w), q.head(w), nextQuestion(w), changeQuestion(w))
	}
	return q.ready(w)
}

// Head returns what the drumhead shows while asked: the drum and nothing on it,
// since strokes and counts would tell. The painter adds the count-in, no sweep.
func (q *Which) Head() picture.Head { return picture.Head{Hidden: true} }

func (q *Which) head(w say.Words) view.Item {
	h := q.Head()
	return view.Stage(w, h.Twin(w))
}

func (q *Which) ready(w say.Words) view.Screen {
	items := []view.Item{
		view.Heading("heading", view.SayAsk(w, q.Ask)),
		{ID: "how", Role: view.RoleText, Text: q.asked().how(w, view.OffBase(q.Level))},
		q.head(w),
		{ID: "begin", Role: view.RoleButton, Name: w.Say("begin"), Action: view.ActBegin, Look: view.LookPrimary, Disabled: q.Volume < 0},
		{ID: "ask", Role: view.RoleChoice, Name: w.Say("ask"), Action: view.ActAsk, Value: q.Ask, Options: asks(w)},
		q.settings(w),
	}
	items = append(items, view.NotesWithout(w, q.Notes, w.Say("which-no-sound"))...)
	return view.ReadyScreen(w, view.ScreenWhich, view.SayAsk(w, q.Ask), items)
}

func asks(w say.Words) []view.Option {
	var all []view.Option
	for _, ask := range view.Asks() {
		all = append(all, view.Option{Value: ask, Label: view.SayAsk(w, ask)})
	}
	return all
}

// settings are those that matter for what is asked: a single stroke comes from
// no rhythm, and how many dums is asked of one cycle.
func (q *Which) settings(w say.Words) view.Item {
	var answers, few, eights, rhythms, level view.Item
	form := q.form()
	if form.Named {
		answers = q.answers(w)
		few = q.Fewer.say(w)
	}
	if !form.Once {
		eights = view.Length(w, q.Eights, nil)
	}
	if form.Pool {
		rhythms, level = view.From(w, q.From, q.FromNames), view.LeadDrum(w, q.Level, q.Levels, q.Hide, nil)
	}
	return view.Settings(answers, few, rhythms, eights, view.Volume(w, q.Volume), view.Balance(w, q.Balance, q.Volume), level)
}

// answers is the choice of how many names; at most as many as the rhythms that a
// link asked for.
func (q *Which) answers(w say.Words) view.Item {
	most := link.MostAnswers
	if !slices.Contains(link.FromWords, q.From) && len(q.FromNames) > 0 {
		most = max(link.LeastAnswers, min(most, len(q.FromNames)))
	}
	it := view.Item{ID: "answers", Role: view.RoleChoice, Name: w.Say("answers"), Action: view.ActAnswers, Value: fmt.Sprint(q.Answers)}
	for n := link.LeastAnswers; n <= most; n++ {
		label := fmt.Sprint(n)
		if n > link.LeastAnswers { // a question has two at least
			label = w.Say("answers-up-to", "n", n)
		}
		it.Options = append(it.Options, view.Option{Value: fmt.Sprint(n), Label: label})
	}
	it.Value = view.Chosen(it.Options, it.Value)
	return it
}

// asking returns the screen while the question is heard and an answer awaited.
// One screen for both, so that nothing under the fingers changes. It has the
// question, the drum, the choices as lines, and the way out.
func (q *Which) asking(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", view.SayAsk(w, q.Ask)), q.half(w), q.head(w), q.choices(w), q.help(w)}
	if q.Repeat {
		items = append(items, view.Item{ID: "repeat", Role: view.RoleButton, Name: w.Say("hear-once-more"), Action: view.ActRepeat,
			Disabled: q.Phase == view.Playing})
	}
	items = append(items, view.Item{ID: "stop", Role: view.RoleButton, Name: w.Say("stop"), Action: view.ActStop, Look: view.LookQuiet})
	s := view.Page(w, view.ScreenWhich, view.SayAsk(w, q.Ask), items)
	s.Escape, s.Keys = view.ActStop, q.digits()
	if q.Repeated {
		s.Focus = "heading" // away from the button that rests
	}
	return s
}

// half says which of the two that may differ is heard.
func (q *Which) half(w say.Words) view.Item {
	switch {
	case !q.form().Halves:
		return view.Item{}
	case q.Phase == view.Waiting:
		return Reason("half", w.Say("same-heard"))
	case q.Second:
		return Reason("half", w.Say("same-hear-then"))
	}
	return Reason("half", w.Say("same-hear-first"))
}

// help is the help for the ear; of one stroke there is nothing to help with.
func (q *Which) help(w say.Words) view.Item {
	if !q.form().Pool || q.Volume < 0 {
		return view.Item{}
	}
	return view.Item{ID: "helps", Role: view.RoleGroup, Look: view.LookRow, Name: w.Say("helps"),
		Children: []view.Item{q.Help.AloneButton(w, q.Phase == view.Playing && !q.CountIn), q.Help.HandsButton(w)}}
}

func (q *Which) choices(w say.Words) view.Item {
	it := view.Item{ID: "choices", Role: view.RoleGroup, Look: view.LookLines, Name: w.Say("choices")}
	for i, c := range q.Choices {
		it.Children = append(it.Children, view.Item{ID: fmt.Sprintf("choice-%d", i+1), Role: view.RoleButton,
			Name: q.say(w, c), Action: view.ActAnswer, Value: c.Value, Disabled: q.CountIn, Look: q.look()})
	}
	return it
}

// look lets a choice show the digit that chooses it; what is a number shows itself.
func (q *Which) look() string {
	if q.asked().numbers {
		return ""
	}
	return view.LookDigit
}

// digits are the keys that choose: of numbers each its own, of names 1 the first.
func (q *Which) digits() (keys []view.Key) {
	for i, c := range q.Choices {
		digit := strconv.Itoa(i + 1)
		if q.asked().numbers {
			digit = c.Value
		}
		if !q.CountIn {
			keys = append(keys, view.Key{Key: digit, Action: view.ActAnswer, Value: c.Value})
		}
	}
	return keys
}

// say says a choice.
func (q *Which) say(w say.Words, o view.Option) string { return q.asked().say(w, o) }

// sayWhy says why a question does not count; there are no taps here.
func (q *Which) sayWhy(w say.Words) string {
	if q.Why == view.WhyCut {
		return w.Say("void-cut-heard")
	}
	return view.SayWhy(w, q.Why)
}

func nextQuestion(w say.Words) view.Item {
	return view.Item{ID: "next-question", Role: view.RoleButton, Name: w.Say("next"), Action: view.ActNext, Look: view.LookPrimary}
}

func changeQuestion(w say.Words) view.Item {
	return view.Item{ID: "change", Role: view.RoleButton, Name: w.Say("change"), Action: view.ActChange, Look: view.LookQuiet}
}
