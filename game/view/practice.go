package view

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
)

// Plan is what the screen of a practice is made from before it begins: its parts, why
// each is practised now, and how long it lasts.
type Plan struct {
	Minutes int  // that were asked for
	Reading bool // it is not known yet what there was
	Steps   []quiz.Step
	New     []string        // IDs of rhythms that the player meets in it for the first time
	First   bool            // all is new to the player
	Rhythms []*rhythm.Cycle // at least those of the steps
	Volume  int             // 0 to 100; below 0: there is no sound, and nothing to practise
	Notes   []Note
}

// Screen returns the screen.
func (p *Plan) Screen(w Words) Screen {
	items := []Item{heading("heading", w.Say("practice"))}
	switch {
	case p.Volume < 0:
		items = append(items, Item{ID: "silent", Role: RoleText, Text: w.Say("plan-no-sound"), Look: LookWarning})
	case p.Reading:
		items = append(items, Item{ID: "reading", Role: RoleText, Text: w.Say("diary-reading"), Look: LookNote})
	default:
		items = append(items, Item{ID: "plan-how", Role: RoleText, Text: p.how(w)}, p.ring(w), p.parts(w),
			Item{ID: "begin", Role: RoleButton, Name: w.Say("begin"), Action: ActBegin, Look: LookPrimary})
	}
	if p.Volume >= 0 {
		items = append(items, settings(minutes(w, p.Minutes), volume(w, p.Volume)))
	}
	items = append(items, notesWithout(w, p.Notes, w.Say("plan-no-sound"))...)
	return ready(w, ScreenPractice, w.Say("practice"), items)
}

// how says what the plan rests on.
func (p *Plan) how(w Words) string {
	if p.First {
		return w.Say("plan-first")
	}
	return w.Say("plan-how")
}

// parts is the plan: of each part what it is, how long it lasts, and why now.
func (p *Plan) parts(w Words) Item {
	it := Item{ID: "plan", Role: RoleList, Look: LookPlan, Name: w.Say("practice")}
	for i, part := range quiz.Parts(p.Steps) {
		id := fmt.Sprintf("part-%d", i+1)
		it.Children = append(it.Children, Item{ID: id, Role: RoleListItem, Children: []Item{
			{ID: id + "-what", Role: RoleText, Text: sayPart(w, part.Reason, i == 0)},
			{ID: id + "-long", Role: RoleText, Text: sayLong(w, part.Seconds()), Look: LookQuiet},
			{ID: id + "-why", Role: RoleText, Text: p.why(w, part)},
		}})
	}
	return it
}

// The picture of a plan, in parts of its width.
const (
	planArc    = 0.300 // where the arcs of the parts lie
	planNumber = 0.245 // and their numbers
	planApart  = 0.007 // turn left free at each end of an arc
)

// ring draws the practice once round a drum: an arc for each part, as long as it lasts.
func (p *Plan) ring(w Words) Item {
	pic, seconds, all := &Picture{Height: 1}, 0, []string(nil)
	drum(pic)
	for _, s := range p.Steps {
		seconds += s.Seconds
	}
	from := 0.0
	for i, part := range quiz.Parts(p.Steps) {
		to := from + float64(part.Seconds())/float64(seconds)
		pic.Arc(InkBass, headMiddle, headMiddle, planArc, from+planApart, to-planApart, 0.022)
		x, y := around(headMiddle, headMiddle, planNumber, (from+to)/2)
		pic.Text(InkBone, x, y, 0.042, strconv.Itoa(i+1)).Strong()
		all = append(all, w.Say("plan-ring-part", "n", i+1, "what", sayPart(w, part.Reason, i == 0), "long", sayLong(w, part.Seconds())))
		from = to
	}
	pic.Text(InkBone, headMiddle, headMiddle, 0.05, w.Say("minutes", "n", p.Minutes)).Strong()
	pic.Twin = w.Say("plan-ring", "long", w.Say("minutes", "n", p.Minutes), "list", strings.Join(all, "; "))
	return Item{ID: "ring", Role: RolePicture, Name: w.Say("practice"), Text: pic.Twin, Picture: pic, Aspect: 1, Look: LookStage}
}

// sayPart says what a part is, in a few words.
func sayPart(w Words, r quiz.Reason, first bool) string {
	switch r {
	case quiz.ReasonWell, quiz.ReasonEasy:
		return w.Say("part-begin")
	case quiz.ReasonDue:
		return w.Say("part-due")
	case quiz.ReasonMixUp:
		return w.Say("part-mix-up")
	case quiz.ReasonEdge, quiz.ReasonRung:
		return w.Say("part-edge")
	case quiz.ReasonTempo:
		return w.Say("part-tempo")
	case quiz.ReasonSlow:
		return w.Say("part-slow")
	}
	if first {
		return w.Say("part-first")
	}
	return w.Say("part-new")
}

// sayLong says about how long something lasts: to the half of a minute.
func sayLong(w Words, seconds int) string {
	half := max(1, (seconds+15)/30)
	switch {
	case half == 1:
		return w.Say("long-half")
	case half%2 == 1:
		return w.Say("class-minutes-half", "minutes", half/2)
	}
	return w.Say("minutes", "n", half/2)
}

// why says why a part is practised now, and with what.
func (p *Plan) why(w Words, part quiz.Part) string {
	list, s := sayList(w, calledAs(p.Rhythms, part.Rhythms())), part.Steps[0]
	switch part.Reason {
	case quiz.ReasonWell:
		return w.Say("why-well", "do", sayDo(w, NextOf(part.Steps), p.Rhythms))
	case quiz.ReasonEasy, quiz.ReasonSlow:
		return w.Say("why-slow", "rhythms", list, "tempo", sayTempi(w, []int{s.BPM}))
	case quiz.ReasonDue:
		return sentence(w.Say("why-due", "rhythms", list))
	case quiz.ReasonMixUp:
		return sentence(w.Say("why-mix-up", "rhythms", list))
	case quiz.ReasonTempo:
		return sentence(w.Say("why-tempo", "rhythms", list))
	case quiz.ReasonFirst:
		return sentence(w.Say("why-first", "rhythms", list))
	}
	if list == "" {
		return w.Say("next-rung")
	}
	return sentence(w.Say("why-edge", "rhythms", list, "level", levelName(w, fullest(part))))
}

// fullest is the highest riff level of a part.
func fullest(part quiz.Part) string {
	return slices.MaxFunc(part.Steps, func(a, b quiz.Step) int { return int(a.Level) - int(b.Level) }).Level.String()
}

// Practice is a practice of some minutes that is under way.
type Practice struct {
	Part, Parts int // which part it is at, from 1, of how many
	Reason      quiz.Reason
	Minutes     int  // about how many are left; 0: less than one
	Done        bool // this step is done: on to the next
	Last        bool // there is no next
}

// Strip is where a practice stands and the ways on and out.
func (p Practice) Strip(w Words) Item {
	left := w.Say("practice-left-none")
	if p.Minutes > 0 {
		left = w.Say("practice-left", "n", p.Minutes)
	}
	on := Item{ID: "practice-on", Role: RoleButton, Name: w.Say("practice-skip"), Action: ActPracticeNext, Look: LookQuiet}
	switch {
	case p.Done && p.Last:
		on.Name, on.Look = w.Say("practice-diary"), LookPrimary
	case p.Done:
		on.Name, on.Look = w.Say("practice-next"), LookPrimary
	}
	return Item{ID: "practice-strip", Role: RoleGroup, Name: w.Say("practice"), Look: LookStrip, Children: []Item{
		{ID: "practice-where", Role: RoleText, Text: w.Say("practice-where",
			"part", p.Part, "parts", p.Parts, "what", sayPart(w, p.Reason, p.Part == 1), "left", left)},
		on,
		{ID: "practice-end", Role: RoleButton, Name: w.Say("practice-end"), Action: ActPracticeEnd, Look: LookQuiet},
	}}
}

// On puts the strip on top of a screen; while a round is played there is nothing but
// the drumhead and the way out of it, and so no strip. The ways to other screens are
// left out: who practises goes on, or ends it.
func (p Practice) On(s Screen, w Words) Screen {
	playing := false
	s.Each(func(it *Item) { playing = playing || it.Role == RoleTapArea })
	if playing {
		return s
	}
	s.Focus = s.FocusID() // the strip takes no focus from the screen
	if s.Escape == ActHome {
		s.Escape = ActPracticeEnd
	}
	items := slices.DeleteFunc(slices.Clone(s.Items), func(it Item) bool { return it.ID == "nav" })
	s.Items = framed(w, s.ID, append([]Item{p.Strip(w)}, items...))
	return s
}
