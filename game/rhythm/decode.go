package rhythm

import (
	"strconv"
	"strings"
	"unicode/utf8"
)

// cycle turns the entries into a cycle, in the order in which they depend on
// one another.
func (p *parser) cycle() (*Cycle, error) {
	c := &Cycle{}
	for _, decode := range []func(*Cycle) error{
		p.id, p.texts, p.names, p.flags, p.metre, p.grouping,
		p.skeleton, p.filled, p.variants, p.tempo,
	} {
		if err := decode(c); err != nil {
			return nil, err
		}
	}
	return c, nil
}

// first returns the value of a key that stands at most once.
func (p *parser) first(key string) (e entry, found bool) {
	if all := p.entries[key]; len(all) > 0 {
		return all[0], true
	}
	return entry{}, false
}

func (p *parser) id(c *Cycle) error {
	base := p.file[strings.LastIndexAny(p.file, `/\`)+1:]
	c.ID = strings.TrimSuffix(base, ".txt")
	if !isID(c.ID) {
		return &Error{File: p.file, Msg: "a rhythm's file is named in a to z, 0 to 9 and single hyphens, such as my-rhythm.txt"}
	}
	return nil
}

// isID reports whether a text is lower case letters and digits, in parts that single
// hyphens join.
func isID(text string) bool {
	for part := range strings.SplitSeq(text, "-") {
		if strings.Trim(part, "abcdefghijklmnopqrstuvwxyz0123456789") != "" || part == "" {
			return false
		}
	}
	return true
}

func (p *parser) texts(c *Cycle) error {
	for key, field := range c.single() {
		if e, found := p.first(key); found {
			*field = oneBlank(e.value)
		}
	}
	for key, field := range c.lists() {
		for _, e := range p.entries[key] {
			*field = append(*field, oneBlank(e.value))
		}
	}
	return nil
}

// single returns the fields of one free text by their keys.
func (c *Cycle) single() map[string]*string {
	return map[string]*string{
		"name": &c.Name, "script": &c.Script, "family": &c.Family,
		"role": &c.Role, "listen": &c.Listen,
	}
}

// lists returns the fields of many free texts by their keys.
func (c *Cycle) lists() map[string]*[]string {
	return map[string]*[]string{
		"spelling": &c.Spellings, "note": &c.Notes,
		"source": &c.Sources, "memory": &c.Memory,
	}
}

// oneBlank replaces each run of white space by one blank.
func oneBlank(s string) string { return strings.Join(strings.Fields(s), " ") }

// names checks that each name can be searched for and stands once.
func (p *parser) names(c *Cycle) error {
	seen := map[string]int{}
	for _, key := range []string{"name", "spelling"} {
		for _, e := range p.entries[key] {
			name := oneBlank(e.value)
			if fold(name) == "" {
				return p.errorf(e.at, "a %s needs a letter or a digit", key)
			}
			if line, found := seen[name]; found {
				return p.errorf(e.at, "'%s' stands on line %d already", name, line)
			}
			seen[name] = e.at.line
		}
	}
	return nil
}

func (p *parser) flags(c *Cycle) error {
	c.Quiz = true
	marks := c.marks()
	for _, key := range []string{"core", "quiz", "differ"} {
		e, found := p.first(key)
		if !found {
			continue
		}
		if e.value != "yes" && e.value != "no" {
			return p.errorf(e.at, "'%s' is yes or no, not '%s'", key, e.value)
		}
		*marks[key] = e.value == "yes"
	}
	return nil
}

// marks returns the yes-or-no fields by their keys.
func (c *Cycle) marks() map[string]*bool {
	return map[string]*bool{"core": &c.Core, "quiz": &c.Quiz, "differ": &c.Differ}
}

func (p *parser) metre(c *Cycle) error {
	e, _ := p.first("metre")
	beats, unit, found := strings.Cut(e.value, "/")
	if !found {
		return p.errorf(e.at, "a metre is two numbers, such as 4/4 or 9/8")
	}
	var err error
	if c.Metre.Beats, err = p.number(beats, e.at, 1, maxBeats, "beats"); err != nil {
		return err
	}
	after := e.at.right(utf8.RuneCountInString(beats) + 1)
	if c.Metre.Unit, err = p.number(unit, after, 2, 16, "unit"); err != nil {
		return err
	}
	if _, known := beatNames[c.Metre.Unit]; !known {
		return p.errorf(after.right(indent(unit)), "the unit of a metre is 2, 4, 8 or 16")
	}
	return nil
}

// number reads a whole number that may have blanks around it.
func (p *parser) number(s string, at place, least, most int, what string) (int, error) {
	n, err := strconv.Atoi(strings.TrimSpace(s))
	if err != nil || n < least || n > most {
		return 0, p.errorf(at.right(indent(s)), "%s: expected a whole number from %d to %d, not '%s'",
			what, least, most, strings.TrimSpace(s))
	}
	return n, nil
}

func (p *parser) grouping(c *Cycle) error {
	e, found := p.first("grouping")
	if !found {
		if c.Odd() && c.Beats() > 3 {
			return p.errorf(p.end, "missing key 'grouping': %s is odd, so say how it is counted, such as 2+2+2+3", c.Metre)
		}
		return nil
	}
	at, sum := e.at, 0
	for group := range strings.SplitSeq(e.value, "+") {
		n, err := p.number(group, at, 1, c.Beats(), "group")
		if err != nil {
			return err
		}
		c.Grouping = append(c.Grouping, n)
		sum += n
		at = at.right(utf8.RuneCountInString(group) + 1)
	}
	if sum != c.Beats() {
		return p.errorf(e.at, "the groups sum to %d, but %s has %d beats", sum, c.Metre, c.Beats())
	}
	return nil
}

func (p *parser) tempo(c *Cycle) error {
	e, _ := p.first("tempo")
	words := strings.Fields(e.value)
	c.Tempo.About = words[0] == "about"
	if c.Tempo.About {
		words = words[1:]
	}
	if len(words) != 4 {
		return p.errorf(e.at, "expected slow, usual and fast beats a minute and the beat, such as 'about 90 105 130 quarter'")
	}
	at := wordPlaces(e)
	at = at[len(at)-len(words):]
	least := MinBPM
	for i, field := range []*int{&c.Tempo.Slow, &c.Tempo.Usual, &c.Tempo.Fast} {
		n, err := p.number(words[i], at[i], MinBPM, MaxBPM, "beats a minute")
		if err != nil {
			return err
		}
		if n < least {
			return p.errorf(at[i], "the tempo %d is out of order: slow, usual, fast", n)
		}
		*field, least = n, n
	}
	return p.beat(c, words[3], at[3])
}

func (p *parser) beat(c *Cycle, word string, at place) error {
	c.Tempo.Beat = beatNames[c.Metre.Unit]
	if word != c.Tempo.Beat {
		return p.errorf(at, "the beat of %s is the '%s', not '%s'", c.Metre, c.Tempo.Beat, word)
	}
	return nil
}

// wordPlaces returns where each word of a value begins.
func wordPlaces(e entry) []place {
	var places []place
	rest, at := e.value, e.at
	for rest != "" {
		blanks := indent(rest)
		at = at.right(blanks)
		rest = strings.TrimSpace(rest)
		places = append(places, at)
		word := strings.Fields(rest)[0]
		at = at.right(utf8.RuneCountInString(word))
		rest = rest[len(word):]
	}
	return places
}
