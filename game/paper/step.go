package paper

import (
	"groundbeat/game/host"
	"groundbeat/game/view"
)

// Update is a frame in which no time passes.
func (b *Browser) Update() {
	pace := b.Pace
	b.Pace = 0
	b.Frame()
	b.Pace = pace
}

// Use lets a control be used, whether or not it is on the screen, and returns the screen
// that comes of it. The page has to keep what it shows (Page.Keeps).
func (b *Browser) Use(action, value string) *view.Screen {
	b.Page.Add(host.Event{Kind: host.Used, Action: action, Value: value})
	b.Update()
	return &b.Page.Shown[len(b.Page.Shown)-1]
}

// Ticks lets so many ms pass, ten at a time.
func (b *Browser) Ticks(ms int) {
	for range ms / 10 {
		b.Wall.Pass(10)
		b.Update()
	}
}
