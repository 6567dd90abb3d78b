package warmup

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
)

func TestSetAsLink(t *testing.T) {
	s := Set{From: "maqsum.saidi.baladi", Level: riff.Riffing, Kinds: []Kind{WhatChanged, HandsUp}, Minutes: 7, Seed: 9}
	require.Equal(t, "maqsum.saidi.baladi_riffing_what-changed.hands-up_7_9", s.Link())
	got, err := ParseLink(s.Link(), supplied(t))
	require.NoError(t, err)
	require.Equal(t, s, got)
	s.Seed = 0
	require.Equal(t, "maqsum.saidi.baladi_riffing_what-changed.hands-up_7", s.Link())
	for _, id := range Presets() {
		s, err := ParseLink(id, supplied(t))
		require.NoError(t, err)
		require.NoError(t, s.Check(supplied(t)))
		again, err := ParseLink(s.Link(), supplied(t))
		require.NoError(t, err)
		require.Equal(t, s, again)
	}
}

func TestSetErrors(t *testing.T) {
	for link, want := range map[string]string{
		"":                                      "set: rhythms, riff, kinds, minutes and perhaps a seed, with _ between; or one of first, ears, body, riff",
		"five_filled_hands-up":                  "set: rhythms, riff, kinds, minutes and perhaps a seed, with _ between; or one of first, ears, body, riff",
		"five_loud_hands-up_5":                  "riff: unknown riff level 'loud'",
		"five_bare_dance_5":                     "kinds: there is no 'dance'; allowed is hands-up.say-it.walk-and-clap.what-changed.base-or-riff.find-the-1.catch-the-stop",
		"five_bare__5":                          "kinds: there is no ''",
		"five_bare_hands-up.hands-up_5":         "kinds: hands-up stands there twice",
		"five_bare_hands-up_1":                  "minutes: 1; allowed is 2 to 30",
		"five_bare_hands-up_31":                 "minutes: 31; allowed is 2 to 30",
		"five_bare_hands-up_x":                  "minutes: 'x' is no whole number",
		"five_bare_hands-up_5_-1":               "seed: '-1' is no whole number",
		"five_bare_hands-up_5_9007199254740992": "seed: 9007199254740992; allowed is 0 to 9007199254740991",
		"waltz_bare_hands-up_5":                 "quiz: there is no rhythm 'waltz'",
		"karachi_bare_hands-up_5":               "can be heard, but is no answer in a quiz",
		"maqsum_bare_hands-up_5":                "kinds: hands-up: quiz: too few rhythms: maqsum alone; a question needs two",
		"karsilama_bare_walk-and-clap_5":        "kinds: walk-and-clap: quiz: too few rhythms: none of them suits it",
	} {
		_, err := ParseLink(link, supplied(t))
		require.ErrorContains(t, err, want, link)
	}
}

func TestSetsAsFile(t *testing.T) {
	a, _ := Preset("ears")
	a.Name, a.Seed = "Tuesday: beginners, الثلاثاء", 12
	b, _ := Preset("body")
	text := Format(a, b)
	require.Equal(t, "class set 1\nname: Tuesday: beginners, الثلاثاء\nfrom: five\nriff: ornamented\n"+
		"kinds: hands-up.what-changed.find-the-1.base-or-riff\nminutes: 10\nseed: 12\n\n"+
		"class set 1\nfrom: five\nriff: filled\nkinds: walk-and-clap.say-it.catch-the-stop\nminutes: 6\n", text)
	got, err := ParseSets("x.txt", "# for Tuesday\r\n"+strings.ReplaceAll(text, "\n", "\r\n"), supplied(t))
	require.NoError(t, err)
	require.Equal(t, []Set{a, b}, got)
	for text, want := range map[string]string{
		"":                                   "x.txt:1: no line 'class set 1'",
		"from: five":                         "x.txt:1: before any line 'class set 1'",
		"class set 1\nfrom five":             "x.txt:2: no colon",
		"class set 1\n\nriff: loud":          "x.txt:3: riff: unknown riff level 'loud'",
		"class set 1\nfrom: five\nfrom: all": "x.txt:3: from stands there twice",
		"class set 1\ntempo: 90":             "x.txt:2: 'tempo' is not known; a set has name, from, riff, kinds, minutes, seed",
		"\nclass set 1\nfrom: five\nriff: bare\nkinds: say-it\n":          "x.txt:2: minutes: 0; allowed is 2 to 30",
		Format(a) + "class set 1\nfrom: five":                             "x.txt:8: kinds: none",
		strings.Replace(Format(a), "Tuesday", strings.Repeat("n", 41), 1): "x.txt:1: name: one line of at most 40 letters",
	} {
		_, err := ParseSets("x.txt", text, supplied(t))
		require.ErrorContains(t, err, want, text)
	}
}

// Whatever is read as a set can be written, and is then read as the same.
func FuzzParseSets(f *testing.F) {
	for _, id := range Presets() {
		s, _ := Preset(id)
		f.Add(Format(s))
	}
	f.Add("class set 1\nname: a: b\nfrom: saidi.maqsum\nriff: solo\nkinds: find-the-1\nminutes: 2\nseed: 1\nclass set 1\n")
	f.Fuzz(func(t *testing.T, text string) {
		sets, err := ParseSets("f", text, supplied(t))
		if err != nil {
			require.NotPanics(t, func() { _ = fmt.Sprint(err) })
			return
		}
		again, err := ParseSets("f", Format(sets...), supplied(t))
		require.NoError(t, err)
		require.Equal(t, sets, again)
		for _, s := range sets {
			name := s.Name
			s.Name = ""
			linked, err := ParseLink(s.Link(), supplied(t))
			require.NoError(t, err, name)
			require.Equal(t, s, linked)
		}
	})
}
