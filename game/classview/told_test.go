package classview

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

func option(id string) view.Option { return view.Option{Value: id, Label: id} }

func reasons(s view.Screen) (all []string) {
	s.Each(func(it *view.Item) {
		if strings.HasPrefix(it.ID, "reason-") {
			all = append(all, it.Text)
		}
	})
	return all
}

// What it was is said of each kind in its own words, with the answer in it.
func TestToldSaysTheAnswer(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		kind  warmup.Kind
		right view.Option
		says  string
	}{
		{warmup.HandsUp, view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}, "It was baladi."},
		{warmup.WhatChanged, option("3"), "It was in count 3."},
		{warmup.FindTheOne, option("4"), "It broke off on 4."},
		{warmup.BaseOrRiff, option(warmup.OnBase), "It was on the base."},
		{warmup.BaseOrRiff, option(warmup.OffBase), "It was off the base."},
		{warmup.WalkAndClap, view.Option{}, "sa'idi"},
	} {
		s := toldRoom(t, c.kind, c.right, view.Option{}).Screen(w)
		require.Equal(t, c.says, s.Find("heading-told").Name)
		require.Equal(t, "heading-told", s.FocusID())
	}
}

// Of what was danced it is told where its dums are, once it is over.
func TestDancedTellsItsDums(t *testing.T) {
	w := words(t)
	for _, k := range warmup.Kinds() {
		if k.Counted() {
			continue
		}
		s := roomTask(t, warmup.Telling, k).Screen(w)
		require.Equal(t, []string{"It was sa'idi: dums on 1, the & of 2 and 3."}, reasons(s), k)
		require.Equal(t, "Go on", s.Find("go").Name, "there is nothing to be heard under a riff")
	}
}

// At most two differences are told; of a long line that is heard one, since what is heard
// is said as well.
func TestFewReasonsAreTold(t *testing.T) {
	w := words(t)
	short := toldRoom(t, warmup.HandsUp, option("saidi"), option("maqsum"))
	short.Told.Sides[1] = supplied(t, "ayyub")
	short.Told.Differences = rhythm.Differ(short.Rhythm, short.Told.Sides[1])
	require.Greater(t, len(short.Told.Differences), mostReasons)
	short.Told.Hands = ""
	require.Len(t, reasons(short.Screen(w)), mostReasons)
	require.False(t, short.long())

	long := toldRoom(t, warmup.HandsUp, option("masmudi-kabir"), option("ciftetelli"))
	long.Rhythm = supplied(t, "masmudi-kabir")
	long.Told.Sides = [2]*rhythm.Cycle{long.Rhythm, supplied(t, "ciftetelli")}
	long.Told.Differences = rhythm.Differ(long.Told.Sides[0], long.Told.Sides[1])
	require.True(t, long.long())
	require.Len(t, reasons(long.Screen(w)), mostReasons)
	long.Sounds = true
	require.Len(t, reasons(long.Screen(w)), 1)
	require.NotNil(t, find(long.Screen(w), "shown"))
}

// What the room took it for is told first, and takes the place of a difference.
func TestTakenStandsFirst(t *testing.T) {
	w := words(t)
	r := toldRoom(t, warmup.HandsUp, option("saidi"), option("maqsum"))
	r.Told.Hands = warmup.Few
	told := reasons(r.Screen(w))
	require.Equal(t, "A few took it for maqsum.", told[0])
	require.LessOrEqual(t, len(told), mostReasons)
	r.Kind = warmup.FindTheOne
	for _, text := range reasons(r.Screen(w)) {
		require.NotContains(t, text, "took it for", "of a count nobody says so")
	}
}

// Where no stroke can be laid beside another, the metres tell two rhythms apart; one that
// is compared with none is told by its dums.
func TestMetresTellApart(t *testing.T) {
	w := words(t)
	r := toldRoom(t, warmup.HandsUp, option("saidi"), option("karsilama"))
	r.Told.Sides[1], r.Told.Differences, r.Told.Hands = supplied(t, "karsilama"), nil, ""
	require.Equal(t, []string{"sa'idi is in 4/4, karşılama in 9/8."}, reasons(r.Screen(w)))
	r.Told.Sides[1] = nil
	require.Equal(t, []string{"It was sa'idi: dums on 1, the & of 2 and 3."}, reasons(r.Screen(w)))
}

// Once it is heard once more, nothing stands there but that, and what it is.
func TestHearingHasNoReasons(t *testing.T) {
	w := words(t)
	for _, k := range warmup.Kinds() {
		if !k.Counted() {
			continue
		}
		r := toldRoom(t, k, option("1"), option("2"))
		r.Stage = warmup.Hearing
		s := r.Screen(w)
		require.Empty(t, reasons(s), k)
		require.Equal(t, "heading-hear", s.FocusID())
		require.Equal(t, w.Say("class-on"), s.Find("go").Name)
		r.Stage = warmup.Telling
		require.Equal(t, w.Say("class-under"), find(r.Screen(w), "go").Name)
	}
}

// While it sounds it can be stopped; else it can be heard once more.
func TestToldCanBeHeardAndStopped(t *testing.T) {
	w := words(t)
	r := toldRoom(t, warmup.HandsUp, option("saidi"), option("maqsum"))
	once := find(r.Screen(w), "once")
	require.Equal(t, []string{"Once more", "", view.ActClassOnce}, []string{once.Name, once.Value, once.Action})
	r.Sounds = true
	once = find(r.Screen(w), "once")
	require.Equal(t, []string{"Stop", "stop", view.ActClassOnce}, []string{once.Name, once.Value, once.Action})
}

// What is heard is said where two are heard in turn under one line.
func TestHeardIsSaid(t *testing.T) {
	w := words(t)
	r := toldRoom(t, warmup.HandsUp, option("saidi"), option("maqsum"))
	require.Nil(t, find(r.Screen(w), "shown"), "nothing is heard")
	r.Sounds, r.Rhythm = true, proof.Supplied(t, "maqsum")
	require.Equal(t, "You hear maqsum.", find(r.Screen(w), "shown").Text)
	for _, k := range []warmup.Kind{warmup.WhatChanged, warmup.BaseOrRiff} {
		r.Kind = k
		require.Nil(t, find(r.Screen(w), "shown"), "its rows are named, or what is heard is said: %s", k)
	}
	r.Kind, r.Told.Sides[1] = warmup.HandsUp, nil
	require.Nil(t, find(r.Screen(w), "shown"), "one alone needs no name")
}

// Every stroke that can be moved in every rhythm is found again from the two versions,
// and said by its name and both counts.
func TestEveryMoveIsFound(t *testing.T) {
	w := words(t)
	moves := 0
	for _, c := range everyRhythm(t) {
		for from := range c.Steps() {
			for _, to := range []int{from - 1, from + 1} {
				if to < 0 || to >= c.Steps() || !c.Skeleton[from].Sounds() || c.Skeleton[to].Sounds() {
					continue
				}
				moves++
				told := &Told{Sides: [2]*rhythm.Cycle{c, movedIn(c, from, to)}}
				gone, come := told.moved()
				require.Equal(t, [2]int{from, to}, [2]int{gone, come}, c.ID)
				said := (&Room{Told: told}).sayMoved(w)
				require.Contains(t, said, "from "+c.Spoken(from)+" to "+c.Spoken(to)+".")
				require.Equal(t, c.Skeleton[from].Low(), strings.HasPrefix(said, "The dum "), said)
			}
		}
	}
	require.Greater(t, moves, 50)
}

// Of two rhythms that differ in length as many steps are compared as both have.
func TestUnlikeSteps(t *testing.T) {
	a, b := proof.Made(t, "a", "4/4", "DT-TD-T-"), proof.Made(t, "b", "2/4", "D--T")
	require.Equal(t, []int{1}, unlikeSteps(a, b))
	require.Equal(t, []int{1}, unlikeSteps(b, a))
	require.Empty(t, unlikeSteps(a, a))
}
