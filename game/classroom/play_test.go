package classroom

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// As people arrive each rhythm of the set is heard for sixteen cycles at its usual tempo,
// and so softly that they can talk; after the last comes the first.
func TestWalkInGoesThroughTheSet(t *testing.T) {
	r := begun(t, "five_solo_hands-up_2_5")
	pool, err := quiz.From(r.Shared.Rhythms(), quiz.Five)
	require.NoError(t, err)
	var heard []*rhythm.Cycle
	for n := range 16*len(pool) + 1 {
		p := r.class().arriving(n)
		c := p.Rhythm(0)
		require.Equal(t, c.Tempo.Usual, p.BPM(), c.ID)
		if n%16 == 0 {
			heard = append(heard, c)
		}
		require.Equal(t, heard[len(heard)-1], c, "cycle %d", n)
		for _, h := range p.Hits(audio.Rate, 0) {
			require.LessOrEqual(t, h.Strength, float32(0.7))
		}
	}
	require.Equal(t, append(pool, pool[0]), heard)
}

// It comes out of silence in three seconds, and never louder than it was set.
func TestSoundFadesIn(t *testing.T) {
	r := begun(t, hands)
	const full = 0.6 * 0.6 // of a volume of 60
	require.Zero(t, r.Sound.Loudness)
	last, half := 0., 0.
	for ms := 0; ms < 3100; ms += 10 {
		r.Ticks(10)
		require.GreaterOrEqual(t, r.Sound.Loudness, last)
		require.LessOrEqual(t, r.Sound.Loudness, full+1e-9)
		if last = r.Sound.Loudness; ms == 1500 {
			half = last
		}
	}
	require.InDelta(t, full/4, half, 0.01, "half way, as it is heard")
	require.InDelta(t, full, last, 1e-9)

	r.Use(view.ActClassOnce, "stop")
	r.Use(view.ActClassOnce, "")
	r.Ticks(500)
	require.Less(t, r.Sound.Loudness, full)
	r.Use(view.ActClassOnce, "stop")
	require.InDelta(t, full, r.Sound.Loudness, 1e-9, "cut while it fades in, the volume is as it was set")
}

// The first press at a question plays it, and the next goes on: while it plays, and after.
func TestAQuestionIsHeardBeforeItIsLeft(t *testing.T) {
	for _, whole := range []bool{false, true} {
		r := begun(t, hands)
		r.next()
		require.Equal(t, warmup.Asking, r.stage())
		require.False(t, r.class().loop.On, "the walk-in is over")
		require.False(t, r.class().one, "the teacher talks first")
		r.next()
		require.Equal(t, warmup.Asking, r.stage())
		require.True(t, r.class().one)
		task, _ := r.class().run.Task()
		_, cut, err := task.Passage(100)
		require.NoError(t, err)
		r.Ticks(1000)
		require.True(t, r.class().one)
		if whole {
			began := r.class().now
			require.Positive(t, began)
			r.ends()
			require.True(t, r.class().heard)
			require.GreaterOrEqual(t, r.class().cut, cut)
		}
		r.next()
		require.Equal(t, warmup.Counting, r.stage())
		require.False(t, r.class().one, "hands are counted in silence")
	}
}

// A question can be heard more slowly, at once while it sounds; the next one is as fast as
// ever.
func TestSlowlyIsForOneQuestion(t *testing.T) {
	r := begun(t, hands)
	r.Use(view.ActSlower, "")
	require.False(t, r.class().slow, "nothing is asked yet")
	r.next()
	r.next()
	usual := r.class().loop.Passage.BPM()
	r.Ticks(2000)
	r.Use(view.ActSlower, "")
	require.InDelta(t, usual*80/100, r.class().loop.Passage.BPM(), 1)
	require.Negative(t, r.class().now, "from its beginning")
	r.Use(view.ActSlower, "")
	require.Equal(t, usual, r.class().loop.Passage.BPM())
	r.Use(view.ActSlower, "")
	r.Use(view.ActClassSkip, "")
	require.False(t, r.class().slow)
}

// Once it is told, what it was is heard first, and then what it was taken for.
func TestWhatItWasIsHeardInTurn(t *testing.T) {
	r := begun(t, hands)
	r.until(warmup.Telling)
	task, _ := r.class().run.Task()
	other, _ := r.class().run.TakenFor()
	want, err := task.Turns(other)
	require.NoError(t, err)
	require.Len(t, want, 2)
	var heard []string
	for range 4000 {
		x := r.class()
		if !x.one {
			break
		}
		if id := x.turns[0].ID; len(heard) == 0 || heard[len(heard)-1] != id {
			heard = append(heard, id)
		}
		r.Ticks(20)
	}
	require.Equal(t, []string{want[0].ID, want[1].ID}, heard)
	require.Equal(t, task.Right, heard[0])
	require.True(t, r.class().heard)
	require.Equal(t, warmup.Telling, r.stage(), "a stage is left by a press alone")
	r.next()
	require.Equal(t, warmup.Hearing, r.stage())
	require.True(t, r.class().one, "once more, now that it is known")
	r.ends()
	r.Use(view.ActClassOnce, "")
	require.True(t, r.class().one, "and as often as the teacher likes")
	r.Use(view.ActClassOnce, "stop")
	require.False(t, r.class().one)
}

func TestWhatInterruptsARoom(t *testing.T) {
	r := begun(t, hands)
	r.next()
	r.next()
	r.Ticks(1500)
	passage, cut := r.class().loop.Passage, r.class().cut
	require.Positive(t, r.class().now)
	r.Controller.Interrupt(host.WhyGap)
	require.True(t, r.class().one, "after a gap it begins anew")
	require.Equal(t, time.Duration(-1), r.class().now)
	require.Same(t, passage, r.class().loop.Passage)
	require.Equal(t, cut, r.class().cut)
	r.Controller.Interrupt(host.WhyPaused)
	require.False(t, r.class().one)
	require.False(t, r.class().heard, "it was not heard: one press plays it")
	require.False(t, r.class().silent)
	r.next()
	require.Equal(t, warmup.Asking, r.stage())
	r.Controller.Interrupt(host.WhySilent)
	require.True(t, r.class().silent, "nothing came of it, and the screen says so")
	r.next()
	require.False(t, r.class().silent, "until it is tried again")
}

// A press lets the bass drum be heard alone for an eight, another brings both back.
func TestTheBassDrumAloneInARoom(t *testing.T) {
	r := begun(t, hands)
	levels := func() [2]float64 { return [2]float64{r.Sound.Lead, r.Sound.Bass} }
	r.Use(view.ActClassOnce, "stop")
	r.Use(view.ActAlone, "on")
	require.Equal(t, [2]float64{1, 1}, levels(), "nothing sounds")
	r.Use(view.ActClassOnce, "")
	r.Ticks(500)
	r.Use(view.ActAlone, "on")
	require.Equal(t, [2]float64{0, 1}, levels())
	r.Use(view.ActAlone, "on")
	require.Equal(t, [2]float64{1, 1}, levels(), "the same key again")
	r.Use(view.ActAlone, "on")
	r.next()
	require.Equal(t, [2]float64{1, 1}, levels(), "at another stage both are back")
}
