package soundview

import (
	"groundbeat/game/picture"
	"groundbeat/game/view"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

func setUp(phase view.Phase) *SetUp {
	return &SetUp{Phase: phase, Name: "headphones", Chosen: "loudspeaker", Volume: 40, Outputs: []Output{
		{"loudspeaker", 38 * ms, 12 * ms, "31 January 2026"}, {"headphones", -7 * ms, 20 * ms, ""}}}
}

func setUpScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, phase view.Phase, change func(*SetUp)) {
		u := setUp(phase)
		change(u)
		all["set-up-"+name] = u.Screen(w)
	}
	add("ready", view.Ready, func(u *SetUp) { *u = SetUp{Volume: 30, Notes: []view.Note{view.NoteQuiet}} })
	add("ready-outputs", view.Ready, func(u *SetUp) { u.Notes = []view.Note{view.NoteNotKept} })
	add("ready-silent", view.Ready, func(u *SetUp) { u.Volume, u.Notes = -1, []view.Note{view.NoteNoSound} })
	add("playing", view.Playing, func(u *SetUp) { u.Round = 3 })
	review := func(name string, m Measured) {
		add("review-"+name, view.Reviewing, func(u *SetUp) { u.Result = &m })
	}
	review("behind", Measured{Mean: 38 * ms, Spread: 12 * ms, Taps: 8, Of: 8})
	review("ahead", Measured{Mean: -21 * ms, Spread: 25 * ms, Taps: 7, Of: 8})
	review("on", Measured{Mean: ms / 3, Spread: 9 * ms, Taps: 7, Of: 8})
	review("few", Measured{Refusal: RefusedFew, Taps: 1, Of: 8})
	review("scattered", Measured{Refusal: RefusedScattered, Mean: 20 * ms, Spread: 74 * ms, Taps: 8, Of: 8})
	review("unclear", Measured{Refusal: RefusedUnclear, Mean: 20 * ms, Spread: 14 * ms, Taps: 8, Of: 8})
	add("review-coarse", view.Reviewing, func(u *SetUp) {
		u.Name, u.Notes, u.Result = "", []view.Note{view.NoteCoarse}, &Measured{Mean: 180 * ms, Spread: 30 * ms, Taps: 6, Of: 8}
	})
	add("void", view.Voided, func(u *SetUp) { u.Why = view.WhyHidden })
	return all
}

// Before the round it says why and how, and each kept output can be used,
// measured anew and forgotten, by its own name.
func TestSetUpReady(t *testing.T) {
	s := setUpScreens(t)["set-up-ready-outputs"]
	require.Equal(t, "headphones", s.Find("name").Value)
	require.Equal(t, view.ActSetUpName, s.Find("name").Action)
	require.Equal(t, "loudspeaker: 38 ms behind, spread 12 ms, measured 31 January 2026. In use.", s.Find("output-1-figures").Text)
	require.Equal(t, "headphones: 7 ms ahead, spread 20 ms.", s.Find("output-2-figures").Text)
	require.True(t, s.Find("output-1-use").Pressed)
	require.False(t, s.Find("output-2-use").Pressed)
	for id, want := range map[string][2]string{"use": {"Use headphones", view.ActSetUpUse},
		"anew": {"Measure headphones anew", view.ActBegin}, "forget": {"Forget headphones", view.ActSetUpForget}} {
		it := s.Find("output-2-" + id)
		require.Equal(t, want, [2]string{it.Name, it.Action})
		require.Equal(t, "headphones", it.Value)
	}
	fresh := setUpScreens(t)["set-up-ready"]
	require.Nil(t, fresh.Find("outputs"))
	require.Equal(t, "this device", fresh.Find("name").Value)
	require.False(t, fresh.Find("begin").Disabled)
}

// Without sound nothing can be measured, and the screen says so.
func TestSetUpWithoutSound(t *testing.T) {
	s := setUpScreens(t)["set-up-ready-silent"]
	require.True(t, s.Find("begin").Disabled)
	require.True(t, s.Find("output-1-anew").Disabled)
	require.False(t, s.Find("output-1-use").Disabled)
	require.Equal(t, "There is no sound here, so there is no delay to measure.", s.Find("note-1").Text)
	require.Nil(t, s.Find("volume"))
}

// While taps are measured there is nothing to see that could lead them.
func TestSetUpPlaying(t *testing.T) {
	s := setUpScreens(t)["set-up-playing"]
	var ids []string
	s.Each(func(it *view.Item) {
		ids = append(ids, it.ID)
		require.Empty(t, it.Live)
	})
	require.Equal(t, []string{"heading", "tap", "head", "bar", "home", "stop"}, ids)
	require.Equal(t, "tap", s.FocusID())
	require.Equal(t, view.ActStop, s.Escape)
	require.Equal(t, "3", s.Find("tap").Value)
	require.Equal(t, picture.Head{Hidden: true}, setUp(view.Playing).Head())
}

// What was found can be kept, under the name; what was refused cannot, and says
// what to try.
func TestSetUpReview(t *testing.T) {
	for name, s := range setUpScreens(t) {
		if !strings.HasPrefix(name, "set-up-review") {
			continue
		}
		keep, try, primary := s.Find("keep"), s.Find("try"), 0
		require.NotEqual(t, keep == nil, try == nil, name)
		s.Each(func(it *view.Item) {
			if it.Look == view.LookPrimary {
				primary++
			}
		})
		require.Equal(t, 1, primary, name)
		require.NotNil(t, s.Find("once"), name)
		require.Equal(t, view.ActChange, s.Escape)
	}
	s := setUpScreens(t)["set-up-review-behind"]
	require.Equal(t, "Your taps come about 38 ms behind, steady within 12 ms. Keep this, and it does not count against you from now on.",
		s.Find("finding").Text)
	require.Equal(t, "headphones", s.Find("keep").Value)
	require.Equal(t, "8 of 8", s.Find("figure-taps").Value)
	nameless := setUpScreens(t)["set-up-review-coarse"]
	require.Equal(t, "this device", nameless.Find("keep").Value)
}
