package stat

import "groundbeat/scoring"

// Count tells how taps lie about one stroke of the cycle, such as the dum on
// the & of 2, whenever it came.
type Count struct {
	Offset scoring.Estimate // mean, in ms: + behind, − ahead
	Ahead  int              // taps ahead of it
	Behind int              // taps behind it; a tap exactly on it is neither
	Out    int              // times that it was left out
}

// gathered are the taps about one stroke of the cycle.
type gathered struct {
	offsets []float64
	out     int
}

// gather sorts the taps of a round by the stroke of the cycle.
func (p Played) gather() []gathered {
	if p.Counts == nil {
		return nil
	}
	var all []gathered
	for _, k := range p.Counts {
		for k >= len(all) {
			all = append(all, gathered{})
		}
		all[k].out++
	}
	for _, pair := range p.Pairs {
		g := &all[p.Counts[pair.Stroke]]
		g.out--
		g.offsets = append(g.offsets, milliseconds(pair.Offset-p.Setup))
	}
	return all
}

// count counts, and leaves Offset to the caller.
func (g gathered) count() Count {
	c := Count{Out: g.out}
	for _, o := range g.offsets {
		switch {
		case o < 0:
			c.Ahead++
		case o > 0:
			c.Behind++
		}
	}
	return c
}
