package classview

import (
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// mostInRow is how many steps of the line stand side by side at most, so that its counts
// can be read from the back; on a telephone half as many.
const mostInRow = 16

// Wall returns what the line shows; the painter adds the step that is heard.
func (r *Room) Wall() picture.Wall {
	if r.Rhythm == nil {
		return picture.Wall{}
	}
	n, most := r.Rhythm.Steps(), mostInRow
	if r.Narrow {
		most /= 2
	}
	rows := (n + most - 1) / most
	l := picture.Wall{Counts: picture.CountsOf(r.Rhythm.Base()), Groups: r.Rhythm.Grouping, Columns: (n + rows - 1) / rows, Rows: []picture.WallRow{{Base: r.Rhythm.Skeleton}}}
	if r.Told != nil {
		l.Rows[0].Circled = r.Told.Circled
	}
	return l
}

// compare puts a second row below the line's where two are to be seen together: both
// versions of what was changed, with the stroke that moved; the lead drum's strokes.
func (r *Room) compare(w say.Words, l picture.Wall) picture.Wall {
	switch {
	case r.Told == nil:
	case r.Kind == warmup.WhatChanged && r.Told.Sides[1] != nil:
		from, to := r.Told.moved()
		l.Moved = [2]int{from, to}
		l.Rows = nil
		for i, name := range []string{w.Say("wall-first"), w.Say("wall-then")} {
			side := r.Told.Sides[i]
			l.Rows = append(l.Rows, picture.WallRow{Name: name, Base: side.Skeleton, Circled: []int{l.Moved[i]}, Heard: r.Sounds && r.Rhythm == side})
		}
	case r.Kind == warmup.BaseOrRiff && len(r.Lead.Strokes) > 0:
		l.Rows[0].Name = w.Say("wall-bass")
		l.Rows = append(l.Rows, picture.WallRow{Name: w.Say("wall-lead"), Lead: r.Lead.Strokes})
	}
	return l
}

// moved returns the steps from which and to which a stroke was moved, from the first side
// to the second.
func (t *Told) moved() (from, to int) {
	for _, step := range unlikeSteps(t.Sides[0], t.Sides[1]) {
		if t.Sides[0].Skeleton[step].Sounds() {
			from = step
		} else {
			to = step
		}
	}
	return from, to
}

// unlikeSteps are the steps on which two rhythms of as many steps differ.
func unlikeSteps(a, b *rhythm.Cycle) (steps []int) {
	for i := range min(a.Steps(), b.Steps()) {
		if a.Skeleton[i] != b.Skeleton[i] {
			steps = append(steps, i)
		}
	}
	return steps
}

// ShownWall is the line as the room sees it at its stage.
func (r *Room) ShownWall(w say.Words) picture.Wall { return r.compare(w, r.Wall()) }

func (r *Room) line(w say.Words) view.Item {
	l, p := r.ShownWall(w), &picture.Picture{}
	l.Draw(p)
	p.Twin = l.Twin(w)
	it := view.Item{ID: "line", Role: view.RolePicture, Name: w.Say("line-name"), Text: p.Twin, Picture: p, Aspect: p.Aspect(), Look: view.LookBoard}
	if r.Sounds {
		it.Picture, it.Place = nil, view.PlaceLine
	}
	return it
}
