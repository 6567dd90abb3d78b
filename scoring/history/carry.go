package history

// Carry is the kind of round in which the dums are tapped, and the drums fall silent for
// an eight now and then. Its strokes are asked for in the silences too: so they are not
// tapped along with the drums, in time with what is heard.
const Carry = "carry"

var carry = Kind{
	ID: Carry, Play: Tapped, Guess: unguessed,
	own: (*Round).carrying, check: checkCarry, right: tappedRight,
}

// Silence is where the drums fell silent in a round. The package comment gives the
// meaning of every field, under its name in the text.
type Silence struct {
	From  float64 // s in the stream
	To    float64 // s in the stream
	First int     // index into Round.Strokes
	Last  int     // index into Round.Strokes

	rest []member
}

func (s *Silence) fields() []field {
	return []field{
		numeric("from", &s.From, 9, 0, maxSeconds),
		numeric("to", &s.To, 9, 0, maxSeconds),
		numeric("first", &s.First, 0, 0, maxCount),
		numeric("last", &s.Last, 0, 0, maxCount),
	}
}

func (s *Silence) others() *[]member { return &s.rest }

// carrying are the fields of a round with silences: those of all tap rounds, and one
// more.
func (r *Round) carrying() (what, figures []field) {
	what, figures = r.tapped()
	return append(what, plain("silences", eachOf(&r.Silences))), figures
}

// checkCarry checks, besides what all tap rounds have, the silences.
func checkCarry(r *Round) error {
	if err := checkTapped(r); err != nil {
		return err
	}
	return checkSilences(r)
}

// checkSilences checks what the silences have to do with the strokes: each holds those of
// its time and no others, and before and after each there is one with the drums.
func checkSilences(r *Round) error {
	next := 1 // the first stroke that may be in a silence
	for i, s := range r.Silences {
		bad := func(field, format string, a ...any) error {
			return wrong(index("silences", i)+"."+field, format, a...)
		}
		switch {
		case s.First < next:
			return bad("first", "%d, but a stroke with the drums lies before each silence, and so %d is the least", s.First, next)
		case s.Last < s.First || s.Last+1 >= len(r.Strokes):
			return bad("last", "%d is not from %d to the last but one of %d strokes (counted from 0)", s.Last, s.First, len(r.Strokes))
		case s.From <= r.Strokes[s.First-1] || s.From > r.Strokes[s.First]:
			return bad("from", "%v is not between the stroke before it and the first in it, at %v", s.From, r.Strokes[s.First])
		case s.To <= r.Strokes[s.Last] || s.To > r.Strokes[s.Last+1]:
			return bad("to", "%v is not between the last stroke in it and the next, at %v", s.To, r.Strokes[s.Last+1])
		}
		next = s.Last + 2
	}
	return nil
}
