package screenproof

import (
	"bufio"
	"fmt"
	"groundbeat/game/view"
	"io"
	"strings"
)

// Dump writes a screen as indented text, one line an item and only what is set,
// so that two screens can be compared line by line. The form is for tests and
// eyes; nothing reads it back.
func Dump(w io.Writer, s view.Screen) error {
	out := &dump{bufio.NewWriter(w)}
	out.print("screen %s %q lang=%s dir=%s focus=%s", s.ID, s.Title, s.Lang, s.Dir, s.FocusID())
	out.print("%s\n", pair("escape", s.Escape))
	out.items(s.Items, 1)
	return out.Flush()
}

// dump is the text as far as it is written; of several errors the first is kept.
type dump struct{ *bufio.Writer }

func (p *dump) print(format string, args ...any) { fmt.Fprintf(p, format, args...) }

func (p *dump) items(items []view.Item, depth int) {
	for i := range items {
		p.item(&items[i], strings.Repeat("  ", depth))
		p.items(items[i].Children, depth+1)
	}
}

func (p *dump) item(it *view.Item, indent string) {
	p.print("%s%s #%s", indent, it.Role, it.ID)
	if it.Level > 0 {
		p.print(" h%d", it.Level)
	}
	p.print("%s%s%s", quoted("", it.Name), quoted("text=", it.Text), quoted("value=", it.Value))
	if it.Min != 0 || it.Max != 0 {
		p.print(" %g of %g..%g step %g", it.Num, it.Min, it.Max, it.Step)
	}
	if it.Ends[0] != "" {
		p.print(" ends %q %q", it.Ends[0], it.Ends[1])
	}
	p.print("%s%s%s%s%s", pair("do", it.Action), pair("look", it.Look), pair("live", it.Live),
		pair("lang", it.Lang), pair("dir", it.Dir))
	p.print("%s%s%s", state("disabled", it.Disabled), state("pressed", it.Pressed), state("checked", it.Checked))
	p.picture(it)
	p.print("\n")
	for _, o := range it.Options {
		p.print("%s  - %s %q\n", indent, o.Value, o.Label)
	}
	p.row(indent, it.Columns)
	for _, row := range it.Rows {
		p.row(indent, row)
	}
}

func (p *dump) picture(it *view.Item) {
	p.print("%s", pair("place", it.Place))
	if it.Picture != nil {
		p.print(" shapes=%d", len(it.Picture.Shapes))
	}
	if it.Aspect != 0 {
		p.print(" aspect=%.4g", it.Aspect)
	}
}

func (p *dump) row(indent string, cells []string) {
	if len(cells) > 0 {
		p.print("%s  | %s |\n", indent, strings.Join(cells, " | "))
	}
}

func quoted(name, value string) string {
	if value == "" {
		return ""
	}
	return fmt.Sprintf(" %s%q", name, value)
}

func pair(name, value string) string {
	if value == "" {
		return ""
	}
	return " " + name + "=" + value
}

func state(name string, on bool) string {
	if !on {
		return ""
	}
	return " " + name
}
