//go:build js

package store

import (
	"groundbeat/wasm/idb"
	"slices"
	"strings"
	"syscall/js"
)

// What belongs to a teacher's classes are things: see things.go. Where a warm-up stands
// is also kept for the window by itself, so that each of two windows, loaded anew, stands
// where it stood.
const classSession = "groundbeat.class."

// ofWindow are the names of what is kept for the window by itself.
var ofWindow = []string{"run", "inside"}

// classroom implements [host.Classes].
type Classroom struct {
	*Store
	Document js.Value
}

// Kept implements [host.Classes].
func (c *Classroom) Kept(name string) string {
	if slices.Contains(ofWindow, name) {
		if text, there := strings.CutPrefix(idb.Item(c.session, classSession+name), "="); there {
			return text
		}
	}
	return c.things.Text(classThing + name)
}

// KeptUnder implements [host.Classes].
func (c *Classroom) KeptUnder(prefix string) (texts []string) {
	for _, n := range c.things.Under(classThing + prefix) {
		texts = append(texts, n.Text)
	}
	return texts
}

// Keep implements [host.Classes].
func (c *Classroom) Keep(name, text string) error {
	if slices.Contains(ofWindow, name) {
		_ = idb.SetItem(c.session, classSession+name, "="+text) // else it stands where the other window stood
	}
	return c.write(classThing+name, text)
}

// Save implements [host.Classes].
func (c *Classroom) Save(name, kind, text string) error {
	return handOver(c.Document, name, kind, js.ValueOf([]any{text}))
}
