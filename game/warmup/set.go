package warmup

import (
	"fmt"
	"slices"
	"strconv"
	"strings"
	"unicode/utf8"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Set is what a warm-up for a room is made from. The same set with the same seed,
// other than 0, is the same warm-up for ever.
//
// A set has two forms of text. In a link it is one word, its parts joined by "_", the
// seed left out if it is 0:
//
//	five_filled_hands-up.what-changed_10_7
//
// In a file it has a line for each part, in any order, after the line "class set 1".
// Blank lines and lines that begin with # are for the reader; a file may hold
// several sets. Not a goal: other programs' quizzes.
type Set struct {
	Name    string // given by the teacher, or none; not in a link
	From    string // as [From] takes it: out of which rhythms
	Level   riff.Level
	Kinds   []Kind // at least one, each once
	Minutes int    // LeastMinutes to MostMinutes
	Seed    uint64 // 0: chosen anew each time; at most MostSeed
}

// Limits of a set.
const (
	LeastMinutes, MostMinutes = 2, 30
	MostSetName               = 40        // letters
	MostSeed                  = 1<<53 - 1 // as in every link
)

// Preset returns a set that is supplied: "first", "ears", "body" or "riff".
func Preset(id string) (Set, bool) {
	for _, p := range presets {
		if p.id == id {
			p.Set.Kinds = slices.Clone(p.Set.Kinds)
			return p.Set, true
		}
	}
	return Set{}, false
}

// Presets lists the ids of the sets that are supplied, in order.
func Presets() (ids []string) {
	for _, p := range presets {
		ids = append(ids, p.id)
	}
	return ids
}

// What is supplied, and how long it lasts: own choice, within the ten minutes that a
// teacher has.
var presets = []struct {
	id string
	Set
}{
	{"first", Set{From: quiz.Five, Level: riff.Bare, Kinds: []Kind{HandsUp, SayIt, WalkAndClap}, Minutes: 8}},
	{"ears", Set{From: quiz.Five, Level: riff.Ornamented, Kinds: []Kind{HandsUp, WhatChanged, FindTheOne, BaseOrRiff}, Minutes: 10}},
	{"body", Set{From: quiz.Five, Level: riff.Filled, Kinds: []Kind{WalkAndClap, SayIt, CatchTheStop}, Minutes: 6}},
	{"riff", Set{From: quiz.Five, Level: riff.Solo, Kinds: Kinds(), Minutes: 12}},
}

// Link returns the set as one word for a link.
func (s Set) Link() string {
	parts := []string{s.From, s.Level.String(), joined(s.Kinds), strconv.Itoa(s.Minutes)}
	if s.Seed != 0 {
		parts = append(parts, strconv.FormatUint(s.Seed, 10))
	}
	return strings.Join(parts, "_")
}

func joined(kinds []Kind) string {
	var all []string
	for _, k := range kinds {
		all = append(all, string(k))
	}
	return strings.Join(all, ".")
}

// ParseLink reads a set from a link: the id of a preset, or what [Set.Link] writes.
func ParseLink(text string, c *rhythm.Catalogue) (Set, error) {
	if s, ok := Preset(text); ok {
		return s, nil
	}
	parts := strings.Split(text, "_")
	if len(parts) != 4 && len(parts) != 5 {
		return Set{}, fmt.Errorf("set: rhythms, riff, kinds, minutes and perhaps a seed, with _ between; or one of %s",
			strings.Join(Presets(), ", "))
	}
	var s Set
	for i, key := range []string{"from", "riff", "kinds", "minutes", "seed"}[:len(parts)] {
		if err := s.set(key, parts[i]); err != nil {
			return Set{}, err
		}
	}
	return s, s.Check(c)
}

// set takes one part from its text.
func (s *Set) set(key, text string) (err error) {
	switch key {
	case "name":
		s.Name = text
	case "from":
		s.From = text
	case "riff":
		if s.Level, err = riff.ParseLevel(text); err != nil {
			return fmt.Errorf("riff: %w", err)
		}
	case "kinds":
		s.Kinds = nil
		for k := range strings.SplitSeq(text, ".") {
			s.Kinds = append(s.Kinds, Kind(k))
		}
	case "minutes":
		if s.Minutes, err = strconv.Atoi(text); err != nil {
			return fmt.Errorf("minutes: '%s' is no whole number", text)
		}
	case "seed":
		if s.Seed, err = strconv.ParseUint(text, 10, 64); err != nil {
			return fmt.Errorf("seed: '%s' is no whole number", text)
		}
	default:
		return fmt.Errorf("'%s' is not known; a set has name, from, riff, kinds, minutes, seed", key)
	}
	return nil
}

// Check reports what is wrong with the set, or nil: also rhythms that make none of
// its questions.
func (s Set) Check(c *rhythm.Catalogue) error {
	pool, err := quiz.From(c, s.From)
	switch {
	case err != nil:
		return err
	case !riff.Available(s.Level):
		return fmt.Errorf("riff: level '%s' is not available", s.Level)
	case len(s.Kinds) == 0:
		return fmt.Errorf("kinds: none; at least one of %s", joined(Kinds()))
	case s.Minutes < LeastMinutes || s.Minutes > MostMinutes:
		return fmt.Errorf("minutes: %d; allowed is %d to %d", s.Minutes, LeastMinutes, MostMinutes)
	case s.Seed > MostSeed:
		return fmt.Errorf("seed: %d; allowed is 0 to %d", s.Seed, uint64(MostSeed))
	case utf8.RuneCountInString(s.Name) > MostSetName || strings.ContainsAny(s.Name, "\r\n"):
		return fmt.Errorf("name: one line of at most %d letters", MostSetName)
	}
	for i, k := range s.Kinds {
		if !slices.Contains(Kinds(), k) {
			return fmt.Errorf("kinds: there is no '%s'; allowed is %s", k, joined(Kinds()))
		}
		if slices.Contains(s.Kinds[:i], k) {
			return fmt.Errorf("kinds: %s stands there twice", k)
		}
		if _, err := s.draw(pool, k, riff.Bare, 1); err != nil {
			return fmt.Errorf("kinds: %s: %w", k, err)
		}
	}
	return nil
}
