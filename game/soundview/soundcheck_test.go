package soundview

import (
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

func soundCheck(t testing.TB) *SoundCheck {
	return &SoundCheck{Rhythm: cycle(t, "maqsum"), Volume: 60, Mono: true}
}

func soundCheckScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, change func(*SoundCheck)) {
		c := soundCheck(t)
		change(c)
		all["sound-check-"+name] = c.Screen(w)
	}
	add("first", func(*SoundCheck) {})
	add("yes", func(c *SoundCheck) { c.Hears = CheckYes })
	add("no", func(c *SoundCheck) { c.Hears, c.Notes = CheckNo, []view.Note{view.NoteNotKept} })
	add("no-more-bass", func(c *SoundCheck) { c.Hears, c.Bass = CheckNo, MostBass })
	add("set", func(c *SoundCheck) {
		mean := 184 * ms
		c.Later, c.Bass, c.Mono, c.Measured, c.Output = 180*ms, 20, false, &mean, "headphones"
		c.Outputs = []string{"this device", "headphones"}
	})
	add("playing", func(c *SoundCheck) { c.Playing, c.Later = true, -30*ms })
	add("nothing-came", func(c *SoundCheck) { c.Silent = true })
	add("silent", func(c *SoundCheck) { c.Volume, c.Notes = -1, []view.Note{view.NoteNoSound} })
	return all
}

// No brings what to try, the likeliest first, and the volume is there to turn up.
func TestSoundCheckTips(t *testing.T) {
	all := soundCheckScreens(t)
	for name, s := range all {
		no := strings.Contains(name, "-no") && !strings.Contains(name, "nothing")
		require.Equal(t, no, s.Find("tips") != nil, name)
		require.Equal(t, no, s.Find("more-bass") != nil, name)
		require.Equal(t, strings.HasSuffix(name, "-yes"), s.Find("heard") != nil, name)
	}
	s := all["sound-check-no"]
	require.Len(t, s.Find("tips").Children, 4)
	require.Contains(t, s.Find("tip-1").Text, "Turn it up")
	require.NotNil(t, s.Find("volume"))
	require.Equal(t, [2]string{view.ActBass, "20"}, [2]string{s.Find("more-bass").Action, s.Find("more-bass").Value})
	require.True(t, s.Find("alike").Pressed)

	most := all["sound-check-no-more-bass"]
	require.Equal(t, "60", most.Find("more-bass").Value, "no further, and the lead drum is still heard")
	require.Equal(t, "60 % towards the bass drum.", most.Find("balance").Text)
	require.False(t, most.Find("alike").Pressed)
	require.Equal(t, "0", most.Find("alike").Value)

	set := all["sound-check-set"]
	require.Equal(t, "20 % towards the bass drum.", set.Find("balance").Text, "what is not as usual is said without being asked")
	require.NotNil(t, set.Find("alike"))
}

func TestSoundCheckPicture(t *testing.T) {
	all := soundCheckScreens(t)
	first, set := all["sound-check-first"], all["sound-check-set"]
	require.Nil(t, first.Find("measured"), "nothing was measured")
	require.Equal(t, "As measured: 180 ms later", set.Find("measured").Name)
	require.Equal(t, [2]string{view.ActLater, "180"}, [2]string{set.Find("measured").Action, set.Find("measured").Value})
	later := first.Find("later")
	require.Equal(t, []float64{-100, 500, 10, 0}, []float64{later.Min, later.Max, later.Step, later.Num})
	require.Equal(t, 180., set.Find("later").Num)

	w := words(t)
	for d, want := range map[time.Duration]string{0: "as it comes", 180 * ms: "180 ms later", -100 * ms: "100 ms earlier"} {
		require.Equal(t, want, sayLater(w, d))
	}
	for mean, want := range map[time.Duration]time.Duration{
		184 * ms: 180 * ms, 186 * ms: 190 * ms, 185*ms - 1: 180 * ms, 4 * ms: 0, -38 * ms: -40 * ms, -140 * ms: -100 * ms, 600 * ms: 500 * ms,
	} {
		require.Equal(t, want, AsMeasured(mean), mean)
	}
}

// Only what was chosen is said to be in use, and the default name is said where
// there is no other.
func TestSoundCheckOutputs(t *testing.T) {
	all := soundCheckScreens(t)
	first, set := all["sound-check-first"], all["sound-check-set"]
	require.Equal(t, "All this is kept for this device.", first.Find("kept").Text)
	require.Nil(t, first.Find("output"))
	require.Equal(t, "headphones", set.Find("output").Value)
	require.Equal(t, view.ActSetUpUse, set.Find("output").Action)
	require.Len(t, set.Find("output").Options, 2)
	c := soundCheck(t)
	c.Outputs = []string{"a", "b"} // and none of them in use
	s := c.Screen(words(t))
	require.Empty(t, s.Find("output").Value)
	require.NoError(t, screenproof.Check(s))
}

// Playing changes one button and what Escape does, and no text: nothing is said
// while there is something to hear.
func TestSoundCheckPlaying(t *testing.T) {
	c := soundCheck(t)
	before := c.Screen(words(t))
	c.Playing = true
	after := c.Screen(words(t))
	var changed []string
	before.Each(func(it *view.Item) {
		require.Empty(t, it.Live)
		if !view.Same(it, after.Find(it.ID)) {
			changed = append(changed, it.ID)
		}
	})
	require.Equal(t, []string{"play"}, changed)
	require.Equal(t, []string{view.ActHome, view.ActStop}, []string{before.Escape, after.Escape})
}

// Without sound there is nothing to check, and nothing to press in vain.
func TestSoundCheckWithoutSound(t *testing.T) {
	s := soundCheckScreens(t)["sound-check-silent"]
	for _, id := range []string{"strikes", "hears", "play", "later", "mono", "head"} {
		require.Nil(t, s.Find(id), id)
	}
	require.Equal(t, "There is no sound here, so there is nothing to check.", s.Find("note-1").Text)
	require.NotNil(t, s.Find("nav"))
}

func TestSoundCheckAndSetUpLeadToOneAnother(t *testing.T) {
	for _, way := range []string{"to-check", "nav-sound-check"} {
		s := setUpScreens(t)["set-up-ready"]
		require.Equal(t, [2]string{view.ActGo, view.ScreenCheck}, [2]string{s.Find(way).Action, s.Find(way).Value})
	}
	s := soundCheckScreens(t)["sound-check-first"]
	require.Equal(t, [2]string{view.ActGo, view.ScreenSetUp}, [2]string{s.Find("to-set-up").Action, s.Find("to-set-up").Value})
	require.True(t, s.Find("nav-sound-check").Pressed)
}
