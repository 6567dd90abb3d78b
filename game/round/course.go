package round

import "time"

// Phase is where a round stands.
type Phase uint8

// The phases, in order; Void stands beside them.
const (
	Ready   Phase = iota // waiting for Begin
	CountIn              // 5 6 7 8
	Playing              // the question sounds
	Waiting              // it has sounded; an answer is still to come
	Review               // finished: there is a result
	Void                 // cut: no result
)

var phaseNames = [...]string{"ready", "count-in", "playing", "waiting", "review", "void"}

func (p Phase) String() string { return phaseNames[p] }

// course is what all rounds have in common: a passage, and how far it has come.
type course struct {
	*Passage
	phase Phase
	why   string
	heard time.Duration
}

// unheard is the time heard before anything of the round is: its first frame
// is still to come.
const unheard time.Duration = -1

// courseOf is the course of a passage of which nothing is heard yet.
func courseOf(p *Passage) course { return course{Passage: p, heard: unheard} }

// Phase tells where the round stands.
func (c *course) Phase() Phase { return c.phase }

// Why tells why a void round was cut.
func (c *course) Why() string { return c.why }

// Heard is what Hear was told last while the round was under way, and less than
// 0 before that.
func (c *course) Heard() time.Duration { return c.heard }

// Begin starts the count-in.
func (c *course) Begin() {
	if c.phase == Ready {
		c.phase = CountIn
	}
}

// Cut makes a round that is under way void. A round that has sounded to its end
// stays as it is: who has doubts about the sound of a round must cut it before
// it hears its end.
func (c *course) Cut(why string) {
	if c.UnderWay() {
		c.phase, c.why = Void, why
	}
}

// UnderWay reports whether the round has begun and still sounds.
func (c *course) UnderWay() bool { return c.phase == CountIn || c.phase == Playing }

// hear notes what is heard.
func (c *course) hear(now time.Duration) {
	c.heard = now
	if c.phase == CountIn && now >= c.Start() {
		c.phase = Playing
	}
}

// Count is the count being heard while the round is under way; see
// [Passage.CountAt]. Otherwise it is empty.
func (c *course) Count() string {
	if !c.UnderWay() {
		return ""
	}
	return c.CountAt(c.heard)
}

// Turn is how far round the cycle what is being heard has come: from 0, at its
// first step, to just below 1.
func (c *course) Turn() float64 { return c.TurnAt(c.heard) }
