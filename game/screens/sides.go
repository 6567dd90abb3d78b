package screens

import (
	"errors"
	"slices"

	"groundbeat/game/control"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/game/quiz"
	"groundbeat/game/round"
	"groundbeat/game/roundview"
	"groundbeat/game/view"
)

// sides are those of a review: what was right and what was said, each on a head of its
// own, to be heard in turn. Which rhythm? and Hear the change have them.
type sides struct {
	s        *control.Shared
	track    playback.Track
	follower playback.Follower
	replay   playback.Replay
	heads    [2]playback.Head

	question quiz.Question // of which they are
	all      []roundview.Side
	hears    int // which of them is heard: 0 none, else from 1
}

func newSides(s *control.Shared) sides {
	return sides{s: s, track: playback.NewTrack(s.Sound, &s.Outputs)}
}

// begin begins with a question, of which nothing is to be seen yet.
func (x *sides) begin(q quiz.Question) { x.question, x.all, x.hears = q, nil, 0 }

// hear plays one eight of a side of the review, or one stroke.
func (x *sides) hear(id string) {
	p, err := x.passage(id)
	if err != nil {
		return
	}
	x.follower.Follow(p)
	x.replay.Apply(x.s.Sound)
	x.track.Play(p, x.s.Wall.Now())
}

// act answers the controls of a review, and reports whether it was one of them.
func (x *sides) act(action, value string, phase round.Phase) bool {
	switch {
	case action == view.ActHear || action == view.ActDrums || action == view.ActSlowly:
		x.set(action, value)
	case action == view.ActStop && phase == round.Review:
		x.silence()
	default:
		return false
	}
	return true
}

// set answers the controls of the sides.
func (x *sides) set(action, value string) {
	if action == view.ActHear {
		x.hear(value)
		return
	}
	anew := x.replay.Set(action, value)
	if x.hears == 0 {
		return
	}
	x.replay.Apply(x.s.Sound)
	if anew {
		x.hear(x.all[x.hears-1].ID)
	}
}

var errNoSide = errors.New("game: no such side")

func (x *sides) passage(id string) (*round.Passage, error) {
	for i, s := range x.all {
		if s.ID == id {
			x.hears = i + 1
			if s.Rhythm == nil {
				return passageOf(alone(x.question, id), 0)
			}
			return x.replayOf(s, i)
		}
	}
	return nil, errNoSide
}

// replayOf is one eight of a side, with the riff that it was heard under, or would
// have been.
func (x *sides) replayOf(s roundview.Side, i int) (*round.Passage, error) {
	nth := 0
	if x.question.Form().Halves {
		nth = i // the second half has a riff of its own
	}
	r, err := round.Riff(s.Rhythm, x.question.Level, x.question.Seed, nth, x.s.Address.Hide)
	if err != nil {
		return nil, err
	}
	return round.NewPassage(x.replay.Tempo(x.tempoOf(s)), x.question.Level, x.question.Seed, false,
		round.Section{Rhythm: s.Rhythm, Cycles: s.Rhythm.CyclesIn(1), Riff: r})
}

// tempoOf is the tempo of a side: of a rhythm that was a choice, the one it
// would have been played at.
func (x *sides) tempoOf(s roundview.Side) int {
	if c, ok := x.question.Choice(s.ID); ok && c.BPM != 0 {
		return c.BPM
	}
	return x.question.BPM
}

// silence ends what is heard in the review.
func (x *sides) silence() {
	if x.hears != 0 {
		x.hears = 0
		x.track.Stop()
		x.s.Ear.Apply()
		x.s.Stale = true
	}
}

func (x *sides) follow(now float64) {
	at, _, why := x.track.Heard(now)
	if why != "" || at >= x.track.Passage.End() {
		x.silence()
		return
	}
	if x.hears <= min(len(x.all), len(x.heads)) {
		at = x.track.Seen(at)
		h := &x.heads[x.hears-1]
		h.Moves, h.Shown.Turning, h.Shown.Turn = true, at >= 0, x.track.Passage.TurnAt(max(at, 0))
		if x.question.Form().Pool && at >= 0 {
			x.follower.Ring(&h.Shown, at)
			x.follower.ShowHands(&h.Shown, x.s.Ear.Hands, at)
		}
	}
}

// put puts the sides of a review on their heads.
func (x *sides) put(m *roundview.Which) {
	x.follower.Clear() // what was on the heads is gone
	for i := range x.heads {
		x.heads[i].Set(m.SideHead(i))
		x.heads[i].Moves = x.hears == i+1
	}
}

// shown are the sides of a review, and how wide both are together.
func (x *sides) shown() (sides []roundview.Side, board float64) {
	sides = slices.Clone(x.all)
	for i := range sides {
		sides[i].Hearing = x.hears == i+1
	}
	return sides, max(x.s.Board(), min(x.s.Width/2, 700))
}

// draw draws the head of a side.
func (x *sides) draw(place string) *picture.Picture {
	switch place {
	case view.PlaceHeadA:
		return x.heads[0].Draw(x.s.Calm())
	case view.PlaceHeadB:
		return x.heads[1].Draw(x.s.Calm())
	}
	return nil
}
