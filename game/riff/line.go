package riff

import "groundbeat/game/rhythm"

// A line is one cycle of the lead drum while it is being made: at each tick what
// is struck there. Light strokes get the letter of their hand at the end.
type line []struck

// struck is a stroke without its place. The zero value is none. All is counted in
// whole numbers, which are the same on every machine.
type struck struct {
	sound rhythm.Stroke
	force int // a thousandth of a firm stroke, 1 to 1000
	roll  int // ticks
	swell int // force at the end of a roll
}

// like reports whether two are the same stroke, however firm and with which hand.
func (s struck) like(o struck) bool {
	return (s.force > 0) == (o.force > 0) && s.sound.Light() == o.sound.Light() && (s.sound.Light() || s.sound == o.sound)
}

// How hard strokes are played, in thousandths of the firmest. Chosen, not measured
// and from no source: dums lead, light strokes stay behind those of the skeleton,
// and the bass drum's teks stay under the lead drum.
const (
	firmForce   = 1000
	slapForce   = 900 // of a slap or tek that is an accent of the riff's own
	accentForce = 850
	plainForce  = 800
	lightForce  = 450
	softForce   = 300 // of the bass drum's teks
)

// accent is how firm a full stroke is.
func accent(s rhythm.Stroke) int {
	switch s {
	case rhythm.Dum:
		return firmForce
	case rhythm.Sak:
		return slapForce
	}
	return accentForce
}

// lay returns a line with a pattern spread over it.
func (s *shape) lay(p rhythm.Pattern) line {
	l := make(line, s.length)
	for i, sound := range p {
		at := i * s.length / len(p)
		switch {
		case sound.Low():
			l[at] = struck{sound: sound, force: firmForce}
		case sound.Light():
			l[at] = struck{sound: sound, force: lightForce}
		case sound.Sounds():
			l[at] = struck{sound: sound, force: plainForce}
		}
	}
	return l
}

// put strikes at a tick.
func (l line) put(at int, sound rhythm.Stroke, force int) {
	l[at] = struck{sound: sound, force: force}
}

// clear takes out what is struck from one tick to before another.
func (l line) clear(from, to int) { clear(l[from:to]) }

// full reports whether more than a light stroke is struck at a tick.
func (l line) full(at int) bool { return l[at].force > 0 && !l[at].sound.Light() }

// swell scales the force of all high strokes, in percent.
func (l line) swell(percent int) {
	for i := range l {
		if l[i].force > 0 && l[i].sound.High() && l[i].roll == 0 {
			l[i].force = min(firmForce, max(1, l[i].force*percent/100))
		}
	}
}

// crescendo scales the force of all high strokes from one tick on, from so many
// percent there to so many at the end.
func (l line) crescendo(at, from, to int) {
	for i := at; i < len(l); i++ {
		if l[i].force > 0 && l[i].sound.High() && l[i].roll == 0 {
			percent := from + (to-from)*(i-at)/(len(l)-at)
			l[i].force = min(firmForce, max(1, l[i].force*percent/100))
		}
	}
}

// hand gives light strokes the letter of their hand, from the end of the cycle
// back: in a run the hands take turns so that the strong one is free for the full
// stroke that follows; a light stroke by itself is the other hand's.
func (l line) hand(cell int) {
	next, strong := len(l), true // the next cycle's first stroke
	for at := len(l) - 1; at >= 0; at-- {
		s := &l[at]
		if s.force == 0 {
			continue
		}
		soon := 2*(next-at) < 3*cell
		switch turn := strong || !soon; {
		case s.sound.Light() && turn:
			s.sound, strong = rhythm.Ka, false
		case s.sound.Light():
			s.sound, strong = rhythm.LightTek, true
		default: // a tek takes its turn too where the strong hand has no time
			strong = !(s.sound == rhythm.Tek && strong && next-at < cell)
		}
		next = at
	}
}
