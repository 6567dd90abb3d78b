package roundview

import (
	"slices"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/say"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// ReviewOf is how the taps of a round in review lay, for the pictures.
func ReviewOf(r *round.Round) *picture.Review {
	q, result, steps := r.Setting, r.Result(), r.Steps()
	v := &picture.Review{
		Asks:     r.Asks(),
		Steps:    r.Length(),
		StepTime: q.Rhythm.At(1, q.BPM),
		On:       r.Close(),
	}
	for _, o := range r.OpenSteps() {
		v.Open = append(v.Open, picture.OpenSteps{From: o.From, To: o.To, Roll: o.Kind == riff.Roll})
	}
	for _, p := range result.Pairs {
		v.Landed = append(v.Landed, picture.Landed{Step: steps[p.Stroke], Offset: p.Offset - result.Setup})
	}
	for _, i := range result.Out {
		v.LeftOut = append(v.LeftOut, steps[i])
	}
	for _, i := range result.Added {
		into := r.Taps()[i].At - result.Setup - r.Start()
		v.Added = append(v.Added, float64(into)/float64(v.StepTime))
	}
	return v
}

// ResultOf is a round in review in figures. SetUp and Measured are left to the caller.
func ResultOf(r *round.Round, v *picture.Review) *Result {
	c, result := r.Setting.Rhythm, r.Result()
	perEight := c.CyclesIn(1) * c.Steps()
	out := &Result{
		Kind:  r.Setting.Kind,
		Asked: len(r.Strokes()), Landed: len(result.Pairs), LeftOut: len(result.Out), Added: len(result.Added),
		Bias: fromFigure(result.Timing.Bias), Spread: fromFigure(result.Timing.Spread),
		Lean:   leanOf(r, func(int) bool { return false }),
		Counts: v.Tally(c.Skeleton, picture.CountsOf(c.Base())),
		Taps:   OneByOne(v, c.CountInEight, perEight), Open: Opened(v, c.CountInEight, perEight),
		Far: farOf(r, v),
	}
	for _, l := range v.Landed {
		if l.Offset >= -v.On && l.Offset <= v.On {
			out.On++
		}
	}
	return out
}

func fromFigure(f scoring.Figure) time.Duration {
	return time.Duration(f.Value * float64(time.Millisecond))
}

// leanOf is the mean of the offsets on the strokes of a round, but for some.
func leanOf(r *round.Round, but func(stroke int) bool) scoring.Estimate {
	result := r.Result()
	pairs := slices.DeleteFunc(slices.Clone(result.Pairs), func(p scoring.Pair) bool { return but(p.Stroke) })
	if len(pairs) == 0 {
		return scoring.Unknown(0, stat.LeastTaps)
	}
	return stat.Played{Pairs: pairs, Setup: result.Setup}.Bias()
}

// nearStroke is how near a stroke that is not asked for a tap is taken to mean it; at tempi of
// dances strokes are two to five times as far apart. Own choice.
const nearStroke = 60 * time.Millisecond

// farOf is how far from what is asked for all taps of a round lie, one like the other, where few
// belong to one: behind by more than a tap may be, as where the sound goes by a wireless
// way. Nothing is known where they fit in no way, or in several, or where most lie on
// strokes that are not asked for: then these may have been tapped.
func farOf(r *round.Round, v *picture.Review) *time.Duration {
	result := r.Result()
	if 2*len(result.Pairs) >= len(r.Strokes()) || mostOnOthers(r, v) {
		return nil
	}
	var taps []time.Duration
	for _, t := range r.Taps() {
		taps = append(taps, t.At-result.Setup)
	}
	found, err := scoring.MeasureSetUp(r.Strokes(), taps)
	if err != nil || say.Magnitude(found.Mean) < nearStroke {
		return nil
	}
	return &found.Mean
}

// mostOnOthers reports whether half or more of the taps that belong to none lie on
// other strokes of the rhythm.
func mostOnOthers(r *round.Round, v *picture.Review) bool {
	base, others := r.Setting.Rhythm.Skeleton, 0
	for _, at := range v.Added {
		step := int(at + 0.5)
		if s := base[step%len(base)]; at >= 0 && s.Sounds() && !v.Asks(s) &&
			time.Duration((at-float64(step))*float64(v.StepTime)).Abs() <= nearStroke {
			others++
		}
	}
	return 2*others >= len(v.Added)
}
