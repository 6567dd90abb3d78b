package playback_test

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// looped is a loop of one rhythm whose tempo can be changed, on a desk.
type looped struct {
	desk
	playback.Loop
	asked []int // which cycles were asked for
	bpm   int
	now   float64 // ms
}

func newLooped(t *testing.T, bpm int, o *host.Outputs) *looped {
	t.Helper()
	x := &looped{bpm: bpm}
	x.frame = 20_000
	x.now = ms(x.frame)
	x.Loop = playback.NewLoop(playback.NewTrack(&x.desk, o), func(n int) *round.Passage {
		x.asked = append(x.asked, n)
		return some(t, "maqsum", x.bpm, n%8, 1, false, riff.Filled)
	})
	return x
}

// pass lets some ms of the stream be read and heard.
func (x *looped) pass(ms float64) (why string) {
	x.now += ms
	x.frame = max(x.frame, int64(x.now*48))
	return x.Follow(x.now)
}

// lows are the frames of the dums of the bass drum that are scheduled.
func (x *looped) lows() (all []int64) {
	for _, h := range x.hits {
		if h.Voice == audio.BassDum {
			all = append(all, h.Frame)
		}
	}
	return all
}

// However the page's frames fall, cycle follows on cycle to the frame, and enough of them
// lie ahead that a busy page leaves no hole. Maqsum's dums lie half a cycle apart.
func TestCycleFollowsOnCycle(t *testing.T) {
	for seed := range uint64(20) {
		chance := rand.New(rand.NewPCG(seed, 9))
		x := newLooped(t, 60+chance.IntN(140), &host.Outputs{})
		x.Start(x.now)
		for range 40 {
			require.Empty(t, x.pass(1+400*chance.Float64()))
			last := x.hits[len(x.hits)-1].Frame
			require.Greater(t, last, x.frame+int64(audio.Rate)/2, "seed %d: enough lies ahead", seed)
		}
		for i, n := range x.asked {
			require.Equal(t, i, n, "each in its turn, and once")
		}
		lows := x.lows()
		half := float64(audio.Rate) * 2 * beat(x.bpm).Seconds()
		require.Equal(t, x.from, lows[0])
		for i, at := range lows {
			require.InDelta(t, float64(x.from)+half*float64(i), at, float64(len(x.asked))+1, "seed %d, dum %d", seed, i)
		}
	}
}

func TestPicturesShowTheCycleThatIsHeard(t *testing.T) {
	for _, wait := range []int{0, 200} {
		x := newLooped(t, 120, later(wait)) // a cycle lasts 2 s
		x.Start(x.now)
		x.pass(ms(playback.Margin) - 1)
		require.Nil(t, x.Shows, "nothing is heard yet")
		begin := ms(x.from)
		var seen []*round.Passage
		for x.now < begin+9000 {
			x.pass(50)
			since := x.now - begin - float64(wait)
			if since < 0 {
				require.Nil(t, x.Shows)
				continue
			}
			require.InDelta(t, float64(int(since)%2000), float64(x.At)/1e6, 1, "at %g", since)
			require.InDelta(t, float64(x.At)/2e9, x.Turn, 1e-3)
			if len(seen) == 0 || seen[len(seen)-1] != x.Shows {
				seen = append(seen, x.Shows)
			}
			require.Len(t, seen, 1+int(since)/2000)
		}
	}
}

// A change is heard from the next cycle on that has not been rendered.
func TestAChangeIsHeardFromTheNextCycle(t *testing.T) {
	for seed := range uint64(20) {
		chance := rand.New(rand.NewPCG(seed, 4))
		x := newLooped(t, 120, &host.Outputs{})
		x.Start(x.now)
		for range 10 {
			x.pass(400 * chance.Float64())
		}
		const length = 96_000 // frames of a cycle of four beats at 120 a minute
		next := x.from
		for next < x.frame+playback.Margin {
			next += length
		}
		x.bpm = 60
		n := int((next - x.from) / length)
		x.Update()
		for range 30 {
			x.pass(100)
		}
		lows := x.lows()
		before := slices.Index(lows, next)
		require.Equal(t, 2*n, before, "seed %d: no cycle that begins in time is left as it was", seed)
		for i := 1; i < len(lows); i++ {
			want := int64(length / 2)
			if i > before {
				want = length
			}
			require.Equal(t, want, lows[i]-lows[i-1], "seed %d, dum %d", seed, i)
		}
		require.Greater(t, x.hits[len(x.hits)-1].Frame, x.frame+int64(audio.Rate)/2)
	}
}

func TestACycleThatIsAboutToBeRenderedStaysAsItIs(t *testing.T) {
	for _, near := range []int64{playback.Margin - 1, playback.Margin} {
		x := newLooped(t, 120, &host.Outputs{})
		x.Start(x.now)
		x.pass(1000) // by now the second cycle is scheduled
		x.frame = x.from + 96_000 - near
		x.bpm = 60
		x.Update()
		lows := x.lows()
		require.Equal(t, near < playback.Margin, slices.Contains(lows, x.from+144_000), "%d frames before it", near)
		require.Contains(t, lows, x.from+96_000)
	}
}

// A page that was busy for too long goes on with the next cycle, in time for the stream.
func TestAHoleIsLeftBehind(t *testing.T) {
	x := newLooped(t, 120, &host.Outputs{})
	x.Start(x.now)
	x.pass(500)
	asked := len(x.asked)
	x.frame += 20 * int64(audio.Rate)
	x.Follow(x.now)
	lows := x.lows()
	after := lows[slices.IndexFunc(lows, func(f int64) bool { return f >= x.frame })]
	require.Equal(t, x.frame+playback.Margin, after)
	require.Equal(t, asked, x.asked[asked], "no cycle is left out")
	x.now = ms(x.frame)
	x.pass(ms(playback.Margin) + 250)
	require.InDelta(t, 250*time.Millisecond, x.At, 1e6, "and pictures are with it")
}

func TestAHaltedLoopIsStill(t *testing.T) {
	x := newLooped(t, 120, &host.Outputs{})
	require.Empty(t, x.Follow(x.now), "before it has begun")
	x.Update()
	require.Empty(t, x.hits)
	x.Start(x.now)
	x.pass(1000)
	require.NotNil(t, x.Shows)
	head := &playback.Head{}
	require.Same(t, head, x.TurnHead(head))
	require.True(t, head.Shown.Turning)
	require.Equal(t, x.Turn, head.Shown.Turn)
	x.Halt()
	require.False(t, x.TurnHead(head).Shown.Turning)
	require.Nil(t, x.Shows)
	require.Empty(t, x.hits)
	require.Equal(t, "stop", x.did[len(x.did)-2])
	asked := len(x.asked)
	x.Update()
	require.Empty(t, x.pass(1000))
	require.Nil(t, x.Shows)
	require.Len(t, x.asked, asked, "nothing more is asked for")
	x.Start(x.now)
	require.Equal(t, 0, x.asked[asked], "started again, it begins with the first")
	require.True(t, x.On)
}

// What is begun anew has nothing of what was played before: no hit, and no hand.
func TestALoopBegunAnewBeginsWithTheFirst(t *testing.T) {
	x := newLooped(t, 120, &host.Outputs{})
	x.Start(x.now)
	for range 50 {
		x.pass(100)
	}
	require.Negative(t, x.Strikes()[0].At, "the hands come from the cycle before")
	x.Start(x.now)
	x.Update()
	require.Equal(t, x.from, x.lows()[0], "the first cycle stays, though nothing of it has been rendered")
	for x.pass(10); x.Shows == nil; {
		x.pass(10)
	}
	require.Less(t, x.At, 20*time.Millisecond)
	require.Zero(t, x.Strikes()[0].At, "no cycle was before it")
}

func TestALoopTellsWhatIsWrong(t *testing.T) {
	x := newLooped(t, 120, &host.Outputs{})
	x.Start(x.now)
	x.pass(500)
	x.epoch++
	require.Equal(t, host.WhyGap, x.pass(20))
	require.Nil(t, x.Shows)
}

// The hands go on from cycle to cycle: at any moment the strikes of the last second and of
// the next are the lead drum's hits in the stream, whichever cycle they are timed from.
func TestHandsGoOnFromCycleToCycle(t *testing.T) {
	x := newLooped(t, 120, &host.Outputs{})
	x.Start(x.now)
	for range 60 {
		x.pass(110)
		if x.Shows == nil {
			continue
		}
		begin := int64(x.now*48) - audio.Rate.Frame(x.At)
		var hands, hits []int64
		within := func(at int64) bool { return at > int64(x.now*48)-48_000 && at < int64(x.now*48)+48_000 }
		for _, s := range x.Strikes() {
			if at := begin + audio.Rate.Frame(s.At); within(at) {
				hands = append(hands, at)
			}
		}
		for _, h := range x.hits {
			if h.Voice < audio.BassDum && within(h.Frame) {
				hits = append(hits, h.Frame)
			}
		}
		slices.Sort(hits)
		require.Len(t, hands, len(hits))
		require.True(t, slices.IsSorted(hands), "in the order of time")
		for i := range hands {
			require.InDelta(t, hits[i], hands[i], 2)
		}
	}
}
