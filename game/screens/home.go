package screens

import (
	"slices"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/diaryview"
	"groundbeat/game/homeview"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

// Home is the screen Home.
type Home struct {
	s      *control.Shared
	track  playback.Track
	struck bool // a dum and a tek sound
	silent bool // nothing came of them
	turns  bool // the drumhead turns with them
	turn   float64
	head   playback.Head
}

func NewHome(s *control.Shared) *Home {
	return &Home{s: s, track: playback.NewTrack(s.Sound, &s.Outputs)}
}

func (x *Home) Prepare() { x.silent = false }

func (x *Home) Act(action, _ string) {
	if action == view.ActStrike {
		x.strike()
	}
}

// strike plays the first beat of the first round, a dum and a tek, just as it will
// sound there.
func (x *Home) strike() {
	c := *x.s.First
	c.Skeleton, c.Filled = slices.Clone(c.Skeleton), nil
	for i := c.StepsPerBeat(); i < c.Steps(); i++ {
		c.Skeleton[i] = rhythm.Rest
	}
	p, err := round.NewPassage(link.FirstRound().BPM, riff.Bare, x.s.Wall.Seed(), false, round.Section{Rhythm: &c, Cycles: 1})
	if err != nil {
		panic(err) // a link may ask for as much
	}
	x.hush()
	x.struck, x.silent = true, false
	x.track.Play(p, x.s.Wall.Now())
}

// hush ends what is played.
func (x *Home) hush() {
	if x.struck {
		x.track.Stop()
		x.struck, x.turns, x.s.Stale = false, false, true
	}
}

// Interrupt stops what is played; what had a gap is played anew.
func (x *Home) Interrupt(why string) {
	if x.struck && why == host.WhyGap {
		x.strike()
		return
	}
	x.silent = x.silent || x.struck && why == host.WhySilent
	x.hush()
}

func (x *Home) Tick(now float64) bool {
	if !x.struck {
		return false
	}
	at, _, why := x.track.Heard(now)
	if why != "" || at >= x.track.Passage.End() {
		x.Interrupt(why)
		return true
	}
	at = x.track.Seen(at)
	x.turns = at >= 0 && at < x.beat()
	x.turn = x.track.Passage.TurnAt(max(at, 0))
	return false
}

// beat is how long the picture turns with the two strokes: up to the next count.
func (x *Home) beat() time.Duration {
	c := x.s.First
	return c.At(c.StepsPerBeat(), x.track.Passage.BPM())
}

func (x *Home) Screen() view.Screen {
	m := &homeview.Home{
		First: !x.s.Finished, Rhythm: x.s.First, Volume: x.s.ShownVolume(), Silent: x.silent, Notes: x.s.Notes(),
		Who: x.s.Learner.Who.ID, Theme: x.s.Theme(),
	}
	for _, p := range x.s.Learner.People {
		m.People = append(m.People, diaryview.Person(p))
	}
	x.head.Set(m.Head())
	return m.Screen(x.s.Words)
}

func (x *Home) Draw(place string) *picture.Picture {
	if place != view.PlaceHead {
		return nil
	}
	playback.Turn(&x.head, x.turns, x.turn)
	return x.head.Draw(x.s.Calm())
}
