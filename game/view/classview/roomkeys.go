package classview

import (
	"slices"
	"strings"

	"groundbeat/game/quiz"
	"groundbeat/game/view"
)

// onKeys and backKeys are what clickers send, and a keyboard has, for on and back.
var (
	onKeys   = []string{"PageDown", "ArrowRight", "ArrowDown", "Enter", " "}
	backKeys = []string{"PageUp", "ArrowLeft", "ArrowUp", "Backspace"}
)

// clicks are the keys with which a clicker goes on and back on a page that scrolls: what
// scrolls it, or is a button's own, is not among them.
func clicks(on, back string) (keys []view.Key) {
	for _, k := range onKeys[:2] {
		if on != "" {
			keys = append(keys, view.Key{k, on, ""})
		}
	}
	for _, k := range backKeys[:2] {
		if back != "" {
			keys = append(keys, view.Key{k, back, ""})
		}
	}
	return keys
}

// keys are a presenter's clicker's, and a keyboard's.
func (r *Room) keys() []view.Key {
	keys := []view.Key{{".", view.ActClassBlank, ""}}
	for _, k := range onKeys {
		keys = append(keys, view.Key{k, view.ActClassNext, ""})
	}
	back := view.ActClassBack
	if r.Stage == quiz.WalkIn { // nothing lies before it
		back = view.ActClassLeave
	}
	for _, k := range backKeys {
		keys = append(keys, view.Key{k, back, ""})
	}
	for _, k := range strings.Split("0123456789", "") {
		keys = append(keys, view.Key{k, view.ActClassHands, k})
	}
	if r.Blank { // the first key shows again what was there, and does nothing else
		keys = slices.DeleteFunc(keys, func(k view.Key) bool { return k.Action == view.ActClassHands })
		for i := range keys {
			keys[i].Action = view.ActClassBlank
		}
		return append(keys, view.Key{"b", view.ActClassBlank, ""})
	}
	if !r.Letters {
		return keys
	}
	return append(keys, view.Key{"b", view.ActClassBlank, ""}, view.Key{"o", view.ActClassOnce, ""}, view.Key{"a", view.ActAlone, "yes"}, view.Key{"l", view.ActSlower, ""},
		view.Key{"k", view.ActClassSkip, ""}, view.Key{"c", view.ActClassHands, ""},
		view.Key{"m", view.ActClassHands, string(quiz.Most)}, view.Key{"s", view.ActClassHands, string(quiz.Some)},
		view.Key{"f", view.ActClassHands, string(quiz.Few)}, view.Key{"n", view.ActClassHands, string(quiz.None)})
}
