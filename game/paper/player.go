package paper

import (
	"math/rand/v2"
	"slices"

	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// A Manner is how somebody plays.
type Manner uint8

// The manners.
const (
	Listens Manner = iota // taps and answers what she hears
	Errs                  // hears well, taps what is not asked, and says what it was not
	Guesses               // taps at a pace of her own and answers by chance, whatever is heard
	Absent                // does nothing
)

// A Player sits before the browser. She knows what the screen says and what she hears.
type Player struct {
	Manner  Manner
	Bias    float64 // ms that she taps behind, mean
	Spread  float64 // ms, standard deviation
	Forgets float64 // share of the dums that she leaves out
	Adds    float64 // taps beside them, a second

	b     *Browser
	rng   *rand.Rand
	ear   *Ear
	taps  []float64 // that are still to come, performance times in ms
	until float64   // up to where it is decided what she taps
}

// NewPlayer is one before a browser, who listens and taps exactly. Her chance is the
// seed's.
func NewPlayer(b *Browser, seed uint64) *Player {
	return &Player{b: b, rng: rand.New(rand.NewPCG(seed, 2))}
}

// foresees is how far ahead she knows what she will tap, in ms: a rhythm is expected.
const foresees = 400

// patience is for how long she plays one round at the most, in ms.
const patience = 200_000

// Play plays what is under way until it is over, and reports whether it came to that.
func (p *Player) Play() bool {
	p.begin()
	for waited := 0.0; waited < patience; waited += p.b.Pace {
		if !UnderWay(p.b.Screen()) {
			return true
		}
		p.moment()
	}
	return false
}

// PlayFor plays what is under way for some ms, or until it is over.
func (p *Player) PlayFor(ms float64) {
	p.begin()
	for until := p.b.Wall.passed + ms; p.b.Wall.passed < until && UnderWay(p.b.Screen()); {
		p.moment()
	}
}

// begin listens to what comes from now on.
func (p *Player) begin() {
	now := p.b.Wall.Now()
	p.ear, p.taps, p.until = newEar(p.b, now), nil, now
}

// moment is one frame of it.
func (p *Player) moment() {
	s := p.b.Screen()
	tapped := false
	s.Each(func(it *view.Item) { tapped = tapped || it.Role == view.RoleTapArea })
	if tapped {
		p.decide(s.ID)
		p.tap()
	}
	if p.Manner != Absent {
		p.answer(s)
	}
	p.b.Frame()
}

// decide decides what she taps next.
func (p *Player) decide(screen string) {
	from, to := p.until, p.b.Wall.Now()+foresees
	if p.until = to; p.Manner == Absent || to <= from {
		return
	}
	for _, at := range p.means(screen, from, to) {
		if p.rng.Float64() >= p.Forgets {
			p.taps = append(p.taps, at+p.Bias+p.Spread*p.rng.NormFloat64())
		}
	}
	if p.rng.Float64() < p.Adds*(to-from)/1000 {
		p.taps = append(p.taps, from+(to-from)*p.rng.Float64())
	}
}

// pace is how often one taps who does not listen, in ms; 23 is no part of any tempo.
const pace = 523

// means are the moments from a time to another at which she means to tap.
func (p *Player) means(screen string, from, to float64) (all []float64) {
	k, _ := history.KindOf(screen) // a round on which one taps has a screen of its own
	asks := round.Asks(screen)
	switch {
	case p.Manner == Guesses:
		for n := int(from/pace) + 1; float64(n)*pace < to; n++ {
			all = append(all, float64(n)*pace)
		}
		return all
	case k.Play == history.Pressed:
		return p.ear.changes(p.Manner == Errs)
	case p.Manner == Errs:
		return p.ear.strokes(asks, false, from, to)
	case k.Play == history.Tapped && !k.Along:
		return p.ear.carried(asks, from, to)
	}
	return p.ear.strokes(asks, true, from, to)
}

// tap taps what is due.
func (p *Player) tap() {
	now := p.b.Wall.Now()
	slices.Sort(p.taps)
	for len(p.taps) > 0 && p.taps[0] <= now {
		if p.b.Tap(p.taps[0]) != nil {
			return
		}
		p.taps = p.taps[1:]
	}
}

// answer presses an answer once she has heard enough.
func (p *Player) answer(s *view.Screen) {
	var offered []string
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleButton && it.Action == view.ActAnswer && !it.Disabled {
			offered = append(offered, it.Value)
		}
	})
	if len(offered) == 0 || !p.ear.over() {
		return
	}
	says := offered[p.rng.IntN(len(offered))]
	if p.Manner != Guesses {
		says = p.ear.says(offered)
	}
	if p.Manner == Errs {
		wrong := slices.DeleteFunc(offered, func(v string) bool { return v == says })
		says = wrong[p.rng.IntN(len(wrong))]
	}
	if err := p.b.Does(view.ActAnswer, says); err != nil {
		panic(err) // it was offered
	}
}
