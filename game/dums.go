//go:build js

package game

import (
	"strconv"
	"time"

	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// slowing is how much slower "slower" is: a tenth, and at least 4 beats a
// minute.
const slowing = 10

// act answers a control.
func (d *desk) act(action, value string) {
	switch action {
	case view.ActBegin:
		if d.round.Phase() == round.Ready {
			d.begin()
		}
	case view.ActStop:
		d.cut(WhyStop)
		d.prepare()
	case view.ActOnce:
		d.prepare()
		d.begin()
	case view.ActSlower:
		d.setTempo(d.address.BPM - max(4, d.address.BPM/slowing))
		d.prepare()
		d.begin()
	case view.ActChange:
		d.prepare()
	case view.ActTempo:
		if bpm, err := strconv.Atoi(value); err == nil {
			d.setTempo(bpm)
			d.prepare()
		}
	case view.ActVolume:
		if v, err := strconv.Atoi(value); err == nil {
			d.setVolume(v)
			d.stale = true
		}
	case view.ActEights:
		if n, err := strconv.Atoi(value); err == nil {
			d.address.Eights = min(max(n, round.MinEights), round.MaxEights)
			d.prepare()
			d.Page.Link(d.address.String())
		}
	case view.ActOpen:
		d.problems = nil
		d.prepare()
		d.Page.Link(d.address.String())
	case view.ActExport:
		d.Export()
	}
}

func (d *desk) setTempo(bpm int) {
	slow, fast := d.tempi()
	d.address.BPM = min(max(bpm, slow), fast)
	d.Page.Link(d.address.String())
}

// tempi are the ends of what is offered: the rhythm's own, widened downwards to
// practise slowly, and always with what the link asked for.
func (d *desk) tempi() (slow, fast int) {
	t := d.cycle.Tempo
	slow, fast = max(round.MinBPM, t.Slow*2/3), min(round.MaxBPM, t.Fast)
	return min(slow, d.address.BPM), max(fast, d.address.BPM)
}

// screen is what the page shows now.
func (d *desk) screen() view.Screen {
	if d.problems != nil {
		link := view.WrongLink{Problems: d.problems, Nearest: d.address, Rhythm: d.cycle.Name}
		return link.Screen(d.Words)
	}
	m := d.model()
	return m.Screen(d.Words)
}

// model is the round in the terms of its screens.
func (d *desk) model() *view.Dums {
	slow, fast := d.tempi()
	m := &view.Dums{
		Rhythm: view.RhythmName{ID: d.cycle.ID, Name: d.cycle.Name, Script: d.cycle.Script, Lang: "ar", Dir: "rtl"},
		Base:   d.cycle.Skeleton,
		Counts: counts(d.round),
		BPM:    d.address.BPM, Slow: slow, Fast: fast, Eights: d.address.Eights,
		Round: d.number, Volume: d.volume,
		Columns: view.Columns(d.cycle.Steps(), d.cycle.StepsPerBeat(), d.board(), d.round.Phase() == round.Review),
		Notes:   d.notes(),
	}
	if !d.Sound.Audible() {
		m.Volume = -1
	}
	switch d.round.Phase() {
	case round.CountIn, round.Playing:
		m.Phase = view.Playing
	case round.Void:
		m.Phase, m.Why = view.Voided, whys[d.round.Why()]
	case round.Review:
		m.Phase = view.Reviewing
		m.Review = d.review()
		m.Result = d.result(m.Review)
	}
	return m
}

// board is about how wide the whiteboard line is: a column of the page, in CSS
// pixels.
func (d *desk) board() float64 {
	if d.width < 640 {
		return d.width - 32
	}
	return min(0.42*d.width, 576)
}

var whys = map[string]view.Why{
	WhyGap: view.WhyCut, WhyHidden: view.WhyHidden, WhyPaused: view.WhyPaused, WhySilent: view.WhySilent,
}

func counts(r *round.Round) []string {
	c := r.Question.Rhythm
	all := make([]string, c.Steps())
	for i := range all {
		all[i] = c.Count(i)
	}
	return all
}

func (d *desk) notes() []view.Note {
	var notes []view.Note
	phase := d.round.Phase()
	if phase == round.Ready && d.Sound.Audible() {
		notes = append(notes, view.NoteQuiet)
	}
	if !d.Sound.Audible() {
		notes = append(notes, view.NoteNoSound)
	}
	if d.unkept != nil {
		notes = append(notes, view.NoteNotKept)
	}
	if phase == round.Review && d.coarse {
		notes = append(notes, view.NoteCoarse)
	}
	if phase == round.Review && d.setup() == 0 {
		notes = append(notes, view.NoteNoSetUp)
	}
	return notes
}

// review is how the taps lay, for the pictures.
func (d *desk) review() *view.Review {
	c, r := d.cycle, d.round.Result()
	v := &view.Review{
		Steps:    c.CyclesIn(d.round.Question.Eights) * c.Steps(),
		StepTime: c.At(1, d.round.Question.BPM),
		On:       scoring.Close,
	}
	steps := d.round.Steps()
	for _, p := range r.Pairs {
		v.Landed = append(v.Landed, view.Landed{Step: steps[p.Stroke], Offset: p.Offset - r.Setup})
	}
	for _, i := range r.Out {
		v.LeftOut = append(v.LeftOut, steps[i])
	}
	for _, i := range r.Added {
		into := d.round.Taps()[i].At - r.Setup - d.round.Start()
		v.Added = append(v.Added, float64(into)/float64(v.StepTime))
	}
	return v
}

// result is the round in figures.
func (d *desk) result(v *view.Review) *view.Result {
	r := d.round.Result()
	out := &view.Result{
		Asked: len(d.round.Strokes()), Landed: len(r.Pairs), LeftOut: len(r.Out), Added: len(r.Added),
		Bias: milliseconds(r.Timing.Bias), Spread: milliseconds(r.Timing.Spread),
		Counts: v.Tally(d.cycle.Skeleton, counts(d.round)),
	}
	for _, l := range v.Landed {
		if l.Offset >= -v.On && l.Offset <= v.On {
			out.On++
		}
	}
	if r.Setup != 0 {
		out.SetUp = &r.Setup
	}
	out.Taps = v.OneByOne(d.cycle.CountInEight, d.cycle.CyclesIn(1)*d.cycle.Steps())
	return out
}

func milliseconds(f scoring.Figure) time.Duration {
	return time.Duration(f.Value * float64(time.Millisecond))
}

// picture draws what lives in a place on the page; nil where nothing does.
func (d *desk) picture(place Place) *view.Picture {
	if place.Picture != view.PlaceHead {
		return nil
	}
	p := d.drawing[place.Picture]
	if p == nil {
		p = &view.Picture{}
		d.drawing[place.Picture] = p
	}
	if d.moving() {
		d.drawHead(p)
	}
	return p
}

// moving reports whether the drumhead can differ from what was drawn last.
func (d *desk) moving() bool {
	phase := d.round.Phase()
	return phase == round.CountIn || phase == round.Playing || d.drawn != d.round || d.drawnPhase != phase
}

func (d *desk) drawHead(p *view.Picture) {
	phase := d.round.Phase()
	if d.drawn != d.round || d.drawnPhase != phase {
		d.head = d.model().Head()
		d.drawn, d.drawnPhase = d.round, phase
	}
	d.head.Centre = ""
	d.head.Turning = phase == round.Playing
	if phase == round.CountIn {
		d.head.Centre = d.round.Count()
	}
	if d.head.Turning {
		d.head.Turn = d.round.Turn()
	}
	d.head.Taps = d.head.Taps[:0]
	if phase == round.CountIn || phase == round.Playing {
		d.marks()
	}
	p.Reset()
	d.head.Draw(p)
}

// marks shows where in the cycle the taps came, the older the fainter.
func (d *desk) marks() {
	length := d.cycle.Length(d.round.Question.BPM)
	for _, t := range d.round.Taps() {
		d.head.Taps = append(d.head.Taps, view.Tap{
			Turn: d.round.TurnAt(t.At),
			Age:  int((d.round.Heard() - t.At) / length),
		})
	}
}
