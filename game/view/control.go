package view

import (
	"fmt"
	"groundbeat/game/picture"
	"groundbeat/game/say"
	"slices"
	"strconv"
)

func Heading(id, name string) Item {
	return Item{ID: id, Role: RoleHeading, Level: 1, Name: name}
}

func Subheading(id, name string) Item {
	return Item{ID: id, Role: RoleHeading, Level: 2, Name: name}
}

// present leaves out items without a role.
func Present(items []Item) []Item {
	kept := items[:0]
	for _, it := range items {
		if it.Role != RoleNone {
			kept = append(kept, it)
		}
	}
	return kept
}

// settings is the group of a screen's controls; nothing without any.
func Settings(items ...Item) Item {
	items = Present(items)
	if len(items) == 0 {
		return Item{}
	}
	return Item{ID: "settings", Role: RoleGroup, Look: LookRow, Children: items}
}

// rhythms is the choice of the most used rhythms, and beside them of the other one
// that is chosen, if one is: what plays is in sight and marked.
func Rhythms(w say.Words, core, more []Option, value string) Item {
	if len(core) == 0 {
		return Item{}
	}
	options := core
	if i := slices.IndexFunc(more, func(o Option) bool { return o.Value == value }); i >= 0 && Chosen(core, value) == "" {
		options = append(slices.Clone(core), more[i])
	}
	return Item{ID: "rhythm", Role: RoleChoice, Name: w.Say("rhythm"), Action: ActRhythm, Options: options,
		Value: Chosen(options, value)}
}

// moreRhythms is the choice of the others, shown when opened.
func MoreRhythms(w say.Words, more []Option, value string) Item {
	if len(more) == 0 {
		return Item{}
	}
	return Item{ID: "more", Role: RoleDetails, Name: w.Say("more-rhythms"), Children: []Item{
		{ID: "more-rhythm", Role: RoleChoice, Name: w.Say("more-rhythm"), Action: ActRhythm, Options: more,
			Value: Chosen(more, value)}}}
}

// chosen returns the value if it is one of the options, else none.
func Chosen(options []Option, value string) string {
	if slices.ContainsFunc(options, func(o Option) bool { return o.Value == value }) {
		return value
	}
	return ""
}

func Tempo(w say.Words, name string, bpm, slow, fast int) Item {
	return Item{ID: "tempo", Role: RoleSlider, Name: name, Action: ActTempo,
		Min: float64(slow), Max: float64(fast), Step: 1, Num: float64(bpm), Value: w.Say("tempo", "bpm", bpm)}
}

// volume is the slider of the volume; none below 0.
func Volume(w say.Words, n int) Item {
	if n < 0 {
		return Item{}
	}
	return Item{ID: "volume", Role: RoleSlider, Name: w.Say("volume"), Action: ActVolume,
		Min: 0, Max: 100, Step: 5, Num: float64(n), Value: w.Say("percent", "n", n)}
}

// length is the choice of a length in eights; what a link asked for is among
// them.
func Length(w say.Words, eights int, lengths []int) Item {
	if len(lengths) == 0 {
		lengths = []int{1, 2, 4, 8}
	}
	if at, found := slices.BinarySearch(lengths, eights); !found {
		lengths = slices.Insert(slices.Clone(lengths), at, eights)
	}
	it := Item{ID: "eights", Role: RoleChoice, Name: w.Say("length"), Action: ActEights, Value: fmt.Sprint(eights)}
	for _, n := range lengths {
		it.Options = append(it.Options, Option{Value: fmt.Sprint(n), Label: w.Say("eights", "n", n)})
	}
	return it
}

// from is the choice of the rhythms that a question is made from. names are
// those of the ids that a link asked for.
func From(w say.Words, value string, names []string) Item {
	it := Item{ID: "from", Role: RoleChoice, Name: w.Say("from"), Action: ActFrom, Value: value, Options: []Option{
		{FromFive, w.Say("from-five")}, {FromEven, w.Say("from-even")}, {FromAll, w.Say("from-all")}}}
	if Chosen(it.Options, value) == "" && len(names) > 0 {
		it.Options = append(it.Options, Option{value, say.List(w, names)})
	}
	it.Value = Chosen(it.Options, value)
	return it
}

// stage is the place of the live drumhead.
func Stage(w say.Words, twin string) Item {
	return Item{ID: "head", Role: RolePicture, Name: w.Say("head-name"), Text: twin,
		Place: PlaceHead, Aspect: 1, Look: LookStage}
}

// still is a whiteboard line.
func Still(w say.Words, id string, l *picture.Line) Item {
	p := &picture.Picture{}
	l.Draw(p)
	p.Twin = l.Twin(w)
	return Item{ID: id, Role: RolePicture, Name: w.Say("line-name"), Text: p.Twin,
		Picture: p, Aspect: p.Aspect(), Look: LookBoard}
}

// ready returns a screen from which one can go to every other, and Home by Escape.
func ReadyScreen(w say.Words, id, title string, items []Item) Screen {
	s := Page(w, id, title, append(items, nav(w, id)))
	s.Escape = ActHome
	return s
}

// page returns a screen with what all of them share, its bar included. Without a title
// of its own it has the product's alone.
func Page(w say.Words, id, title string, items []Item) Screen {
	s := BarePage(w, id, title, items)
	s.Items = Framed(w, id, s.Items)
	return s
}

// bare is page without a bar.
func BarePage(w say.Words, id, title string, items []Item) Screen {
	if title != "" {
		title += " – "
	}
	return Screen{ID: id, Title: title + w.Say("product"),
		Lang: w.Say("language"), Dir: w.Say("direction"), Items: Present(items)}
}

func Figure(id, name, value string) Item {
	return Item{ID: "figure-" + id, Role: RoleText, Look: LookFigure, Text: name, Value: value}
}

// none stands in a cell that has nothing to say.
const None = "–"

// questions are what the screen Which asks, and how that is said.
var questions = []struct {
	ask string
	say func(w say.Words) string
}{
	{AskRhythm, func(w say.Words) string { return w.Say("ask-rhythm") }},
	{AskStroke, func(w say.Words) string { return w.Say("ask-stroke") }},
	{AskHowMany, func(w say.Words) string { return w.Say("ask-how-many") }},
	{AskSame, func(w say.Words) string { return w.Say("ask-same") }},
}

func SayAsk(w say.Words, ask string) string {
	for _, q := range questions {
		if q.ask == ask {
			return q.say(w)
		}
	}
	return questions[0].say(w)
}

// tapping fills a screen with a line that says what to do, the drumhead to tap on and the
// ways out, and nothing else. Taps carry the number of the round, if it has one.
func Tapping(s Screen, w say.Words, what string, round int, head Item, helps ...Item) Screen {
	area := Item{ID: "tap", Role: RoleTapArea, Name: w.Say("dums-area"), Action: ActTap, Look: LookStage,
		Children: []Item{head}}
	if round != 0 {
		area.Value = strconv.Itoa(round)
	}
	stop := Item{ID: "stop", Role: RoleButton, Name: w.Say("stop"), Action: ActStop, Look: LookQuiet}
	s.Items = Framed(w, s.ID, []Item{Heading("heading", what), area,
		{ID: BarID, Role: RoleGroup, Children: append(helps, stop)}})
	s.Focus, s.Escape = "tap", ActStop
	return s
}
