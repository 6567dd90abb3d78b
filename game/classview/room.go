package classview

import (
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// Room is what the screens are made from that a room sees: large, few words, and one
// thing to do. Nothing of an answer is in the model before Telling; if it is, nothing
// is made of it.
type Room struct {
	Stage   warmup.Stage // WalkIn to Hearing
	Kind    warmup.Kind  // of the task; at WalkIn none
	Nth, Of int          // which task, from 1, of how many
	Ends    string       // when it ends: "18:42"
	Length  ClassLength

	Sounds  bool      // something is heard now
	Heard   bool      // what is asked was heard to its end
	Slower  bool      // it is heard slower
	Help    view.Help // the bass drum alone
	Blank   bool      // the screen is blank
	Letters bool      // letters are keys
	Problem string    // nothing came of what was to be heard

	// Rhythm is what is played: nil while its name is asked. It is what is heard at
	// WalkIn and while two are heard in turn.
	Rhythm *rhythm.Cycle
	Lined  bool // SayIt: the whiteboard line still stands

	Answer view.Option  // Counting: what is asked for
	Hands  warmup.Hands // and what was counted for it

	Told *Told             // Telling and Hearing
	Lead picture.RiffCycle // and what the lead drum plays in the cycle that is shown, of BaseOrRiff
	Turn string            // Telling, of BaseOrRiff: which of the two is heard now, quiz.OnBase or quiz.OffBase; "": neither

	Narrow bool // the window is a telephone's
}

// Told is what it was.
type Told struct {
	Right       view.Option
	Taken       view.Option  // what most other hands went up for, or is taken for it most easily; may be empty
	Hands       warmup.Hands // which hands were counted for Taken; "": they do not tell it
	Differences []rhythm.Difference
	Sides       [2]*rhythm.Cycle // the right one, and what it is compared with; the second may be nil
	Circled     []int            // steps of what is shown that matter
}

// Screen returns the screen of the stage.
func (r *Room) Screen(w say.Words) view.Screen {
	s := r.stage(w)
	s.Room, s.Escape, s.Keys = true, view.ActClassLeave, r.keys()
	return s
}

func (r *Room) stage(w say.Words) view.Screen {
	switch {
	case r.Blank:
		return view.BarePage(w, "class-blank", w.Say("class"), []view.Item{view.Heading("heading", w.Say("class-blank")), big("go", w.Say("class-show"), view.ActClassBlank)})
	case r.Stage == warmup.WalkIn:
		return r.walkIn(w)
	case r.Stage == warmup.Asking:
		return r.asking(w)
	case r.Stage == warmup.Counting:
		return r.counting(w)
	}
	return r.telling(w)
}

// screen is one of a room's: each stage of each task is arrived at anew, so that the
// focus is on its heading.
//
// It has the same four parts at all of them, each at its place: what is said, the drum,
// the line if there is one, and at the foot what is for the teacher alone, small.
func (r *Room) screen(w say.Words, say []view.Item, line view.Item, foot ...view.Item) view.Screen {
	items := []view.Item{
		{ID: "say", Role: view.RoleGroup, Children: view.Present(say)},
		{ID: "drum", Role: view.RoleGroup, Children: []view.Item{r.head(w)}},
		line,
		{ID: "foot", Role: view.RoleGroup, Children: view.Present(foot)},
	}
	s := view.BarePage(w, "class-room", w.Say("class"), items)
	s.Focus = say[0].ID
	return s
}

// big is the one thing to do.
func big(id, name, action string) view.Item {
	return view.Item{ID: id, Role: view.RoleButton, Name: name, Action: action, Look: view.LookPrimary}
}

func small(id, name, action, value string) view.Item {
	return view.Item{ID: id, Role: view.RoleButton, Name: name, Action: action, Value: value}
}

// ways is the row of the smaller things to do.
func ways(w say.Words, items ...view.Item) view.Item {
	return view.Item{ID: "ways", Role: view.RoleGroup, Look: view.LookRow, Name: w.Say("class-ways"), Children: view.Present(items)}
}

// where says which task it is, and when it is over.
func (r *Room) where(w say.Words) view.Item {
	return view.Item{ID: "where", Role: view.RoleText, Look: view.LookQuiet, Text: w.Say("class-where", "n", r.Nth, "of", r.Of, "ends", r.Ends)}
}

func (r *Room) walkIn(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading-in", w.Say("class-come-in")), {ID: "length", Role: view.RoleText, Text: r.Length.say(w)}}
	if r.Rhythm != nil && r.Sounds {
		items = append(items, view.Item{ID: "hear", Role: view.RoleText, Text: w.Say("class-you-hear", "rhythm", view.Plain(r.Rhythm.Name))})
	}
	return r.screen(w, append(items, r.problem()), view.Item{}, big("go", w.Say("class-first-task"), view.ActClassNext),
		ways(w, small("back", w.Say("class-leave"), view.ActClassLeave, ""), r.hush(w), small("full", w.Say("class-full"), view.ActFull, "")))
}

// hush lets the walk-in be heard, or not.
func (r *Room) hush(w say.Words) view.Item {
	if r.Sounds {
		return small("once", w.Say("stop"), view.ActClassOnce, "")
	}
	return small("once", w.Say("play"), view.ActClassOnce, "")
}

func (r *Room) problem() view.Item {
	if r.Problem == "" {
		return view.Item{}
	}
	return view.Item{ID: "class-problem", Role: view.RoleStatus, Live: view.LiveAssertive, Look: view.LookWarning, Text: r.Problem}
}

// asking returns the screen on which it is said what is to be done, and it is heard.
func (r *Room) asking(w say.Words) view.Screen {
	go1 := big("go", w.Say("play"), view.ActClassNext)
	switch {
	case r.Sounds:
		go1.Name = w.Say("class-on")
	case r.Heard && r.Kind.Counted():
		go1.Name = w.Say("class-to-hands")
	case r.Heard:
		go1.Name = w.Say("class-on")
	}
	once := small("once", w.Say("once-more"), view.ActClassOnce, "")
	once.Disabled = !r.Sounds && !r.Heard
	slower := small("slower", w.Say("slower"), view.ActSlower, "")
	slower.Pressed = r.Slower
	items := []view.Item{view.Heading("heading-"+string(r.Kind), r.ask(w)), {ID: "how", Role: view.RoleText, Text: r.how(w)}, r.problem()}
	if r.Sounds {
		items = append(items, view.Item{ID: "plays", Role: view.RoleText, Text: w.Say("class-plays")})
	}
	if r.Kind == warmup.SayIt && r.Rhythm != nil && !r.Lined {
		items = append(items, view.Item{ID: "alone-now", Role: view.RoleStatus, Live: view.LivePolite, Text: w.Say("class-line-gone")})
	}
	return r.screen(w, items, r.spoken(w), go1,
		ways(w, small("back", w.Say("class-back"), view.ActClassBack, ""), slower, small("skip", w.Say("class-skip"), view.ActClassSkip, ""),
			once, r.Help.AloneButton(w, r.Sounds)), r.where(w))
}

// ask is what is asked, in large.
func (r *Room) ask(w say.Words) string {
	switch r.Kind {
	case warmup.HandsUp:
		return w.Say("ask-rhythm")
	case warmup.SayIt:
		return w.Say("class-say", "rhythm", r.name())
	case warmup.WalkAndClap:
		return w.Say("class-walk")
	case warmup.WhatChanged:
		return w.Say("class-changed")
	case warmup.BaseOrRiff:
		return w.Say("class-base")
	case warmup.FindTheOne:
		return w.Say("class-one")
	}
	return w.Say("class-stop")
}

func (r *Room) name() string {
	if r.Rhythm == nil {
		return ""
	}
	return view.Plain(r.Rhythm.Name)
}

// how is how it goes, in a sentence or two.
func (r *Room) how(w say.Words) string {
	switch r.Kind {
	case warmup.HandsUp:
		return w.Say("class-how-hands")
	case warmup.SayIt:
		return w.Say("class-how-say")
	case warmup.WalkAndClap:
		return w.Say("class-how-walk", "rhythm", r.name())
	case warmup.WhatChanged:
		return w.Say("class-how-changed", "rhythm", r.name())
	case warmup.BaseOrRiff:
		return w.Say("class-how-base", "rhythm", r.name())
	case warmup.FindTheOne:
		return w.Say("class-how-one", "rhythm", r.name())
	}
	return w.Say("class-how-stop", "rhythm", r.name())
}

// spoken is the line that is spoken from, and its strokes in words, as long as they
// stand.
func (r *Room) spoken(w say.Words) view.Item {
	if r.Kind != warmup.SayIt || !r.Lined || r.Rhythm == nil {
		return view.Item{}
	}
	return r.line(w)
}

// Head returns what the drumhead shows; the painter adds the sweep. While something is
// asked by ear it is the drum and nothing on it; that it sounds is all that is shown.
func (r *Room) Head() picture.Head {
	c := r.Rhythm
	if c == nil || r.Stage == warmup.Asking && r.Kind != warmup.SayIt || r.Stage == warmup.Counting || r.Stage == warmup.Asking && !r.Lined {
		return picture.Head{Hidden: true}
	}
	return picture.Head{Base: c.Skeleton, Riff: r.Lead} // no figures: they would be too small for the back row
}

// Turns reports whether the head may turn with the sound.
func (r *Room) Turns() bool { h := r.Head(); return !h.Hidden }

func (r *Room) head(w say.Words) view.Item {
	h := r.Head()
	if !h.Hidden {
		h.Counts, h.Groups = picture.CountsOf(r.Rhythm.Base()), r.Rhythm.Grouping
	}
	return view.Stage(w, h.Twin(w))
}

// counting returns the screen on which hands are counted for one answer.
func (r *Room) counting(w say.Words) view.Screen {
	id := "heading-for-" + r.Answer.Value
	hands := view.Item{ID: "hands-up", Role: view.RoleGroup, Look: view.LookRow, Name: w.Say("class-hands")}
	for _, h := range warmup.HandsWords() {
		it := small("hands-"+string(h), sayHands(w, h), view.ActClassHands, string(h))
		it.Pressed = r.Hands == h
		hands.Children = append(hands.Children, it)
	}
	counted := view.Item{ID: "counted", Role: view.RoleStatus, Live: view.LivePolite}
	hint := view.Item{ID: "or-number", Role: view.RoleText, Text: w.Say("class-or-number")}
	if r.Hands != "" {
		counted.Text, hint = w.Say("class-number", "n", sayHands(w, r.Hands)), view.Item{}
	}
	return r.screen(w, []view.Item{view.Heading(id, r.handsUp(w)), counted}, view.Item{}, big("go", w.Say("class-on"), view.ActClassNext), hands, hint,
		ways(w, small("back", w.Say("class-back"), view.ActClassBack, ""), r.clear(w),
			small("skip", w.Say("class-skip"), view.ActClassSkip, "")), r.where(w))
}

// clear takes back what was counted, if anything was.
func (r *Room) clear(w say.Words) view.Item {
	if r.Hands == "" {
		return view.Item{}
	}
	return small("clear", w.Say("class-clear"), view.ActClassHands, "")
}

// handsUp asks for one answer by name.
func (r *Room) handsUp(w say.Words) string {
	switch r.Kind {
	case warmup.WhatChanged:
		return w.Say("class-hands-count", "n", r.Answer.Value)
	case warmup.FindTheOne:
		return w.Say("class-hands-on", "n", r.Answer.Value)
	case warmup.BaseOrRiff:
		return w.Say("class-hands-base", "answer", sayBase(w, r.Answer.Value))
	}
	return w.Say("class-hands-for", "rhythm", view.Plain(r.Answer.Label))
}

func sayBase(w say.Words, id string) string {
	if id == warmup.OnBase {
		return w.Say("class-on-base")
	}
	return w.Say("class-off-base")
}

func sayHands(w say.Words, h warmup.Hands) string {
	switch h {
	case warmup.Most:
		return w.Say("hands-most")
	case warmup.Some:
		return w.Say("hands-some")
	case warmup.Few:
		return w.Say("hands-few")
	case warmup.None:
		return w.Say("hands-none")
	}
	return string(h)
}
