package playback_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/riff"
)

// begun is a track that plays four beats of count-in and two cycles, from a frame of the
// stream, with the frame at which it begins.
func begun(t *testing.T, d *desk, now float64) (*playback.Track, int64) {
	t.Helper()
	p := playback.NewTrack(d, &host.Outputs{})
	p.Play(some(t, "maqsum", 100, 0, 2, true, riff.Bare), now)
	return &p, d.from
}

func TestAPassageBeginsShortlyAfterWhatIsRendered(t *testing.T) {
	d := &desk{frame: 70_000, hits: []audio.Hit{{Frame: 70_100, Voice: audio.LeadSak, Strength: 1}}}
	_, base := begun(t, d, 0)
	require.Equal(t, int64(70_000+playback.Margin), base)
	require.Equal(t, []string{"drop", "play"}, d.did, "what sounded before is cut, and only then it begins")
	var dums []int64
	for _, h := range d.hits {
		require.NotEqual(t, audio.LeadSak, h.Voice, "what was scheduled before is gone")
		require.GreaterOrEqual(t, h.Frame, base)
		if h.Voice == audio.BassDum {
			dums = append(dums, h.Frame-base)
		}
	}
	// Maqsum is D T - T D - T -: dums on the 1 and the 3 of its four beats, after four of
	// count-in (see the rhythm's own file for its sources).
	var want []int64
	for _, beats := range []time.Duration{4, 6, 8, 10} {
		want = append(want, audio.Rate.Frame(beats*beat(100)))
	}
	require.Equal(t, want, dums)
}

// What is cut is all that was to come, also what another track had scheduled before this
// one was played the last time.
func TestAPassageCutsWhateverSounds(t *testing.T) {
	d := &desk{frame: 50_000}
	p, base := begun(t, d, 0)
	d.hits = append(d.hits, audio.Hit{Frame: base - 500, Voice: audio.LeadSak, Strength: 1})
	p.Play(p.Passage, 10)
	for _, h := range d.hits {
		require.NotEqual(t, audio.LeadSak, h.Voice)
	}
}

func TestAPassageIsBegunAnewWhenTheStreamOvertakesIt(t *testing.T) {
	for busy := range 8 {
		d := &desk{busy: busy}
		_, base := begun(t, d, 0)
		require.Equal(t, int64(busy*far+playback.Margin), base, "after %d tries in vain", busy)
		require.Equal(t, base, d.hits[0].Frame, "and its hits stand with it")
	}
	require.Panics(t, func() { begun(t, &desk{busy: 8}, 0) }, "a stream that never waits")
}

func TestHeardFromTheFirstFrameOn(t *testing.T) {
	d := &desk{frame: 48_000}
	p, base := begun(t, d, 1000)
	at, position, why := p.Heard(ms(base - 48))
	require.Equal(t, -time.Millisecond, at)
	require.Empty(t, why)
	require.Zero(t, p.Epoch, "what is heard is what was before")
	require.Equal(t, float64(base-48), position.Frame)

	at, _, why = p.Heard(ms(base) + 0.25)
	require.InDelta(t, 250*time.Microsecond, at, 1000, "with its fraction of a frame")
	require.Empty(t, why)
	require.Equal(t, d.epoch, p.Epoch)
	at, _, _ = p.Heard(ms(base) - 1)
	require.Equal(t, -time.Millisecond, at, "a tap is asked for late: it may have been before")
}

func TestAGapIsToldOnceItIsHeard(t *testing.T) {
	d := &desk{}
	p, base := begun(t, d, 0)
	d.epoch++ // before the first frame: the passage is heard in the epoch that it came to
	_, _, why := p.Heard(ms(base))
	require.Empty(t, why)
	require.Equal(t, d.epoch, p.Epoch)
	d.epoch++
	at, _, why := p.Heard(ms(base) + 500)
	require.Equal(t, host.WhyGap, why)
	require.Negative(t, at)
	p.Play(p.Passage, 600)
	require.Zero(t, p.Epoch, "begun anew, it is whole again")
	_, _, why = p.Heard(ms(d.from))
	require.Empty(t, why)
}

func TestSilenceIsToldWhenPatienceIsOver(t *testing.T) {
	const begin, patience = 2000., 8000. // ms; Heard's own promise is some seconds
	d := &desk{lost: errLost}
	p, base := begun(t, d, begin)
	at, _, why := p.Heard(begin + patience)
	require.Empty(t, why)
	require.Negative(t, at, "nothing is heard yet")
	at, _, why = p.Heard(begin + patience + 1)
	require.Equal(t, host.WhySilent, why)
	require.Zero(t, at)

	d.lost = nil
	_, _, why = p.Heard(ms(base) + 10)
	require.Empty(t, why)
	d.lost = errLost
	at, _, why = p.Heard(begin + 2*patience)
	require.Empty(t, why, "it was heard: that the clock does not know is no silence")
	require.Negative(t, at)
}

func TestPicturesWaitForTheSound(t *testing.T) {
	for _, wait := range []int{-100, 0, 180} {
		p := playback.NewTrack(&desk{}, later(wait))
		want := time.Duration(wait) * time.Millisecond
		for _, at := range []time.Duration{0, time.Millisecond, 3 * time.Second} {
			require.Equal(t, at-want, p.Seen(at), "by %d ms at %v", wait, at)
		}
		require.Equal(t, -time.Nanosecond, p.Seen(-1), "nothing is seen before anything is heard")
	}
	o := &host.Outputs{}
	p := playback.NewTrack(&desk{}, o)
	require.Equal(t, time.Second, p.Seen(time.Second))
	o.Adjust(host.Adjustment{Later: 250}, "set while it plays")
	require.Equal(t, 750*time.Millisecond, p.Seen(time.Second))
}

func TestATrackKnowsItsPlaceInTheStream(t *testing.T) {
	d := &desk{frame: 96_000 - playback.Margin}
	p, _ := begun(t, d, 0)
	require.Equal(t, 2.5, p.Second(500*time.Millisecond), "96,000 frames are 2 s")
	_, _, why := p.Heard(2100)
	require.Empty(t, why)
	require.True(t, p.WholeTo(time.Second))
	require.Equal(t, [3]int64{1, 96_000, 144_000}, d.asked)
	require.True(t, p.Whole())
	// Four beats and twice four at 100 a minute are 7.2 s.
	require.Equal(t, [3]int64{1, 96_000, 96_000 + 72*4800}, d.asked)
}

func TestStoppedIsSilentAndForgotten(t *testing.T) {
	d := &desk{frame: 4800}
	p, base := begun(t, d, 0)
	d.hits = append(d.hits, audio.Hit{Frame: base - 1})
	d.did = nil
	p.Stop()
	require.Equal(t, []string{"stop", "drop"}, d.did)
	require.Equal(t, []audio.Hit{{Frame: base - 1}}, d.hits, "and nothing but its own")
}

func TestSettledIsOfThisTrackAlone(t *testing.T) {
	d := &desk{}
	p, base := begun(t, d, 0)
	_, _, _ = p.Heard(ms(base))
	d.shift = 24
	position, ok := p.Settled(ms(base))
	require.True(t, ok)
	require.Equal(t, 500*time.Microsecond, p.Span(position), "24 frames of 48,000 a second")
	d.lost = errLost
	_, ok = p.Settled(ms(base))
	require.False(t, ok, "it knows no better")
	d.lost, d.epoch = nil, d.epoch+1
	_, ok = p.Settled(ms(base))
	require.False(t, ok, "that is of another start of the sound")
}
