// Package memo puts together small texts that several windows of a browser write: each
// stands under a key of its own, with the time at which it was written, and of two under
// one key the later counts. So windows that write under different keys lose nothing of
// one another, in whatever order they learn of it; and the same texts, put together in
// any order, are the same in the end.
//
// It is not for texts in which two people write at once: the earlier one is forgotten.
package memo

import (
	"cmp"
	"encoding/json"
	"fmt"
	"maps"
	"slices"
	"strings"
)

// A Note is a text under a key. One whose text is empty says that what was under the key
// was removed, and when.
type Note struct {
	Key  string
	Text string
	When int64 // ms since 1970, and more than that of what it replaced; see Notes.Write
}

// Found is the time of a note that was found without one, as earlier programs kept
// them: before every other.
const Found = 1

// later reports whether a note counts more than another of its key. Of two that were
// written in the same millisecond it is the one whose text is greater: any rule does
// that is the same in every window.
func (n Note) later(other Note) bool {
	return cmp.Or(cmp.Compare(n.When, other.When), cmp.Compare(n.Text, other.Text)) > 0
}

// form is how a note is written, without its key.
type form struct {
	Text string `json:"text"`
	When int64  `json:"when"`
}

// Format writes what is under the key as one line of JSON.
func (n Note) Format() string {
	line, err := json.Marshal(form{n.Text, n.When})
	if err != nil {
		panic(err) // it holds nothing that cannot be written
	}
	return string(line)
}

// Parse reads what Format wrote.
func Parse(key, line string) (Note, error) {
	var f form
	if err := json.Unmarshal([]byte(line), &f); err != nil {
		return Note{}, fmt.Errorf("%s: %w", key, err)
	}
	if f.When < Found {
		return Note{}, fmt.Errorf("%s: no time", key)
	}
	return Note{key, f.Text, f.When}, nil
}

// Notes are those of one window, by key.
type Notes map[string]Note

// Text is what is under a key; "" if nothing is.
func (all Notes) Text(key string) string { return all[key].Text }

// Write writes a text under a key at a time, ms since 1970, or removes what is there if
// it is "". It returns the note, and reports whether anything is different. A note is
// always later than what it replaces, also where the clock was set back meanwhile.
func (all Notes) Write(key, text string, now int64) (Note, bool) {
	was := all[key]
	if was.Text == text {
		return was, false
	}
	all[key] = Note{key, text, max(now, was.When+1, Found+1)}
	return all[key], true
}

// Take takes a note of another window, unless what is there is as late; it reports
// whether it did.
func (all Notes) Take(n Note) bool {
	was, there := all[n.Key]
	if there && !n.later(was) {
		return false
	}
	all[n.Key] = n
	return true
}

// Under are the notes whose keys begin with a text, without those that were removed, the
// oldest first.
func (all Notes) Under(prefix string) (some []Note) {
	for key, n := range all {
		if strings.HasPrefix(key, prefix) && n.Text != "" {
			some = append(some, n)
		}
	}
	slices.SortFunc(some, func(a, b Note) int {
		return cmp.Or(cmp.Compare(a.When, b.When), cmp.Compare(a.Key, b.Key))
	})
	return some
}

// Changes are what is to be written to make of some texts by key others: the texts that
// are new or different, and "" for those that are gone.
func Changes(was, is map[string]string) map[string]string {
	changes := maps.Clone(is)
	for key, text := range was {
		if now, there := is[key]; !there {
			if changes == nil {
				changes = map[string]string{}
			}
			changes[key] = ""
		} else if now == text {
			delete(changes, key)
		}
	}
	return changes
}
