package history

import (
	"fmt"
	"math"
	"slices"
)

// field is one member of an object: its name in the text, where its value
// lives, and the rules for its numbers.
type field struct {
	name string
	// at points to a string, bool, int, uint64 or float64, to a pointer to an
	// int or a float64 (nil is null), or to a []float64, a []string, a []Tap, a
	// []Break, a []Silence, a Reading or Helps.
	at     any
	digits int     // decimal places kept
	lo, hi float64 // range of the number, or of each
}

// Bounds that keep a rounded number exact in a float64 (2⁵³ ≈ 9·10¹⁵).
const (
	maxMS      = 1e12 // 31 years
	maxSeconds = 1e6  // 11 days of a stream
	maxFrame   = 1e12
	maxSeed    = 1<<53 - 1
	maxCount   = 1e9
	maxCycles  = 1e6
)

// object is a JSON object with known members, of which the extras may be absent,
// and others.
type object interface {
	fields() []field
	extras() []field
	others() *[]member
}

// fields are those of the round's kind, in the order of the text.
func (r *Round) fields() []field {
	what, figures := r.own()
	return slices.Concat(r.asked(), what, r.circumstances(), figures)
}

// own are those that only some kinds have: before and after those of all.
func (r *Round) own() (what, figures []field) {
	what, figures = r.tapped()
	switch {
	case r.answered():
		return r.choice(), nil
	case r.Kind == Change:
		return r.changing(), nil
	case r.Kind == Stop:
		return append(what, r.stopping()...), figures
	case r.Kind == Carry:
		return append(what, r.carrying()...), figures
	}
	return what, figures
}

// foreign are those that other kinds have and the round's has not.
func (r *Round) foreign() []field {
	var names []string
	what, figures := r.own()
	for _, f := range slices.Concat(what, figures) {
		names = append(names, f.name)
	}
	what, figures = r.tapped()
	all := slices.Concat(what, figures, r.choice(), r.changing()[:3], r.stopping(), r.carrying())
	return slices.DeleteFunc(all, func(f field) bool { return slices.Contains(names, f.name) })
}

func (r *Round) asked() []field {
	return []field{
		{"kind", &r.Kind, 0, 0, 0},
		{"rhythm", &r.Rhythm, 0, 0, 0},
		{"bpm", &r.BPM, 0, 20, 300},
		{"riff", &r.Riff, 0, 0, 0},
		{"eights", &r.Eights, 0, 1, 512},
		{"seed", &r.Seed, 0, 0, maxSeed},
	}
}

func (r *Round) choice() []field {
	return []field{
		{"choices", &r.Choices, 0, 0, 0},
		{"answer", &r.Answer, 0, 0, 0},
		{"right", &r.Right, 0, 0, 0},
		{"took", &r.Took, 3, 0, maxMS},
		{"heard", &r.Heard, 3, 0, maxCycles},
	}
}

func (r *Round) circumstances() []field {
	return []field{
		{"id", &r.ID, 0, 0, 0},
		{"when", &r.When, 0, 0, 0},
		{"output", &r.Output, 0, 0, 0},
		{"epoch", &r.Epoch, 0, 0, maxCount},
		{"rate", &r.Rate, 0, 3000, 768000}, // the range of the Web Audio API
		{"coarse", &r.Coarse, 0, 0, 0},
	}
}

// tapped are the fields of tap rounds: what was tapped, and the figures that
// stand at the end.
func (r *Round) tapped() (what, figures []field) {
	what = []field{
		{"strokes", &r.Strokes, 9, 0, maxSeconds},
		{"taps", &r.Taps, 0, 0, 0},
		{"setup", &r.Setup, 3, -5000, 5000},
		{"score", &r.Score, 6, 0, 1},
	}
	figures = []field{
		{"window", &r.Window, 3, 0, 1000},
		{"bias", &r.Bias, 3, -maxMS, maxMS},
		{"spread", &r.Spread, 3, 0, maxMS},
		{"median", &r.Median, 3, -maxMS, maxMS},
		{"drift", &r.Drift, 3, -maxMS, maxMS},
		{"matched", &r.Matched, 0, 0, maxCount},
		{"out", &r.Out, 0, 0, maxCount},
		{"added", &r.Added, 0, 0, maxCount},
	}
	return what, figures
}

func (t *Tap) fields() []field {
	return []field{
		{"at", &t.At, 3, 0, maxMS},
		{"offset", &t.Offset, 3, -maxMS, maxMS},
		{"stroke", &t.Stroke, 0, 0, maxCount},
		{"frame", &t.Frame, 3, -maxFrame, maxFrame},
		{"reading", &t.Reading, 0, 0, 0},
		{"by", &t.By, 0, 0, 0},
	}
}

func (r *Reading) fields() []field {
	return []field{
		{"context", &r.Context, 9, 0, maxSeconds},
		{"performance", &r.Performance, 3, 0, maxMS},
	}
}

func (r *Round) others() *[]member   { return &r.rest }
func (t *Tap) others() *[]member     { return &t.rest }
func (r *Reading) others() *[]member { return &r.rest }

// roundAll rounds every number of an object to its decimal places. Numbers
// behind pointers are replaced, not changed.
func roundAll(o object) {
	for _, f := range told(o) {
		switch v := f.at.(type) {
		case *float64:
			*v = to(*v, f.digits)
		case **float64:
			if *v != nil {
				*v = new(to(**v, f.digits))
			}
		case *[]float64:
			for i := range *v {
				(*v)[i] = to((*v)[i], f.digits)
			}
		case *[]Tap:
			roundEach(*v)
		case *[]Break:
			roundEach(*v)
		case *[]Silence:
			roundEach(*v)
		case object:
			roundAll(v)
		}
	}
}

func roundEach[T any, O interface {
	*T
	object
}](list []T) {
	for i := range list {
		roundAll(O(&list[i]))
	}
}

// to rounds x to decimal places; never to −0.
func to(x float64, digits int) float64 {
	unit := math.Pow10(digits)
	if math.Abs(x) > 1e15/unit { // not exact, and out of every range
		return x
	}
	return math.Round(x*unit)/unit + 0
}

// ranges checks every number of an object.
func ranges(o object) error {
	for _, f := range told(o) {
		if err := f.check(); err != nil {
			return under(f.name, err)
		}
	}
	return nil
}

// check checks the numbers of a field; the error does not name the field.
func (f field) check() error {
	switch v := f.at.(type) {
	case *int:
		return f.inside(float64(*v))
	case *uint64:
		return f.inside(float64(*v))
	case *float64:
		return f.inside(*v)
	case **int:
		if *v != nil {
			return f.inside(float64(**v))
		}
	case **float64:
		if *v != nil {
			return f.inside(**v)
		}
	case *[]float64:
		for i, x := range *v {
			if err := f.inside(x); err != nil {
				return under(index("", i), err)
			}
		}
	case *[]Tap:
		return rangesEach(*v)
	case *[]Break:
		return rangesEach(*v)
	case *[]Silence:
		return rangesEach(*v)
	case object:
		return ranges(v)
	}
	return nil
}

func rangesEach[T any, O interface {
	*T
	object
}](list []T) error {
	for i := range list {
		if err := ranges(O(&list[i])); err != nil {
			return under(index("", i), err)
		}
	}
	return nil
}

// inside refuses a number out of range, and so NaN and infinities.
func (f field) inside(x float64) error {
	if x >= f.lo && x <= f.hi {
		return nil
	}
	return wrong("", "%v is not from %v to %v", x, f.lo, f.hi)
}

// empty reports whether the field has the value that it has in a new round.
func (f field) empty() bool {
	switch v := f.at.(type) {
	case *string:
		return *v == ""
	case *bool:
		return !*v
	case *int:
		return *v == 0
	case *float64:
		return *v == 0
	case **float64:
		return *v == nil
	case *[]float64:
		return len(*v) == 0
	case *[]string:
		return len(*v) == 0
	case *[]Tap:
		return len(*v) == 0
	case *[]Break:
		return len(*v) == 0
	case *[]Silence:
		return len(*v) == 0
	case object:
		return nothing(v)
	}
	panic(fmt.Sprintf("history: %s is a %T", f.name, f.at))
}

func index(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }
