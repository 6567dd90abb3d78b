package session

import (
	"slices"
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// welcome is the screen Home.
type welcome struct {
	*desk
	track  playback.Track
	struck bool // a dum and a tek sound
	silent bool // nothing came of them
	turns  bool // the drumhead turns with them
	turn   float64
	head   playback.Head
}

func newWelcome(d *desk) *welcome {
	return &welcome{desk: d, track: playback.NewTrack(d.Sound, &d.outputs)}
}

func (x *welcome) lay() { x.silent = false }

func (x *welcome) act(action, _ string) {
	if action == view.ActStrike {
		x.strike()
	}
}

// strike plays the first beat of the first round, a dum and a tek, just as it will
// sound there.
func (x *welcome) strike() {
	c := *x.desk.First
	c.Skeleton, c.Filled = slices.Clone(c.Skeleton), nil
	for i := c.StepsPerBeat(); i < c.Steps(); i++ {
		c.Skeleton[i] = rhythm.Rest
	}
	p, err := round.NewPassage(view.FirstRound().BPM, riff.Bare, x.desk.Wall.Seed(), false, round.Section{Rhythm: &c, Cycles: 1})
	if err != nil {
		panic(err) // a link may ask for as much
	}
	x.hush()
	x.struck, x.silent = true, false
	x.track.Play(p, x.desk.Wall.Now())
}

func (x *welcome) tap(*host.Tap) {}

// hush ends what is played.
func (x *welcome) hush() {
	if x.struck {
		x.track.Stop()
		x.struck, x.turns, x.desk.stale = false, false, true
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
	at, _, why := x.track.Heard(now)
	if why != "" || at >= x.track.Passage.End() {
		x.interrupted(why)
		return true
	}
	at = x.track.Seen(at)
	x.turns = at >= 0 && at < x.beat()
	x.turn = x.track.Passage.TurnAt(max(at, 0))
	return false
}

// beat is how long the picture turns with the two strokes: up to the next count.
func (x *welcome) beat() time.Duration {
	c := x.desk.First
	return c.At(c.StepsPerBeat(), x.track.Passage.BPM())
}

func (x *welcome) screen() view.Screen {
	m := &view.Home{
		First: !x.desk.finished, Rhythm: x.desk.First, Volume: x.desk.shownVolume(), Silent: x.silent, Notes: x.desk.notes(),
		Who: x.desk.learner.who.ID, Theme: view.Theme(x.desk.Store.Remembered(rememberedTheme)),
	}
	for _, p := range x.desk.learner.people {
		m.People = append(m.People, view.Person(p))
	}
	x.head.Set(m.Head())
	return m.Screen(x.desk.Words)
}

func (x *welcome) draw(place string) *view.Picture {
	if place != view.PlaceHead {
		return nil
	}
	playback.Turn(&x.head, x.turns, x.turn)
	return x.head.Draw(x.desk.calm())
}
