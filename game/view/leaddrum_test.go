package view

import (
	"math"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
)

var levels = []string{LevelBare, LevelFilled, LevelOrnamented, LevelRiffing, LevelSolo}

// The levels are told by the names that the riffs themselves have, bare first, so that
// what is chosen is what is played.
func TestLevelsAreTheRiffs(t *testing.T) {
	for i, level := range levels {
		parsed, err := riff.ParseLevel(level)
		require.NoError(t, err)
		require.Equal(t, riff.Level(i), parsed, level)
	}
	require.Equal(t, riff.Solo, riff.Level(len(levels)-1), "there is none beyond")
}

// Each level has a name and a meaning of its own; of one that is not known the name is
// what it was called.
func TestSayLevel(t *testing.T) {
	w := words(t)
	names, meanings := map[string]bool{}, map[string]bool{}
	for _, level := range levels {
		name, means := SayLevel(w, level)
		require.False(t, names[name] || meanings[means], level)
		require.NotEmpty(t, means, level)
		names[name], meanings[means] = true, true
	}
	name, means := SayLevel(w, "louder")
	require.Equal(t, "louder", name)
	require.Empty(t, means)
}

// Where there is nothing to choose there is no choice; what the chosen level means stands
// below it.
func TestLeadDrum(t *testing.T) {
	w := words(t)
	require.Equal(t, RoleNone, LeadDrum(w, LevelBare, nil, 0, nil).Role)
	require.Equal(t, RoleNone, LeadDrum(w, LevelBare, levels[:1], 0, nil).Role)
	for _, level := range levels {
		it := LeadDrum(w, level, levels, NoHide, nil)
		require.Equal(t, []string{"level", "level-means"}, ids(it.Children), level)
		require.Equal(t, levels, values(it.Children[0].Options))
		require.Equal(t, level, it.Children[0].Value)
		require.Equal(t, ActLevel, it.Children[0].Action)
		_, means := SayLevel(w, level)
		require.Equal(t, means, it.Children[1].Text)
	}
	two := LeadDrum(w, LevelFilled, levels[:2], NoHide, nil)
	require.Equal(t, levels[:2], values(two.Children[0].Options), "what is not offered cannot be chosen")
}

// How far the riff hides the base can be asked for where there is a riff, on a screen that
// asks for it.
func TestHideIsAskedWhereThereIsARiff(t *testing.T) {
	w := words(t)
	for _, level := range levels {
		asked := LeadDrum(w, level, levels, 0, nil)
		screen := Screen{Items: []Item{asked}}
		require.Equal(t, Riffs(level), screen.Find("hide") != nil, level)
		screen.Items = []Item{LeadDrum(w, level, levels, NoHide, nil)}
		require.Nil(t, screen.Find("hide"), level)
	}
}

// As it comes, as little and as much as it can are always there; what a link asks for
// besides is a choice of its own and marked, whatever it is.
func TestHideHasWhatALinkAsks(t *testing.T) {
	w := words(t)
	for hide := 0; hide <= MostHide; hide++ {
		it := hidden(w, LevelRiffing, hide)
		require.Equal(t, strconv.Itoa(hide), it.Value)
		require.Equal(t, it.Value, Chosen(it.Options, it.Value))
		require.Equal(t, []string{"0", "1", "100"}, values(it.Options[:3]))
		require.Equal(t, hide > LeastHide && hide < MostHide, len(it.Options) == 4, hide)
		require.Equal(t, ActHide, it.Action)
	}
}

// How far a riff hides the base is said in four steps, which begin where the riffs' own
// limits lie; a step up is never said in a word for less.
func TestSayHides(t *testing.T) {
	w := words(t)
	said := []string{w.Say("hides-not"), w.Say("hides-little"), w.Say("hides-well"), w.Say("hides-deeply")}
	for i, limit := range []float64{riff.HideLittle, riff.HideSome, riff.HideMuch} {
		require.Equal(t, said[i], sayHides(w, math.Nextafter(limit, 0)))
		require.Equal(t, said[i+1], sayHides(w, limit))
	}
	require.Equal(t, said[0], sayHides(w, 0))
	require.Equal(t, said[3], sayHides(w, 1))
}

// Once it is known how far the riff at hand hides the base, that is said after what the
// level means.
func TestLeadDrumSaysHowFarItHides(t *testing.T) {
	w, hides := words(t), 0.3
	it := LeadDrum(w, LevelRiffing, levels, 0, &hides)
	_, means := SayLevel(w, LevelRiffing)
	require.Equal(t, means+" "+w.Say("hides-well"), it.Children[1].Text)
	hides = 0
	require.Equal(t, means+" "+w.Say("hides-not"), LeadDrum(w, LevelRiffing, levels, 0, &hides).Children[1].Text, "nothing is something that is known")
}

// Off the base are the levels whose lead drum has accents of its own: there alone a riff
// may leave out dums, which every other plays.
func TestOffBaseIsARiff(t *testing.T) {
	for _, level := range append([]string{"", "louder"}, levels...) {
		if OffBase(level) {
			require.True(t, Riffs(level), level)
		}
	}
	require.False(t, OffBase(LevelOrnamented), "every dum is still played")
	require.True(t, Riffs(LevelOrnamented))
	require.False(t, Riffs(""), "where no level is told there is no riff")
	for i, level := range levels {
		require.Equal(t, riff.Level(i) >= riff.Ornamented, Riffs(level), level)
		require.Equal(t, riff.Level(i) >= riff.Riffing, OffBase(level), level)
	}
}
