package control_test

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

var someDay = time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC)

func TestABlankRecord(t *testing.T) {
	p := newPage(t, "")
	p.Browser.Wall.Set(someDay)
	p.Outputs.Put(host.Output{Name: "studio", When: someDay})
	one, two := p.Blank(history.Dums, "saidi"), p.Blank(history.Dums, "saidi")
	require.NotEqual(t, one.ID, two.ID)
	one.ID = ""
	require.Equal(t, history.Round{Kind: history.Dums, Rhythm: "saidi", When: "2026-01-31T18:30:00Z", Output: "studio", Rate: 48000}, one)
}

func TestAFinishedRoundIsKept(t *testing.T) {
	p := newPage(t, "")
	r := asked(1, 3, "", "maqsum")
	p.Keep(r, nil)
	require.True(t, p.Finished)
	require.True(t, p.Storage.Begun())
	require.Equal(t, []string{r.ID}, ids(p.finished), "a practice goes on")
	require.Empty(t, p.Learner.Rounds, "it is not known before it is kept")
	p.Frame()
	require.Equal(t, []string{r.ID}, ids(p.Learner.Rounds))
	require.Equal(t, []string{r.ID}, ids(p.Storage.Rounds()))
}

// A round that waits to be kept is known all the same: it was played.
func TestARoundThatWaitsIsKnown(t *testing.T) {
	p := newPage(t, "")
	p.Storage.Full = true
	p.Keep(asked(1, 3, "", "maqsum"), nil)
	p.Frame()
	require.Len(t, p.Learner.Rounds, 1)
	require.Equal(t, 1, p.Storage.Storage().Waiting)
}

func TestARoundThatIsReadFromTheStoreIsNotAddedTwice(t *testing.T) {
	p := newPage(t, "")
	p.Keep(asked(1, 3, "", "maqsum"), nil)
	p.read(t)
	require.Len(t, p.Learner.Rounds, 1)
	require.Equal(t, 1, p.Learner.Kept())
}

func TestARoundWithoutARecordIsToldOf(t *testing.T) {
	p := newPage(t, "")
	wrong := errors.New("no record")
	p.Keep(history.Round{}, wrong)
	require.Equal(t, wrong, p.Unsaved)
	require.True(t, p.Stale, "the screen says so")
	require.True(t, p.Finished)
	require.Empty(t, p.finished)
	p.Frame()
	require.Empty(t, p.Storage.Rounds())
}

// A record says how far the riff hid the base where it could, and how far it was asked to
// where the player can ask: from ornamented riffs on.
func TestARecordSaysWhichRiffItWas(t *testing.T) {
	p := newPage(t, "")
	c := p.Learner.Cycle("maqsum")
	p.Ear.Reset(-30)
	for l := riff.Bare; l <= riff.Solo; l++ {
		made, err := riff.New(c, l, 3)
		require.NoError(t, err)
		part, err := made.At(100).Cycles(0, 8)
		require.NoError(t, err)
		r := history.Round{Riff: l.String(), BPM: 100}
		p.Riffed(&r, c, part, 45)
		require.Equal(t, -30, r.Helps.Balance, "%v: what helped the ear", l)
		require.Equal(t, l >= riff.Filled, r.Hide != nil, "%v", l)
		if r.Hide != nil {
			require.Equal(t, riff.Hide(c, part, 100), *r.Hide)
		}
		if l >= riff.Ornamented {
			require.Equal(t, []int{riff.Version, 45}, []int{r.RiffVersion, r.HideAsked})
		} else {
			require.Zero(t, [2]int{r.RiffVersion, r.HideAsked}, "%v", l)
		}
	}
	r := history.Round{Riff: "of a later version"}
	p.Riffed(&r, c, riff.Part{}, 45)
	require.Nil(t, r.Hide)
}
