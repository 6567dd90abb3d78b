package warmup

import (
	"encoding/json"
	"fmt"
	"slices"
	"strconv"
	"strings"
	"time"

	"groundbeat/scoring/history"
)

// An Entry is a warm-up in the diary of a class: one line of JSON. It is about a room;
// nothing in it is about a person.
type Entry struct {
	Version int       `json:"v"`
	When    time.Time `json:"when"`            // the first task was reached
	Class   string    `json:"class,omitempty"` // its nickname
	Set     string    `json:"set"`             // as in a link, with its seed
	Tasks   []Done    `json:"tasks"`
}

// Done is one task of an entry.
type Done struct {
	Kind    Kind     `json:"kind"`
	Rhythm  string   `json:"rhythm"`
	BPM     int      `json:"bpm"`
	Riff    string   `json:"riff"`
	Choices []string `json:"choices,omitempty"`
	Right   string   `json:"right,omitempty"`
	Hands   []Hands  `json:"hands,omitempty"` // for each choice
}

const entryVersion = 1

// Entry is the run in the diary, as far as it has come.
func (r *Run) Entry() Entry {
	e := Entry{Version: entryVersion, When: r.kept.Begun, Class: r.Class, Set: r.kept.Set}
	for i := range r.kept.Reached {
		t := &r.Warmup.Tasks[i]
		done := Done{Kind: t.Kind, Rhythm: t.Rhythm.ID, BPM: t.BPM, Riff: t.Level.String(), Right: t.Right,
			Hands: slices.Clone(r.kept.Hands[i])}
		for _, c := range t.Choices {
			done.Choices = append(done.Choices, c.ID)
		}
		e.Tasks = append(e.Tasks, done)
	}
	return e
}

// Line writes the entry as one line, without a line feed.
func (e Entry) Line() string {
	line, err := json.Marshal(e)
	if err != nil {
		panic(err) // it holds nothing that cannot be written
	}
	return string(line)
}

// ParseDiary reads a diary, one entry a line. Lines that cannot be read are left out
// and counted; they stay where they are kept.
func ParseDiary(text string) (entries []Entry, unread int) {
	for line := range strings.SplitSeq(text, "\n") {
		if strings.TrimSpace(line) == "" {
			continue
		}
		var e Entry
		if err := json.Unmarshal([]byte(line), &e); err != nil || !e.Fits() {
			unread++
			continue
		}
		entries = append(entries, e)
	}
	return entries, unread
}

// fits reports whether the entry is of this version and holds together.
func (e Entry) Fits() bool {
	if e.Version != entryVersion || e.When.IsZero() {
		return false
	}
	return !slices.ContainsFunc(e.Tasks, func(d Done) bool {
		return len(d.Hands) != len(d.Choices) || slices.ContainsFunc(d.Hands, func(h Hands) bool { return !h.Valid() })
	})
}

// Same reports whether two entries are of the same warm-up, begun at the same time.
func (e Entry) Same(other Entry) bool { return e.When.Equal(other.When) && e.Set == other.Set }

// Key is by what an entry is found: that of the same warm-up, begun at the same time, is
// the same.
func (e Entry) Key() string { return e.When.UTC().Format(time.RFC3339Nano) + " " + e.Set }

// SplitDiary returns the lines of a diary by the keys of their entries; one that cannot
// be read is its own key.
func SplitDiary(diary string) map[string]string {
	lines := map[string]string{}
	for line := range strings.SplitSeq(diary, "\n") {
		line = strings.TrimSpace(line)
		if entries, _ := ParseDiary(line); len(entries) == 1 {
			lines[entries[0].Key()] = line
		} else if line != "" {
			lines[line] = line
		}
	}
	return lines
}

// CSV writes entries as comma-separated values (RFC 4180), one row for each answer and
// one for each task without any. A field that a spreadsheet would take for a formula
// begins with an apostrophe.
func CSV(entries []Entry) string {
	var b strings.Builder
	put := func(cells ...string) {
		for i := range cells {
			cells[i] = history.Harmless(cells[i])
		}
		b.WriteString(history.SheetLine(cells))
	}
	put("when", "class", "set", "question", "kind", "rhythm", "bpm", "riff", "answer", "right", "hands")
	for _, e := range entries {
		for i, d := range e.Tasks {
			row := []string{e.When.Format(time.RFC3339), e.Class, e.Set, strconv.Itoa(i + 1), string(d.Kind), d.Rhythm, strconv.Itoa(d.BPM), d.Riff}
			if len(d.Choices) == 0 {
				put(append(row, "", "", "")...)
			}
			for j, c := range d.Choices {
				put(append(slices.Clone(row), c, fmt.Sprint(c == d.Right), string(d.Hands[j]))...)
			}
		}
	}
	return b.String()
}
