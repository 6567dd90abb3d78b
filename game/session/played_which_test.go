package session_test

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/paper"
	"groundbeat/game/rhythm"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
	"groundbeat/scoring/history"
)

// tells are the names, spellings and ids of the rhythms that stand on the screen or in
// the address, but for some that are to be there.
func tells(t *testing.T, b *paper.Browser, but []string) (told []string) {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	text := b.Text() + b.Query()
	b.Screen().Each(func(it *view.Item) { text += it.Value + it.Place })
	for _, s := range but {
		text = strings.ReplaceAll(text, s, "")
	}
	text = strings.ToLower(text)
	for _, id := range all.IDs() {
		c, _ := all.Get(id)
		for _, name := range append([]string{c.ID, c.Name}, c.Spellings...) {
			if strings.Contains(text, strings.ToLower(name)) {
				told = append(told, name)
			}
		}
	}
	return told
}

// Which rhythm? is answered by a digit as by a press of its name, and kept with the
// choices; what is asked is nowhere told before, neither on the screen nor in the address.
func TestWhichGivesNothingAway(t *testing.T) {
	for seed := range uint64(5) {
		b := opened(t, fmt.Sprintf("?screen=which&ask=rhythm&answers=3&from=maqsum.baladi.saidi&eights=1&seed=%d", seed+1), seed)
		require.NoError(t, b.Press("begin"))
		require.Error(t, b.Key("1"), "nothing has been heard")
		var choices []string
		for _, wait := range []float64{1000, 7000} {
			b.Wait(wait)
			choices = nil
			for _, it := range b.Find("choices").Children {
				choices = append(choices, it.Name, it.Value)
			}
			require.Len(t, choices, 6)
			require.Empty(t, tells(t, b, append(choices, "from=maqsum.baladi.saidi")))
			b.Screen().Each(func(it *view.Item) { require.Nil(t, it.Picture, "no line of strokes") })
		}
		require.NoError(t, b.Key("1"))
		r := b.Storage.Rounds()[0]
		require.Equal(t, choices[1], r.Answer)
		require.ElementsMatch(t, []string{"maqsum", "baladi", "saidi"}, r.Choices)
		require.Equal(t, r.Answer == r.Rhythm, r.Right)
		require.Greater(t, *r.Took, 4000.0, "ms: after an eight had been heard")
		require.Equal(t, r.Right, !strings.Contains(b.Find("heading").Name, "you said"))
	}
}

// Both sides of a review are heard, each at its button, and each with its own dums; slowly
// and by one drum where that is asked for.
func TestBothSidesAreHeard(t *testing.T) {
	b := opened(t, "?screen=which&ask=rhythm&answers=2&from=maqsum.baladi&eights=1&seed=1", 1)
	require.NoError(t, b.Press("begin"))
	require.True(t, player(b, paper.Errs, 1).Play())
	r := b.Storage.Rounds()[0]
	for i, id := range []string{r.Rhythm, r.Answer} {
		button := []string{"hear-a", "hear-b"}[i]
		for _, slowly := range []bool{false, true} {
			require.NoError(t, b.Tick("slowly", slowly))
			heard := b.Wall.Now()
			require.NoError(t, b.Press(button))
			require.Equal(t, view.ActStop, b.Find(button).Action)
			require.True(t, b.Until(func() bool { return b.Find(button).Action == view.ActHear }), "to its end")
			dums := 0
			strikes := b.Sound.Strikes(heard, b.Wall.Now()+100)
			for _, s := range strikes {
				if s.Low() {
					dums++
				}
			}
			c := b.Cycle(id)
			require.Equal(t, len(c.Dums())*c.CyclesIn(1), dums, id)
		}
	}
	for drums, levels := range map[string][2]float64{roundview.DrumsBass: {0, 1}, roundview.DrumsLead: {1, 0}, roundview.DrumsBoth: {1, 1}} {
		require.NoError(t, b.Choose("drums", drums))
		require.NoError(t, b.Press("hear-a"))
		require.Equal(t, levels, [2]float64{b.Sound.Lead, b.Sound.Bass}, drums)
		require.NoError(t, b.Press("hear-a"))
	}
}

// A link whose rhythms make no question says so, and offers one that does.
func TestLinksOfTooFew(t *testing.T) {
	b := opened(t, "?screen=which&answers=2&from=fallahi.maqsum", 1)
	require.Contains(t, b.Text(), "from=fallahi.maqsum: allowed is two rhythms or more")
	require.NoError(t, b.Press("open"))
	require.Contains(t, b.Query(), "from=five")
	finish(t, b, "begin")
	require.Len(t, b.Storage.Rounds(), 1)
}

// The same question once more, others after it, and the help of the ear: it helps at once
// and is in the record.
func TestQuestionsInARow(t *testing.T) {
	b := opened(t, "?screen=which&ask=rhythm&eights=2", 3)
	require.NoError(t, b.Press("begin"))
	b.Wait(1500)
	require.NoError(t, b.Press("alone"))
	require.Equal(t, 0.0, b.Sound.Lead)
	require.True(t, b.Until(func() bool { return b.Sound.Lead == 1 }), "for an eight")
	require.NoError(t, b.Press("hands"))
	require.True(t, b.Until(func() bool { return !b.Find("repeat").Disabled }))
	require.NoError(t, b.Press("repeat"))
	require.True(t, paper.NewPlayer(b, 3).Play())
	for range 4 {
		require.NoError(t, b.Press("next-question"))
		require.True(t, paper.NewPlayer(b, 3).Play())
	}
	seeds := map[uint64]bool{}
	all := b.Storage.Rounds()
	require.Len(t, all, 5)
	for _, r := range all {
		require.True(t, history.Right(r))
		seeds[r.Seed] = true
	}
	require.Len(t, seeds, 5)
	require.True(t, all[0].Helps.Hands)
}

// Taps at random are no set-up: they are refused, with a plain word why, and nothing is
// kept; so is silence.
func TestSetUpRefusesNonsense(t *testing.T) {
	for m, why := range map[paper.Manner]string{paper.Guesses: "", paper.Absent: "too few", paper.Errs: ""} {
		b := opened(t, "?screen="+view.ScreenSetUp, 2)
		require.NoError(t, b.Press("begin"))
		p := player(b, m, 2)
		p.Spread = map[paper.Manner]float64{paper.Guesses: 150}[m]
		require.True(t, p.Play())
		require.Contains(t, b.Text(), why)
		if m != paper.Errs { // who taps every tek alike is as late as from the dum before: that can be measured
			require.Nil(t, b.Find("keep"), b.Text())
		}
		require.Empty(t, b.Storage.Outputs().List)
	}
}

// What a room is asked is nowhere told before it is known.
func TestClassGivesNothingAway(t *testing.T) {
	b := opened(t, "?screen=class&set=maqsum.saidi_bare_"+string(warmup.HandsUp)+"_2_5", 3)
	require.NoError(t, b.Press("set-1"))
	require.NoError(t, b.Key(forth))
	for range 2 {
		require.Empty(t, tells(t, b, []string{"set=maqsum.saidi_bare"}))
		require.NoError(t, b.Key(forth))
		hears(b)
	}
	asked := b.Find("heading-for-maqsum") != nil
	other := map[bool]string{true: "sa'idi", false: "maqsum"}[asked]
	require.NotContains(t, b.Text(), other, "each name is asked by itself")
	require.NoError(t, b.Key(forth))
	require.Contains(t, b.Text(), other)
}
