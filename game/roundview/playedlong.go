package roundview

import (
	"slices"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/round"
	"groundbeat/game/say"
	"groundbeat/scoring/stat"
)

// landingOf is where the tap on a stroke lay, the set-up's mean taken off.
func landingOf(l round.Landing, setup time.Duration) Landing {
	if !l.Tapped {
		return Landing{}
	}
	return Landing{Tapped: true, Offset: l.Offset - setup}
}

// Catch says how the stops of a round in review were caught, and takes them out of the
// pictures and of what is told by count, which are of the dums of the rhythm and no
// others. Review and Result are those of the round.
func (s *Stop) Catch(r *round.Stopped) {
	c, setup := r.Setting.Rhythm, r.Result().Setup
	other := map[int]bool{}
	for _, k := range r.Catches() {
		s.Caught = append(s.Caught, StopResult{
			Eight: k.At/(c.CyclesIn(1)*c.Steps()) + 1, Count: c.CountInEight(k.At), Silence: k.Silence,
			Last: landingOf(k.Last, setup), InSilence: k.InSilence, Back: landingOf(k.Back, setup),
			Late: !k.Last.Tapped && addedSoon(s.Review, k.At),
		})
		other[k.At] = true
		other[k.Stop.Back] = !r.Asks()(c.Skeleton[0])
	}
	s.Review.Landed = slices.DeleteFunc(s.Review.Landed, func(l picture.Landed) bool { return other[l.Step] })
	s.Review.LeftOut = slices.DeleteFunc(s.Review.LeftOut, func(step int) bool { return other[step] })
	s.Result.Counts = s.Review.Tally(c.Skeleton, picture.CountsOf(c.Base()))
	landings := map[int]bool{}
	for _, k := range r.Catches() {
		landings[k.Last.Stroke], landings[k.Back.Stroke] = true, true
	}
	s.Result.Lean = leanOf(&r.Round, func(stroke int) bool { return landings[stroke] })
	s.Between = sampleOf(s.Review, func(step int) bool {
		return slices.ContainsFunc(r.Catches(), func(k round.Catch) bool { return step == k.At || step == k.Stop.Back })
	})
}

// soonAfter is how late a tap may be, too late for a stop that was left out, and still
// have been meant for it. Own choice.
const soonAfter = 250 * time.Millisecond

// addedSoon reports whether a tap that belongs to no dum came soon after a step.
func addedSoon(r *picture.Review, step int) bool {
	return slices.ContainsFunc(r.Added, func(at float64) bool {
		after := time.Duration((at - float64(step)) * float64(r.StepTime))
		return after > 0 && after < soonAfter
	})
}

// sampleOf is the sample of the offsets in a review, in ms, but for some steps.
func sampleOf(v *picture.Review, but func(step int) bool) stat.Group {
	var all []float64
	for _, l := range v.Landed {
		if !but(l.Step) {
			all = append(all, say.InMs(l.Offset))
		}
	}
	return stat.GroupOf(all)
}

// Keep says how the dums of a round in review were kept through the silences. Review and
// Result are those of the round.
func (c *Carry) Keep(r *round.Carried) {
	q, setup := r.Setting.Rhythm, r.Result().Setup
	eight := q.CyclesIn(1) * q.Steps()
	c.Eight = slices.Repeat(q.Skeleton, q.CyclesIn(1))
	for step := range eight {
		c.InEight = append(c.InEight, q.CountInEight(step))
	}
	var from []int
	for _, k := range r.Kept() {
		s := SilenceResult{Eight: k.From/eight + 1, Tapped: k.Tapped, Asked: k.Last - k.First + 1, Back: landingOf(k.Back, setup)}
		if k.Slower.Known {
			s.Slower = &k.Slower.Value
		}
		c.Silences = append(c.Silences, s)
		from = append(from, k.From)
	}
	c.Alone = c.Review.Only(from, eight)
	c.With, c.Without = r.Spreads()
	c.drummed(r)
}

// drummed are the figures of the dums that the drums played.
func (c *Carry) drummed(r *round.Carried) {
	steps, byHerself := r.Steps(), r.Alone()
	alone := map[int]bool{}
	for i, step := range steps {
		alone[step] = byHerself(i)
	}
	v := *c.Review
	v.Landed = slices.DeleteFunc(slices.Clone(v.Landed), func(l picture.Landed) bool { return alone[l.Step] })
	v.LeftOut = slices.DeleteFunc(slices.Clone(v.LeftOut), func(step int) bool { return alone[step] })
	d := *c.Result
	d.Landed, d.LeftOut = len(v.Landed), len(v.LeftOut)
	d.Asked, d.On = d.Landed+d.LeftOut, 0
	for _, l := range v.Landed {
		if say.Magnitude(l.Offset) <= v.On {
			d.On++
		}
	}
	for step := range v.Steps {
		if alone[step] {
			v.Open = append(v.Open, picture.OpenSteps{From: step, To: step + 1})
		}
	}
	base := r.Setting.Rhythm
	d.Counts, d.Lean = v.Tally(base.Skeleton, picture.CountsOf(base.Base())), leanOf(&r.Round, byHerself)
	c.Between = sampleOf(&v, func(int) bool { return false })
	c.Drummed = &d
}
