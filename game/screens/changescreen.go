package screens

import (
	"slices"

	"groundbeat/game/control"
	"groundbeat/game/picture"
	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

func (x *Change) Screen() view.Screen {
	m := x.model()
	x.blank.Set(m.Head())
	x.sides.put(&roundview.Which{Ask: view.AskRhythm, Sides: m.Sides})
	return m.Screen(x.s.Words)
}

func (x *Change) model() *roundview.Change {
	a, c := x.s.Address, x.change.From
	m := &roundview.Change{
		Rhythm: view.NameOf(c), Base: c.Skeleton, Counts: picture.CountsOf(c.Base()), Groups: c.Grouping, Any: a.Rhythm == view.Any,
		Answers: a.Answers, From: a.From, FromNames: x.names, Fewer: x.fewer, Eights: a.Eights, Level: a.Riff, Levels: x.s.Levels(),
		Volume: x.s.ShownVolume(), Balance: x.s.Ear.Balance, Help: x.s.Ear.Shown(),
		Columns: picture.ColumnsOf(c.Grouping, c.Steps(), c.StepsPerBeat(), x.s.Board(), false),
		Notes:   x.notes(), Round: x.taps.Number,
	}
	m.Core, m.More = x.s.Options()
	unasked := func(o view.Option) bool {
		c, _ := x.s.Rhythms().Get(o.Value)
		return !c.Quiz
	}
	m.Core, m.More = append(slices.DeleteFunc(m.Core, unasked), roundview.AnyOption(x.s.Words)), slices.DeleteFunc(m.More, unasked)
	switch x.round.Phase() {
	case round.CountIn, round.Playing:
		m.Phase = view.Playing
	case round.Waiting:
		m.Phase = view.Waiting
		for _, c := range x.change.Choices {
			m.Choices = append(m.Choices, view.Option{Value: c.ID, Label: c.Name})
		}
	case round.Void:
		m.Phase, m.Why = view.Voided, control.Whys[x.round.Why()]
	case round.Review:
		x.reveal(m)
	}
	return m
}

// reveal tells the model what came of the round.
func (x *Change) reveal(m *roundview.Change) {
	c, n := x.change, x.round.Notice()
	m.Phase, m.BPM = view.Reviewing, c.BPM
	r := &roundview.ChangeResult{
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
	m.Sides, m.Board = x.sides.shown()
	m.Replay = roundview.Replay{Drums: x.sides.replay.Drums, Slowly: x.sides.replay.Slowly}
}

// notes are those of every screen and of how a press was placed.
func (x *Change) notes() []view.Note {
	notes := x.s.Notes()
	if x.round.Phase() != round.Review || !x.round.Notice().Heard {
		return notes
	}
	return x.s.Placed(notes, &x.taps)
}

// Draw shows the count-in, and a mark for each press: beside one another from the
// top, since a place in the cycle would tell of it.
func (x *Change) Draw(place string) *picture.Picture {
	if place != view.PlaceHead {
		return x.sides.draw(place)
	}
	h := &x.blank
	if h.Moves = x.round.UnderWay(); h.Moves {
		at := x.track.Seen(x.round.Heard())
		h.Shown.Centre = ""
		if at < x.round.Start() {
			h.Shown.Centre = x.round.CountAt(at)
		}
		h.Shown.Taps = h.Shown.Taps[:0]
		for i := range x.round.Presses() {
			h.Shown.Taps = append(h.Shown.Taps, picture.Tap{Turn: float64(i) * apartMarks})
		}
		x.follower.ShowHands(&h.Shown, x.s.Ear.Hands, at)
	}
	return h.Draw(x.s.Calm())
}

// apartMarks is how far apart the marks of two presses lie, in turns.
const apartMarks = 1.0 / 24
