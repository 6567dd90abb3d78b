package rhythm

import (
	"bytes"
	"fmt"
	"io"
	"strings"
	"unicode"
	"unicode/utf8"
)

// maxFile is the longest file, in bytes.
const maxFile = 65_536

// keyRules lists the keys.
var keyRules = []struct {
	key               string
	required, repeats bool
}{
	{key: "name", required: true},
	{key: "script"},
	{key: "spelling", repeats: true},
	{key: "family"},
	{key: "core"},
	{key: "quiz"},
	{key: "differ"},
	{key: "metre", required: true},
	{key: "grouping"},
	{key: "skeleton", required: true},
	{key: "filled"},
	{key: "variant", repeats: true},
	{key: "tempo", required: true},
	{key: "role"},
	{key: "listen"},
	{key: "note", repeats: true},
	{key: "source", repeats: true},
	{key: "memory", repeats: true},
}

// otherWords are keys that people write instead of ours.
var otherWords = map[string]string{
	"meter": "metre", "time": "metre", "group": "grouping", "groups": "grouping",
	"pattern": "skeleton", "base": "skeleton", "bpm": "tempo", "speed": "tempo",
	"fill": "filled", "rhythm": "name", "title": "name", "arabic": "script",
	"alias": "spelling", "comment": "note",
}

// Parse reads one rhythm. The name is the file's, perhaps with its folders; it
// stands in errors and gives the cycle its ID. Mistakes in the text are of type
// *[Error]; a failure of r is wrapped.
func Parse(name string, r io.Reader) (*Cycle, error) {
	text, err := io.ReadAll(io.LimitReader(r, maxFile+1))
	if err != nil {
		return nil, fmt.Errorf("%s: %w", name, err)
	}
	p := &parser{file: name, entries: map[string][]entry{}}
	if err := p.scan(text); err != nil {
		return nil, err
	}
	if err := p.complete(); err != nil {
		return nil, err
	}
	return p.cycle()
}

// A parser holds the lines of one file by their keys.
type parser struct {
	file    string
	entries map[string][]entry
	end     place // the end of the file
}

// A place is a line and a column, in runes, both from 1.
type place struct{ line, column int }

// right returns the place some columns further on.
func (p place) right(columns int) place { return place{p.line, p.column + columns} }

// An entry is one "key: value" line; at is where its value begins.
type entry struct {
	value string
	at    place
}

func (p *parser) errorf(at place, format string, args ...any) error {
	return &Error{File: p.file, Line: at.line, Column: at.column, Msg: fmt.Sprintf(format, args...)}
}

// scan splits the text into entries.
func (p *parser) scan(text []byte) error {
	long := len(text) > maxFile
	if long {
		text = text[:maxFile]
	}
	text = bytes.TrimPrefix(text, []byte("\uFEFF"))
	text = bytes.ReplaceAll(text, []byte("\r\n"), []byte("\n"))
	text = bytes.ReplaceAll(text, []byte("\r"), []byte("\n"))
	lines := strings.Split(string(text), "\n")
	p.end = place{len(lines), utf8.RuneCountInString(lines[len(lines)-1]) + 1}
	if long {
		return p.errorf(p.end, "the file goes on after %d bytes: is it a rhythm?", maxFile)
	}
	for i, line := range lines {
		if err := p.line(line, i+1); err != nil {
			return err
		}
	}
	return nil
}

// line reads one line.
func (p *parser) line(line string, number int) error {
	if err := p.readable(line, number); err != nil {
		return err
	}
	content := strings.TrimSpace(line)
	if content == "" || content[0] == '#' {
		return nil
	}
	start := place{number, 1 + indent(line)}
	key, value, found := strings.Cut(content, ":")
	if !found {
		return p.errorf(start, "expected a key, a colon and a value, such as 'name: maqsum'")
	}
	at := start.right(utf8.RuneCountInString(key) + 1 + indent(value))
	return p.add(strings.TrimSpace(key), entry{strings.TrimSpace(value), at}, start)
}

// readable reports bytes that are not UTF-8 and marks that nobody can see.
// White space passes, and so do the joiners and direction marks of Arabic text.
func (p *parser) readable(line string, number int) error {
	column := 0
	for i, r := range line {
		column++
		at := place{number, column}
		if _, size := utf8.DecodeRuneInString(line[i:]); r == utf8.RuneError && size == 1 {
			return p.errorf(at, "this is not UTF-8 text; save the file as UTF-8")
		}
		visible := unicode.IsPrint(r) || unicode.IsSpace(r)
		if !visible && !strings.ContainsRune("\u200c\u200d\u200e\u200f\u061c", r) {
			return p.errorf(at, "invisible character %U; delete it", r)
		}
	}
	return nil
}

// add keeps an entry under its key.
func (p *parser) add(key string, e entry, start place) error {
	repeats, known := keyRule(key)
	earlier := p.entries[key]
	switch {
	case !known:
		return p.errorf(start, "unknown key '%s'; %s", key, keyHint(key))
	case e.value == "":
		return p.errorf(e.at, "'%s' has no value", key)
	case len(earlier) > 0 && !repeats:
		return p.errorf(start, "a second '%s'; the first is on line %d", key, earlier[0].at.line)
	}
	p.entries[key] = append(earlier, e)
	return nil
}

func keyRule(key string) (repeats, known bool) {
	for _, rule := range keyRules {
		if rule.key == key {
			return rule.repeats, true
		}
	}
	return false, false
}

// keyHint guesses which key was meant, or lists them all.
func keyHint(key string) string {
	lower := strings.ToLower(key)
	for _, guess := range []string{lower, strings.TrimSuffix(lower, "s"), otherWords[lower]} {
		if _, known := keyRule(guess); known {
			return "did you mean '" + guess + "'?"
		}
	}
	var all []string
	for _, rule := range keyRules {
		all = append(all, rule.key)
	}
	return "the keys are " + strings.Join(all, ", ")
}

// complete reports keys that the file lacks.
func (p *parser) complete() error {
	var missing []string
	for _, rule := range keyRules {
		if rule.required && len(p.entries[rule.key]) == 0 {
			missing = append(missing, "'"+rule.key+"'")
		}
	}
	if len(missing) > 0 {
		return p.errorf(p.end, "missing key %s", strings.Join(missing, ", "))
	}
	if len(p.entries["source"])+len(p.entries["memory"]) == 0 {
		return p.errorf(p.end, "missing key 'source': say where the rhythm is from, or 'memory: all of it'")
	}
	return nil
}

// indent returns the number of white space runes at the start of s.
func indent(s string) int {
	rest := strings.TrimLeftFunc(s, unicode.IsSpace)
	return utf8.RuneCountInString(s[:len(s)-len(rest)])
}
