//go:build js

package main

import (
	"syscall/js"
	"time"
)

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
func (c *classroom) Save(name, kind, text string) (err error) {
	defer recovered(&err)
	handOver(c.document, name, kind, text)
	return nil
}

// handOver hands a file to the player. Where the browser asks where to put it, it reads
// it only once that was answered, so that its address holds for a while.
func handOver(document js.Value, name, kind, text string) {
	blob := js.Global().Get("Blob").New([]any{text}, map[string]any{"type": kind})
	url := js.Global().Get("URL")
	link := document.Call("createElement", "a")
	address := url.Call("createObjectURL", blob)
	link.Set("href", address)
	link.Set("download", name)
	link.Call("click")
	time.AfterFunc(10*time.Minute, func() { url.Call("revokeObjectURL", address) })
}
