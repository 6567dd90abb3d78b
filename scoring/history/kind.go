package history

import "slices"

// A Kind is a kind of round: what its record holds and how that is checked, and what it
// tells. Each is one row of [Kinds], in a file of its own name. Kinds are told from one
// another by what their rows say, never by their names: so a reader of this table treats
// a kind that is added as it treats the others, and one that it does not know as practice
// and nothing else.
type Kind struct {
	ID   string
	Play Play

	// Along is whether the dums are tapped along with the drums all the time: then
	// where the taps lay tells of the player's timing, how many dums she does not miss,
	// and how fast she can tap. Whatever else is tapped is practice to the diary.
	Along bool

	// Named is the rhythm that is told by its name, "" where none was to be told in the
	// round; nil where none ever is.
	Named func(Asked) string

	// Guess is how likely the round is right of which nothing is heard, as so many
	// choices, 2 or more, one over it; 0 where nothing can be said of that.
	Guess func(Asked) int

	own     func(*Round) (what, figures []field) // its members: before and after those of all
	extras  func(*Round) []field                 // those of them that may be absent; or nil
	unnamed bool                                 // what is played may have no name
	check   func(*Round) error
	right   func(*Round) bool
	said    func(*Round) string // the answer that counts; nil: the one given
}

// Kinds are all kinds of rounds. Where several say something of the same, the first
// counts first.
var Kinds = []Kind{dums, which, stop, change, carry, stroke, howMany, same}

// Play is what the player does in a kind of round.
type Play uint8

// What the player does.
const (
	Tapped   Play = iota + 1 // taps strokes, which are scored: made by New
	Answered                 // chooses an answer: NewAnswered
	Pressed                  // presses when she hears it, and then chooses: NewChange
)

// Asked is what was asked in a round, as far as it tells what is right by chance.
type Asked struct {
	Rhythm, To string
	Choices    int
	Place      func() int // Guess of one who taps a rhythm from anywhere in its cycle
}

// KindOf finds a kind by its id, and reports whether it is known.
func KindOf(id string) (Kind, bool) {
	i := slices.IndexFunc(Kinds, func(k Kind) bool { return k.ID == id })
	if i < 0 {
		return Kind{}, false
	}
	return Kinds[i], true
}

// kind is the round's own; of one that is not known the zero Kind, which has nothing.
func (r *Round) kind() Kind {
	k, _ := KindOf(r.Kind)
	return k
}

// Right reports whether a round came out right. One of a kind that is not known did not.
func Right(r Round) bool {
	k := r.kind()
	return k.right != nil && k.right(&r)
}

// Tried reports whether anything came of the player in a round. One in which dums are
// to be tapped and no tap came tells neither what she can do nor what she cannot: the
// telephone rang, or nothing was heard. To keep still while a rhythm may change is an
// answer, and so is every answer. Of a kind that is not known nothing can be told.
func Tried(r Round) bool {
	switch r.kind().Play {
	case Tapped:
		return r.Matched+r.Added+len(r.Aside) > 0
	case Pressed, Answered:
		return true
	}
	return false
}

// Said returns the answer of a round that counts; "" where there is none.
func Said(r Round) string {
	if said := r.kind().said; said != nil {
		return said(&r)
	}
	return r.Answer
}

// unguessed is of rounds of which nothing can be said by chance.
func unguessed(Asked) int { return 0 }

// amongChoices is the chance of one of the choices.
func amongChoices(a Asked) int { return a.Choices }

// anyPlace is the chance of one who taps from anywhere in the cycle.
func anyPlace(a Asked) int { return a.Place() }
