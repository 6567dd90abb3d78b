package warmup

import (
	"fmt"
	"strings"

	"groundbeat/game/rhythm"
)

// setBegins is the first line of a set in a file.
const setBegins = "class set 1"

// Format writes sets as a file; see [Set].
func Format(sets ...Set) string {
	var b strings.Builder
	for i, s := range sets {
		if i > 0 {
			b.WriteString("\n")
		}
		fmt.Fprintf(&b, "%s\n", setBegins)
		if s.Name != "" {
			fmt.Fprintf(&b, "name: %s\n", s.Name)
		}
		fmt.Fprintf(&b, "from: %s\nriff: %s\nkinds: %s\nminutes: %d\n", s.From, s.Level, joined(s.Kinds), s.Minutes)
		if s.Seed != 0 {
			fmt.Fprintf(&b, "seed: %d\n", s.Seed)
		}
	}
	return b.String()
}

// ParseSets reads a file of sets. The error tells the file's name, the line, counted
// from 1, and what is wrong there; of a set as a whole, the line on which it begins.
func ParseSets(name, text string, c *rhythm.Catalogue) ([]Set, error) {
	p := setParser{catalogue: c}
	for i, line := range strings.Split(text, "\n") {
		if err := p.line(i+1, strings.TrimSpace(line)); err != nil {
			return nil, fmt.Errorf("%s:%w", name, err)
		}
	}
	if err := p.end(); err != nil {
		return nil, fmt.Errorf("%s:%w", name, err)
	}
	if len(p.sets) == 0 {
		return nil, fmt.Errorf("%s:1: no line '%s'", name, setBegins)
	}
	return p.sets, nil
}

// SplitSets returns the sets of a file by their names, each as a file of its own, whether
// they can be used or not. Of two of one name the last one counts.
func SplitSets(text string) map[string]string {
	sets, name, set := map[string]string{}, "", ""
	end := func() {
		if set != "" {
			sets[name] = set
		}
		name, set = "", ""
	}
	for line := range strings.Lines(text) {
		line = strings.TrimSpace(line)
		if line == setBegins {
			end()
		}
		if value, named := strings.CutPrefix(line, "name:"); named {
			name = strings.TrimSpace(value)
		}
		if line != "" {
			set += line + "\n"
		}
	}
	end()
	return sets
}

type setParser struct {
	catalogue *rhythm.Catalogue
	sets      []Set
	began     int // the line on which the last one begins
	seen      map[string]bool
}

func (p *setParser) line(n int, line string) error {
	switch {
	case line == "" || line[0] == '#':
		return nil
	case line == setBegins:
		if err := p.end(); err != nil {
			return err
		}
		p.sets, p.began, p.seen = append(p.sets, Set{}), n, map[string]bool{}
		return nil
	case len(p.sets) == 0:
		return fmt.Errorf("%d: before any line '%s'", n, setBegins)
	}
	key, value, ok := strings.Cut(line, ":")
	if !ok {
		return fmt.Errorf("%d: no colon", n)
	}
	if p.seen[key] {
		return fmt.Errorf("%d: %s stands there twice", n, key)
	}
	p.seen[key] = true
	if err := p.sets[len(p.sets)-1].set(key, strings.TrimSpace(value)); err != nil {
		return fmt.Errorf("%d: %w", n, err)
	}
	return nil
}

// end checks the last set as a whole.
func (p *setParser) end() error {
	if len(p.sets) == 0 {
		return nil
	}
	if err := p.sets[len(p.sets)-1].Check(p.catalogue); err != nil {
		return fmt.Errorf("%d: %w", p.began, err)
	}
	return nil
}
