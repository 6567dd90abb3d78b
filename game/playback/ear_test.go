package playback_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// mixer is a sound of which only the levels of the drums are asked.
type mixer struct {
	host.Sound
	lead, bass float64
}

func (m *mixer) Balance(lead, bass float64) { m.lead, m.bass = lead, bass }

func TestABalanceOnlyEverTakesOneDrumBack(t *testing.T) {
	for b := -100; b <= 100; b++ {
		lead, bass := playback.Levels(b)
		require.Equal(t, 1.0, max(lead, bass), "at %d one drum is as it is", b)
		require.GreaterOrEqual(t, min(lead, bass), 0.0, "at %d", b)
		other, same := playback.Levels(-b)
		require.Equal(t, [2]float64{lead, bass}, [2]float64{same, other}, "at %d the sides mirror", b)
		if b > -100 {
			before, low := playback.Levels(b - 1)
			require.LessOrEqual(t, lead, before, "to the right the lead drum only falls, at %d", b)
			require.GreaterOrEqual(t, bass, low, "and the bass drum only rises, at %d", b)
		}
	}
	lead, bass := playback.Levels(100)
	require.Equal(t, [2]float64{0, 1}, [2]float64{lead, bass}, "100 is the bass drum alone")
}

func TestTheBassDrumIsAloneForOneEight(t *testing.T) {
	const at, eight = 3 * time.Second, 4 * time.Second // any will do
	m := &mixer{}
	e := playback.NewEar(m)
	e.Reset(-40)
	set := [2]float64{m.lead, m.bass}
	e.Begin()
	require.True(t, e.Act(view.ActAlone, "on", at, eight))
	require.Equal(t, [2]float64{0, 1}, [2]float64{m.lead, m.bass})
	require.False(t, e.Follow(at+eight-1))
	require.True(t, e.Shown().Alone)
	require.True(t, e.Follow(at+eight))
	require.Equal(t, set, [2]float64{m.lead, m.bass}, "then the balance is as it was set")
	require.False(t, e.Follow(at+2*eight), "it comes back once")
	require.Equal(t, 1, e.Helps().Bass)

	e.Act(view.ActAlone, "on", -time.Second, eight) // in the count-in: from the first step on
	require.False(t, e.Follow(eight-1))
	require.True(t, e.Follow(eight))
	require.Equal(t, 2, e.Helps().Bass)
	e.Act(view.ActAlone, "on", 0, 0) // nothing is heard
	require.False(t, e.Shown().Alone)
	require.Equal(t, 2, e.Helps().Bass, "what was not heard is no help")
	e.Begin()
	require.Zero(t, e.Helps().Bass, "another round has had none yet")
}

func TestHandsOnceSeenAreAHelpOfTheRound(t *testing.T) {
	e := playback.NewEar(&mixer{})
	e.Begin()
	require.False(t, e.Helps().Hands)
	require.True(t, e.Act(view.ActHands, "on", 0, 0))
	e.Act(view.ActHands, "", 0, 0)
	require.False(t, e.Shown().Hands)
	require.True(t, e.Helps().Hands, "they were seen")
	e.Begin()
	require.False(t, e.Helps().Hands)
}

func TestABalanceStaysWithinItsScale(t *testing.T) {
	e := playback.NewEar(&mixer{})
	for text, want := range map[string]int{"-101": -100, "-100": -100, "7": 7, "100": 100, "4000": 100, "loud": 0} {
		require.True(t, e.Act(view.ActBalance, text, 0, 0))
		require.Equal(t, want, e.Balance, text)
	}
	require.False(t, e.Act("another control", "50", 0, 0))
	require.Equal(t, e.Balance, e.Helps().Balance, "what is recorded is what is set")
}

func TestAReplayLetsTheChosenDrumBeHeard(t *testing.T) {
	for drums, want := range map[string][2]float64{"": {1, 1}, roundview.DrumsBass: {0, 1}, roundview.DrumsLead: {1, 0}} {
		m, a := &mixer{}, playback.Replay{}
		require.False(t, a.Set(view.ActDrums, drums), "a matter of gains: nothing begins anew")
		a.Apply(m)
		require.Equal(t, want, [2]float64{m.lead, m.bass}, drums)
	}
}
