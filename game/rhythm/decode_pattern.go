package rhythm

import (
	"slices"
	"strings"
	"unicode/utf8"
)

// pattern reads strokes and returns each one's place.
func (p *parser) pattern(e entry) (Pattern, []place, error) {
	pattern, columns, err := scanPattern(e.value)
	if err != nil {
		return nil, nil, p.errorf(e.at.right(err.Column-1), "%s", err.Msg)
	}
	places := make([]place, len(columns))
	for i, column := range columns {
		places[i] = e.at.right(column - 1)
	}
	return pattern, places, nil
}

func (p *parser) skeleton(c *Cycle) error {
	e, _ := p.first("skeleton")
	pattern, places, err := p.pattern(e)
	if err != nil {
		return err
	}
	for i, s := range pattern {
		if s.Light() {
			return p.errorf(places[i], "'%s' is a light stroke: it belongs in 'filled', a skeleton is D, T, S and -", s)
		}
	}
	beats := c.Beats()
	if !slices.Contains([]int{beats, 2 * beats, 4 * beats}, len(pattern)) {
		return p.errorf(e.at, "a skeleton of length %d does not fit %s, which takes %d steps (one a beat), %d or %d",
			len(pattern), c.Metre, beats, 2*beats, 4*beats)
	}
	if len(pattern.Dums()) == 0 {
		return p.errorf(e.at, "the skeleton has no dum (D)")
	}
	c.Skeleton = pattern
	return nil
}

// fit reads a pattern on the steps of the skeleton or on twice as many.
func (p *parser) fit(c *Cycle, e entry, what string) (Pattern, []place, error) {
	pattern, places, err := p.pattern(e)
	if err != nil {
		return nil, nil, err
	}
	if n := len(pattern); n != c.Steps() && n != 2*c.Steps() {
		return nil, nil, p.errorf(e.at, "%s of length %d does not fit the skeleton, which takes %d steps or %d",
			what, n, c.Steps(), 2*c.Steps())
	}
	return pattern, places, nil
}

func (p *parser) filled(c *Cycle) error {
	e, found := p.first("filled")
	if !found {
		return nil
	}
	pattern, places, err := p.fit(c, e, "a filled form")
	if err != nil {
		return err
	}
	scale := len(pattern) / c.Steps()
	for i, s := range pattern {
		base := Rest
		if i%scale == 0 {
			base = c.Skeleton[i/scale]
		}
		if msg := misfill(base, s); msg != "" {
			return p.errorf(places[i], "%s", msg)
		}
	}
	c.Filled = pattern
	return nil
}

// misfill says why a filled form may not have a stroke where its skeleton has
// another, or "".
func misfill(base, filled Stroke) string {
	switch {
	case base == Rest && (filled == Rest || filled.Light()):
		return ""
	case base == Rest:
		return "'" + filled.String() + "' where the skeleton rests: only light strokes, t and k, fill it"
	case base == Dum && filled != Dum:
		return "the skeleton has a dum here: write 'D'"
	case base != Dum && filled != Tek && filled != Sak:
		return "the skeleton has '" + base.String() + "' here: write 'T' or 'S'"
	}
	return ""
}

func (p *parser) variants(c *Cycle) error {
	for _, e := range p.entries["variant"] {
		cut := strings.LastIndexByte(e.value, '=')
		if cut < 0 || strings.TrimSpace(e.value[:cut]) == "" {
			return p.errorf(e.at, "a variant is a name, '=' and a pattern, such as 'heavy = DD-DD-T-'")
		}
		pattern, _, err := p.fit(c, e.after(cut+1), "a variant")
		if err != nil {
			return err
		}
		c.Variants = append(c.Variants, Variant{oneBlank(e.value[:cut]), pattern})
	}
	return nil
}

// after returns what follows the first bytes of a value and the blanks behind.
func (e entry) after(bytes int) entry {
	rest := e.value[bytes:]
	at := e.at.right(utf8.RuneCountInString(e.value[:bytes]) + indent(rest))
	return entry{strings.TrimSpace(rest), at}
}
