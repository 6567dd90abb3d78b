package playback_test

import (
	"errors"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// desk is a sound that a test turns by hand: frames are read when it says so, and what is
// read is heard at once.
type desk struct {
	host.Sound
	frame  int64       // next to be read
	hits   []audio.Hit // scheduled and not dropped, in the order in which they came
	did    []string    // what was asked of it, but for hits
	from   int64       // what Play was told
	epoch  int
	coarse bool
	busy   int     // how many more times the stream is read on while hits are made
	shift  float64 // frames that the clock has learnt of since
	lost   error   // why it does not know what is heard
	asked  [3]int64
}

// far is how far a busy stream is read on: beyond what a passage waits for.
const far = 5000

func (d *desk) Next() int64 { return d.frame }

func (d *desk) Schedule(hits ...audio.Hit) error {
	if d.busy > 0 {
		d.busy--
		d.frame += far
	}
	for _, h := range hits {
		if h.Frame < d.frame {
			return &audio.HitError{Hit: h, Err: audio.ErrPast}
		}
	}
	d.hits = append(d.hits, hits...)
	return nil
}

func (d *desk) Drop(from int64) {
	d.did = append(d.did, "drop")
	kept := d.hits[:0]
	for _, h := range d.hits {
		if h.Frame < from {
			kept = append(kept, h)
		}
	}
	d.hits = kept
}

func (d *desk) Play(base int64) {
	d.did, d.from = append(d.did, "play"), base
	d.epoch++
}

func (d *desk) Stop() { d.did = append(d.did, "stop") }

// Heard takes performance time 0 for the stream's first frame.
func (d *desk) Heard(at float64) (clock.Position, error) {
	if d.lost != nil {
		return clock.Position{}, d.lost
	}
	p := clock.Position{Epoch: d.epoch, Frame: at*48 + d.shift, At: at, Coarse: d.coarse}
	p.Reading = clock.Reading{Context: at / 1000, Performance: at}
	return p, nil
}

func (d *desk) Whole(epoch int, from, to int64) bool {
	d.asked = [3]int64{int64(epoch), from, to}
	return true
}

var errLost = errors.New("nothing is known")

// ms is the performance time in ms at which a desk's frame is heard: 48 frames a ms.
func ms(frame int64) float64 { return float64(frame) / 48 }

// cycle is a rhythm that is supplied.
func cycle(t *testing.T, id string) *rhythm.Cycle {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	c, ok := all.Get(id)
	require.True(t, ok, id)
	return c
}

// some are some cycles of a rhythm after a count-in or none, from a cycle of its riff on.
func some(t *testing.T, id string, bpm, first, cycles int, countIn bool, level riff.Level) *round.Passage {
	t.Helper()
	p, err := round.NewPassage(bpm, level, 5, countIn, round.Section{Rhythm: cycle(t, id), First: first, Cycles: cycles})
	require.NoError(t, err)
	return p
}

// later are outputs whose pictures wait for the sound by some ms.
func later(ms int) *host.Outputs {
	o := &host.Outputs{}
	o.Adjust(host.Adjustment{Later: ms}, "in use")
	return o
}

// beat is how long a beat lasts at a tempo.
func beat(bpm int) time.Duration { return time.Minute / time.Duration(bpm) }
