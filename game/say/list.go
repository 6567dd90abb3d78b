package say

import (
	"strings"
	"unicode"
	"unicode/utf8"
)

func List(w Words, all []string) string {
	if len(all) < 2 {
		return strings.Join(all, "")
	}
	last := len(all) - 1
	return w.Say("list-and", "first", strings.Join(all[:last], ", "), "last", all[last])
}

// Sentence begins a text with a capital and ends it with a full stop; of an empty text
// there is no sentence.
func Sentence(text string) string {
	if text == "" {
		return ""
	}
	first, n := utf8.DecodeRuneInString(text)
	return string(unicode.ToUpper(first)) + text[n:] + "."
}
