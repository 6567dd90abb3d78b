package audio

import "math"

const (
	echoes = 5 // early reflections
	paths  = 4 // of the diffuse tail
)

// A space describes the small room round one drum. Times are in seconds,
// gains parts of the drum's own sound. The two drums stand in two places of
// one room, so that their times differ; each is heard in its own channel
// alone, and what becomes of the channels (one side, both, mono) cannot
// cancel anything.
type space struct {
	after  [echoes]float64 // when each early reflection arrives
	echo   [echoes]float64 // how loud, and with which sign
	spread [2]float64      // delays that break the tail's grain
	round  [paths]float64  // the ways round the room, of no common measure
	tail   float64         // how loud the tail is
	t60    float64         // its decay
}

// The room of both drums: a studio of some 6 m by 5 m, with curtains. All of
// it is a choice, set by ear and eye so that a stroke keeps its onset and its
// length, and is no longer struck in nothing.
var (
	byLead = space{
		after:  [echoes]float64{0.0061, 0.0097, 0.0139, 0.0191, 0.0263},
		echo:   [echoes]float64{0.130, -0.105, 0.090, 0.075, -0.060},
		spread: [2]float64{0.0037, 0.0053},
		round:  [paths]float64{0.0173, 0.0211, 0.0263, 0.0317},
		tail:   0.10, t60: 0.26,
	}
	byBass = space{
		after:  [echoes]float64{0.0071, 0.0107, 0.0151, 0.0211, 0.0281},
		echo:   [echoes]float64{0.120, 0.100, -0.090, 0.070, -0.060},
		spread: [2]float64{0.0041, 0.0059},
		round:  [paths]float64{0.0181, 0.0227, 0.0277, 0.0331},
		tail:   0.09, t60: 0.28,
	}
)

// Walls take little below lowCut and above highCut back to the ear, Hz: the
// low strokes stay dry and exact, the high ones do not hiss.
const lowCut, highCut = 220, 4500

// A room answers one drum: early reflections from a tapped delay, then a
// tail from a feedback delay network (Jot & Chaigne, "Digital delay networks
// for designing artificial reverberators", AES 90, 1991) behind two all-pass
// delays (Schroeder, "Natural sounding artificial reverberation", JAES 10,
// 1962). It works frame by frame, so that nothing depends on how it is read,
// and comes to rest as exact silence.
type room struct {
	taps   delay
	after  [echoes]int
	echo   [echoes]float64
	spread [2]delay
	lines  [paths]delay
	back   [paths]float64 // gain of each way round
	dull   [paths]float64 // state of each way's loss of height
	tail   float64

	low, high   float64 // coefficients of the walls' filters
	lowed, damp float64 // their states

	at     int     // frames so far, since it slept
	loud   float64 // the energy of the current block
	quiet  int     // frames that have been silent
	longer int     // frames after which nothing is left on its way
	awake  bool
}

// newRoom returns a silent room. It allocates all that it will ever need.
func newRoom(s *space, rate SampleRate) *room {
	fs := float64(rate)
	r := &room{
		echo: s.echo,
		tail: s.tail,
		low:  1 - math.Exp(-2*math.Pi*lowCut/fs),
		high: 1 - math.Exp(-2*math.Pi*min(highCut/fs, 0.4)),
	}
	for i, t := range s.after {
		r.after[i] = int(math.Round(t * fs))
	}
	r.taps = newDelay(r.after[echoes-1])
	for i, t := range s.spread {
		r.spread[i] = newDelay(int(math.Round(t * fs)))
	}
	for i, t := range s.round {
		r.lines[i] = newDelay(int(math.Round(t * fs)))
		r.back[i] = 0.5 * math.Exp(-decay60*t/s.t60)
	}
	r.longer = len(r.taps.past) + len(r.spread[0].past) + len(r.spread[1].past) + len(r.lines[paths-1].past)
	return r
}

// answer adds the room's answer to the frames of its drum, at most a block.
func (r *room) answer(frames []float64, sounding bool) {
	if sounding {
		r.awake = true
	} else if !r.awake {
		return
	}
	lowed, damp, loud := r.lowed, r.damp, r.loud
	for i, x := range frames {
		lowed += float64(r.low * (x - lowed))
		damp += float64(r.high * (x - lowed - damp))
		early := r.reflect(damp)
		y := r.diffuse(early)
		r.at++
		loud += float64(damp*damp) + float64(early*early) + float64(y*y)
		frames[i] = x + early + float64(r.tail*y)
	}
	r.lowed, r.damp, r.loud = lowed, damp, loud
}

// reflect gives x to the walls and returns what comes back at once.
func (r *room) reflect(x float64) float64 {
	var y float64
	for i, n := range r.after {
		y += float64(r.echo[i] * r.taps.ago(r.at, n))
	}
	r.taps.put(r.at, x)
	return y
}

// diffuse sends x round the room: each way's end is turned into the starts of
// all by a Hadamard matrix, which keeps the energy, less what is lost.
func (r *room) diffuse(x float64) float64 {
	for i := range r.spread {
		x = r.spread[i].allPass(r.at, x)
	}
	p, q, s, t := r.end(0), r.end(1), r.end(2), r.end(3)
	a, b, c, d := p+q, p-q, s+t, s-t
	r.lines[0].put(r.at, x+a+c)
	r.lines[1].put(r.at, x+b+d)
	r.lines[2].put(r.at, x+a-c)
	r.lines[3].put(r.at, x+b-d)
	return a - d
}

// end returns what arrives at the end of way i: softer, and duller.
func (r *room) end(i int) float64 {
	d := &r.lines[i]
	r.dull[i] += float64(0.6 * (d.ago(r.at, d.n) - r.dull[i]))
	return float64(r.back[i] * r.dull[i])
}

// control lets the room fall silent. It is called on the grid of blocks.
func (r *room) control() {
	if !r.awake {
		return
	}
	if r.quiet += block; r.loud >= silence*silence {
		r.quiet = 0
	}
	r.loud = 0
	if r.quiet > r.longer {
		r.sleep()
	}
}

// sleep takes away what little is left.
func (r *room) sleep() {
	r.awake, r.quiet, r.at = false, 0, 0
	r.lowed, r.damp, r.dull = 0, 0, [paths]float64{}
	clear(r.taps.past)
	for i := range r.spread {
		clear(r.spread[i].past)
	}
	for i := range r.lines {
		clear(r.lines[i].past)
	}
}

// A delay holds the last frames given to it. All delays of a room go on frame
// by frame together, and the room counts the frames.
type delay struct {
	past []float64 // a ring, a power of two long
	n    int       // its length
}

// newDelay returns a silent delay of n frames, at least 1.
func newDelay(n int) delay {
	size := 1
	for size < n {
		size *= 2
	}
	return delay{past: make([]float64, size), n: n}
}

// ago returns what was put n frames before frame at, 1 ≤ n ≤ the length. It
// is called before put.
func (d *delay) ago(at, n int) float64 { return d.past[(at-n)&(len(d.past)-1)] }

func (d *delay) put(at int, x float64) { d.past[at&(len(d.past)-1)] = x }

// allPass delays x and spreads it in time, and leaves its spectrum alone.
func (d *delay) allPass(at int, x float64) float64 {
	const g = 0.6
	old := d.ago(at, d.n)
	in := x + float64(g*old)
	d.put(at, in)
	return old - float64(g*in)
}
