package diary_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
)

func TestRight(t *testing.T) {
	for _, c := range []struct {
		matched, out, added int
		right               bool
	}{
		{8, 0, 0, true},
		{6, 2, 0, true},
		{5, 3, 0, false},
		{8, 0, 2, true},
		{8, 0, 3, false},
		{6, 2, 2, true},
		{3, 1, 1, true},
		{2, 1, 0, false}, // two of three are less than three of four
		{0, 0, 0, false},
	} {
		for _, kind := range tappedKinds() {
			r := history.Round{Kind: kind, Matched: c.matched, Out: c.out, Added: c.added}
			require.Equal(t, c.right, history.Right(r), "%+v", c)
		}
	}
	require.True(t, history.Right(named("2026-01-31T18:30:00Z", "maqsum", "maqsum")))
	require.False(t, history.Right(named("2026-01-31T18:30:00Z", "maqsum", "saidi")))
}

// tappedKinds are the kinds of round whose strokes are tapped.
func tappedKinds() (all []string) {
	for _, k := range history.Kinds {
		if k.Play == history.Tapped {
			all = append(all, k.ID)
		}
	}
	return all
}

// What the bounds are for: a dum of sa'idi that is always missed, or taps on every
// beat of maqsum, are not right.
func TestRightWhatFor(t *testing.T) {
	const when = "2026-01-31T18:30:00Z"
	require.True(t, history.Right(tapped(t, when, "saidi", 5)))
	require.False(t, history.Right(tapped(t, when, "saidi", 5, 999, 5)))
	require.True(t, history.Right(tapped(t, when, "maqsum", 5, 5, 5, 999)))
	every := tapped(t, when, "maqsum", 5)
	every.Added = every.Matched
	require.False(t, history.Right(every))
}

// The dums of a round in which the drums fall silent, all kept, are no miss: the round is
// right, and so is the meeting with its rhythm, so that this is not due the next day.
func TestCarriedRight(t *testing.T) {
	r := history.Round{Kind: history.Carry, Rhythm: "maqsum", Riff: "bare", When: "2026-01-31T18:30:00Z", Output: "studio", Matched: 32}
	b := book(t)
	b.Add(r)
	require.Equal(t, []diary.Met{{Rhythm: "maqsum", Riff: "bare", Day: "2026-01-31", Right: 1, N: 1}}, b.Met("studio"))
	r.Matched, r.Out = 8, 24
	require.False(t, history.Right(r))
}

func TestTried(t *testing.T) {
	for _, kind := range tappedKinds() {
		require.False(t, history.Tried(history.Round{Kind: kind, Out: 8}), kind)
		require.True(t, history.Tried(history.Round{Kind: kind, Out: 8, Added: 1}), kind)
		require.True(t, history.Tried(history.Round{Kind: kind, Out: 7, Matched: 1}), kind)
	}
	require.True(t, history.Tried(history.Round{Kind: history.Stop, Out: 8, Aside: make([]history.Tap, 1)}))
	require.True(t, history.Tried(history.Round{Kind: history.Change}), "to keep still is an answer")
	require.True(t, history.Tried(named("2026-01-31T18:30:00Z", "maqsum", "saidi")))
}

// Rounds in which no tap came are practice, and tell nothing else: with them the figures
// are what they were, also of days that were kept and read.
func TestUntriedTellsNothing(t *testing.T) {
	var rounds, none []history.Round
	for _, m := range newLearner(3, supplied(t)).practise(12) {
		rounds = append(rounds, m.Round)
	}
	for i := range 60 {
		r := tapped(t, rounds[i*len(rounds)/60].When, "maqsum", 999)
		r.Output, r.Hide = rounds[0].Output, new(.3)
		none = append(none, r)
	}
	require.Equal(t, 8, none[0].Out)
	plain, with := book(t), book(t)
	for _, r := range rounds {
		plain.Add(r)
		with.Add(r)
	}
	for _, r := range none {
		with.Add(r)
	}
	for _, date := range with.Dates() {
		with.Put(again(t, with.Day(date)))
	}
	want, got := plain.Figures(rounds[0].Output), with.Figures(rounds[0].Output)
	require.Equal(t, want.Rounds+60, got.Rounds)
	require.NotEqual(t, want.Practised, got.Practised)
	got.Rounds, got.Practised = want.Rounds, want.Practised
	require.Equal(t, want, got)
	require.Equal(t, plain.Met(rounds[0].Output), with.Met(rounds[0].Output))
}

// heardAt is the record of a round that becomes sa'idi at 20 s of the stream, which is
// told rightly, with presses at so many seconds, the last of which heard it. She taps
// 100 ms behind, which is known of her.
func heardAt(t *testing.T, presses ...float64) history.Round {
	t.Helper()
	const rate, setup = 48000, 100.
	r := named("2026-01-31T18:30:00Z", "maqsum", "saidi")
	r.Kind, r.To, r.After, r.Changes, r.Strokes = history.Change, "saidi", 3, new(20.), []float64{20}
	r.Choices, r.Right, r.Rate, r.Setup, r.Took, r.Heard = []string{"baladi", "saidi"}, true, rate, setup, nil, 0
	r.Eights = 6
	for i, at := range presses {
		tap := history.Tap{Frame: (at + setup/1000) * rate, By: "key"}
		if i == len(presses)-1 {
			tap.Stroke, tap.Offset = new(0), new(1000*(at-20)+setup)
		}
		r.Taps = append(r.Taps, tap)
	}
	kept, err := history.NewChange(r)
	require.NoError(t, err)
	return kept
}

// every are presses so many seconds apart from 5 s on, up to the first after 20 s.
func every(gap float64) (all []float64) {
	for at := 5.; len(all) == 0 || all[len(all)-1] < 20; at += gap {
		all = append(all, at)
	}
	return all
}

// Who presses all the time hits every change. That is no hearing, however soon the press
// came after it, and what she then says is not taken for what she mixes up.
func TestChangeHitByChance(t *testing.T) {
	for _, c := range []struct {
		what    string
		presses []float64
		right   bool
	}{
		{"a patient listener", []float64{21.2}, true},
		{"a patient listener, late", []float64{29}, true},
		{"one false alarm, then heard", []float64{12, 21.2}, true},
		{"a false alarm just before", []float64{19.5, 21.2}, false},
		{"every 0.45 s", every(.45), false},
		{"every 0.9 s", every(.9), false},
		{"every 1.8 s", every(1.8), false},
		{"every 5.5 s", every(5.5), false},
	} {
		r := heardAt(t, c.presses...)
		require.Equal(t, c.right, history.Right(r), c.what)
		require.Equal(t, len(c.presses)-1, r.Early, c.what)
		var d diary.Day
		d.Add(r)
		require.Equal(t, c.right, strings.Contains(string(d.Format()), `"said":"saidi","right":true`), c.what)
		require.Equal(t, c.right, strings.Contains(string(d.Format()), `"said"`), c.what)
		again, err := diary.ParseDay(d.Format())
		require.NoError(t, err)
		require.Equal(t, d.Format(), again.Format())
	}
}
