package warmup

import (
	"cmp"
	"slices"

	"groundbeat/game/quiz"
	"groundbeat/game/riff"
)

// A Verdict is what hands tell of a room and one question.
type Verdict uint8

// The verdicts.
const (
	Untold  Verdict = iota // nobody counted, or it cannot be compared
	Knew                   // more hands for the right answer than for any other
	MixedUp                // as many or more for another one
)

// Verdict tells what the hands of a task tell. People copy one another: it is an
// impression of the room, and no statistics are made of it.
func (d Done) Verdict() Verdict {
	at := slices.Index(d.Choices, d.Right)
	if at < 0 || d.Hands[at] == "" {
		return Untold
	}
	verdict := Knew
	if !d.Hands[at].up() {
		verdict = Untold // unless others went up
	}
	for i, h := range d.Hands {
		if i == at || h == "" {
			continue
		}
		switch more, ok := d.Hands[at].compare(h); {
		case !ok:
			return Untold
		case more <= 0 && h.up():
			verdict = MixedUp
		}
	}
	return verdict
}

// TakenFor is the wrong answer that most hands went up for; "" if none did.
func (d Done) TakenFor() string {
	var choices []quiz.Choice
	for _, id := range d.Choices {
		choices = append(choices, quiz.Choice{ID: id})
	}
	return taken(choices, d.Right, d.Hands)
}

// A Tally is of how many questions, of which hands tell anything, a room knew how many.
type Tally struct{ Knew, Of int }

func (t *Tally) add(v Verdict) {
	if v != Untold {
		t.Of++
	}
	if v == Knew {
		t.Knew++
	}
}

// A Pair is two rhythms that a room mixed up, what was played first.
type Pair struct {
	Played, TakenFor string
	Times            int
}

// Figures are what one warm-up, or several, tell of a room.
type Figures struct {
	Tally
	Levels  []Level  // of the names that were asked, by riff level, bare first
	Mixed   []Pair   // the most often first
	Known   []string // rhythms that the room named
	Counted int      // questions with hands
	Moved   int      // tasks without
}

// A Level is how many rhythms a room named under a riff level.
type Level struct {
	Riff string
	Tally
}

// FiguresOf returns what entries tell.
func FiguresOf(entries ...Entry) Figures {
	var f Figures
	levels, pairs := map[string]*Tally{}, map[Pair]int{}
	for _, e := range entries {
		for _, d := range e.Tasks {
			if !d.Kind.Counted() {
				f.Moved++
				continue
			}
			f.Counted++
			v := d.Verdict()
			f.add(v)
			if d.Kind != HandsUp {
				continue
			}
			if levels[d.Riff] == nil {
				levels[d.Riff] = &Tally{}
			}
			levels[d.Riff].add(v)
			switch other := d.TakenFor(); {
			case v == Knew && !slices.Contains(f.Known, d.Rhythm):
				f.Known = append(f.Known, d.Rhythm)
			case v == MixedUp && other != "":
				pairs[Pair{Played: d.Rhythm, TakenFor: other}]++
			}
		}
	}
	for l := riff.Bare; l <= riff.Solo; l++ {
		if t := levels[l.String()]; t != nil && t.Of > 0 {
			f.Levels = append(f.Levels, Level{l.String(), *t})
		}
	}
	for p, n := range pairs {
		p.Times = n
		f.Mixed = append(f.Mixed, p)
	}
	slices.SortFunc(f.Mixed, func(a, b Pair) int {
		return cmp.Or(b.Times-a.Times, cmp.Compare(a.Played, b.Played), cmp.Compare(a.TakenFor, b.TakenFor))
	})
	return f
}

// Through is the thickest riff under which the room named every rhythm that was asked,
// as under all thinner ones; "" if there is none.
func (f Figures) Through() string {
	level := ""
	for _, l := range f.Levels {
		if l.Knew < l.Of {
			break
		}
		level = l.Riff
	}
	return level
}

// Dance is what to dance to today: a rhythm at a riff level, and two to be put side by
// side, if any were mixed up.
type Dance struct {
	Rhythm string // one that the room knew; else the first that was played
	Known  bool   // whether it knew it
	Riff   string // a level more than the room hears through; else bare
	Apart  Pair
}

// DanceTo tells what an entry suggests. Simple on purpose: what is known is danced under
// a little more riff, what is mixed up is heard bare, side by side.
func DanceTo(e Entry) Dance {
	f := FiguresOf(e)
	a := Dance{Riff: riff.Bare.String()}
	if len(e.Tasks) > 0 {
		a.Rhythm = e.Tasks[0].Rhythm
	}
	if len(f.Known) > 0 {
		a.Rhythm, a.Known = f.Known[0], true
		if through, err := riff.ParseLevel(f.Through()); err == nil {
			a.Riff = min(through+1, riff.Solo).String()
		}
	}
	if len(f.Mixed) > 0 {
		a.Apart = f.Mixed[0]
	}
	return a
}
