package view

import (
	"slices"
	"strings"

	"groundbeat/game/quiz"
)

// onKeys and backKeys are what clickers send, and a keyboard has, for on and back.
var (
	onKeys   = []string{"PageDown", "ArrowRight", "ArrowDown", "Enter", " "}
	backKeys = []string{"PageUp", "ArrowLeft", "ArrowUp", "Backspace"}
)

// clicks are the keys with which a clicker goes on and back on a page that scrolls: what
// scrolls it, or is a button's own, is not among them.
func clicks(on, back string) (keys []Key) {
	for _, k := range onKeys[:2] {
		if on != "" {
			keys = append(keys, Key{k, on, ""})
		}
	}
	for _, k := range backKeys[:2] {
		if back != "" {
			keys = append(keys, Key{k, back, ""})
		}
	}
	return keys
}

// keys are a presenter's clicker's, and a keyboard's.
func (r *Room) keys() []Key {
	keys := []Key{{".", ActClassBlank, ""}}
	for _, k := range onKeys {
		keys = append(keys, Key{k, ActClassNext, ""})
	}
	back := ActClassBack
	if r.Stage == quiz.WalkIn { // nothing lies before it
		back = ActClassLeave
	}
	for _, k := range backKeys {
		keys = append(keys, Key{k, back, ""})
	}
	for _, k := range strings.Split("0123456789", "") {
		keys = append(keys, Key{k, ActClassHands, k})
	}
	if r.Blank { // the first key shows again what was there, and does nothing else
		keys = slices.DeleteFunc(keys, func(k Key) bool { return k.Action == ActClassHands })
		for i := range keys {
			keys[i].Action = ActClassBlank
		}
		return append(keys, Key{"b", ActClassBlank, ""})
	}
	if !r.Letters {
		return keys
	}
	return append(keys, Key{"b", ActClassBlank, ""}, Key{"o", ActClassOnce, ""}, Key{"a", ActAlone, "yes"}, Key{"l", ActSlower, ""},
		Key{"k", ActClassSkip, ""}, Key{"c", ActClassHands, ""},
		Key{"m", ActClassHands, string(quiz.Most)}, Key{"s", ActClassHands, string(quiz.Some)},
		Key{"f", ActClassHands, string(quiz.Few)}, Key{"n", ActClassHands, string(quiz.None)})
}
