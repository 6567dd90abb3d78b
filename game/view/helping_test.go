package view

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A press on a help turns over what it is: its value is what it shall be, and once it is
// that, the next press takes it back.
func TestHelpsTurnOver(t *testing.T) {
	w := words(t)
	for _, on := range []bool{false, true} {
		h := Help{Alone: on, Hands: on}
		for _, it := range []Item{h.AloneButton(w, true), h.HandsButton(w)} {
			require.Equal(t, on, it.Pressed, it.ID)
			require.Equal(t, !on, it.Value == "yes", it.ID)
			require.False(t, it.Disabled)
			if on {
				require.Empty(t, it.Value)
			}
		}
	}
}

// One help does not press the other's button.
func TestHelpsAreApart(t *testing.T) {
	w := words(t)
	require.True(t, Help{Alone: true}.AloneButton(w, true).Pressed)
	require.False(t, Help{Alone: true}.HandsButton(w).Pressed)
	require.True(t, Help{Hands: true}.HandsButton(w).Pressed)
	require.False(t, Help{Hands: true}.AloneButton(w, true).Pressed)
	require.Equal(t, ActAlone, Help{}.AloneButton(w, true).Action)
	require.Equal(t, ActHands, Help{}.HandsButton(w).Action)
}

// While nothing is heard the bass drum cannot be heard alone: the button stays in its
// place and cannot be used, whatever was set.
func TestAloneNeedsSound(t *testing.T) {
	w := words(t)
	for _, on := range []bool{false, true} {
		it := Help{Alone: on}.AloneButton(w, false)
		require.True(t, it.Disabled)
		require.False(t, it.Pressed)
		require.Equal(t, "yes", it.Value)
	}
}

// Without sound there is no help for the ear, but the eye's stays.
func TestButtonsWithoutSound(t *testing.T) {
	w := words(t)
	h := Help{Alone: true, Hands: true}
	require.Equal(t, []string{"hands"}, ids(h.Buttons(w, -1)))
	require.Equal(t, []string{"alone", "hands"}, ids(h.Buttons(w, 0)), "at rest, not without")
	require.Equal(t, []string{"alone", "hands"}, ids(h.Buttons(w, 80)))
	require.Equal(t, RoleNone, Balance(w, 20, -1).Role)
}

// The balance lies between its two drums, its steps reach both and the middle, and what
// it says leans to the side on which it stands.
func TestBalanceLeansAsItSays(t *testing.T) {
	w := words(t)
	for n := -100; n <= 100; n += 10 {
		it := Balance(w, n, 50)
		requireStepsFit(t, it)
		require.Equal(t, float64(n), it.Num)
		require.Equal(t, [2]string{"lead drum", "bass drum"}, it.Ends)
		side := map[bool]string{true: "bass drum", false: "lead drum"}[n > 0]
		if n == 0 {
			side = "both drums alike"
		}
		require.Contains(t, it.Value, side, n)
		require.NotContains(t, it.Value, "-", "a side is said, not a sign")
	}
	require.Zero(t, -int(Balance(w, 0, 50).Min)%int(Balance(w, 0, 50).Step), "its steps meet the middle")
}

// Beyond its ends it says what it says there.
func TestSayBalanceBeyond(t *testing.T) {
	w := words(t)
	require.Equal(t, SayBalance(w, -100), SayBalance(w, -101))
	require.Equal(t, SayBalance(w, 100), SayBalance(w, 101))
	require.Equal(t, "99\u00a0% towards the lead drum", SayBalance(w, -99))
	require.Equal(t, "1\u00a0% towards the bass drum", SayBalance(w, 1))
}
