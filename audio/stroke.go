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
// by how much is a guess, as are the places and the noise. Levels are set so
// that a firm stroke alone peaks between a quarter and a half of full scale,
// and both drums together, rolling, stay below −1 dBFS.
var strokes = [voices]stroke{
	LeadDum: {radius: 0.28, stray: 0.04, contact: 0.0034, level: 0.195, noise: 0.22, hz: 560, q: 1.2, tau: 0.0040},
	LeadTek: {radius: 0.90, stray: 0.03, contact: 0.0004, level: 0.019, noise: 0.44, hz: 2300, q: 0.7, tau: 0.0025},
	LeadKa:  {radius: 0.87, stray: 0.03, contact: 0.0006, level: 0.016, noise: 0.34, hz: 1900, q: 0.8, tau: 0.0022},
	LeadSak: {radius: 0.66, stray: 0.04, contact: 0.0007, level: 0.045, noise: 0.55, hz: 1600, q: 0.6, tau: 0.0040, choke: 0.09},
	BassDum: {radius: 0.28, stray: 0.04, contact: 0.0038, level: 0.145, noise: 0.24, hz: 460, q: 1.2, tau: 0.0040},
	BassTek: {radius: 0.88, stray: 0.03, contact: 0.0008, level: 0.030, noise: 0.40, hz: 1500, q: 0.8, tau: 0.0025},
}

// lead reports whether the voice is one of the lead drum's.
func (v Voice) lead() bool { return v < BassDum }
