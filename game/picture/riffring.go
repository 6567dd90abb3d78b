package picture

import (
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/say"
)

// The second ring's measures, in parts of the picture's width.
const (
	leadDum     = 0.100 // where the lead drum's dums lie
	leadDumSize = 0.029 // the disc of a firm one
	leadTek     = 0.268 // where its other strokes begin …
	leadLong    = 0.037 // … and how long a firm one is
	leadWidth   = 0.009
	openRadius  = 0.3525 // the bracket round a break or a roll
	rollParts   = 16     // a roll is drawn in so many pieces, each as broad as it is firm
)

// A RiffStroke is one stroke of the lead drum at its true place in a cycle.
type RiffStroke struct {
	Sound    rhythm.Stroke
	Turn     float64 // how far round the cycle it lies: from 0 to below 1
	Strength float64 // above 0, to 1; of a roll, where it begins
	Long     float64 // of a roll: how far round it goes, in turns; else 0
	Swell    float64 // of a roll: how firm it has become at its end
}

// A RiffCycle is what the lead drum plays in one cycle.
type RiffCycle struct {
	Strokes []RiffStroke
	Open    []RiffOpen
}

// A RiffOpen is a declared break or roll, in turns of the cycle.
type RiffOpen struct {
	From, To float64
	Roll     bool // else a break
}

// RiffOf returns one cycle of a part of a rhythm with so many steps; the first
// cycle is 0.
func RiffOf(part riff.Part, steps, cycle int) RiffCycle {
	var c RiffCycle
	first := cycle * steps
	turn := func(step, sub int) float64 {
		return (float64(step-first) + float64(sub)/riff.TicksPerStep) / float64(steps)
	}
	for _, s := range part.Lead {
		if s.Step >= first && s.Step < first+steps {
			c.Strokes = append(c.Strokes, RiffStroke{Sound: s.Sound, Turn: turn(s.Step, s.Sub),
				Strength: s.Strength, Long: float64(s.Roll) / float64(riff.TicksPerStep*steps), Swell: s.Swell})
		}
	}
	for _, o := range part.Open {
		if o.From >= first && o.From < first+steps {
			c.Open = append(c.Open, RiffOpen{turn(o.From, 0), turn(min(o.To, first+steps), 0), o.Kind == riff.Roll})
		}
	}
	return c
}

// open reports whether a place in the cycle lies in a break or roll.
func (c *RiffCycle) open(turn float64) bool {
	for _, o := range c.Open {
		if o.From <= turn && turn < o.To {
			return true
		}
	}
	return false
}

// riff draws the second ring: a dum is a disc, every other stroke a mark towards
// the rim, the longer the firmer; a roll is an arc that grows. A bracket inside the
// rim stands round a break or a roll.
func (h *Head) riff(p *Picture) {
	for i := range h.Riff.Open {
		o := &h.Riff.Open[i]
		if o.To-o.From < 1 {
			p.Arc(InkDim, Middle, Middle, openRadius, o.From, o.To, 0.0035)
		} else { // the whole cycle, of which there is no arc
			p.Ring(InkDim, Middle, Middle, openRadius, 0.0035)
		}
		h.DrawSpoke(p, InkDim, o.From, openRadius-0.011, openRadius, 0.0035)
		h.DrawSpoke(p, InkDim, o.To, openRadius-0.011, openRadius, 0.0035)
	}
	for i := range h.Riff.Strokes {
		switch s := &h.Riff.Strokes[i]; {
		case s.Long > 0:
			h.roll(p, s)
		case s.Sound.Low():
			x, y := Around(Middle, Middle, leadDum, s.Turn)
			p.Dot(InkLead, x, y, leadDumSize*(0.45+0.55*s.Strength))
		default:
			end := leadTek + leadLong*(0.2+0.8*s.Strength)
			h.DrawSpoke(p, InkLead, s.Turn, leadTek, end, leadWidth)
			if s.Sound == rhythm.Sak { // a slap: the whole hand
				p.Arc(InkLead, Middle, Middle, leadTek, s.Turn-0.007, s.Turn+0.007, leadWidth)
			}
		}
	}
}

func (h *Head) roll(p *Picture, s *RiffStroke) {
	for i := range rollParts {
		at := float64(i) / rollParts
		width := leadLong * (0.15 + 0.6*(s.Strength+at*(s.Swell-s.Strength)))
		p.Arc(InkLead, Middle, Middle, leadTek+leadLong/2, s.Turn+at*s.Long, s.Turn+(at+1.0/rollParts)*s.Long*0.999, width)
	}
}

// sayOpen says where a break or a roll is.
func sayOpen(w say.Words, o RiffOpen, counts []string) string {
	from := CountName(counts, int(o.From*float64(len(counts))+0.5))
	if o.Roll {
		return w.Say("riff-roll", "count", from)
	}
	return w.Say("riff-break", "count", from)
}
