package round

import (
	"math"
	"slices"
	"time"

	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// A Carried round is one in which both drums fall silent for an eight now and then.
// The dums are tapped, in the silences too. The zero Carried is not usable; see
// [NewCarried].
type Carried struct {
	Round
	silences []Silence
}

// NewCarried returns a round that is ready to begin, or what is wrong with the
// setting, whose kind is Carries.
func NewCarried(q Setting) (*Carried, error) {
	p, err := NewCarriedPassage(q, true)
	if err != nil {
		return nil, err
	}
	r := &Carried{
		Round:    Round{course: courseOf(p), Setting: q, within: carriedWindow(q.Rhythm, q.BPM)},
		silences: SilencesOf(q.Rhythm, q.Eights, q.Seed),
	}
	r.pass = r.passOver
	r.ask(p.carried(r.silences))
	return r, nil
}

// NewCarriedPassage returns what a setting of kind Carries sounds like, with a
// count-in or without one; or what is wrong with it.
func NewCarriedPassage(q Setting, countIn bool) (*Passage, error) {
	p, err := q.passage(Carries, countIn)
	if err != nil {
		return nil, err
	}
	return p, p.hush(SilencesOf(q.Rhythm, q.Eights, q.Seed))
}

// Silences are the eights in which the drums are silent.
func (r *Carried) Silences() []Silence { return r.silences }

// Silent reports whether the drums are silent at a time, or about to be: from a count
// before a silence, so that nothing that moves shows where its 1 lies, up to the 1 on
// which they come back.
func (r *Carried) Silent(t time.Duration) bool {
	perBeat := r.Setting.Rhythm.StepsPerBeat()
	for _, s := range r.silences {
		if t >= r.at(0, s.From-perBeat) && t < r.at(0, s.To) {
			return true
		}
	}
	return false
}

// Kept is how the dums were kept through one silence.
type Kept struct {
	Silence
	First, Last int // which of Strokes are in it, both included
	Tapped      int // how many of them
	// Back is where she was when the drums came back: on that 1, or where no dum is
	// on it, on the last dum of the silence.
	Back Landing
	// Slower is by how much longer than it should be her own time was, from the first
	// dum tapped in the silence to the last of Back and those: 0.02 is 2 % slower,
	// below 0 faster. It is known from two taps on.
	Slower scoring.Figure
}

// Kept is how the dums were kept through each silence of a round in review, in order;
// otherwise there are none.
func (r *Carried) Kept() []Kept {
	if r.phase != Review {
		return nil
	}
	var all []Kept
	for _, s := range r.silences {
		all = append(all, r.kept(s))
	}
	return all
}

func (r *Carried) kept(s Silence) Kept {
	k := Kept{Silence: s, First: r.stroke(s.From), Last: r.stroke(s.To) - 1, Back: r.landing(r.steps[r.stroke(s.To)-1])}
	if r.comesBack(s) {
		k.Back = r.landing(s.To)
	}
	var taps []scoring.Pair
	for _, p := range r.result.Pairs {
		if p.Stroke >= k.First && p.Stroke <= k.Last {
			k.Tapped++
		}
		if p.Stroke >= k.First && p.Stroke <= k.last() {
			taps = append(taps, p)
		}
	}
	if n := len(taps); n > 1 {
		is, should := taps[n-1].Offset-taps[0].Offset, r.strokes[taps[n-1].Stroke]-r.strokes[taps[0].Stroke]
		k.Slower = scoring.Figure{Value: float64(is) / float64(should), Known: true}
	}
	return k
}

// comesBack reports whether a dum is asked for on the 1 on which the drums come back.
// A roll there asks for none.
func (r *Carried) comesBack(s Silence) bool {
	i := r.stroke(s.To)
	return i < len(r.steps) && r.steps[i] == s.To
}

// Spells are the taps of the silences of a round in review that the player placed by
// herself: those on the dums in them, and that on the 1 on which the drums come back
// unless it may have answered them. Of a silence with a tap that belongs to no dum
// there are none: it may be that she is so far off that others belong to a dum beside
// theirs.
func (r *Carried) Spells() []stat.Spell {
	var all []stat.Spell
	for _, k := range r.Kept() {
		spell := stat.Spell{Strokes: r.strokes}
		if !r.added(k) {
			spell.Pairs = r.alone(k)
		}
		all = append(all, spell)
	}
	return all
}

func (r *Carried) alone(k Kept) (pairs []scoring.Pair) {
	for _, p := range r.result.Pairs {
		by := p.Stroke <= k.Last || p.Stroke == k.Back.Stroke && p.Offset-r.result.Setup < soonest
		if p.Stroke >= k.First && by {
			pairs = append(pairs, p)
		}
	}
	return pairs
}

// added reports whether a tap in a silence, or near it, belongs to no dum.
func (r *Carried) added(k Kept) bool {
	from, to := r.strokes[k.First]-r.Within(), r.strokes[k.last()]+r.Within()
	return slices.ContainsFunc(r.result.Added, func(i int) bool {
		at := r.taps[i].At - r.result.Setup
		return at >= from && at <= to
	})
}

// last is which of Strokes is the last of the silence's own, or on the 1 after it.
func (k Kept) last() int { return max(k.Last, k.Back.Stroke) }

// Intervals is how many intervals of her own an eight of the rhythm can have: from dum
// to dum, up to the 1 after it if a dum is on that.
func (r *Carried) Intervals() int {
	c := r.Setting.Rhythm
	n := c.CyclesIn(1)*len(AskedSteps(Carries, c)) - 1
	if r.Asks()(c.Skeleton[0]) {
		n++
	}
	return n
}

// Spreads are standard deviations of the offsets, in ms, of a round in review: with
// the drums, about their mean, and in the silences, about her own tempo in each, where
// two taps of each silence say no more than her tempo. They are not known from few taps.
func (r *Carried) Spreads() (with, alone scoring.Estimate) {
	var squares float64
	freedoms := 0
	for _, s := range r.Spells() {
		if len(s.Pairs) > 2 {
			squares += aboutLine(s)
			freedoms += len(s.Pairs) - 2
		}
	}
	alone = stat.SpreadOf(stat.Group{N: freedoms + 1, Spread: math.Sqrt(squares / float64(max(1, freedoms)))})
	var offsets []float64
	byHerself := r.Alone()
	for _, p := range r.result.Pairs {
		if !byHerself(p.Stroke) {
			offsets = append(offsets, ms(p.Offset))
		}
	}
	return stat.Spread(offsets), alone
}

// Alone tells which of Strokes a player comes to without the drums: those of the
// silences, and the 1 after each. Of a round that is not in review there are none.
func (r *Carried) Alone() func(stroke int) bool {
	kept := r.Kept()
	return func(stroke int) bool {
		return slices.ContainsFunc(kept, func(k Kept) bool { return stroke >= k.First && stroke <= k.last() })
	}
}

// aboutLine is the sum of the squares, in ms², of the offsets of a spell about the
// least-squares line over the times of their strokes.
func aboutLine(s stat.Spell) float64 {
	n := float64(len(s.Pairs))
	var mx, my, sxx, sxy, syy float64
	for _, p := range s.Pairs {
		mx, my = mx+ms(s.Strokes[p.Stroke])/n, my+ms(p.Offset)/n
	}
	for _, p := range s.Pairs {
		x, y := ms(s.Strokes[p.Stroke])-mx, ms(p.Offset)-my
		sxx, sxy, syy = sxx+x*x, sxy+x*y, syy+y*y
	}
	return syy - sxy*sxy/sxx
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }
