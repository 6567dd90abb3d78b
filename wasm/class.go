//go:build js

package main

import "syscall/js"

// What belongs to a teacher's classes is kept in the browser's local storage, each text
// under a name of its own, apart from what players keep.
const classKey = "groundbeat.class."

// classroom implements [game.Room]. What cannot be kept holds for this visit.
type classroom struct {
	document js.Value
	local    js.Value // the browser's local storage; null where it gives none
	visit    map[string]string
}

func newClassroom(document, local js.Value) *classroom {
	return &classroom{document: document, local: local, visit: map[string]string{}}
}

// Kept implements [game.Room].
func (c *classroom) Kept(name string) (text string) {
	if text, known := c.visit[name]; known {
		return text
	}
	var err error
	defer recovered(&err)
	if kept := c.local.Call("getItem", classKey+name); kept.Type() == js.TypeString {
		return kept.String()
	}
	return ""
}

// Keep implements [game.Room].
func (c *classroom) Keep(name, text string) (err error) {
	c.visit[name] = text
	defer recovered(&err)
	c.local.Call("setItem", classKey+name, text)
	return nil
}

// Save implements [game.Room].
func (c *classroom) Save(name, kind, text string) error {
	return handOver(c.document, name, kind, js.ValueOf([]any{text}))
}
