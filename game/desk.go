//go:build js

package game

import (
	"errors"
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// desk is what is going on: which screen is shown, the round on it, and where
// that round lies in the stream.
type desk struct {
	*Outside

	address  view.Address
	problems []view.Problem // what is wrong with the link, if anything is
	cycle    *rhythm.Cycle

	round  *round.Round
	number int     // of the round on the page; taps carry it
	base   int64   // stream frame of the round's first frame
	epoch  int     // epoch in which the round is heard, 0 before
	begun  float64 // performance time of Begin, ms
	coarse bool    // was any tap placed by a coarse clock?
	taps   []heardTap

	volume int     // 0 to 100
	width  float64 // of the window when the screen was made
	unkept error   // why the last round was not kept
	stale  bool    // the screen must be made again

	head       view.Head
	drawing    map[string]*view.Picture
	drawn      *round.Round // what head was made from
	drawnPhase round.Phase
}

// patience is how long a round waits for its first frame to be heard.
const patience = 5000 // ms

func (d *desk) open(o *Outside) {
	d.Outside = o
	d.unkept = o.Unstored
	d.setVolume(quiet)
	d.drawing = map[string]*view.Picture{}
	address, err := view.ParseAddress(o.Query, d.allowed())
	d.address = address
	var link *view.LinkError
	if errors.As(err, &link) {
		d.problems = link.Problems
	}
	d.prepare()
}

func (d *desk) allowed() view.Allowed {
	a := view.Allowed{Screens: []string{round.Dums}, Rhythms: d.Rhythms.IDs()}
	for l := riff.Bare; l <= riff.Solo; l++ {
		if riff.Available(l) {
			a.Riffs = append(a.Riffs, l.String())
		}
	}
	return a
}

// prepare lays a new round on the desk, as the address says.
func (d *desk) prepare() {
	cycle, ok := d.Rhythms.Get(d.address.Rhythm)
	if !ok {
		panic("game: no rhythm " + d.address.Rhythm) // ParseAddress allows only these
	}
	d.cycle = cycle
	if d.address.BPM == 0 {
		d.address.BPM = cycle.Tempo.Usual
	}
	level, err := riff.ParseLevel(d.address.Riff)
	if err != nil {
		panic(err) // likewise
	}
	seed := d.address.Seed
	if seed == 0 {
		seed = d.Wall.Seed()
	}
	r, err := round.New(round.Question{
		Kind: round.Dums, Rhythm: cycle, BPM: d.address.BPM, Eights: d.address.Eights, Level: level, Seed: seed,
	})
	if err != nil {
		panic(err) // the limits of addresses lie within those of questions; a test holds them together
	}
	d.round = r
	d.number++
	d.epoch, d.coarse, d.taps = 0, false, d.taps[:0]
	d.stale = true
}

// happened answers one event.
func (d *desk) happened(e *Event) {
	switch e.Kind {
	case Act:
		d.act(e.Action, e.Value)
	case Tapped:
		d.tap(&e.Tap)
	case Stopped:
		d.cut(e.Reason)
	case Running:
	}
}

// begin starts the round on the desk.
func (d *desk) begin() {
	d.Sound.Play()
	d.base = d.Sound.Next() + margin
	if err := d.Sound.Schedule(d.round.Hits(audio.Rate, d.base)...); err != nil {
		panic(err) // frames from Next on are never in the past: nothing is read meanwhile
	}
	d.begun = d.Wall.Now()
	d.round.Begin()
	d.stale = true
}

// margin is how far behind the next frame a round begins, in frames: the
// engine may take a block before the hits are in.
const margin = 1024

// cut ends a round that is under way, without result.
func (d *desk) cut(why string) {
	if p := d.round.Phase(); p != round.CountIn && p != round.Playing {
		return
	}
	d.round.Cut(why)
	d.silence()
	d.stale = true
}

func (d *desk) silence() {
	d.Sound.Stop()
	d.Sound.Drop(d.base)
}

// quiet is the volume at the start.
const quiet = 60

// setVolume sets the volume, 0 to 100. The level goes with its square, which is
// nearer to how loudness is heard.
func (d *desk) setVolume(volume int) {
	d.volume = min(max(volume, 0), 100)
	part := float64(d.volume) / 100
	d.Sound.Volume(part * part)
}

// tick moves the round on to what is heard now, and shows what changed.
func (d *desk) tick(now float64) {
	before := d.round.Phase()
	if before == round.CountIn || before == round.Playing {
		d.follow(now)
	}
	if d.round.Phase() != before {
		d.stale = true
	}
	if w := d.Page.Width(); w != d.width {
		d.width, d.stale = w, true
	}
	if d.stale {
		d.stale = false
		d.Page.Show(d.screen())
	}
}

// follow tells the round what is heard.
func (d *desk) follow(now float64) {
	at, ok := d.heard(now)
	if !ok {
		if d.epoch == 0 && now-d.begun > patience {
			d.cut(WhySilent)
		}
		return
	}
	if d.round.Over(at, d.setup()) {
		if !d.whole() {
			d.cut(WhyGap)
			return
		}
		d.settle()
	}
	d.round.Hear(at, d.setup())
	if d.round.Phase() == round.Review {
		d.finish()
	}
}

// whole reports whether all of the round was heard without a gap.
func (d *desk) whole() bool {
	return d.Sound.Whole(d.epoch, d.base, d.base+audio.Rate.Frame(d.round.End()))
}

// heard is the time in the round that is heard at a performance time. It is
// not known before the round's first frame is placed, and not in another epoch.
func (d *desk) heard(at float64) (time.Duration, bool) {
	p, err := d.Sound.Heard(at)
	if err != nil {
		return 0, false
	}
	if d.epoch == 0 && p.Frame >= float64(d.base) {
		d.epoch = p.Epoch
	}
	if d.epoch != 0 && p.Epoch != d.epoch {
		d.cut(WhyGap)
		return 0, false
	}
	return span(p.Frame - float64(d.base)), true
}

// span is the duration of a number of frames, with fraction.
func span(frames float64) time.Duration {
	return time.Duration(frames / float64(audio.Rate) * float64(time.Second))
}

// setup is the player's own set-up mean for this output.
func (d *desk) setup() time.Duration { return 0 }

// Reasons for a void round.
const (
	WhyGap    = "gap"
	WhyHidden = "hidden"
	WhyPaused = "paused"
	WhySilent = "silent"
	WhyStop   = "stop"
)
