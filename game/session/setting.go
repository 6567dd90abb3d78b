package session

import (
	"errors"
	"slices"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// setting is the screen Set-up: a tap-along that measures what an output and a
// hand are behind by themselves.
type setting struct {
	*desk
	track  playback.Track
	round  *round.Answered // only its course: nothing is asked
	number int             // of the round on the page; taps carry it
	name   string          // of the output to be measured
	taps   []host.Tap
	found  *view.Measured
	mean   scoring.SetUp
	head   playback.Head
	marks  []time.Duration
}

// How the tap-along sounds: maqsum, whose dums are two counts apart.
const (
	setUpRhythm = "maqsum"
	setUpBPM    = 112
	setUpEights = 2
)

func newSetting(d *desk) *setting {
	return &setting{desk: d, track: playback.NewTrack(d.Sound, &d.outputs)}
}

func (x *setting) lay() {
	if in := x.desk.outputs.InUse(); in != nil && x.name == "" {
		x.name = in.Name
	}
	c, ok := x.desk.Rhythms().Get(setUpRhythm)
	if !ok {
		panic("game: no rhythm " + setUpRhythm) // it is supplied
	}
	p, err := round.NewPassage(setUpBPM, 0, x.desk.Wall.Seed(), true, round.Section{Rhythm: c, Cycles: c.CyclesIn(setUpEights)})
	if err != nil {
		panic(err) // all its numbers are above
	}
	x.round = round.NewAnswered(p, 0)
	x.number++
	x.taps, x.marks, x.found = x.taps[:0], x.marks[:0], nil
}

func (x *setting) act(action, value string) {
	switch action {
	case view.ActBegin, view.ActOnce:
		if x.desk.Sound.Audible() {
			if value != "" {
				x.name = value
			}
			x.interrupted(host.WhyStop)
			x.lay()
			x.track.Play(x.round.Passage, x.desk.Wall.Now())
			x.round.Begin()
		}
	case view.ActStop, view.ActChange:
		x.interrupted(host.WhyStop)
		x.lay()
	case view.ActSetUpName:
		x.name = value
	case view.ActSetUpKeep:
		x.desk.outputs.Put(host.Output{
			Name: value, Mean: ms(x.mean.Mean), Spread: ms(x.mean.Spread), When: x.desk.Wall.Date(),
		})
		x.desk.saveOutputs()
		x.lay()
	case view.ActSetUpUse:
		x.desk.useOutput(value)
	case view.ActSetUpForget:
		x.desk.outputs.Forget(value)
		x.desk.saveOutputs()
	}
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

func (x *setting) tap(t *host.Tap) {
	if t.Round != x.number || !x.round.UnderWay() {
		return
	}
	if at, _, why := x.track.Heard(t.At); why == "" && at >= x.round.Start()+scoring.MinSetUp {
		x.taps = append(x.taps, *t)
		x.marks = append(x.marks, at)
	}
}

func (x *setting) interrupted(why string) {
	if x.round.UnderWay() {
		x.round.Cut(why)
		x.track.Stop()
	}
}

func (x *setting) tick(now float64) bool {
	before := x.round.Phase()
	if !x.round.UnderWay() {
		return false
	}
	at, _, why := x.track.Heard(now)
	switch {
	case why != "":
		x.interrupted(why)
	case at < x.round.End()+scoring.MaxSetUp:
		if at < x.round.End() { // the last taps may come a good while after the last dum
			x.round.Hear(at)
		}
	case !x.track.Whole():
		x.interrupted(host.WhyGap)
	default:
		x.measure()
		x.round.Hear(at)
		x.desk.Sound.Stop()
	}
	return x.round.Phase() != before
}

// measure finds the player's mean, every tap placed once more by what the clock
// knows by now.
func (x *setting) measure() {
	var taps []time.Duration
	for _, t := range x.taps {
		if p, ok := x.track.Settled(t.At); ok {
			taps = append(taps, x.track.Span(p))
		}
	}
	found, err := scoring.MeasureSetUp(x.round.Dums(), slices.Sorted(slices.Values(taps)))
	x.mean = found
	x.found = &view.Measured{Mean: found.Mean, Spread: found.Spread, Taps: found.Taps, Of: found.Strokes}
	switch {
	case errors.Is(err, scoring.ErrFewTaps):
		x.found.Refusal = view.RefusedFew
	case errors.Is(err, scoring.ErrScattered):
		x.found.Refusal = view.RefusedScattered
	case err != nil:
		x.found.Refusal = view.RefusedUnclear
	}
}

func (x *setting) screen() view.Screen {
	m := &view.SetUp{
		Name: x.name, Chosen: x.desk.outputs.Chosen, Volume: x.desk.shownVolume(), Notes: x.desk.notes(), Round: x.number,
	}
	for _, o := range x.desk.outputs.List {
		if o.When.IsZero() {
			continue // only the sound check knows it
		}
		m.Outputs = append(m.Outputs, view.Output{
			Name: o.Name, Mean: duration(o.Mean), Spread: duration(o.Spread), When: o.When.Format(time.DateOnly),
		})
	}
	switch {
	case x.found != nil:
		m.Phase, m.Result = view.Reviewing, x.found
	case x.round.UnderWay():
		m.Phase = view.Playing
	case x.round.Phase() == round.Void:
		m.Phase, m.Why = view.Voided, whys[x.round.Why()]
	}
	x.head.Set(m.Head())
	return m.Screen(x.desk.Words)
}

func duration(ms float64) time.Duration { return time.Duration(ms * float64(time.Millisecond)) }

func (x *setting) draw(place string) *view.Picture {
	if place != view.PlaceHead {
		return nil
	}
	h := &x.head
	if h.Moves = x.round.UnderWay(); h.Moves {
		h.Shown.Centre = ""
		if at := x.track.Seen(x.round.Heard()); at < x.round.Start() {
			h.Shown.Centre = x.round.CountAt(at)
		}
		h.Shown.Taps = h.Shown.Taps[:0]
		for _, at := range x.marks {
			h.Shown.Taps = append(h.Shown.Taps, view.Tap{Turn: x.round.TurnAt(x.track.Seen(at)), Age: int((x.round.Heard() - at) / time.Second / 4)})
		}
	}
	return h.Draw(x.desk.calm())
}
