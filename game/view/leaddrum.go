package view

import (
	"strconv"

	"groundbeat/game/riff"
	"groundbeat/game/say"
)

// leadDrum is what is set of the lead drum: its level, what that means, and how
// far its riff hides the base; nothing where there is nothing to choose. hides is
// how far the riff at hand does, 0 to 1, or nil where it is not known yet; hide is
// noHide on screens that do not ask for it.
func LeadDrum(w say.Words, level string, levels []string, hide int, hides *float64) Item {
	if len(levels) < 2 {
		return Item{}
	}
	it := Item{ID: "level", Role: RoleChoice, Name: w.Say("level"), Action: ActLevel, Value: level}
	for _, l := range levels {
		name, _ := SayLevel(w, l)
		it.Options = append(it.Options, Option{Value: l, Label: name})
	}
	_, means := SayLevel(w, level)
	if hides != nil {
		means += " " + sayHides(w, *hides)
	}
	return Item{ID: "lead", Role: RoleGroup, Children: Present([]Item{
		it, {ID: "level-means", Role: RoleText, Look: LookNote, Text: means}, hidden(w, level, hide),
	})}
}

// sayLevel names a riff level, and says what it means.
func SayLevel(w say.Words, level string) (name, means string) {
	switch level {
	case LevelBare:
		return w.Say("level-bare"), w.Say("level-bare-means")
	case LevelFilled:
		return w.Say("level-filled"), w.Say("level-filled-means")
	case LevelOrnamented:
		return w.Say("level-ornamented"), w.Say("level-ornamented-means")
	case LevelRiffing:
		return w.Say("level-riffing"), w.Say("level-riffing-means")
	case LevelSolo:
		return w.Say("level-solo"), w.Say("level-solo-means")
	}
	return level, ""
}

const NoHide = -1

// How far a riff can be asked to hide the base, of 100, as predicted.
const LeastHide, MostHide = 1, 100

// hidden is the choice of how far the riff hides the base, where there is a riff:
// within its level as little or as much as it can, or as it comes. What a link asks
// for besides is a choice of its own.
func hidden(w say.Words, level string, hide int) Item {
	if hide == NoHide || !Riffs(level) {
		return Item{}
	}
	it := Item{ID: "hide", Role: RoleChoice, Name: w.Say("hide"), Action: ActHide, Value: strconv.Itoa(hide), Options: []Option{
		{"0", w.Say("hide-any")}, {strconv.Itoa(LeastHide), w.Say("hide-least")}, {strconv.Itoa(MostHide), w.Say("hide-most")}}}
	if Chosen(it.Options, it.Value) == "" {
		it.Options = append(it.Options, Option{it.Value, w.Say("hide-link")})
	}
	return it
}

// sayHides says in words how far a riff hides the base, as predicted: 0 to 1.
func sayHides(w say.Words, hides float64) string {
	switch {
	case hides < riff.HideLittle:
		return w.Say("hides-not")
	case hides < riff.HideSome:
		return w.Say("hides-little")
	case hides < riff.HideMuch:
		return w.Say("hides-well")
	}
	return w.Say("hides-deeply")
}

// offBase reports whether the lead drum has dums of its own: then it must be said
// that those of the bass drum are meant.
func OffBase(level string) bool { return level == LevelRiffing || level == LevelSolo }

// Riffs reports whether there is a riff at a level, or "" for none.
func Riffs(level string) bool { return level != "" && level != LevelBare && level != LevelFilled }
