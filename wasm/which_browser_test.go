//go:build browser && !js

package main

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
)

// answeredRound is the record of a question as the page script hands it over.
type answeredRound struct {
	Kind, Rhythm, Answer string
	Choices              []string
	Right                bool
	Took                 *float64
	Heard                float64
}

// names are what could give a rhythm away: all names, spellings and ids, but
// those of the choices.
func names(t *testing.T, but []string) []string {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	var some []string
	for _, id := range all.IDs() {
		c, _ := all.Get(id)
		if slices.Contains(but, c.Name) {
			continue
		}
		some = append(append(some, c.Name, c.ID), c.Spellings...)
	}
	return some
}

func TestWhichIsAskedAndKept(t *testing.T) {
	s := serve(t)
	b := open(t)
	b.visit(s.URL + "/?screen=which&ask=rhythm&answers=3&from=maqsum.baladi.saidi&eights=1&seed=3")
	b.press("Begin")
	b.wait("document.querySelector('#choice-1:enabled')")

	choices := get[[]string](b, "[...document.querySelectorAll('#choices button')].map((e) => e.textContent)")
	require.Len(t, choices, 3)
	b.givesNothingAway(choices)

	b.wait("document.querySelector('#repeat:enabled')") // it has been heard
	b.givesNothingAway(choices)
	b.keys("1") // as a press of the first
	b.wait("document.querySelector('#sides')")
	k := get[answeredRound](b, "groundbeat.log().then((l) => l.at(-1))")
	require.Equal(t, "which", k.Kind)
	require.ElementsMatch(t, []string{"maqsum", "baladi", "saidi"}, k.Choices)
	require.Contains(t, k.Choices, k.Rhythm)
	require.Equal(t, k.Answer == k.Rhythm, k.Right)
	require.Greater(t, *k.Took, 4000.0, "ms: after an eight had been heard")
	said := get[string](b, "document.querySelector('h1').textContent")
	require.Equal(t, k.Right, !strings.Contains(said, "you said"), said)
}

// givesNothingAway looks through all that a player, or those behind her, can
// read while a question is asked.
func (b *tab) givesNothingAway(choices []string) {
	b.t.Helper()
	text := get[string](b, `document.title + " " + document.querySelector("#page").innerText + " " +
		[...document.querySelectorAll("#page *")].map((e) => [...e.attributes].map((a) => a.value).join(" ")).join(" ")`)
	for _, c := range choices {
		text = strings.ReplaceAll(text, c, "")
	}
	for _, id := range []string{"maqsum", "baladi", "saidi"} { // the values of the choices' own buttons
		text = strings.ReplaceAll(text, id, "")
	}
	for _, name := range names(b.t, choices) {
		require.NotContains(b.t, strings.ToLower(text), strings.ToLower(name))
	}
	require.Zero(b.t, get[int](b, "document.querySelectorAll('#page svg').length"), "no line of strokes")
	require.NotContains(b.t, get[string](b, "new URLSearchParams(location.search).get('rhythm') ?? ''"), "a", "no rhythm in the link")
}

// Both sides of a review can be heard in turn.
func TestBothSidesAreHeard(t *testing.T) {
	s := serve(t)
	b := monitored(t, s, s.URL+"/?screen=which&ask=rhythm&answers=2&from=maqsum.baladi&eights=1&seed=1")
	b.run("monitor.quiet = 2400")
	b.press("Begin")
	b.wait("document.querySelector('#choice-1:enabled')")
	right := ""
	for tries := 0; right == "" && tries < 8; tries++ { // until an answer is wrong, and there are two sides
		b.keys("1") // as a press of the first
		b.wait("document.querySelector('#sides')")
		k := get[answeredRound](b, "groundbeat.log().then((l) => l.at(-1))")
		if !k.Right {
			right = k.Rhythm
			break
		}
		b.press("Next")
		b.wait("document.querySelector('#choice-1:enabled')")
	}
	require.NotEmpty(t, right)
	// In one cycle baladi's bass drum has three dums and maqsum's two.
	dums := map[string]int{"maqsum": 2, "baladi": 3}
	for i, id := range []string{right, map[string]string{"maqsum": "baladi", "baladi": "maqsum"}[right]} {
		button := []string{"#hear-a", "#hear-b"}[i]
		b.run("monitor.clear(); document.querySelector('" + button + "').click()")
		b.wait("document.querySelector('" + button + "').textContent === 'Stop'")
		b.wait("document.querySelector('" + button + "').textContent !== 'Stop'")
		b.rest(300)
		require.Equal(t, 2*dums[id], get[int](b, "monitor.onsets.length"), "dums of %s in an eight", id)
	}
}

func TestLowerRungs(t *testing.T) {
	s := serve(t)
	b := open(t)
	for _, c := range []struct{ ask, kind string }{{"stroke", "stroke"}, {"how-many", "how-many"}, {"same", "same"}} {
		b.visit(s.URL + "/?screen=which&ask=" + c.ask + "&eights=2&seed=4")
		b.press("Begin")
		b.wait("document.querySelector('#choice-1:enabled')")
		b.keys("1") // as a press of the first
		b.wait("document.querySelector('#next-question')")
		k := get[answeredRound](b, "groundbeat.log().then((l) => l.at(-1))")
		require.Equal(t, c.kind, k.Kind)
		require.Equal(t, k.Choices[0], k.Answer)
	}
}

// A link whose rhythms make no question says so, and offers one that does.
func TestWhichOfTooFew(t *testing.T) {
	s := serve(t)
	b := open(t)
	b.visit(s.URL + "/?screen=which&answers=2&from=fallahi.maqsum")
	require.Contains(t, get[string](b, "document.querySelector('#problems').innerText"), "from=fallahi.maqsum: allowed is two rhythms or more")
	b.run("document.querySelector('#open').click()")
	b.wait("document.querySelector('#begin')")
	require.Contains(t, get[string](b, "location.search"), "from=five")
}
