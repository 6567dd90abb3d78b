package classview

import (
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// pressed is what a key does, or nothing.
func pressed(keys []view.Key, key string) (action, value string) {
	i := slices.IndexFunc(keys, func(k view.Key) bool { return k.Key == key })
	if i < 0 {
		return "", ""
	}
	return keys[i].Action, keys[i].Value
}

// A clicker's keys do the same at every stage, but for back at the walk-in, before which
// nothing lies.
func TestClickerDoesTheSameEverywhere(t *testing.T) {
	for stage := warmup.WalkIn; stage <= warmup.Hearing; stage++ {
		keys := (&Room{Stage: stage}).keys()
		for _, key := range onKeys {
			action, _ := pressed(keys, key)
			require.Equal(t, view.ActClassNext, action, "%d %s", stage, key)
		}
		for _, key := range backKeys {
			action, _ := pressed(keys, key)
			require.Equal(t, stage == warmup.WalkIn, action == view.ActClassLeave, "%d %s", stage, key)
			require.Equal(t, stage != warmup.WalkIn, action == view.ActClassBack, "%d %s", stage, key)
		}
		action, _ := pressed(keys, ".")
		require.Equal(t, view.ActClassBlank, action)
	}
}

// Figures count hands, each for itself.
func TestFiguresAreKeys(t *testing.T) {
	keys := (&Room{Stage: warmup.Counting}).keys()
	for figure := '0'; figure <= '9'; figure++ {
		action, value := pressed(keys, string(figure))
		require.Equal(t, []string{view.ActClassHands, string(figure)}, []string{action, value})
	}
}

// Letters are keys only where they are asked for, and then each does one thing.
func TestLettersAreKeysIfAskedFor(t *testing.T) {
	letters := map[string][2]string{"b": {view.ActClassBlank, ""}, "o": {view.ActClassOnce, ""}, "a": {view.ActAlone, "yes"},
		"l": {view.ActSlower, ""}, "k": {view.ActClassSkip, ""}, "c": {view.ActClassHands, ""},
		"m": {view.ActClassHands, "most"}, "s": {view.ActClassHands, "some"}, "f": {view.ActClassHands, "few"}, "n": {view.ActClassHands, "none"}}
	with, without := (&Room{Letters: true}).keys(), (&Room{}).keys()
	for letter := 'a'; letter <= 'z'; letter++ {
		action, value := pressed(with, string(letter))
		require.Equal(t, letters[string(letter)], [2]string{action, value}, string(letter))
		action, _ = pressed(without, string(letter))
		require.Empty(t, action, string(letter))
	}
}

// On a blank screen every key that does anything shows again what was there, also the
// letter that made it blank, whether letters are keys or not; and no hand is counted.
func TestBlankScreenOnlyShows(t *testing.T) {
	for _, letters := range []bool{false, true} {
		for stage := warmup.WalkIn; stage <= warmup.Hearing; stage++ {
			keys := (&Room{Stage: stage, Blank: true, Letters: letters}).keys()
			for _, k := range keys {
				require.Equal(t, view.ActClassBlank, k.Action, k.Key)
				require.Empty(t, k.Value)
			}
			for _, key := range append(slices.Concat(onKeys, backKeys), ".", "b") {
				action, _ := pressed(keys, key)
				require.NotEmpty(t, action, key)
			}
			action, _ := pressed(keys, "7")
			require.Empty(t, action)
		}
	}
}

// No key is told twice, at any stage.
func TestNoKeyIsToldTwice(t *testing.T) {
	for stage := warmup.WalkIn; stage <= warmup.Hearing; stage++ {
		for _, blank := range []bool{false, true} {
			seen := map[string]bool{}
			for _, k := range (&Room{Stage: stage, Letters: true, Blank: blank}).keys() {
				require.False(t, seen[k.Key], k.Key)
				seen[k.Key] = true
			}
		}
	}
}

// On a page that scrolls a clicker's own keys are taken and no others: the space bar and
// the arrows up and down still scroll it, and Enter belongs to its buttons.
func TestClicksLeaveScrolling(t *testing.T) {
	require.Empty(t, clicks("", ""))
	keys := clicks("on", "back")
	require.Len(t, keys, 4)
	for key, want := range map[string]string{"PageDown": "on", "ArrowRight": "on", "PageUp": "back", "ArrowLeft": "back",
		" ": "", "Enter": "", "ArrowUp": "", "ArrowDown": "", "Backspace": ""} {
		action, _ := pressed(keys, key)
		require.Equal(t, want, action, key)
	}
	require.Len(t, clicks("on", ""), 2)
	action, _ := pressed(clicks("", "back"), "PageDown")
	require.Empty(t, action)
}
