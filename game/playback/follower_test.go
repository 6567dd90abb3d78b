package playback_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// The ring is another in each cycle, and each lies where the lead drum's hits of the cycle
// lie in the stream.
func TestTheRingIsThatOfTheCycle(t *testing.T) {
	p := some(t, "maqsum", 120, 0, 4, true, riff.Ornamented)
	length := 4 * beat(120)
	var hits []time.Duration
	for _, h := range p.Hits(audio.Rate, 0) {
		if at := audio.Rate.Duration(h.Frame); h.Voice < audio.BassDum && at >= p.Start() {
			hits = append(hits, at)
		}
	}
	var f playback.Follower
	f.Follow(p)
	require.Equal(t, -1, f.Ringed)
	var h picture.Head
	var rings int
	var shown []time.Duration
	for at := time.Duration(0); at < p.End(); at += 10 * time.Millisecond {
		if !f.Ring(&h, at) {
			continue
		}
		require.Equal(t, rings, f.Ringed)
		require.Equal(t, rings == 0, at == 0, "the first is shown in the count-in too")
		require.Equal(t, rings, max(0, int((at-p.Start())/length)), "not before its time")
		for _, s := range h.Riff.Strokes {
			shown = append(shown, p.Start()+time.Duration((float64(rings)+s.Turn)*float64(length)))
		}
		rings++
	}
	require.Equal(t, 4, rings)
	require.Len(t, shown, len(hits))
	for i := range hits {
		require.InDelta(t, hits[i], shown[i], 30_000, "stroke %d", i) // a frame and rounding, ns
	}
	f.Clear()
	require.True(t, f.Ring(&h, p.End()-1), "what was wiped off is shown again")
}

func TestHandsAreShownWhenAskedFor(t *testing.T) {
	var f playback.Follower
	var h picture.Head
	f.ShowHands(&h, true, 0)
	require.False(t, h.ShowHands, "nobody plays yet")

	p := some(t, "maqsum", 120, 0, 1, false, riff.Bare)
	f.Follow(p)
	f.ShowHands(&h, false, 0)
	require.False(t, h.ShowHands)
	f.ShowHands(&h, true, 0)
	require.True(t, h.ShowHands)
	require.Zero(t, h.Hands[hand(p.Strikes()[0])].Lift, "the first stroke falls now")
	f.ShowHands(&h, false, 0)
	require.False(t, h.ShowHands)
}

// Calm hands stand from stroke to stroke; others rise between two.
func TestHandsAreAsCalmAsTheHead(t *testing.T) {
	p := some(t, "maqsum", 60, 0, 1, false, riff.Bare)
	var f playback.Follower
	f.Follow(p)
	first, second := p.Strikes()[0].At, p.Strikes()[1].At
	moving, calm := picture.Head{}, picture.Head{Calm: true}
	poses := func(h *picture.Head) int {
		seen := map[[2]picture.Hand]bool{}
		for at := first; at < second; at += (second - first) / 8 {
			f.ShowHands(h, true, at)
			seen[h.Hands] = true
		}
		return len(seen)
	}
	require.Greater(t, poses(&moving), 4)
	require.LessOrEqual(t, poses(&calm), 2)
}

// A follower of another passage has its hands, and not those of the one before.
func TestAFollowerForgetsThePassageBefore(t *testing.T) {
	var f, fresh playback.Follower
	var h, want picture.Head
	one, other := some(t, "maqsum", 60, 0, 1, false, riff.Bare), some(t, "masmudi-kabir", 140, 0, 1, false, riff.Filled)
	f.Follow(one)
	f.ShowHands(&h, true, 0)
	f.Follow(other)
	fresh.Follow(other)
	for at := time.Duration(0); at < other.End(); at += 50 * time.Millisecond {
		f.ShowHands(&h, true, at)
		fresh.ShowHands(&want, true, at)
		require.Equal(t, want.Hands, h.Hands, "at %v", at)
	}
}

// hand is which of a head's hands strikes; the strong one comes first.
func hand(s round.Strike) int {
	if s.Hand == riff.Strong {
		return 0
	}
	return 1
}
