package link

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// Allowed lists what the words in a link may be.
type Allowed struct {
	Rhythms []string // ids; at least one
	Answers []string // ids of those that may be an answer; empty: all
	Riffs   []string // at least one

	Set func(text string) error // what is wrong with the set of a warm-up; nil: none is allowed
}

// ParseAddress reads the query of a link, with or without its question mark.
// What is absent has its screen's default. Without a screen it is Home, or Dums if
// the link says anything of a round. With an error of type *LinkError the
// address is the nearest one that is allowed: wrong numbers brought within their
// limits, misspelt words replaced by the likeliest, the rest by the default, and
// what does not belong to the screen left out. What is allowed is asked for only
// where the screen has something of it.
func Parse(query string, allowed func() Allowed) (Address, error) {
	values, err := url.ParseQuery(strings.TrimPrefix(query, "?"))
	p := &addressParser{values: values}
	if err != nil {
		p.wrong("link", query, "letters, figures, & and =")
	}
	screen := view.ScreenHome
	switch {
	case values.Has("set"):
	case values.Has("minutes"):
		screen = view.ScreenPractice
	case slices.ContainsFunc(every[1:], values.Has):
		screen = view.ScreenDums
	}
	p.word("screen", &screen, view.Screens())
	p.Address = Default(screen)
	p.fields(allowed)
	p.others()
	if len(p.problems) > 0 {
		return p.Address, &Error{p.problems}
	}
	return p.Address, nil
}

type addressParser struct {
	values   url.Values
	problems []Problem
	Address
}

// fields reads what belongs to the screen. The rhythm comes before the rest,
// since Any brings a parameter with it, and so does the riff level.
func (p *addressParser) fields(allowed func() Allowed) {
	if p.Rhythm != "" {
		p.rhythm(allowed())
	}
	if p.Riff != "" {
		p.word("riff", &p.Riff, allowed().Riffs)
	}
	for _, name := range p.Parameters() {
		switch name {
		case "ask":
			p.ask()
		case "answers":
			p.Answers = p.number(name, p.Answers, LeastAnswers, MostAnswers)
		case "from":
			p.from(allowed())
		case "bpm":
			p.BPM = p.number(name, p.BPM, LeastBPM, MostBPM)
		case "eights":
			of := targetOf(p.Screen)
			p.Eights = p.number(name, p.Eights, of.least, of.most)
		case "hide":
			p.Hide = p.number(name, 0, view.LeastHide, view.MostHide)
		case "seed":
			p.seed()
		case "set":
			p.set(allowed())
		case "q":
			p.asked()
		case "minutes":
			p.Minutes = p.number(name, p.Minutes, LeastMinutes, MostMinutes)
		case "v":
			if p.Riffs = p.number(name, 0, 1, mostVersion); p.Riffs == riff.Version {
				p.Riffs = 0
			}
		}
	}
}

// mostVersion is beyond every version of the riffs that there will be.
const mostVersion = 9999

func (p *addressParser) rhythm(allowed Allowed) {
	ids := allowed.Rhythms
	of := targetOf(p.Screen)
	if of.may("answers") && len(allowed.Answers) > 0 {
		ids = allowed.Answers
	}
	if of.any {
		ids = append(slices.Clone(ids), view.Any)
	}
	p.word("rhythm", &p.Rhythm, ids)
	if p.Rhythm == view.Any {
		p.From = view.FromFive
	}
}

func (p *addressParser) wrong(name, value, allowed string) {
	p.problems = append(p.problems, Problem{Name: short(name), Value: short(value), Allowed: allowed})
}

// short cuts what someone has put into a link to a length that can be shown.
func short(s string) string {
	const most = 40
	if r := []rune(s); len(r) > most {
		return string(r[:most-1]) + "…"
	}
	return s
}

// get returns the value of a parameter, if it is there and only once.
func (p *addressParser) get(name string) (string, bool) {
	all := p.values[name]
	if len(all) > 1 {
		p.wrong(name, strings.Join(all, ", "), "one value")
	}
	if len(all) == 0 {
		return "", false
	}
	return all[0], true
}

func (p *addressParser) word(name string, to *string, allowed []string) {
	value, ok := p.get(name)
	switch {
	case !ok:
	case slices.Contains(allowed, value):
		*to = value
	default:
		p.wrong(name, value, strings.Join(allowed, ", "))
		if near, ok := nearest(value, allowed); ok {
			*to = near
		}
	}
}

// ask reads what the screen Which asks.
func (p *addressParser) ask() {
	var words []string
	for _, ask := range view.Asks() {
		words = append(words, askInLinks(ask))
	}
	word := askInLinks(p.Ask)
	p.word("ask", &word, words)
	p.Ask = view.Asks()[slices.Index(words, word)]
}

func (p *addressParser) number(name string, otherwise, least, most int) int {
	value, ok := p.get(name)
	if !ok {
		return otherwise
	}
	n, err := strconv.Atoi(value)
	if err == nil && n >= least && n <= most {
		return n
	}
	p.wrong(name, value, fmt.Sprintf("%d to %d", least, most))
	if err != nil {
		return otherwise
	}
	return max(least, min(most, n))
}

func (p *addressParser) seed() {
	value, ok := p.get("seed")
	if !ok {
		return
	}
	n, err := strconv.ParseUint(value, 10, 64)
	if err != nil || n > MostSeed {
		p.wrong("seed", value, fmt.Sprintf("a whole number from 0 to %d", uint64(MostSeed)))
		return
	}
	p.Seed = n
}

// asked reads the version of the questions. The seeds of links without it are from
// before there were versions.
func (p *addressParser) asked() {
	otherwise := 0
	if p.Seed != 0 {
		otherwise = 1
	}
	if p.Asked = p.number("q", otherwise, 1, mostVersion); p.Asked == quiz.Version {
		p.Asked = 0
	}
}

// set reads the set of a warm-up. One that cannot be used is left out.
func (p *addressParser) set(allowed Allowed) {
	value, ok := p.get("set")
	if !ok {
		return
	}
	if allowed.Set != nil {
		err := allowed.Set(value)
		if err == nil {
			p.Set = value
			return
		}
		p.wrong("set", value, err.Error())
		return
	}
	p.wrong("set", value, strings.Join(warmup.Presets(), ", "))
}

// from reads out of which rhythms: a word, or ids, each once. Where one names a
// rhythm, there must be as many as there are answers.
func (p *addressParser) from(allowed Allowed) {
	value, ok := p.get("from")
	if !ok {
		return
	}
	ids := allowed.Rhythms
	if targetOf(p.Screen).may("answers") && len(allowed.Answers) > 0 {
		ids = allowed.Answers
	}
	if !slices.Contains(FromWords, value) && !distinct(strings.Split(value, "."), ids) {
		p.wrong("from", value, strings.Join(FromWords, ", ")+", or some of these, each once, with points between: "+
			strings.Join(ids, "."))
		return
	}
	was := p.From
	p.From = value
	form, _ := quiz.FormOf(quiz.Ask(p.Ask))
	if n := len(p.Ids()); n > 0 && form.Named && n < p.Answers {
		p.wrong("from", value, fmt.Sprintf("as many rhythms as answers, %d", p.Answers))
		p.From = was
	}
}

// distinct reports whether all of some are among the allowed, and none twice.
func distinct(some, allowed []string) bool {
	for i, id := range some {
		if !slices.Contains(allowed, id) || slices.Contains(some[:i], id) {
			return false
		}
	}
	return true
}

// others reports what does not belong to the screen, and what is not known.
func (p *addressParser) others() {
	own := p.Parameters()
	var names []string
	for name := range p.values {
		if !slices.Contains(own, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		problem := Problem{Name: short(name), Value: short(p.values.Get(name)), Allowed: strings.Join(own, ", "),
			Unknown: !slices.Contains(every, name)}
		if !problem.Unknown {
			problem.Screen = p.Screen
		}
		p.problems = append(p.problems, problem)
	}
}
