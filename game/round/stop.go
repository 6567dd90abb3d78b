package round

import (
	"math/rand/v2"
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// A Stop is where the drummer breaks off: both drums strike a figure together, the
// last stroke of which is the stop; then there is silence, and both come back in on
// a 1. All places are steps from the round's first.
type Stop struct {
	Figure  int // which of the figures
	From    int // where the figure begins, and the base is left
	At      int // the stop
	Silence int // counts from the stop to where it goes on: 2, 4, 6 or 8
	Back    int // the 1 on which it goes on
}

// figures are what both drums strike together to break off: strokes on half
// counts over four counts, and on the next the stop. It is always low and firm.
// Eight half counts are struck in twos, or in groups of 3-3-2, 3-2-3 and 2-3-3;
// these are common practice, without a source.
var figures = []string{
	"D-D-D-D-D",
	"D--D--D-D",
	"D--D-D--D",
	"D-D--D--D",
	"DTTDTTDTD",
}

const (
	figureBeats  = 4
	phraseEights = 2 // four 4/4, eight 2/4, two of masmudi kabir
	mostStops    = 3
)

// silences are how many counts of silence there may be. In eights the stop so falls
// on 7, 5, 3 or 1: common practice, without a source.
var silences = []int{2, 4, 6, 8}

// How firmly both drums strike in a figure, chosen.
const (
	figureDum, figureTek, figureStop = 0.9, 0.8, 1.0
)

// StopsOf returns where the drummer breaks off in a round of some eights, in order:
// one to three times. Each silence lasts to the end of a phrase of two eights; an
// eight at least is played before each figure, and after the last silence. The
// same rhythm, length and seed give the same stops for ever.
func StopsOf(c *rhythm.Cycle, eights int, seed uint64) []Stop {
	r := rand.New(rand.NewPCG(seed, 6)) // a stream of its own
	var ends []int                      // of phrases, in eights
	for e := phraseEights; e < eights; e += phraseEights {
		ends = append(ends, e)
	}
	chosen := r.Perm(len(ends))[:1+r.IntN(min(mostStops, len(ends)))]
	slices.Sort(chosen)
	var stops []Stop
	back := 0
	for _, i := range chosen {
		s := stopBefore(c, ends[i]*c.CyclesIn(1)*c.Steps(), back, r)
		back = s.Back
		stops = append(stops, s)
	}
	return stops
}

// stopBefore draws a stop whose silence ends at a step; what was before began
// anew at another.
func stopBefore(c *rhythm.Cycle, end, begun int, r *rand.Rand) Stop {
	perBeat := c.StepsPerBeat()
	room := (end-begun)/perBeat - c.CyclesIn(1)*c.Beats() - figureBeats
	var fit []int
	for _, n := range silences {
		if n <= room {
			fit = append(fit, n)
		}
	}
	n := fit[r.IntN(len(fit))]
	at := end - n*perBeat
	return Stop{Figure: r.IntN(len(figures)), From: at - figureBeats*perBeat, At: at, Silence: n, Back: end}
}

// figure is what both drums play from where the figure begins to the stop.
func (s Stop) figure(perBeat int) []riff.Stroke {
	var all []riff.Stroke
	for half, letter := range figures[s.Figure] {
		ticks := half * perBeat * riff.TicksPerStep / 2
		stroke := riff.Stroke{
			Step: s.From + ticks/riff.TicksPerStep, Sub: ticks % riff.TicksPerStep,
			Sound: rhythm.Stroke(letter), Strength: figureDum,
		}
		switch {
		case !stroke.Sound.Sounds():
			continue
		case stroke.Step == s.At:
			stroke.Strength = figureStop
		case !stroke.Sound.Low():
			stroke.Strength = figureTek
		}
		all = append(all, stroke)
	}
	return all
}

// stopped is the passage with its stops in it, as declared breaks. A break that
// the riff has of its own would be taken for one of these: the cycles with one are
// played filled.
func (p *Passage) stopped(stops []Stop) error {
	part := &p.parts[0]
	if err := part.calm(p.bpm); err != nil {
		return err
	}
	for _, s := range stops {
		span := riff.Span{From: s.From, To: s.Back, Kind: riff.Break}
		part.put(span, s.figure(part.Section.Rhythm.StepsPerBeat()))
		part.Open = opened(part.Open, span)
	}
	return nil
}

// opened are the open spans with one more, and nothing of the others within it.
func opened(spans []riff.Span, more riff.Span) []riff.Span {
	all := append(without(spans, more), more)
	slices.SortFunc(all, func(a, b riff.Span) int { return a.From - b.From })
	return all
}

// without are the open spans, and nothing of them within another.
func without(spans []riff.Span, out riff.Span) []riff.Span {
	var all []riff.Span
	for _, s := range spans {
		if s.From < out.From {
			all = append(all, riff.Span{From: s.From, To: min(s.To, out.From), Kind: s.Kind})
		}
		if s.To > out.To {
			all = append(all, riff.Span{From: max(s.From, out.To), To: s.To, Kind: s.Kind})
		}
	}
	return all
}

// calm puts filled cycles in the place of those in which the riff has a break.
func (p *part) calm(bpm int) error {
	steps := p.Rhythm.Steps()
	for _, o := range p.Open {
		if o.Kind != riff.Break {
			continue
		}
		r, err := riff.New(p.Rhythm, riff.Filled, 0)
		if err != nil {
			return err
		}
		from, to := o.From/steps, (o.To+steps-1)/steps
		calm, err := r.At(bpm).Cycles(0, to-from)
		if err != nil {
			return err
		}
		span := riff.Span{From: from * steps, To: to * steps}
		p.Lead, p.Bass = replaced(p.Lead, span, moved(calm.Lead, span.From)), replaced(p.Bass, span, moved(calm.Bass, span.From))
	}
	p.Open = slices.DeleteFunc(p.Open, func(o riff.Span) bool { return o.Kind == riff.Break })
	return nil
}

// moved are strokes so many steps later.
func moved(strokes []riff.Stroke, steps int) []riff.Stroke {
	strokes = slices.Clone(strokes)
	for i := range strokes {
		strokes[i].Step += steps
	}
	return strokes
}

// put lets both drums play some strokes, or nothing, in the place of those in a span.
func (p *part) put(span riff.Span, by []riff.Stroke) {
	p.Lead, p.Bass = replaced(p.Lead, span, by), replaced(p.Bass, span, by)
}

// replaced are the strokes of one drum with others in the place of those in a
// span. A roll that would last into it ends where it begins.
func replaced(strokes []riff.Stroke, span riff.Span, by []riff.Stroke) []riff.Stroke {
	var all, after []riff.Stroke
	for _, s := range strokes {
		switch {
		case s.Step >= span.To:
			after = append(after, s)
		case s.Step < span.From:
			left := (span.From-s.Step)*riff.TicksPerStep - s.Sub
			s.Roll = min(s.Roll, left)
			all = append(all, s)
		}
	}
	return slices.Concat(all, by, after)
}
