package view

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// Why a round does not count is said of each reason in words of its own; the sound is to
// blame where nothing else is known.
func TestSayWhy(t *testing.T) {
	w := words(t)
	for why, part := range map[Why]string{
		WhyCut: "The sound was interrupted", WhyHidden: "out of sight", WhyPaused: "paused by the browser",
		WhySilent: "No sound came", WhySilent + 1: "The sound was interrupted",
	} {
		require.Contains(t, SayWhy(w, why), part)
	}
}

// A round that does not count says so, why, that nothing of it is kept, and what to do
// next, on every screen that has rounds.
func TestVoidScreen(t *testing.T) {
	w := words(t)
	for _, id := range []string{ScreenDums, ScreenWhich, ScreenChange, ScreenStop, ScreenCarry, ScreenSetUp} {
		once := button("once", LookPrimary, ActOnce)
		s := VoidScreen(w, id, "The sound was cut.", Stage(w, "at rest"), once, button("change", LookQuiet, ActChange))
		require.Equal(t, id, s.ID)
		require.Equal(t, "This round does not count – Groundbeat", s.Title)
		require.Equal(t, ActChange, s.Escape)
		require.Equal(t, "heading", s.FocusID())
		require.Equal(t, 1, s.Find("heading").Level)
		require.Equal(t, "The sound was cut.", s.Find("why").Text)
		require.Equal(t, LookWarning, s.Find("why").Look)
		require.Equal(t, "Nothing of it is kept.", s.Find("kept").Text)
		require.Equal(t, []string{"heading", "why", "kept", "head", BarID, "again"}, ids(s.Items))
		require.Equal(t, []string{"home", "once"}, ids(s.Find(BarID).Children), "the next step ends the bar")
		require.Equal(t, []string{"change"}, ids(s.Find("again").Children), "the rest stays where it was")
	}
}

// A void round without anything to do next leads Home at least.
func TestVoidScreenLeadsHome(t *testing.T) {
	w := words(t)
	s := VoidScreen(w, ScreenDums, "x", Item{})
	require.NotNil(t, s.Find("home"))
	require.Nil(t, s.Find("head"), "without a drum there is no empty place")
}
