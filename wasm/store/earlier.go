//go:build js

package store

import (
	"fmt"

	"groundbeat/game/host"
	"groundbeat/game/warmup"
	"groundbeat/wasm/idb"
	"groundbeat/wasm/memo"
)

// What earlier programs kept in the local storage, and as what things it is taken over.
// The texts stay as they are: an earlier page that is still open, or comes back, finds
// there what it had, and goes on writing there. Beside each is put what was taken over of
// it. So it is taken over once; a start that was cut in the middle does it anew; and of a
// text that an earlier page has changed since, the changes are taken over.
const takenKey = "groundbeat.taken." // followed by the key of what was taken over

// earlierTexts are their keys, and how each is read.
var earlierTexts = map[string]func(text string) (map[string]string, error){
	"groundbeat.begun":         as(begunThing),
	"groundbeat.outputs":       earlierOutputs,
	"groundbeat.class.run":     as(classThing + "run"),
	"groundbeat.class.inside":  as(classThing + "inside"),
	"groundbeat.class.last":    as(classThing + "last"),
	"groundbeat.class.class":   as(classThing + "class"),
	"groundbeat.class.letters": as(classThing + "letters"),
	"groundbeat.class.sets":    under(classThing+host.KeptSet, warmup.SplitSets),
	"groundbeat.class.diary":   under(classThing+host.KeptDiary, warmup.SplitDiary),
}

// as reads a text that is one thing.
func as(key string) func(string) (map[string]string, error) {
	return func(text string) (map[string]string, error) { return map[string]string{key: text}, nil }
}

// under reads a text that was many, such as the sets of classes or a line for each warm-up:
// each is a thing under a key that begins so. What cannot be read is kept as it is.
func under(key string, split func(string) map[string]string) func(string) (map[string]string, error) {
	return func(text string) (map[string]string, error) {
		all := map[string]string{}
		for name, one := range split(text) {
			all[key+name] = one
		}
		return all, nil
	}
}

// takeEarlier takes over what earlier programs kept.
func (s *Store) takeEarlier() {
	for key, read := range earlierTexts {
		text, taken := idb.Item(s.local, key), idb.Item(s.local, takenKey+key)
		if text == taken {
			continue
		}
		is, err := read(text)
		if err != nil {
			fmt.Println(key+":", err) // for whoever looks into the console
			_ = idb.SetItem(s.local, key+".broken", text)
			_ = idb.SetItem(s.local, takenKey+key, text)
			continue
		}
		was, _ := read(taken)
		if s.takeOver(was, is) == nil {
			_ = idb.SetItem(s.local, takenKey+key, text) // else it is taken over once more
		}
	}
}

// takeOver takes over what there is, where some of it was taken over before.
func (s *Store) takeOver(was, is map[string]string) (err error) {
	for key, text := range memo.Changes(was, is) {
		n := memo.Note{Key: key, Text: text, When: memo.Found}
		if _, before := was[key]; before {
			n.When = s.things.Notes[key].When + 1 // it was changed since
		}
		if s.things.Take(n) {
			if failed := s.lay(n); failed != nil {
				err = failed
			}
		}
	}
	return err
}

// earlierOutputs reads the outputs, which were one text.
func earlierOutputs(text string) (map[string]string, error) {
	if text == "" {
		return nil, nil
	}
	outputs, err := host.ParseOutputs(text)
	if err != nil {
		return nil, err
	}
	return outputTexts(outputs), nil
}
