//go:build js

package main

// That a round was finished here is a mark in the browser's local storage.
const begunKey = "groundbeat.begun"

// Begun implements [game.Store].
func (s *store) Begun() (begun bool) {
	var err error
	defer recovered(&err)
	return s.local.Call("getItem", begunKey).Truthy()
}

// KeepBegun implements [game.Store].
func (s *store) KeepBegun() {
	var err error
	defer recovered(&err)
	s.local.Call("setItem", begunKey, "yes")
}
