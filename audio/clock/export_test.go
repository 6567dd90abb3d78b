package clock

// Diagnostics is what became of the readings, as the tests look at it.
type Diagnostics struct {
	// Accepted and AcceptedCoarse count the readings used of either kind.
	Accepted, AcceptedCoarse int
	// Corrected counts the stamps that the latency was put on again.
	Corrected int
	// Refused and RefusedCoarse count the others, indexed by Reason.
	Refused, RefusedCoarse [reasons]int
	// RefusedPlacements counts the blocks ignored by Place.
	RefusedPlacements int
	// Interruptions counts suspensions, new epochs and silent restarts.
	Interruptions int
	// Last is what became of the last reading (not of a coarse one).
	Last Reason
	// Noisy reports that the readings scatter and a line is drawn through
	// them; otherwise each is believed.
	Noisy bool
	// Scatter is the standard deviation of one noisy reading about its line
	// in ms, after five seconds; 0 where not known or not noisy.
	Scatter float64
	// Steps counts the steps followed; LastStep is the last in ms, positive
	// where the context time jumped ahead, 0 without one since the readings
	// were last recognised as noisy.
	Steps    int
	LastStep float64
	// Drift is the device's rate against nominal, in ppm of performance time,
	// positive if it runs fast; 0 where not known.
	Drift float64
	// Coarse reports that there are coarse readings and, since the last
	// interruption, no good ones.
	Coarse bool
}

// RefusedTotal is the number of readings refused, coarse ones aside.
func (d Diagnostics) RefusedTotal() int {
	sum := 0
	for _, n := range d.Refused {
		sum += n
	}
	return sum
}

// Diagnostics returns the present state. It does not allocate.
func (c *Clock) Diagnostics() Diagnostics {
	t := c.fine
	d := Diagnostics{
		Accepted: c.accepted, AcceptedCoarse: c.acceptedCoarse,
		Corrected: c.corrected,
		Refused:   c.refused, RefusedCoarse: c.refusedCoarse,
		RefusedPlacements: c.refusedPlacements,
		Interruptions:     c.cut,
		Last:              c.lastWhy,
		Noisy:             t.scatter.noisy,
		Steps:             t.steps, LastStep: t.lastStep,
		Coarse: c.coarse != nil && c.coarse.live(c.cut) && !t.live(c.cut),
	}
	switch {
	case !t.live(c.cut):
	case t.scatter.noisy:
		d.Scatter = t.fit.scale
		d.Drift = t.fit.line().slope * 1e6
	default:
		d.Drift = t.slope * 1e6
	}
	return d
}
