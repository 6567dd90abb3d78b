package session

import (
	"slices"
	"time"

	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
	"groundbeat/scoring/stat"
)

// carrying is the exercise Carry on: tapping, while the drums fall silent for an eight
// now and then. It deals its own rounds.
type carrying struct {
	tapping
	carried *round.Carried
	spells  map[together][]stat.Spell // of the rounds since the page was opened
	mine    map[string]bool           // the records of these, by their ids
}

// together are rounds that count together: of one rhythm, at one tempo, on one output.
type together struct {
	rhythm string
	bpm    int
	output string
}

func newCarrying(d *desk) *carrying {
	x := &carrying{tapping: tapping{desk: d, track: playback.NewTrack(d.Sound, &d.outputs)}, spells: map[together][]stat.Spell{}, mine: map[string]bool{}}
	x.tapping.dealer = x
	return x
}

func (x *carrying) deal(q round.Question) (*round.Round, error) {
	q.Kind = round.Carries
	var err error
	if x.carried, err = round.NewCarried(q); err != nil {
		return nil, err
	}
	return &x.carried.Round, nil
}

func (x *carrying) replay(q round.Question) (*round.Passage, error) {
	return round.NewCarriedPassage(q, false)
}

// silent: in the silence nothing but the player keeps the time.
func (x *carrying) silent(at time.Duration) bool { return x.carried.Silent(at) }

func (x *carrying) note(r *history.Round) {
	x.mine[r.ID] = true
	for _, k := range x.carried.Kept() {
		r.Silences = append(r.Silences, history.Silence{
			From: x.tapping.track.Second(x.carried.At(k.From)), To: x.tapping.track.Second(x.carried.At(k.To)), First: k.First, Last: k.Last,
		})
	}
}

// tick takes the silences of a round that is over to those before.
func (x *carrying) tick(now float64) bool {
	underWay := x.tapping.round.UnderWay()
	another := x.tapping.tick(now)
	if underWay && x.tapping.round.Phase() == round.Review {
		x.spells[x.these()] = append(x.spells[x.these()], x.carried.Spells()...)
	}
	return another
}

// these are the rounds that count together with the one at hand.
func (x *carrying) these() together {
	return together{x.tapping.round.Question.Rhythm.ID, x.tapping.round.BPM(), x.tapping.desk.outputName()}
}

func (x *carrying) screen() view.Screen {
	m := &view.Carry{Dums: *x.tapping.model()}
	if m.Phase == view.Reviewing {
		m.Keep(x.carried)
		c := x.tapping.round.Question.Rhythm
		m.Columns = view.ColumnsOf(slices.Repeat(c.Grouping, c.CyclesIn(1)), c.CyclesIn(1)*c.Steps(), c.StepsPerBeat(), x.tapping.desk.board(), true)
		m.Own = x.own()
	}
	m.Core = slices.DeleteFunc(m.Core, func(o view.Option) bool { return o.Value == view.Any })
	x.tapping.head.Set(m.Head())
	x.tapping.follower.Clear() // what was on the head is gone
	return m.Screen(x.tapping.desk.Words)
}

// leastOwn is how many intervals a silence must have to tell anything of clock and
// hand: her own tempo takes up one, and of one more there are no neighbours.
const leastOwn = 3

var untold = map[stat.Fault]view.Untold{
	stat.TooFew: view.UntoldFew, stat.Unclear: view.UntoldUnclear, stat.Drifts: view.UntoldDrifts, stat.Corrects: view.UntoldCorrects,
}

// own is what can be told of how she keeps time by herself.
func (x *carrying) own() view.OwnTime {
	if x.carried.Intervals() < leastOwn {
		return view.OwnTime{Why: view.UntoldShort}
	}
	c := stat.Carried(append(x.earlier(), x.spells[x.these()]...))
	return view.OwnTime{Clock: c.Clock, Hand: c.Motor, Slower: c.Slower, Why: untold[c.Fault]}
}

// earlier are the silences of kept rounds that count together with the one at hand.
func (x *carrying) earlier() (spells []stat.Spell) {
	these := x.these()
	for _, h := range x.tapping.desk.learner.rounds {
		if x.mine[h.ID] || (together{h.Rhythm, h.BPM, h.Output}) != these {
			continue
		}
		if r, err := round.Recalled(h, x.tapping.round.Question.Rhythm); err == nil { // else it is of another kind, or of other riffs
			spells = append(spells, r.Spells()...)
		}
	}
	return spells
}
