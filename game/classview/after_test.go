package classview

import (
	"fmt"
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// afterBy is the page after a warm-up of a seed, with hands by chance.
func afterBy(t *testing.T, seed uint64) *ClassAfter {
	set, _ := warmup.Preset("riff")
	set.Seed = seed
	w, err := warmup.NewWarmup(set, catalogue(t))
	require.NoError(t, err)
	chance := rand.New(rand.NewPCG(seed, 5))
	a := &ClassAfter{Seed: seed, Names: map[string]string{}, Today: "2026-03-03", Left: chance.IntN(3)}
	for _, task := range w.Tasks {
		d := warmup.Done{Kind: task.Kind, Rhythm: task.Rhythm.ID, BPM: task.BPM, Riff: task.Level.String(), Right: task.Right}
		for _, c := range task.Choices {
			d.Choices = append(d.Choices, c.ID)
			d.Hands = append(d.Hands, []warmup.Hands{"", "most", "some", "few", "none", "0", "9"}[chance.IntN(7)])
		}
		a.Entry.Tasks = append(a.Entry.Tasks, d)
	}
	for _, c := range everyRhythm(t) {
		a.Names[c.ID] = c.Name
	}
	a.Sheet = []*rhythm.Cycle{w.Tasks[0].Rhythm}
	for range chance.IntN(3) {
		a.Earlier, a.Dates = append(a.Earlier, a.Entry), append(a.Dates, "2026-02-24")
	}
	return a
}

// Whatever the hands were, the page after is whole: each question has a row, hands that
// were counted stand in it, and there are two sentences of advice at most.
func TestEveryPageAfterIsWhole(t *testing.T) {
	w := words(t)
	for seed := uint64(1); seed <= 25; seed++ {
		a := afterBy(t, seed)
		s := a.Screen(w)
		require.NoError(t, screenproof.Check(s))
		require.NotContains(t, screenproof.Text(t, s), "{")
		rows := s.Find("questions").Rows
		require.Len(t, rows, len(a.Entry.Tasks))
		for i, d := range a.Entry.Tasks {
			require.Equal(t, fmt.Sprint(i+1), rows[i][0])
			require.Equal(t, sayTask(w, d.Kind), rows[i][1])
			counted := strings.Join(handsTexts(d), "") != ""
			require.Equal(t, !counted, rows[i][4] == view.None, "%+v", d)
		}
		require.Nil(t, s.Find("advice-3"))
		require.Equal(t, a.Left > 0, s.Find("go-on") != nil)
		require.Equal(t, len(a.Earlier) > 0, s.Find("earlier") != nil)
		if e := s.Find("earlier"); e != nil {
			require.Len(t, e.Rows, len(a.Earlier)+1)
			require.Equal(t, a.Today, e.Rows[len(e.Rows)-1][0], "this one stands last")
		}
	}
}

func handsTexts(d warmup.Done) (all []string) {
	for _, h := range d.Hands {
		all = append(all, string(h))
	}
	return all
}

// The right answer's hands are told first and marked, those of others after it, and
// answers that nobody counted not at all.
func TestHandsTellTheRightFirst(t *testing.T) {
	w := words(t)
	a := &ClassAfter{Names: map[string]string{"maqsum": "maqsum (the first)", "saidi": "sa'idi"}}
	d := warmup.Done{Kind: warmup.HandsUp, Right: "saidi", Choices: []string{"maqsum", "saidi", "baladi"}}
	for hands, want := range map[[3]warmup.Hands]string{
		{"few", "most", "none"}: "sa'idi (right): most; maqsum: few; baladi: none",
		{"12", "", ""}:          "maqsum: 12",
		{"", "3", ""}:           "sa'idi (right): 3",
		{"", "", ""}:            view.None,
	} {
		d.Hands = hands[:]
		require.Equal(t, want, a.hands(w, d))
	}
	d = warmup.Done{Kind: warmup.BaseOrRiff, Right: warmup.OffBase, Choices: []string{warmup.OnBase, warmup.OffBase}, Hands: []warmup.Hands{"4", "5"}}
	require.Equal(t, "off the base (right): 5; on the base: 4", a.hands(w, d))
	d = warmup.Done{Kind: warmup.WhatChanged, Right: "2", Choices: []string{"1", "2"}, Hands: []warmup.Hands{"4", ""}}
	require.Equal(t, "1: 4", a.hands(w, d))
}

// What to dance to: what the room knew, under a little more riff; else what was played;
// and what was mixed up side by side.
func TestAdvice(t *testing.T) {
	w := words(t)
	a := classAfter(t)
	asked := func(right string, hands ...warmup.Hands) warmup.Done {
		return warmup.Done{Kind: warmup.HandsUp, Rhythm: right, Riff: "bare", Choices: []string{"maqsum", "saidi"}, Right: right, Hands: hands}
	}
	for name, c := range map[string]struct {
		tasks []warmup.Done
		want  []string
	}{
		"nothing played": {nil, nil},
		"nobody counted": {[]warmup.Done{asked("saidi", "", "")}, []string{"Dance to sa'idi today, as it was played here."}},
		"known":          {[]warmup.Done{asked("saidi", "few", "most")}, []string{"Dance to sa'idi today, with the lead drum filled: the room knows it."}},
		"mixed up": {[]warmup.Done{asked("saidi", "most", "few")}, []string{"Dance to sa'idi today, as it was played here.",
			"Then play sa'idi and maqsum in turn, slow and bare: the room takes the one for the other."}},
	} {
		a.Entry.Tasks = c.tasks
		require.Equal(t, c.want, a.advice(w), name)
	}
}

// How many the room knew is told of all questions that hands tell anything of, and then
// level by level; where they tell nothing, that is fine as well.
func TestKnewIsTold(t *testing.T) {
	w := words(t)
	a := classAfter(t)
	s := a.Screen(w)
	require.Equal(t, "2 of 3", plainBlanks(s.Find("figure-knew").Value))
	require.Equal(t, "1 of 1", plainBlanks(s.Find("figure-level-bare").Value))
	require.Equal(t, "0 of 1", plainBlanks(s.Find("figure-level-filled").Value))
	a.Entry.Tasks = a.Entry.Tasks[2:3]
	s = a.Screen(w)
	require.Nil(t, s.Find("figures"))
	require.Equal(t, "No hands to go by, which is fine.", s.Find("knew").Text)
}

func plainBlanks(text string) string { return strings.ReplaceAll(text, "\u00a0", " ") }

// A rhythm that has no name is told by its id, and a name without its brackets.
func TestAfterNames(t *testing.T) {
	a := classAfter(t)
	require.Equal(t, "baladi", a.name("baladi"))
	require.Equal(t, "sa'idi", a.name("saidi"))
	require.Equal(t, "waltz", a.name("waltz"))
}

// From every home sheet each rhythm's link opens its dums, and its line stays in its
// frame; no two of its parts have one id.
func TestHomeSheetOfEveryRhythm(t *testing.T) {
	w := words(t)
	a := classAfter(t)
	a.Sheet = everyRhythm(t)
	s := a.Screen(w)
	require.NoError(t, screenproof.Check(s))
	for _, c := range a.Sheet {
		address, err := link.Parse(s.Find("sheet-"+c.ID+"-link").Value, func() link.Allowed {
			return link.Allowed{Rhythms: catalogue(t).IDs(), Riffs: allLevels}
		})
		require.NoError(t, err, c.ID)
		require.Equal(t, [2]string{view.ScreenDums, c.ID}, [2]string{address.Screen, address.Rhythm})
		screenproof.RequireInside(t, s.Find("sheet-"+c.ID+"-line").Picture)
		l := picture.LineOf(c, c.Base(), nil, 0)
		require.Equal(t, l.Twin(w), s.Find("sheet-"+c.ID+"-line").Text)
		require.Equal(t, c.Script != "", s.Find("sheet-"+c.ID+"-script") != nil)
		require.Equal(t, c.Listen != "", s.Find("sheet-"+c.ID+"-listen") != nil)
		require.Equal(t, 3, s.Find("sheet-"+c.ID+"-name").Level)
	}
}
