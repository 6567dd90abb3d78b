package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestScheduleRefuses(t *testing.T) {
	nan := float32(math.NaN())
	for _, c := range []struct {
		name string
		hit  Hit
		err  error
		text string
	}{
		{"past", Hit{Frame: 99, Voice: LeadTek, Strength: 1}, ErrPast,
			"audio: hit at frame 99 (lead tek, strength 1): the frame has been read already"},
		{"before the stream", Hit{Frame: -1, Strength: 1}, ErrPast,
			"audio: hit at frame -1 (lead dum, strength 1): the frame has been read already"},
		{"voice", Hit{Frame: 200, Voice: voices, Strength: 1}, ErrVoice,
			"audio: hit at frame 200 (voice 8, strength 1): unknown voice"},
		{"no strength", Hit{Frame: 200, Voice: BassDum}, ErrStrength,
			"audio: hit at frame 200 (bass dum, strength 0): the strength is not above 0 and up to 1"},
		{"negative", Hit{Frame: 200, Strength: -0.5}, ErrStrength, ""},
		{"too strong", Hit{Frame: 200, Strength: 1.01}, ErrStrength, ""},
		{"not a number", Hit{Frame: 200, Strength: nan}, ErrStrength, ""},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := NewStream(Rate)
			read(t, s, 100)
			good := Hit{Frame: 150, Strength: 1}
			err := s.Schedule(good, c.hit, good)
			require.ErrorIs(t, err, c.err)
			var he *HitError
			require.ErrorAs(t, err, &he)
			require.Equal(t, c.hit.Frame, he.Hit.Frame)
			if c.text != "" {
				require.EqualError(t, err, c.text)
			}
			require.Equal(t, int64(math.MaxInt64), s.queue.next(), "none may be added")
		})
	}
}

func TestScheduleTakesTheNextFrame(t *testing.T) {
	s := NewStream(Rate)
	read(t, s, 100)
	require.NoError(t, s.Schedule(Hit{Frame: s.Frame(), Strength: 1}))
	require.NoError(t, s.Schedule())
}

func TestVoiceNames(t *testing.T) {
	seen := map[string]bool{}
	for v := range voices {
		require.NotContains(t, v.String(), "voice")
		seen[v.String()] = true
	}
	require.Len(t, seen, int(voices))
	require.Equal(t, "voice 255", Voice(255).String())
}

func TestQueue(t *testing.T) {
	var q queue
	at := func(frames ...int64) (hits []Hit) {
		for _, f := range frames {
			hits = append(hits, Hit{Frame: f, Strength: 1})
		}
		return hits
	}
	q.add(at(30, 10, 20))
	require.Equal(t, int64(10), q.take().Frame)
	q.add(at(25, 15))
	q.drop(25)
	require.Equal(t, int64(15), q.take().Frame)
	require.Equal(t, int64(20), q.take().Frame)
	require.Equal(t, int64(math.MaxInt64), q.next())
	q.drop(0)
	q.add(at(5))
	q.drop(5)
	require.Equal(t, int64(math.MaxInt64), q.next())
}
