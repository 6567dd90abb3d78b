package session

import (
	"slices"

	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/game/view"
)

func (x *changing) screen() view.Screen {
	m := x.model()
	x.blank.set(m.Head())
	x.setSides(&view.Which{Ask: view.AskRhythm, Sides: m.Sides})
	return m.Screen(x.Words)
}

func (x *changing) model() *view.Change {
	a, c := x.address, x.change.From
	m := &view.Change{
		Rhythm: view.NameOf(c), Base: c.Skeleton, Counts: view.CountsOf(c.Base()), Groups: c.Grouping, Any: a.Rhythm == view.Any,
		Answers: a.Answers, From: a.From, FromNames: x.names, Fewer: x.fewer, Eights: a.Eights, Level: a.Riff, Levels: x.levels(),
		Volume: x.shownVolume(), Balance: x.ear.balance, Help: x.ear.shown(),
		Columns: view.ColumnsOf(c.Grouping, c.Steps(), c.StepsPerBeat(), x.board(), false),
		Notes:   x.notes(), Round: x.number,
	}
	m.Core, m.More = x.options()
	unasked := func(o view.Option) bool {
		c, _ := x.Rhythms().Get(o.Value)
		return !c.Quiz
	}
	m.Core, m.More = append(slices.DeleteFunc(m.Core, unasked), view.AnyOption(x.Words)), slices.DeleteFunc(m.More, unasked)
	switch x.round.Phase() {
	case round.CountIn, round.Playing:
		m.Phase = view.Playing
	case round.Waiting:
		m.Phase = view.Waiting
		for _, c := range x.change.Choices {
			m.Choices = append(m.Choices, view.Option{Value: c.ID, Label: c.Name})
		}
	case round.Void:
		m.Phase, m.Why = view.Voided, whys[x.round.Why()]
	case round.Review:
		x.reveal(m)
	}
	return m
}

// reveal tells the model what came of the round.
func (x *changing) reveal(m *view.Change) {
	c, n := x.change, x.round.Notice()
	m.Phase, m.BPM = view.Reviewing, c.BPM
	r := &view.ChangeResult{
		Eight: c.At + 1, Heard: n.Heard, Chance: n.Chance, Late: n.Late, Counts: n.Counts, Eighth: n.InEight, Early: n.Early,
	}
	if said, ok := c.Choice(n.Answer); ok {
		r.Said = view.Option{Value: said.ID, Label: said.Name}
	}
	if c.To != nil {
		r.To = view.Option{Value: c.To.ID, Label: c.To.Name}
		m.Differences = quiz.DifferencesOf(c.From, c.To)
	}
	if setup := x.round.SetUp(); setup != 0 {
		r.SetUp = &setup
	}
	m.Result = r
	m.Sides, m.Board = x.shownSides()
	m.Again = view.Again{Drums: x.again.drums, Slowly: x.again.slowly}
}

// notes are those of the desk and of how a press was placed.
func (x *changing) notes() []view.Note {
	notes := x.desk.notes()
	if x.round.Phase() != round.Review || !x.round.Notice().Heard {
		return notes
	}
	return x.placed(notes, &x.taps)
}

// draw shows the count-in, and a mark for each press: beside one another from the
// top, since a place in the cycle would tell of it.
func (x *changing) draw(place string) *view.Picture {
	if place != view.PlaceHead {
		return x.asking.draw(place)
	}
	h := &x.blank
	if h.moves = x.round.UnderWay(); h.moves {
		at := x.seen(x.round.Heard())
		h.Centre = ""
		if at < x.round.Start() {
			h.Centre = x.round.CountAt(at)
		}
		h.Taps = h.Taps[:0]
		for i := range x.round.Presses() {
			h.Taps = append(h.Taps, view.Tap{Turn: float64(i) * apartMarks})
		}
		x.show(&h.Head, x.ear.hands, at)
	}
	return h.draw(x.calm())
}

// apartMarks is how far apart the marks of two presses lie, in turns.
const apartMarks = 1.0 / 24
