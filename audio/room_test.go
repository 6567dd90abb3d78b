package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// impulse returns the room's answer to one frame of full scale.
func impulse(s *space, n int) sound {
	r := newRoom(s, Rate)
	x := make(sound, n)
	x[0] = 1
	r.answer(x, true)
	x[0]--
	return x
}

var spaces = map[string]*space{"lead": &byLead, "bass": &byBass}

// The room is small and soft: nothing comes back for 6 ms, all of it together
// stays 14 dB below the sound itself, and it decays as it should (0.26 and
// 0.28 s; sooner where the walls are dull). Choices.
func TestRoom(t *testing.T) {
	for name, s := range spaces {
		x := impulse(s, second)
		first := int(s.after[0] * float64(Rate))
		require.Zero(t, x[:first].peak(), name)
		require.NotZero(t, x[first+1])
		require.InDelta(t, 0.24, x[4800:].lowPass(2000).t60(), 0.06, name)
		level := 10 * math.Log10(x.energy())
		t.Logf("%s: %.1f dB, T60 %.3f s", name, level, x[4800:].lowPass(2000).t60())
		require.InDelta(t, -17, level, 3, name)
		require.Less(t, math.Abs(x.mean())*float64(second), 1e-5, "no direct current")
	}
}

// The tail has no grain: from 100 ms on no frame stands out by more than noise
// of a normal distribution does (kurtosis 3; calculated).
func TestRoomHasNoGrain(t *testing.T) {
	for name, s := range spaces {
		x := impulse(s, second)[4800:9600].highPass(200)
		var fourth float64
		for i := range x {
			x[i] *= math.Exp(decay60 * float64(i) / float64(Rate) / s.t60)
			fourth += x[i] * x[i] * x[i] * x[i]
		}
		kurtosis := float64(len(x)) * fourth / (x.energy() * x.energy())
		t.Logf("%s: kurtosis %.1f", name, kurtosis)
		require.Less(t, kurtosis, 6.0, name)
	}
}

func TestRoomComesToRest(t *testing.T) {
	for name, s := range spaces {
		r := newRoom(s, Rate)
		x := make([]float64, block)
		x[0] = 1
		r.answer(x, true)
		n := 0
		for ; r.awake; n++ {
			clear(x)
			r.answer(x, false)
			r.control()
			require.Less(t, n, 2*second/block)
		}
		require.Greater(t, n, second/4/block, "not before it is over")
		require.Equal(t, newRoom(s, Rate), r, "%s: as new", name)
		clear(x)
		r.answer(x, false)
		require.Equal(t, make([]float64, block), x)
	}
}

// What a hit's room gives does not reach the other drum, and the two rooms
// are not one: nothing cancels where the channels are added.
func TestRoomsDiffer(t *testing.T) {
	a, b := impulse(&byLead, second), impulse(&byBass, second)
	var sum float64
	for i := range a {
		sum += a[i] * b[i]
	}
	require.Less(t, math.Abs(sum)/math.Sqrt(a.energy()*b.energy()), 0.2)
}
