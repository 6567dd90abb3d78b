package screens

import (
	"errors"
	"slices"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// SetUp is the screen Set-up: a tap-along that measures what an output and a
// hand are behind by themselves.
type SetUp struct {
	s      *control.Shared
	track  playback.Track
	round  *round.Answered // only its course: nothing is asked
	number int             // of the round on the page; taps carry it
	name   string          // of the output to be measured
	taps   []host.Tap
	found  *soundview.Measured
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

func NewSetUp(s *control.Shared) *SetUp {
	return &SetUp{s: s, track: playback.NewTrack(s.Sound, &s.Outputs)}
}

func (x *SetUp) Prepare() {
	if in := x.s.Outputs.InUse(); in != nil && x.name == "" {
		x.name = in.Name
	}
	c, ok := x.s.Rhythms().Get(setUpRhythm)
	if !ok {
		panic("game: no rhythm " + setUpRhythm) // it is supplied
	}
	p, err := round.NewPassage(setUpBPM, 0, x.s.Wall.Seed(), true, round.Section{Rhythm: c, Cycles: c.CyclesIn(setUpEights)})
	if err != nil {
		panic(err) // all its numbers are above
	}
	x.round = round.NewAnswered(p, 0)
	x.number++
	x.taps, x.marks, x.found = x.taps[:0], x.marks[:0], nil
}

func (x *SetUp) Act(action, value string) {
	switch action {
	case view.ActBegin, view.ActOnce:
		if x.s.Sound.Audible() {
			if value != "" {
				x.name = value
			}
			x.Interrupt(host.WhyStop)
			x.Prepare()
			x.track.Play(x.round.Passage, x.s.Wall.Now())
			x.round.Begin()
		}
	case view.ActStop, view.ActChange:
		x.Interrupt(host.WhyStop)
		x.Prepare()
	case view.ActSetUpName:
		x.name = value
	case view.ActSetUpKeep:
		x.s.Outputs.Put(host.Output{
			Name: value, Mean: host.Milliseconds(x.mean.Mean), Spread: host.Milliseconds(x.mean.Spread), When: x.s.Wall.Date(),
		})
		x.s.SaveOutputs()
		x.Prepare()
	case view.ActSetUpUse:
		x.s.UseOutput(value)
	case view.ActSetUpForget:
		x.s.Outputs.Forget(value)
		x.s.SaveOutputs()
	}
}

func (x *SetUp) Tap(t *host.Tap) {
	if t.Round != x.number || !x.round.UnderWay() {
		return
	}
	if at, _, why := x.track.Heard(t.At); why == "" && at >= x.round.Start()+scoring.MinSetUp {
		x.taps = append(x.taps, *t)
		x.marks = append(x.marks, at)
	}
}

func (x *SetUp) Interrupt(why string) {
	if x.round.UnderWay() {
		x.round.Cut(why)
		x.track.Stop()
	}
}

func (x *SetUp) Tick(now float64) bool {
	before := x.round.Phase()
	if !x.round.UnderWay() {
		return false
	}
	at, _, why := x.track.Heard(now)
	switch {
	case why != "":
		x.Interrupt(why)
	case at < x.round.End()+scoring.MaxSetUp:
		if at < x.round.End() { // the last taps may come a good while after the last dum
			x.round.Hear(at)
		}
	case !x.track.Whole():
		x.Interrupt(host.WhyGap)
	default:
		x.measure()
		x.round.Hear(at)
		x.s.Sound.Stop()
	}
	return x.round.Phase() != before
}

// measure finds the player's mean, every tap placed once more by what the clock
// knows by now.
func (x *SetUp) measure() {
	var taps []time.Duration
	for _, t := range x.taps {
		if p, ok := x.track.Settled(t.At); ok {
			taps = append(taps, x.track.Span(p))
		}
	}
	found, err := scoring.MeasureSetUp(x.round.Strokes(rhythm.Stroke.Low), slices.Sorted(slices.Values(taps)))
	x.mean = found
	x.found = &soundview.Measured{Mean: found.Mean, Spread: found.Spread, Taps: found.Taps, Of: found.Strokes}
	switch {
	case errors.Is(err, scoring.ErrFewTaps):
		x.found.Refusal = soundview.RefusedFew
	case errors.Is(err, scoring.ErrScattered):
		x.found.Refusal = soundview.RefusedScattered
	case err != nil:
		x.found.Refusal = soundview.RefusedUnclear
	}
}

func (x *SetUp) Screen() view.Screen {
	m := &soundview.SetUp{
		Name: x.name, Chosen: x.s.Outputs.Chosen, Volume: x.s.ShownVolume(), Notes: x.s.Notes(), Round: x.number,
	}
	for _, o := range x.s.Outputs.List {
		if o.When.IsZero() {
			continue // only the sound check knows it
		}
		m.Outputs = append(m.Outputs, soundview.Output{
			Name: o.Name, Mean: host.Duration(o.Mean), Spread: host.Duration(o.Spread), When: o.When.Format(time.DateOnly),
		})
	}
	switch {
	case x.found != nil:
		m.Phase, m.Result = view.Reviewing, x.found
	case x.round.UnderWay():
		m.Phase = view.Playing
	case x.round.Phase() == round.Void:
		m.Phase, m.Why = view.Voided, control.Whys[x.round.Why()]
	}
	x.head.Set(m.Head())
	return m.Screen(x.s.Words)
}

func (x *SetUp) Draw(place string) *picture.Picture {
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
			h.Shown.Taps = append(h.Shown.Taps, picture.Tap{Turn: x.round.TurnAt(x.track.Seen(at)), Age: int((x.round.Heard() - at) / time.Second / 4)})
		}
	}
	return h.Draw(x.s.Calm())
}

func (x *SetUp) Phase() view.Phase {
	if x.found != nil {
		return view.Reviewing
	}
	return control.PhaseOf(x.round.Phase())
}

// GoOut gives up the round.
func (x *SetUp) GoOut() {
	x.Interrupt(host.WhyStop)
	x.Prepare()
}
