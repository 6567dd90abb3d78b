package screens

import (
	"slices"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
	"groundbeat/scoring/stat"
)

// Carry is the screen Carry on: strokes are tapped, while the drums fall silent for an
// eight now and then.
type Carry struct {
	tapped tapped
	deals  *silences
	spells map[together][]stat.Spell // of the rounds since the page was opened
}

// silences deals the rounds in which the drums fall silent.
type silences struct {
	carried *round.Carried
	mine    map[string]bool // the records of those since the page was opened, by their ids
}

// together are rounds that count together: of one rhythm, at one tempo, on one output.
type together struct {
	rhythm string
	bpm    int
	output string
}

// NewCarry is the screen over what is shared.
func NewCarry(s *control.Shared) *Carry {
	deals := &silences{mine: map[string]bool{}}
	return &Carry{tapped: newTapped(s, round.Carries, deals), deals: deals, spells: map[together][]stat.Spell{}}
}

func (d *silences) deal(q round.Setting) (*round.Round, error) {
	var err error
	if d.carried, err = round.NewCarried(q); err != nil {
		return nil, err
	}
	return &d.carried.Round, nil
}

func (d *silences) replay(q round.Setting) (*round.Passage, error) {
	return round.NewCarriedPassage(q, false)
}

// silent: in the silence nothing but the player keeps the time.
func (d *silences) silent(at time.Duration) bool { return d.carried.Silent(at) }

func (d *silences) note(r *history.Round, x *tapped) {
	d.mine[r.ID] = true
	for _, k := range d.carried.Kept() {
		r.Silences = append(r.Silences, history.Silence{
			From: x.track.Second(d.carried.At(k.From)), To: x.track.Second(d.carried.At(k.To)), First: k.First, Last: k.Last,
		})
	}
}

// Tick takes the silences of a round that is over to those before.
func (x *Carry) Tick(now float64) bool {
	underWay := x.tapped.round.UnderWay()
	another := x.tapped.tick(now)
	if underWay && x.tapped.round.Phase() == round.Review {
		x.spells[x.these()] = append(x.spells[x.these()], x.deals.carried.Spells()...)
	}
	return another
}

// these are the rounds that count together with the one at hand.
func (x *Carry) these() together {
	return together{x.tapped.round.Setting.Rhythm.ID, x.tapped.round.BPM(), x.tapped.s.OutputName()}
}

func (x *Carry) Screen() view.Screen {
	m := &roundview.Carry{Dums: *x.tapped.model()}
	if m.Phase == view.Reviewing {
		m.Keep(x.deals.carried)
		c := x.tapped.round.Setting.Rhythm
		m.Columns = picture.ColumnsOf(slices.Repeat(c.Grouping, c.CyclesIn(1)), c.CyclesIn(1)*c.Steps(), c.StepsPerBeat(), x.tapped.s.Board(), true)
		m.Own = x.own()
	}
	x.tapped.show(m.Head())
	return m.Screen(x.tapped.s.Words)
}

// leastOwn is how many intervals a silence must have to tell anything of clock and
// hand: her own tempo takes up one, and of one more there are no neighbours.
const leastOwn = 3

var untold = map[stat.Fault]roundview.Untold{
	stat.TooFew: roundview.UntoldFew, stat.Unclear: roundview.UntoldUnclear, stat.Drifts: roundview.UntoldDrifts, stat.Corrects: roundview.UntoldCorrects,
}

// own is what can be told of how she keeps time by herself.
func (x *Carry) own() roundview.OwnTime {
	if x.deals.carried.Intervals() < leastOwn {
		return roundview.OwnTime{Why: roundview.UntoldShort}
	}
	c := stat.Carried(append(x.earlier(), x.spells[x.these()]...))
	return roundview.OwnTime{Clock: c.Clock, Hand: c.Motor, Slower: c.Slower, Why: untold[c.Fault]}
}

// earlier are the silences of kept rounds that count together with the one at hand.
func (x *Carry) earlier() (spells []stat.Spell) {
	these := x.these()
	for _, h := range x.tapped.s.Learner.Rounds {
		if x.deals.mine[h.ID] || (together{h.Rhythm, h.BPM, h.Output}) != these {
			continue
		}
		if r, err := round.Recalled(h, x.tapped.round.Setting.Rhythm); err == nil { // else it is of another kind, or of other riffs
			spells = append(spells, r.Spells()...)
		}
	}
	return spells
}

func (x *Carry) Prepare()                       { x.tapped.prepare() }
func (x *Carry) Act(action, value string)       { x.tapped.act(action, value) }
func (x *Carry) Tap(t *host.Tap)                { x.tapped.tap(t) }
func (x *Carry) Interrupt(why string)           { x.tapped.interrupt(why) }
func (x *Carry) Draw(p string) *picture.Picture { return x.tapped.draw(p) }
func (x *Carry) Phase() view.Phase              { return x.tapped.phase() }
func (x *Carry) GoOut()                         { x.tapped.leave() }
