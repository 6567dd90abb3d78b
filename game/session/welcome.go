package session

import (
	"slices"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// welcome is the screen Home.
type welcome struct {
	*desk
	player
	struck bool // a dum and a tek sound
	silent bool // nothing came of them
	turns  bool // the drumhead turns with them
	turn   float64
	head   liveHead
}

func newWelcome(d *desk) *welcome { return &welcome{desk: d, player: newPlayer(d)} }

func (x *welcome) lay() { x.silent = false }

func (x *welcome) act(action, _ string) {
	if action == view.ActStrike {
		x.strike()
	}
}

// strike plays the first beat of the first round, a dum and a tek, just as it will
// sound there.
func (x *welcome) strike() {
	c := *x.First
	c.Skeleton, c.Filled = slices.Clone(c.Skeleton), nil
	for i := c.StepsPerBeat(); i < c.Steps(); i++ {
		c.Skeleton[i] = rhythm.Rest
	}
	p, err := round.NewPassage(view.FirstRound().BPM, riff.Bare, x.Wall.Seed(), false, round.Section{Rhythm: &c, Cycles: 1})
	if err != nil {
		panic(err) // a link may ask for as much
	}
	x.hush()
	x.struck, x.silent = true, false
	x.play(p, x.Wall.Now())
}

func (x *welcome) tap(*host.Tap) {}

// hush ends what is played.
func (x *welcome) hush() {
	if x.struck {
		x.stop()
		x.struck, x.turns, x.stale = false, false, true
	}
}

// interrupted stops what is played; what had a gap is played anew.
func (x *welcome) interrupted(why string) {
	if x.struck && why == host.WhyGap {
		x.strike()
		return
	}
	x.silent = x.silent || x.struck && why == host.WhySilent
	x.hush()
}

func (x *welcome) tick(now float64) bool {
	if !x.struck {
		return false
	}
	at, _, why := x.heard(now)
	if why != "" || at >= x.passage.End() {
		x.interrupted(why)
		return true
	}
	at = x.seen(at)
	x.turns = at >= 0 && at < x.beat()
	x.turn = x.passage.TurnAt(max(at, 0))
	return false
}

// beat is how long the picture turns with the two strokes: up to the next count.
func (x *welcome) beat() time.Duration {
	c := x.First
	return c.At(c.StepsPerBeat(), x.passage.BPM())
}

func (x *welcome) screen() view.Screen {
	m := &view.Home{
		First: !x.finished, Rhythm: x.First, Volume: x.shownVolume(), Silent: x.silent, Notes: x.notes(),
		Who: x.learner.who.ID, Theme: view.Theme(x.Store.Remembered(rememberedTheme)),
	}
	for _, p := range x.learner.people {
		m.People = append(m.People, view.Person(p))
	}
	x.head.set(m.Head())
	return m.Screen(x.Words)
}

func (x *welcome) draw(place string) *view.Picture {
	if place != view.PlaceHead {
		return nil
	}
	x.head.turn(x.turns, x.turn)
	return x.head.draw(x.calm())
}
