package view

import (
	"fmt"
	"net/url"
	"slices"
	"strconv"
	"strings"
)

// Address is what the link of a screen says.
type Address struct {
	Screen string // "dums"
	Rhythm string // id of a rhythm
	BPM    int    // counts a minute; 0: the rhythm's usual tempo
	Eights int    // length in eights
	Riff   string // riff level
	Seed   uint64 // of the round; 0: chosen anew
}

// Limits of the numbers in a link.
const (
	LeastBPM, MostBPM       = 40, 200
	LeastEights, MostEights = 1, 32
	MostSeed                = 1<<53 - 1 // scripts read whole numbers exactly up to here
)

// DefaultAddress is where a link without parameters leads.
func DefaultAddress() Address {
	return Address{Screen: "dums", Rhythm: "maqsum", Eights: 4, Riff: "bare"}
}

// Allowed lists what the words in a link may be. Its lists must not be empty.
type Allowed struct{ Screens, Rhythms, Riffs []string }

// Problem is one wrong parameter of a link.
type Problem struct {
	Name, Value string
	Allowed     string // values; or, where Unknown, names
	Unknown     bool   // there is no parameter of this name
}

// String says the problem as "bpm=900: allowed is 40 to 200".
func (p Problem) String() string {
	if p.Unknown {
		return fmt.Sprintf("%s: known are %s", p.Name, p.Allowed)
	}
	return fmt.Sprintf("%s=%s: allowed is %s", p.Name, p.Value, p.Allowed)
}

// LinkError lists everything that is wrong with a link, in the link's order of
// parameters: the known ones first, then the unknown by name.
type LinkError struct{ Problems []Problem }

// Error says every problem, semicolons between.
func (e *LinkError) Error() string {
	var all []string
	for _, p := range e.Problems {
		all = append(all, p.String())
	}
	return strings.Join(all, "; ")
}

var parameters = []string{"screen", "rhythm", "bpm", "eights", "riff", "seed"}

// ParseAddress reads the query of a link, with or without its question mark.
// What is absent has its default. With an error of type *LinkError the address
// is the nearest one that is allowed: wrong numbers brought within their limits,
// misspelt words replaced by the likeliest, the rest by the default.
func ParseAddress(query string, allowed Allowed) (Address, error) {
	values, err := url.ParseQuery(strings.TrimPrefix(query, "?"))
	p := &addressParser{values: values, Address: DefaultAddress()}
	if err != nil {
		p.wrong("link", query, "letters, figures, & and =")
	}
	p.word("screen", &p.Screen, allowed.Screens)
	p.word("rhythm", &p.Rhythm, allowed.Rhythms)
	p.BPM = p.number("bpm", p.BPM, LeastBPM, MostBPM)
	p.Eights = p.number("eights", p.Eights, LeastEights, MostEights)
	p.word("riff", &p.Riff, allowed.Riffs)
	p.seed()
	p.unknown()
	if len(p.problems) > 0 {
		return p.Address, &LinkError{p.problems}
	}
	return p.Address, nil
}

type addressParser struct {
	values   url.Values
	problems []Problem
	Address
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

func (p *addressParser) unknown() {
	var names []string
	for name := range p.values {
		if !slices.Contains(parameters, name) {
			names = append(names, name)
		}
	}
	slices.Sort(names)
	for _, name := range names {
		p.problems = append(p.problems, Problem{Name: short(name), Value: short(p.values.Get(name)),
			Allowed: strings.Join(parameters, ", "), Unknown: true})
	}
}

// String returns the query of the address, with its question mark. A tempo or a
// seed of 0 is left out.
func (a Address) String() string {
	s := "?screen=" + url.QueryEscape(a.Screen) + "&rhythm=" + url.QueryEscape(a.Rhythm)
	if a.BPM != 0 {
		s += "&bpm=" + strconv.Itoa(a.BPM)
	}
	s += "&eights=" + strconv.Itoa(a.Eights) + "&riff=" + url.QueryEscape(a.Riff)
	if a.Seed != 0 {
		s += "&seed=" + strconv.FormatUint(a.Seed, 10)
	}
	return s
}

// nearest returns the word that fewest changed letters make of value, if no more
// than a third of its letters change.
func nearest(value string, words []string) (string, bool) {
	best, least := "", len(value)/3+1
	if len(value) > 30 {
		return "", false
	}
	for _, word := range words {
		if d := changes(strings.ToLower(value), word); d < least {
			best, least = word, d
		}
	}
	return best, best != ""
}

// changes returns the edit distance of two words: V. I. Levenshtein, "Binary
// codes capable of correcting deletions, insertions, and reversals", 1966.
func changes(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		before := row[0]
		row[0] = i + 1
		for j := range len(b) {
			put := before
			if a[i] != b[j] {
				put++
			}
			before = row[j+1]
			row[j+1] = min(put, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
