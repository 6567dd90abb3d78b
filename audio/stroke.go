package audio

// A stroke says how the hand meets the head. Radii are parts of the head's
// radius, times in seconds.
type stroke struct {
	radius  float64 // where
	stray   float64 // how far off, at most, either way
	contact float64 // how long the hand pushes, for a firm stroke
	level   float64 // of the push
	choke   float64 // how long the hand stays and damps; 0: it leaves at once

	noise float64 // level of the noise
	hz, q float64 // its band: centre and quality
	tau   float64 // its decay
}

// The strokes, by voice. A stick touches a head for 3 to 6 ms, the longer the
// softer it is (Wagner, "Analysis of Drumbeats", KTH, 2006): so the flat of
// the fingers for a dum. The tip of a finger at the hard rim is much quicker;
// by how much is a guess, as are the places and the noise.
//
// Levels are one for each voice, never for a rhythm. They are set as high as a
// firm stroke of each drum at one instant allows, again and again: −1 dBTP on
// every stage of a [Mix]. (Two strokes on each drum at once, which nobody
// plays, would reach +1.5 dBTP.) Dums then carry some 9 dB more K-weighted
// energy than teks, which are as much shorter.
var strokes = [voices]stroke{
	LeadDum:     {radius: 0.28, stray: 0.04, contact: 0.0034, level: 0.284, noise: 0.38, hz: 560, q: 1.2, tau: 0.0040},
	LeadTek:     {radius: 0.90, stray: 0.03, contact: 0.0004, level: 0.042, noise: 0.70, hz: 2500, q: 0.7, tau: 0.0026},
	LeadKa:      {radius: 0.87, stray: 0.03, contact: 0.0006, level: 0.035, noise: 0.58, hz: 2100, q: 0.8, tau: 0.0022},
	LeadSak:     {radius: 0.66, stray: 0.04, contact: 0.0007, level: 0.072, noise: 0.70, hz: 1600, q: 0.6, tau: 0.0048, choke: 0.09},
	LeadRollTek: {radius: 0.93, stray: 0.02, contact: 0.0003, level: 0.03, noise: 0.47, hz: 2700, q: 0.8, tau: 0.0016},
	LeadRollKa:  {radius: 0.91, stray: 0.02, contact: 0.0004, level: 0.028, noise: 0.4, hz: 2300, q: 0.8, tau: 0.0015},
	BassDum:     {radius: 0.28, stray: 0.04, contact: 0.0038, level: 0.228, noise: 0.42, hz: 460, q: 1.2, tau: 0.0040},
	BassTek:     {radius: 0.88, stray: 0.03, contact: 0.0007, level: 0.062, noise: 0.76, hz: 1700, q: 0.8, tau: 0.0025},
}

// lead reports whether the voice is one of the lead drum's.
func (v Voice) lead() bool { return v < BassDum }
