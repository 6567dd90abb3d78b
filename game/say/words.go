package say

import (
	"fmt"
	"maps"
	"strings"
)

// Words holds the product's sentences by key. The text has one entry a line,
//
//	key: text with {placeholders}
//
// where a key is lower case letters, digits, hyphens, and at most one of the
// endings ".one" and ".other". Blank lines and lines that begin with # are
// skipped. There are no continued lines and no escapes: a brace always begins or
// ends a placeholder. Entries of one key in two forms always come in pairs.
type Words map[string]string

// LoadWords reads words. The error tells the line, counted from 1, as in
// "words:3: no colon".
func Load(text string) (Words, error) {
	w := Words{}
	for i, line := range strings.Split(text, "\n") {
		line = strings.TrimSpace(line)
		if line == "" || line[0] == '#' {
			continue
		}
		if err := w.line(line); err != nil {
			return nil, fmt.Errorf("words:%d: %w", i+1, err)
		}
	}
	return w, w.pairs()
}

func (w Words) line(line string) error {
	key, text, ok := strings.Cut(line, ":")
	text = strings.TrimSpace(text)
	switch {
	case !ok:
		return fmt.Errorf("no colon")
	case !isKey(key):
		return fmt.Errorf("key %q", key)
	case text == "":
		return fmt.Errorf("%s has no text", key)
	case w[key] != "":
		return fmt.Errorf("%s stands here twice", key)
	}
	if err := braces(text); err != nil {
		return fmt.Errorf("%s: %w", key, err)
	}
	w[key] = text
	return nil
}

func isKey(key string) bool {
	if i := strings.LastIndexByte(key, '.'); i >= 0 && (key[i:] == ".one" || key[i:] == ".other") {
		key = key[:i]
	}
	return key != "" && strings.Trim(key, "abcdefghijklmnopqrstuvwxyz0123456789-") == ""
}

// braces checks that each { has its } with a name between.
func braces(text string) error {
	for {
		before, after, open := strings.Cut(text, "{")
		if strings.Contains(before, "}") {
			return fmt.Errorf("} without {")
		}
		if !open {
			return nil
		}
		name, rest, closed := strings.Cut(after, "}")
		if !closed || !isKey(name) {
			return fmt.Errorf("placeholder {%s", name)
		}
		text = rest
	}
}

func (w Words) pairs() error {
	for key := range w {
		one, isOne := strings.CutSuffix(key, ".one")
		other, isOther := strings.CutSuffix(key, ".other")
		if isOne && w[one+".other"] == "" || isOther && w[other+".one"] == "" {
			return fmt.Errorf("words: %s without its other form", key)
		}
	}
	return nil
}

// Say returns the text of a key with its placeholders filled from pairs of name
// and value: Say("of", "n", 3, "of", 8). A key in two forms is chosen by the
// value named n: ".one" if it is 1. A key that is not there is said as itself in
// braces, and a placeholder without a value stays as it is: a screen with a gap
// is better than none, and a test reads every key.
func (w Words) Say(key string, pairs ...any) string {
	text, ok := w[key]
	if !ok {
		if text, ok = w[key+form(pairs)]; !ok {
			return "{" + key + "}"
		}
	}
	if strings.Contains(text, "{where-to-press}") {
		text = strings.ReplaceAll(text, "{where-to-press}", w.where())
	}
	var fill []string
	for i := 0; i+1 < len(pairs); i += 2 {
		fill = append(fill, fmt.Sprintf("{%v}", pairs[i]), fmt.Sprint(pairs[i+1]))
	}
	return strings.NewReplacer(fill...).Replace(text) // in one pass: a value's own braces stay
}

// ForTouch returns the words as somebody reads them who presses with a finger, or else
// who has a keyboard: {where-to-press} in a sentence is where to press.
func (w Words) ForTouch(touch bool) Words {
	w = maps.Clone(w)
	if w["where"] = w.Say("where-keys"); touch {
		w["where"] = w.Say("where-touch")
	}
	return w
}

func (w Words) where() string {
	if where, ok := w["where"]; ok {
		return where
	}
	return w.Say("where-keys")
}

func form(pairs []any) string {
	for i := 0; i+1 < len(pairs); i += 2 {
		if pairs[i] == "n" && pairs[i+1] == 1 {
			return ".one"
		}
	}
	return ".other"
}
