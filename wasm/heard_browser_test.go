//go:build browser && !js

package main

import (
	"encoding/binary"
	"fmt"
	"math"
	"os"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// kept is a finished round as the page script hands it over.
type kept struct {
	ID      string    `json:"id"`
	Epoch   int       `json:"epoch"`
	Strokes []float64 `json:"strokes"`
	Taps    []struct {
		At     float64  `json:"at"`
		Offset *float64 `json:"offset"`
		Stroke *int     `json:"stroke"`
	} `json:"taps"`
	Score float64 `json:"score"`
}

// question is the round that these tests play.
func question(t *testing.T, bpm, eights int) round.Setting {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	maqsum, ok := all.Get("maqsum")
	require.True(t, ok)
	return round.Setting{Kind: round.Dums, Rhythm: maqsum, BPM: bpm, Eights: eights, Level: riff.Bare, Seed: 7}
}

func roundLink(s *server, q round.Setting) string {
	return fmt.Sprintf("%s/?screen=dums&rhythm=%s&bpm=%d&eights=%d&riff=bare&seed=%d", s.URL, q.Rhythm.ID, q.BPM, q.Eights, q.Seed)
}

// detector is the fixed bias of the hook's detector: from a bass dum's frame to
// where its sound first reaches the hook's level. It is measured here on the
// stream itself, over the very strokes of the round.
func detector(t *testing.T, q round.Setting) (mean, most float64) {
	t.Helper()
	r, err := round.New(q)
	require.NoError(t, err)
	_, right := render(t, r, 0)
	var biases []float64
	for _, s := range r.Strokes() {
		at := audio.Rate.Frame(s)
		for i := at; ; i++ {
			require.Less(t, i, at+480, "no dum there")
			if math.Abs(float64(right[i])) >= 0.25 {
				biases = append(biases, float64(i-at)/float64(audio.Rate)*1000)
				break
			}
		}
	}
	for _, b := range biases {
		mean += b / float64(len(biases))
	}
	for _, b := range biases {
		most = max(most, math.Abs(b-mean))
	}
	return mean, most
}

// render renders the round's stream, its first frame at base, from frame 0.
func render(t *testing.T, r *round.Round, base int64) (left, right []float32) {
	t.Helper()
	stream := audio.NewStream(audio.Rate)
	require.NoError(t, stream.Schedule(r.Hits(audio.Rate, base)...))
	buf := make([]byte, 8*(base+audio.Rate.Frame(r.End())))
	_, err := stream.Read(buf)
	require.NoError(t, err)
	return samples(buf)
}

func samples(buf []byte) (left, right []float32) {
	for i := 0; i+8 <= len(buf); i += 8 {
		left = append(left, math.Float32frombits(binary.LittleEndian.Uint32(buf[i:])))
		right = append(right, math.Float32frombits(binary.LittleEndian.Uint32(buf[i+4:])))
	}
	return left, right
}

// monitored opens the page with the monitor in the sound's way. Its live pictures are not
// drawn, but where pictures are taken.
func monitored(t *testing.T, s *server, url string, flags ...string) *tab {
	t.Helper()
	return undrawing(t, flags...).listens(url)
}

// drawing is monitored with all that a machine has to do: the live pictures are drawn.
func drawing(t *testing.T, s *server, url string) *tab {
	t.Helper()
	return open(t).listens(url)
}

// listens opens an address with the monitor in the sound's way.
func (b *tab) listens(url string) *tab {
	b.t.Helper()
	hook, err := os.ReadFile("testdata/hook.js")
	require.NoError(b.t, err)
	b.early(string(hook))
	b.visit(url)
	b.wait("monitor.ready || !window.isSecureContext")
	b.run(`groundbeat.volume(1); groundbeat.balance(1, 1, "apart")`)
	return b
}

// errors are what the taps are wrong by, ms: + behind.
var wrong = []float64{0, 30, -30, 12, -45, 60, -8, 5, -20, 42, 0, -60}

// tapAlong taps each dum as it is captured, wrong by a known amount, until the
// review comes. on is called with the number of each dum.
func (b *tab) tapAlong(on func(i int)) {
	b.t.Helper()
	b.wait("document.querySelector('.taparea')")
	origin := get[float64](b, "performance.timeOrigin")
	done := 0
	for until := time.Now().Add(time.Minute); time.Now().Before(until); {
		state := get[struct {
			At   []float64
			Over bool
		}](b, fmt.Sprintf(`({ at: monitor.onsets.slice(%d).map(monitor.last), over: !document.querySelector(".taparea") })`, done))
		if state.Over {
			return
		}
		for _, at := range state.At {
			b.key("j", at+wrong[done%len(wrong)], origin)
			if on != nil {
				on(done)
			}
			done++
		}
		time.Sleep(15 * time.Millisecond)
	}
	require.Fail(b.t, "the round did not end", b.console())
}

// compare compares each offset in the round's record with the onset captured and
// the clock reading nearest that tap. It returns the differences beyond the
// detector's bias, ms.
func (b *tab) compare(k kept, bias float64) []float64 {
	b.t.Helper()
	require.Len(b.t, k.Taps, len(k.Strokes), "a tap a dum")
	var beyond []float64
	for i, tap := range k.Taps {
		require.NotNil(b.t, tap.Offset, "tap %d", i)
		require.Equal(b.t, i, *tap.Stroke)
		captured := tap.At - get[float64](b, fmt.Sprintf("monitor.heardAt(monitor.onsets[%d], %v)", i, tap.At))
		beyond = append(beyond, *tap.Offset-captured-bias)
	}
	return beyond
}

// report checks the differences: half a millisecond in the median, two at most.
func report(t *testing.T, what string, beyond []float64) {
	t.Helper()
	sizes := make([]float64, len(beyond))
	for i, d := range beyond {
		sizes[i] = math.Abs(d)
	}
	slices.Sort(sizes)
	median, most := sizes[len(sizes)/2], sizes[len(sizes)-1]
	t.Logf("%s: %d taps, difference of reported and captured offset: median %.3f ms, at most %.3f ms", what, len(sizes), median, most)
	require.LessOrEqual(t, median, 0.5)
	require.LessOrEqual(t, most, 2.0)
}

// tapped is a round that has begun and is tapped along.
func (b *tab) tapped(on func(i int)) kept {
	b.t.Helper()
	return b.inFull(func() { b.tapAlong(on) })
}

// inFull is a round that has begun, with what is done until it is over. A machine that is
// busy with something else may cut the sound, and then it is played once more.
func (b *tab) inFull(play func()) kept {
	b.t.Helper()
	for range 5 {
		play()
		if b.over() {
			return get[kept](b, "groundbeat.log().then((l) => l.at(-1))")
		}
		b.t.Log("once more: " + b.text("#why"))
		b.press("Once more")
		b.wait("monitor.context.state === 'running'")
		b.rest(300) // the last of the void round fades out
		b.run("monitor.clear()")
	}
	require.Fail(b.t, "no round came to its end", b.console())
	return kept{}
}

func (b *tab) lastRound() kept {
	b.t.Helper()
	b.wait("document.querySelector('#finding')")
	return get[kept](b, "groundbeat.log().then((l) => l.at(-1))")
}

func TestHeardTime(t *testing.T) {
	q := question(t, 200, 3)
	bias, scatter := detector(t, q)
	t.Logf("detector: %.3f ms late, strokes differ by at most %.3f ms", bias, scatter)
	require.Less(t, scatter, 0.3)
	s := serve(t)
	b := drawing(t, s, roundLink(s, q))

	t.Run("as it comes", func(t *testing.T) {
		b.t = t
		b.press("Begin")
		k := b.tapped(nil)
		report(t, "as it comes", b.compare(k, bias))
		b.capturedIsStream(s, q, k)
	})
	t.Run("after a stall of 600 ms", func(t *testing.T) {
		b.t = t
		b.run("monitor.clear()")
		b.press("Once more")
		k := b.tapped(func(i int) {
			if i == 3 {
				b.run("monitor.stall(600)")
			}
		})
		report(t, "after a stall of 600 ms", b.compare(k, bias))
	})
	t.Run("after suspend and resume", func(t *testing.T) {
		b.t = t
		before := get[int](b, "groundbeat.log().then((l) => l.length)")
		b.press("Once more")
		b.wait("groundbeat.heard()")
		b.rest(1500)
		b.run("await monitor.context.suspend()")
		b.wait("document.querySelector('#why')")
		b.rest(300)
		require.Equal(t, before, get[int](b, "groundbeat.log().then((l) => l.length)"), "a void round is no result")
		b.press("Once more")
		b.wait("monitor.context.state === 'running'")
		b.rest(300) // the last of the void round fades out as the sound resumes
		b.run("monitor.clear()")
		report(t, "after suspend and resume", b.compare(b.tapped(nil), bias))
	})
}

// capturedIsStream compares what reached the loudspeaker with the stream, frame
// by frame, from the round's first frame to its last.
func (b *tab) capturedIsStream(s *server, q round.Setting, k kept) {
	b.t.Helper()
	r, err := round.New(q)
	require.NoError(b.t, err)
	base := int64(math.Round(k.Strokes[0]*float64(audio.Rate))) - audio.Rate.Frame(r.Strokes()[0])
	left, right := render(b.t, r, base)
	sent := get[struct {
		From, Missed int64
	}](b, "monitor.send()")
	require.Zero(b.t, sent.Missed, "frames that the monitor did not see")
	s.mu.Lock()
	gotLeft, gotRight := samples(s.capture)
	s.mu.Unlock()

	// The first dum as captured tells where the stream lies, to the frame that
	// fits best.
	at := get[int64](b, "monitor.onsets[0]") - sent.From - (base + audio.Rate.Frame(r.Strokes()[0]))
	best, shift := math.Inf(1), int64(0)
	for d := at - 480; d <= at; d++ {
		if w := apart(right, gotRight, base, base+48000*3, d); w < best {
			best, shift = w, d
		}
	}
	end := base + audio.Rate.Frame(r.End()) - 4800
	worst := max(apart(left, gotLeft, base, end, shift), apart(right, gotRight, base, end, shift))
	silent := 0
	for i := base; i < end; i++ {
		if gotLeft[i+shift] == 0 && gotRight[i+shift] == 0 {
			silent++
		}
	}
	b.t.Logf("%d frames captured: %d silent, at most %.2g of full scale from the stream", end-base, silent, worst)
	require.Zero(b.t, silent)
	require.Less(b.t, worst, 1e-6)
}

// apart is the largest difference of two signals over want's frames [from, to).
func apart(want, got []float32, from, to, shift int64) float64 {
	var worst float64
	for i := from; i < to; i++ {
		if i+shift < 0 || i+shift >= int64(len(got)) {
			return math.Inf(1)
		}
		worst = max(worst, math.Abs(float64(want[i])-float64(got[i+shift])))
	}
	return worst
}
