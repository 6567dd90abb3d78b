package control_test

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

func TestVolumeGoesWithItsSquare(t *testing.T) {
	p := newPage(t, "")
	for volume, want := range map[int]float64{-5: 0, 0: 0, 50: 0.25, 100: 1, 900: 1} {
		p.SetVolume(volume)
		require.Equal(t, want, p.Browser.Sound.Loudness, "at %d", volume)
		require.Equal(t, min(max(volume, 0), 100), p.ShownVolume())
	}
}

func TestNotesOfEveryScreen(t *testing.T) {
	p := newPage(t, "?screen=dums&seed=4")
	require.Empty(t, p.Notes())
	p.Unsaved = errors.New("full")
	require.Equal(t, []view.Note{view.NoteNotKept}, p.Notes())
	p.Storage.None = true
	require.Empty(t, p.Notes(), "of everything it is said elsewhere")
	p.Unmade = errors.New("full")
	p.Shared.Address.Riffs = 1
	require.Equal(t, []view.Note{view.NoteNotExported, view.NoteRiffs}, p.Notes())
	p.Shared.Address.Seed = 0
	require.Equal(t, []view.Note{view.NoteNotExported}, p.Notes(), "chosen anew, it is of this version")
	p.Browser.Sound.None = true
	p.Frame()
	p.Frame()
	require.Contains(t, p.Notes(), view.NoteNoSound)
	require.Negative(t, p.ShownVolume(), "there is none to set")
}

func TestALineIsAsWideAsItsColumn(t *testing.T) {
	p := newPage(t, "")
	for _, one := range []struct {
		width float64
		below bool
		want  float64
	}{{1000, false, 420}, {4000, false, 576}, {400, true, 368}, {4000, true, 576}} {
		p.Width, p.Browser.Page.OneBelow = one.width, one.below
		require.InDelta(t, one.want, p.Board(), 1e-9, one.width)
	}
	p.Browser.Page.Still = true
	require.True(t, p.Calm())
}

func TestAThemeIsRemembered(t *testing.T) {
	p := newPage(t, "")
	system := p.Theme()
	p.SetTheme("dark")
	require.Equal(t, []string{"dark", "dark"}, []string{p.Theme(), p.Browser.Page.Colour})
	p.SetTheme("plaid")
	require.Equal(t, []string{system, system}, []string{p.Theme(), p.Browser.Page.Colour})
}

func TestAnOutputSoundsAsItWasSet(t *testing.T) {
	p := newPage(t, "")
	require.Zero(t, p.SetUp())
	require.Empty(t, p.OutputName())
	p.Outputs.List = []host.Output{
		{Name: "studio", Mean: -38.5, When: someDay, Adjustment: host.Adjustment{Bass: 40, Wide: true}},
		{Name: "checked", Adjustment: host.Adjustment{Bass: 20}},
	}
	p.UseOutput("studio")
	require.Equal(t, []float64{0.6, 1}, []float64{p.Browser.Sound.Lead, p.Browser.Sound.Bass})
	require.Equal(t, audio.Spread, p.Browser.Sound.Stands)
	require.Equal(t, -38500*time.Microsecond, p.SetUp())
	require.Equal(t, "studio", p.OutputName())
	require.Equal(t, p.Outputs, p.Storage.Outputs(), "and is kept")

	p.Storage.Full = true
	p.UseOutput("checked")
	require.Error(t, p.Unsaved)
	require.Equal(t, audio.Centre, p.Browser.Sound.Stands, "it is used, kept or not")
	require.Equal(t, []float64{0.8, 1}, []float64{p.Browser.Sound.Lead, p.Browser.Sound.Bass})
	require.Empty(t, p.OutputName(), "no round may say that it was measured")
	require.Zero(t, p.SetUp())
	p.Storage.Full = false
	p.SaveOutputs()
	require.NoError(t, p.Unsaved)
}

func TestEveryPhaseHasItsScreen(t *testing.T) {
	want := map[round.Phase]view.Phase{
		round.Ready: view.Ready, round.CountIn: view.Playing, round.Playing: view.Playing,
		round.Waiting: view.Waiting, round.Void: view.Voided, round.Review: view.Reviewing,
	}
	for from, to := range want {
		require.Equal(t, to, control.PhaseOf(from), from)
	}
	require.Len(t, control.Whys, 4)
	said := map[view.Why]bool{}
	for _, why := range []string{host.WhyGap, host.WhyHidden, host.WhyPaused, host.WhySilent} {
		require.Contains(t, control.Whys, why)
		said[control.Whys[why]] = true
	}
	require.Len(t, said, 4, "each is said in its own words")
}

func TestNotesOnHowTapsWerePlaced(t *testing.T) {
	p := newPage(t, "")
	taps := &playback.Taps{Coarse: true}
	require.Equal(t, []view.Note{view.NoteQuiet, view.NoteCoarse, view.NoteNoSetUp}, p.Placed([]view.Note{view.NoteQuiet}, taps))
	p.Outputs.Put(host.Output{Name: "studio", When: someDay})
	require.Empty(t, p.Placed(nil, &playback.Taps{}))
}

// cutter is a round that can be cut.
type cutter struct {
	underWay bool
	why      []string
}

func (c *cutter) UnderWay() bool { return c.underWay }
func (c *cutter) Cut(why string) { c.underWay, c.why = false, append(c.why, why) }

func TestOnlyARoundThatIsUnderWayIsCut(t *testing.T) {
	p := newPage(t, "")
	p.Frame()
	c := p.Learner.Cycle("maqsum")
	passage, err := round.NewPassage(120, riff.Bare, 1, false, round.Section{Rhythm: c, Cycles: 8})
	require.NoError(t, err)
	track := playback.NewTrack(p.Shared.Sound, &p.Outputs)
	track.Play(passage, p.Shared.Wall.Now())
	for range 40 {
		p.Frame()
	}
	require.True(t, p.Helped(&track, true, view.ActAlone, "on"))
	require.True(t, p.Ear.Alone)
	at, _, _ := track.Heard(p.Shared.Wall.Now())
	require.Positive(t, at)
	require.False(t, p.Ear.Follow(at+4*time.Second-1), "eight beats at 120 a minute are 4 s")
	require.True(t, p.Ear.Follow(at+4*time.Second))

	p.Helped(&track, true, view.ActAlone, "on")
	done, going := &cutter{}, &cutter{underWay: true}
	p.Cut(&track, done, host.WhyGap)
	require.Empty(t, done.why)
	require.True(t, p.Ear.Alone, "nothing was cut")
	p.Cut(&track, going, host.WhyGap)
	require.Equal(t, []string{host.WhyGap}, going.why)
	require.False(t, p.Ear.Alone, "both drums are back")
	for range 80 {
		p.Frame()
	}
	require.Empty(t, p.Browser.Sound.Strikes(p.Shared.Wall.Now(), p.Shared.Wall.Now()+1000), "and nothing sounds on")
	p.Helped(&track, false, view.ActAlone, "on")
	require.False(t, p.Ear.Alone, "nothing plays that it could be alone in")
	require.False(t, p.Helped(&track, false, view.ActNext, ""))
}
