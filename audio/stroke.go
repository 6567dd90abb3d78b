package audio

// A stroke says how the hand meets the head. Radii are parts of the head's
// radius, times in seconds.
type stroke struct {
	radius  float64 // where
	stray   float64 // how far off, at most, either way
	contact float64 // how long the hand pushes, for a firm stroke
	level   float64 // of the push
	slap    float64 // what the skin gets more, in quick, as a part of the push
	quick   float64 // how long that takes: the palm's slap under the fingers' push
	choke   float64 // how long the hand stays and damps; 0: it leaves at once

	noise float64 // level of the noise
	hz, q float64 // its band: centre and quality
	tau   float64 // its decay
}

// The strokes, by voice. A stick touches a head for 3 to 6 ms, the longer the
// softer it is (Wagner, "Analysis of Drumbeats", KTH, 2006): so the flat of
// the fingers for a dum. The tip of a finger at the hard rim is much quicker;
// by how much is a guess, as are the places, the slap and the noise. Together
// they are set to the targets in voice_test.go: a tek begins with a snap of
// 1 ms and then rings, a sak is all crack, a ka is a tek with a softer finger.
//
// Levels are one for each voice, never for a rhythm. They are set as high as a
// firm stroke of each drum at one instant allows, again and again: −1 dBTP on
// every stage of a [Mix]. (Two strokes on each drum at once, which nobody
// plays, are louder.)
var strokes = [voices]stroke{
	LeadDum:     {radius: 0.28, stray: 0.04, contact: 0.0034, level: 0.209, slap: 0.155, quick: 0.0020, noise: 0.708, hz: 1250, q: 2.4, tau: 0.0030},
	LeadTek:     {radius: 0.90, stray: 0.03, contact: 0.0003, level: 0.0243, noise: 0.601, hz: 3600, q: 0.7, tau: 0.0012},
	LeadKa:      {radius: 0.88, stray: 0.03, contact: 0.0005, level: 0.0243, noise: 0.64, hz: 2400, q: 0.8, tau: 0.0016},
	LeadSak:     {radius: 0.50, stray: 0.04, contact: 0.0004, level: 0.0388, noise: 0.592, hz: 3600, q: 0.7, tau: 0.0095, choke: 0.09},
	LeadRollTek: {radius: 0.93, stray: 0.015, contact: 0.0003, level: 0.0233, noise: 0.485, hz: 3200, q: 0.8, tau: 0.0012},
	LeadRollKa:  {radius: 0.91, stray: 0.02, contact: 0.0004, level: 0.0223, noise: 0.446, hz: 2500, q: 0.8, tau: 0.0013},
	BassDum:     {radius: 0.28, stray: 0.04, contact: 0.0035, level: 0.155, slap: 0.18, quick: 0.0014, noise: 0.349, hz: 900, q: 1.5, tau: 0.0030},
	BassTek:     {radius: 0.93, stray: 0.02, contact: 0.0003, level: 0.0349, noise: 0.679, hz: 3300, q: 0.7, tau: 0.0014},
}

// lead reports whether the voice is one of the lead drum's.
func (v Voice) lead() bool { return v < BassDum }
