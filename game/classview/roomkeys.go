package classview

import (
	"slices"
	"strings"

	"groundbeat/game/view"
	"groundbeat/game/warmup"
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
			keys = append(keys, view.Key{Key: k, Action: on, Value: ""})
		}
	}
	for _, k := range backKeys[:2] {
		if back != "" {
			keys = append(keys, view.Key{Key: k, Action: back, Value: ""})
		}
	}
	return keys
}

// keys are a presenter's clicker's, and a keyboard's.
func (r *Room) keys() []view.Key {
	keys := []view.Key{{Key: ".", Action: view.ActClassBlank, Value: ""}}
	for _, k := range onKeys {
		keys = append(keys, view.Key{Key: k, Action: view.ActClassNext, Value: ""})
	}
	back := view.ActClassBack
	if r.Stage == warmup.WalkIn { // nothing lies before it
		back = view.ActClassLeave
	}
	for _, k := range backKeys {
		keys = append(keys, view.Key{Key: k, Action: back, Value: ""})
	}
	for _, k := range strings.Split("0123456789", "") {
		keys = append(keys, view.Key{Key: k, Action: view.ActClassHands, Value: k})
	}
	if r.Blank { // the first key shows again what was there, and does nothing else
		keys = slices.DeleteFunc(keys, func(k view.Key) bool { return k.Action == view.ActClassHands })
		for i := range keys {
			keys[i].Action = view.ActClassBlank
		}
		return append(keys, view.Key{Key: "b", Action: view.ActClassBlank, Value: ""})
	}
	if !r.Letters {
		return keys
	}
	return append(keys, view.Key{Key: "b", Action: view.ActClassBlank, Value: ""}, view.Key{Key: "o", Action: view.ActClassOnce, Value: ""}, view.Key{Key: "a", Action: view.ActAlone, Value: "yes"}, view.Key{Key: "l", Action: view.ActSlower, Value: ""},
		view.Key{Key: "k", Action: view.ActClassSkip, Value: ""}, view.Key{Key: "c", Action: view.ActClassHands, Value: ""},
		view.Key{Key: "m", Action: view.ActClassHands, Value: string(warmup.Most)}, view.Key{Key: "s", Action: view.ActClassHands, Value: string(warmup.Some)},
		view.Key{Key: "f", Action: view.ActClassHands, Value: string(warmup.Few)}, view.Key{Key: "n", Action: view.ActClassHands, Value: string(warmup.None)})
}
