package rhythm

import (
	"bytes"
	"fmt"
	"io"
	"strconv"
	"strings"
)

// Format writes a cycle as text from which [Parse] makes an equal one, given
// the file name ID + ".txt". Keys stand in one fixed order, and marks only where
// they differ from what their absence means. A cycle that would not come back
// equal, such as one with a line break in its name, is an error and nothing is
// written.
func Format(w io.Writer, c *Cycle) error {
	text := render(c)
	back, err := Parse(c.ID+".txt", bytes.NewReader(text))
	if err != nil {
		return fmt.Errorf("rhythm.Format: %w", err)
	}
	if back.ID != c.ID || !bytes.Equal(render(back), text) || bytes.Count(text, []byte("\n")) != len(fields(c)) {
		return fmt.Errorf("rhythm.Format: %q holds text that would not come back equal", c.ID)
	}
	_, err = w.Write(text)
	return err
}

func render(c *Cycle) []byte {
	var b bytes.Buffer
	for _, f := range fields(c) {
		b.WriteString(f.key + ": " + f.value + "\n")
	}
	return b.Bytes()
}

type field struct{ key, value string }

// fields returns what the file of a cycle holds, line by line.
func fields(c *Cycle) []field {
	var all []field
	for _, rule := range keyRules {
		for _, value := range values(c, rule.key) {
			all = append(all, field{rule.key, value})
		}
	}
	return all
}

// values returns the values under one key.
func values(c *Cycle, key string) []string {
	switch key {
	case "metre":
		return []string{c.Metre.String()}
	case "grouping":
		return optional(joinInts(c.Grouping))
	case "skeleton":
		return []string{c.Skeleton.String()}
	case "filled":
		return optional(c.Filled.String())
	case "variant":
		return variantTexts(c.Variants)
	case "tempo":
		return []string{c.Tempo.String()}
	}
	if text, found := c.single()[key]; found {
		return optional(*text)
	}
	if texts, found := c.lists()[key]; found {
		return *texts
	}
	return markText(*c.marks()[key], key == "quiz")
}

// optional returns no value for an empty text.
func optional(s string) []string {
	if s == "" {
		return nil
	}
	return []string{s}
}

// markText returns no value for a mark that equals its default.
func markText(mark, otherwise bool) []string {
	if mark == otherwise {
		return nil
	}
	return []string{map[bool]string{true: "yes", false: "no"}[mark]}
}

func variantTexts(variants []Variant) []string {
	var texts []string
	for _, v := range variants {
		texts = append(texts, v.Name+" = "+v.Pattern.String())
	}
	return texts
}

func joinInts(numbers []int) string {
	var texts []string
	for _, n := range numbers {
		texts = append(texts, strconv.Itoa(n))
	}
	return strings.Join(texts, "+")
}

// String returns the tempo as a rhythm's file states it, such as
// "about 90 105 130 quarter".
func (t Tempo) String() string {
	about := ""
	if t.About {
		about = "about "
	}
	return fmt.Sprintf("%s%d %d %d %s", about, t.Slow, t.Usual, t.Fast, t.Beat)
}
