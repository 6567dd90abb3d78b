//go:build browser && !js

package main

import (
	"fmt"
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// detected is by how much later than its frame the monitor's detector finds a bass
// dum, ms; TestHeardTime measures it.
const detected = 1.5

// kindly is how far a figure of a record may lie from what was played, ms: the
// detector's dums differ by 0.3, and stamps are told by whole tenths.
const kindly = 2.0

// played waits for the first dum of a round and returns the performance time of its
// first step, ms.
func (b *tab) played() float64 {
	b.t.Helper()
	b.wait("monitor.onsets.length > 0")
	b.rest(300) // readings of the clock about it
	return get[float64](b, "monitor.heardAt(monitor.onsets[0], performance.now() - 300)") - detected
}

// pressAt presses a key at a performance time: not before it, and stamped with it.
func (b *tab) pressAt(at float64) {
	b.t.Helper()
	b.wait(fmt.Sprintf("performance.now() >= %v", at))
	b.key("j", at, get[float64](b, "performance.timeOrigin"))
}

// milliseconds is a time of a round since its first step, ms.
func milliseconds(at, start time.Duration) float64 { return float64(at-start) / 1e6 }

// lastKept is the last round as the page script hands it over.
func (b *tab) lastKept() history.Round {
	b.t.Helper()
	line := get[string](b, "groundbeat.log().then((l) => JSON.stringify(l.at(-1)))")
	r, err := history.Parse([]byte(line))
	require.NoError(b.t, err, line)
	return r
}

// everywhere checks the layout, and takes a picture, in three windows.
func (b *tab) everywhere(screen string) {
	b.t.Helper()
	for _, w := range []struct {
		name          string
		width, height int64
	}{{"phone", 390, 844}, {"projector", 1920, 1080}, {"desktop", 1280, 800}} {
		b.size(w.width, w.height, 1)
		b.settle(w.width)
		b.lies(screen, w.name)
		require.LessOrEqual(b.t, get[float64](b, "document.documentElement.scrollWidth"), float64(w.width))
	}
}

// aChange is a question with a change after two eights, at 200 counts a minute.
func aChange(t *testing.T) (quiz.Change, *round.Changed) {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	pool, err := quiz.From(all, "baladi.saidi")
	require.NoError(t, err)
	maqsum, _ := all.Get("maqsum")
	for seed := uint64(1); ; seed++ {
		q, err := quiz.Lean{}.NextChange(maqsum, pool, 2, 4, 200, riff.Bare, seed)
		require.NoError(t, err)
		if q.At == 2 {
			r, err := round.NewChanged(q.Change)
			require.NoError(t, err)
			return q, r
		}
	}
}

// Both exercises in one browser: what is pressed and tapped at known times is measured
// so, and what is said is kept.
func TestChangeAndStop(t *testing.T) {
	s := serve(t)
	b := monitored(t, s, s.URL+"/?screen=set-up")
	t.Run("a change heard", func(t *testing.T) { b.t = t; b.aChangeHeard(s) })
	t.Run("a stop caught", func(t *testing.T) { b.t = t; b.aStopCaught(s) })
}

// listening opens a link with the sound as loud as it goes.
func (b *tab) listening(url string) {
	b.t.Helper()
	b.visit(url)
	b.wait("monitor.ready || !window.isSecureContext")
	b.run(`groundbeat.volume(1); groundbeat.balance(1, 1, "apart")`)
}

// aChangeHeard presses once too early, and once two counts after the first stroke that
// differs, and says what it became; by keyboard.
func (b *tab) aChangeHeard(s *server) {
	t := b.t
	q, r := aChange(t)
	b.listening(fmt.Sprintf("%s/?screen=change&rhythm=maqsum&answers=2&from=baladi.saidi&bpm=200&eights=4&seed=%d", s.URL, q.Seed))
	b.everywhere("change-ready")
	b.press("Begin")
	b.wait("document.querySelector('.taparea')")
	require.Equal(t, "tap", b.focused())
	start := b.played()
	differs, _ := r.Differs()
	b.pressAt(start + 900)
	require.Equal(t, "Hear the change – Groundbeat", get[string](b, "document.title"))
	const late = 600.0 // two counts
	b.pressAt(start + milliseconds(differs, r.Start()) + late)
	b.wait("document.querySelector('#choices')")
	require.Equal(t, "heading", b.focused())
	require.Empty(t, get[[]string](b, layout))
	b.run(fmt.Sprintf("document.querySelector('#choices button[value=%s]').focus()", q.To.ID))
	b.keys("\r")
	b.wait("document.querySelector('#sides')")
	require.Equal(t, "You heard it after 2 counts, and pressed once too soon.", b.text("h1"))
	b.everywhere("change-review")

	k := b.lastKept()
	require.Equal(t, []any{history.Change, q.To.ID, q.To.ID, true, 2, 1}, []any{k.Kind, k.To, k.Answer, k.Right, len(k.Taps), k.Early})
	require.Nil(t, k.Taps[0].Offset)
	got := *k.Taps[1].Offset
	t.Logf("pressed %.1f ms after the first stroke that differs; measured %.3f ms", late, got)
	require.InDelta(t, late, got, kindly)
	require.InDelta(t, milliseconds(differs, r.Start()), 1000*(k.Strokes[0]-*k.Changes)+2*2400, 0.1, "by hand: two eights of 2.4 s")

	b.run("monitor.clear(); monitor.quiet = 2400")
	b.press("Hear maqsum")
	b.wait("document.querySelector('#hear-a').textContent === 'Stop'")
	b.wait("document.querySelector('#hear-a').textContent !== 'Stop'")
	require.Equal(t, 4, get[int](b, "monitor.onsets.length"), "the dums of an eight")
}

// aStopCaught taps a round with a stop with known offsets, once along with the figure,
// which is set aside, and once in the silence.
func (b *tab) aStopCaught(s *server) {
	t := b.t
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	maqsum, _ := all.Get("maqsum")
	r, err := round.NewStopped(round.Setting{Kind: round.Stops, Rhythm: maqsum, BPM: 200, Eights: 4, Seed: 3})
	require.NoError(t, err)
	stop := r.Stops()[0]
	b.listening(s.URL + "/?screen=stop&rhythm=maqsum&bpm=200&eights=4&seed=3")
	b.everywhere("stop-ready")
	b.press("Begin")
	b.wait("document.querySelector('.taparea')")
	require.Contains(t, b.text("#page"), "End")
	start := b.played()
	offsets := map[int]float64{stop.At: 35, stop.Back: -28}
	for i, step := range r.Steps() {
		at := start + milliseconds(r.Strokes()[i], r.Start())
		switch {
		case i == 0:
			continue // it has been heard before its place is known
		case step == stop.At: // along with the last of the figure, too
			b.pressAt(start + milliseconds(r.At(stop.At-2), r.Start()) + 10)
		case step == stop.Back:
			b.pressAt(at - 500)
		}
		b.pressAt(at + offsets[step])
	}
	b.wait("document.querySelector('#finding')")
	require.Equal(t, "Your hands went on in the silence: 1 tap. After the stop, keep still and count.", b.text("#finding"))
	b.everywhere("stop-review")

	k := b.lastKept()
	require.Equal(t, []any{history.Stop, 1, 1, 1}, []any{k.Kind, len(k.Breaks), k.Added, k.Out})
	require.Equal(t, []int{4, 1}, []int{k.Breaks[0].Counts, k.Breaks[0].Taps})
	require.Len(t, k.Aside, 1)
	worst := 0.0
	for _, tap := range k.Taps {
		if tap.Stroke != nil {
			worst = max(worst, math.Abs(*tap.Offset-offsets[r.Steps()[*tap.Stroke]]))
		}
	}
	t.Logf("%d taps, at most %.3f ms from what was tapped", k.Matched, worst)
	require.LessOrEqual(t, worst, kindly)
}
