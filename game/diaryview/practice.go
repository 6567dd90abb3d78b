package diaryview

import (
	"fmt"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/coach"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Plan is what the screen of a practice is made from before it begins: its parts, why
// each is practised now, and how long it lasts.
type Plan struct {
	Minutes int  // that were asked for
	Reading bool // it is not known yet what there was
	Steps   []coach.Step
	New     []string        // IDs of rhythms that the player meets in it for the first time
	First   bool            // all is new to the player
	Rhythms []*rhythm.Cycle // at least those of the steps
	Volume  int             // 0 to 100; below 0: there is no sound, and nothing to practise
	Notes   []view.Note
}

// Screen returns the screen.
func (p *Plan) Screen(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", w.Say("practice"))}
	switch {
	case p.Volume < 0:
		items = append(items, view.Item{ID: "silent", Role: view.RoleText, Text: w.Say("plan-no-sound"), Look: view.LookWarning})
	case p.Reading:
		items = append(items, view.Item{ID: "reading", Role: view.RoleText, Text: w.Say("diary-reading"), Look: view.LookNote})
	default:
		items = append(items, view.Item{ID: "plan-how", Role: view.RoleText, Text: p.how(w)}, p.ring(w), p.parts(w),
			view.Item{ID: "begin", Role: view.RoleButton, Name: w.Say("begin"), Action: view.ActBegin, Look: view.LookPrimary})
	}
	if p.Volume >= 0 {
		items = append(items, view.Settings(minutes(w, p.Minutes), view.Volume(w, p.Volume)))
	}
	items = append(items, view.NotesWithout(w, p.Notes, w.Say("plan-no-sound"))...)
	return view.ReadyScreen(w, view.ScreenPractice, w.Say("practice"), items)
}

// how says what the plan rests on.
func (p *Plan) how(w say.Words) string {
	if p.First {
		return w.Say("plan-first")
	}
	return w.Say("plan-how")
}

// parts is the plan: of each part what it is, how long it lasts, and why now.
func (p *Plan) parts(w say.Words) view.Item {
	it := view.Item{ID: "plan", Role: view.RoleList, Look: view.LookPlan, Name: w.Say("practice")}
	for i, part := range coach.Parts(p.Steps) {
		id := fmt.Sprintf("part-%d", i+1)
		it.Children = append(it.Children, view.Item{ID: id, Role: view.RoleListItem, Children: []view.Item{
			{ID: id + "-what", Role: view.RoleText, Text: sayPart(w, part.Reason, i == 0)},
			{ID: id + "-long", Role: view.RoleText, Text: sayLong(w, part.Seconds()), Look: view.LookQuiet},
			{ID: id + "-why", Role: view.RoleText, Text: p.why(w, part)},
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
func (p *Plan) ring(w say.Words) view.Item {
	pic, seconds, all := &picture.Picture{Height: 1}, 0, []string(nil)
	picture.Drum(pic)
	for _, s := range p.Steps {
		seconds += s.Seconds
	}
	from := 0.0
	for i, part := range coach.Parts(p.Steps) {
		to := from + float64(part.Seconds())/float64(seconds)
		pic.Arc(picture.InkBass, picture.Middle, picture.Middle, planArc, from+planApart, to-planApart, 0.022)
		x, y := picture.Around(picture.Middle, picture.Middle, planNumber, (from+to)/2)
		pic.Text(picture.InkBone, x, y, 0.042, strconv.Itoa(i+1)).Strong()
		all = append(all, w.Say("plan-ring-part", "n", i+1, "what", sayPart(w, part.Reason, i == 0), "long", sayLong(w, part.Seconds())))
		from = to
	}
	pic.Text(picture.InkBone, picture.Middle, picture.Middle, 0.05, w.Say("minutes", "n", p.Minutes)).Strong()
	pic.Twin = w.Say("plan-ring", "long", w.Say("minutes", "n", p.Minutes), "list", strings.Join(all, "; "))
	return view.Item{ID: "ring", Role: view.RolePicture, Name: w.Say("practice"), Text: pic.Twin, Picture: pic, Aspect: 1, Look: view.LookStage}
}

// sayPart says what a part is, in a few words.
func sayPart(w say.Words, r coach.Reason, first bool) string {
	switch r {
	case coach.ReasonWell, coach.ReasonEasy:
		return w.Say("part-begin")
	case coach.ReasonDue:
		return w.Say("part-due")
	case coach.ReasonMixUp:
		return w.Say("part-mix-up")
	case coach.ReasonEdge, coach.ReasonRung:
		return w.Say("part-edge")
	case coach.ReasonTempo:
		return w.Say("part-tempo")
	case coach.ReasonSlow:
		return w.Say("part-slow")
	}
	if first {
		return w.Say("part-first")
	}
	return w.Say("part-new")
}

// sayLong says about how long something lasts: to the half of a minute.
func sayLong(w say.Words, seconds int) string {
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
func (p *Plan) why(w say.Words, part coach.Part) string {
	list, s := say.List(w, calledAs(p.Rhythms, part.Rhythms())), part.Steps[0]
	switch part.Reason {
	case coach.ReasonWell:
		return w.Say("why-well", "do", sayDo(w, NextOf(part.Steps), p.Rhythms))
	case coach.ReasonEasy, coach.ReasonSlow:
		return w.Say("why-slow", "rhythms", list, "tempo", sayTempi(w, []int{s.BPM}))
	case coach.ReasonDue:
		return say.Sentence(w.Say("why-due", "rhythms", list))
	case coach.ReasonMixUp:
		return say.Sentence(w.Say("why-mix-up", "rhythms", list))
	case coach.ReasonTempo:
		return say.Sentence(w.Say("why-tempo", "rhythms", list))
	case coach.ReasonFirst:
		return say.Sentence(w.Say("why-first", "rhythms", list))
	}
	if list == "" {
		return w.Say("next-rung")
	}
	return say.Sentence(w.Say("why-edge", "rhythms", list, "level", levelName(w, fullest(part))))
}

// fullest is the highest riff level of a part.
func fullest(part coach.Part) string {
	return slices.MaxFunc(part.Steps, func(a, b coach.Step) int { return int(a.Level) - int(b.Level) }).Level.String()
}

// Practice is a practice of some minutes that is under way.
type Practice struct {
	Part, Parts int // which part it is at, from 1, of how many
	Reason      coach.Reason
	Minutes     int  // about how many are left; 0: less than one
	Done        bool // this step is done: on to the next
	Last        bool // there is no next
}

// Strip is where a practice stands and the ways on and out.
func (p Practice) Strip(w say.Words) view.Item {
	left := w.Say("practice-left-none")
	if p.Minutes > 0 {
		left = w.Say("practice-left", "n", p.Minutes)
	}
	on := view.Item{ID: "practice-on", Role: view.RoleButton, Name: w.Say("practice-skip"), Action: view.ActPracticeNext, Look: view.LookQuiet}
	switch {
	case p.Done && p.Last:
		on.Name, on.Look = w.Say("practice-diary"), view.LookPrimary
	case p.Done:
		on.Name, on.Look = w.Say("practice-next"), view.LookPrimary
	}
	return view.Item{ID: "practice-strip", Role: view.RoleGroup, Name: w.Say("practice"), Look: view.LookStrip, Children: []view.Item{
		{ID: "practice-where", Role: view.RoleText, Text: w.Say("practice-where",
			"part", p.Part, "parts", p.Parts, "what", sayPart(w, p.Reason, p.Part == 1), "left", left)},
		on,
		{ID: "practice-end", Role: view.RoleButton, Name: w.Say("practice-end"), Action: view.ActPracticeEnd, Look: view.LookQuiet},
	}}
}

// On puts the strip on top of a screen; while a round is played there is nothing but
// the drumhead and the way out of it, and so no strip. The ways to other screens are
// left out: who practises goes on, or ends it.
func (p Practice) On(s view.Screen, w say.Words) view.Screen {
	playing := false
	s.Each(func(it *view.Item) { playing = playing || it.Role == view.RoleTapArea })
	if playing {
		return s
	}
	s.Focus = s.FocusID() // the strip takes no focus from the screen
	if s.Escape == view.ActHome {
		s.Escape = view.ActPracticeEnd
	}
	items := slices.DeleteFunc(slices.Clone(s.Items), func(it view.Item) bool { return it.ID == "nav" })
	s.Items = view.Framed(w, s.ID, append([]view.Item{p.Strip(w)}, items...))
	return s
}
