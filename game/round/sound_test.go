package round_test

import (
	"encoding/binary"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
)

// render reads some frames of a stream with some hits, as the bits of its two
// channels.
func render(t *testing.T, hits []audio.Hit, frames int64) (left, right []uint32) {
	t.Helper()
	s := audio.NewStream(audio.Rate)
	require.NoError(t, s.Schedule(hits...))
	p := make([]byte, frames*8)
	n, err := s.Read(p)
	require.NoError(t, err)
	require.Len(t, p, n)
	for ; len(p) > 0; p = p[8:] {
		left = append(left, binary.LittleEndian.Uint32(p))
		right = append(right, binary.LittleEndian.Uint32(p[4:]))
	}
	return left, right
}

// differ is the first frame in which two channels differ, or −1.
func differ(a, b []uint32) int64 {
	for i := range b { // the shorter one
		if a[i] != b[i] {
			return int64(i)
		}
	}
	return -1
}

// A hit is heard from exactly its frame on: a stream that lacks the hits from
// some frame on is the same up to that frame, and not in it.
func TestHitsSoundOnTheirFrames(t *testing.T) {
	const base, bpm, more = 777, 199, 64
	r := ready(t, supplied(t, "saidi"), bpm, 1)
	hits := r.Hits(audio.Rate, base)
	frames := expectedFrames("saidi", bpm, base)
	left, right := render(t, hits, frames[len(frames)-1]+more)
	for i, frame := range frames {
		earlier := slices.DeleteFunc(slices.Clone(hits), func(h audio.Hit) bool { return h.Frame >= frame })
		l, r := render(t, earlier, frame+more)
		require.Equal(t, frame, differ(left, l), "lead drum")
		if i < 4 { // the count-in is the lead drum's alone
			require.Equal(t, int64(-1), differ(right, r), "bass drum")
		} else {
			require.Equal(t, frame, differ(right, r), "bass drum")
		}
	}
}

// expectedFrames are the frames of one eight with its count-in, each once.
func expectedFrames(id string, bpm int, base int64) []int64 {
	var frames []int64
	for _, h := range expected(skeletons[id], bpm, 1, base) {
		frames = append(frames, h.frame)
	}
	slices.Sort(frames)
	return slices.Compact(frames)
}
