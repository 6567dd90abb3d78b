//go:build js

package game

import (
	"time"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// heardTap is a tap that the round took, with what was heard at it.
type heardTap struct {
	Tap
	position clock.Position
}

// tap places a tap in the stream by the browser's own stamp and hands it to the
// round it was meant for.
func (d *desk) tap(t *Tap) {
	if t.Round != d.number {
		return
	}
	at, ok := d.heard(t.At)
	if !ok {
		return
	}
	position, err := d.Sound.Heard(t.At)
	if err != nil {
		return
	}
	if d.round.Tap(round.Tap{At: at, Mark: len(d.taps)}, d.setup()) {
		d.taps = append(d.taps, heardTap{*t, position})
		d.coarse = d.coarse || position.Coarse
	}
}

// settle asks the clock once more for every tap of a round that is over: where
// readings are noisy, it has learnt meanwhile.
func (d *desk) settle() {
	d.round.Retime(func(t round.Tap) time.Duration {
		tap := &d.taps[t.Mark]
		if p, err := d.Sound.Heard(tap.At); err == nil && p.Epoch == d.epoch {
			tap.position = p
		}
		return span(tap.position.Frame - float64(d.base))
	})
}

// finish makes the record of a round that has come to its end, and keeps it.
func (d *desk) finish() {
	d.Sound.Stop()
	record, err := d.record()
	if err != nil {
		d.kept(err)
		return
	}
	d.Store.Keep(record, d.kept)
}

func (d *desk) kept(err error) {
	if err == nil && d.unkept == nil {
		return
	}
	d.unkept = err
	d.stale = true
}

// record is the round as it is kept.
func (d *desk) record() (history.Round, error) {
	q := d.round.Question
	played := history.Round{
		Kind: history.Dums, Rhythm: q.Rhythm.ID, BPM: q.BPM, Riff: q.Level.String(), Eights: q.Eights, Seed: q.Seed,
		ID: d.Wall.ID(), When: d.Wall.Date().Format(time.RFC3339),
		Epoch: d.epoch, Rate: int(audio.Rate), Coarse: d.coarse,
		Window: float64(round.Window.Within) / float64(time.Millisecond),
	}
	for _, s := range d.round.Strokes() {
		frame := d.base + audio.Rate.Frame(s)
		played.Strokes = append(played.Strokes, float64(frame)/float64(audio.Rate))
	}
	for _, t := range d.round.Taps() {
		h := d.taps[t.Mark]
		played.Taps = append(played.Taps, history.Tap{
			At: h.At, Frame: h.position.Frame, By: h.By,
			Reading: history.Reading{Context: h.position.Reading.Context, Performance: h.position.Reading.Performance},
		})
	}
	return history.New(played, d.round.Result())
}
