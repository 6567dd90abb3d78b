package history

import (
	"fmt"
	"iter"
	"math"
)

// field is one member of an object: its name in the text, where its value
// lives, and the rules for its numbers.
type field struct {
	name string
	// at points to a string, bool, int, uint64 or float64, to a pointer to an
	// int or a float64 (nil is null), to an object, or is a list of these.
	at     any
	digits int     // decimal places kept
	lo, hi float64 // range of the number, or of each
	extra  bool    // absent where it has nothing to tell
}

// plain is a member without numbers of its own.
func plain(name string, at any) field { return field{name: name, at: at} }

// numeric is a member that is a number, or is made of them.
func numeric(name string, at any, digits int, lo, hi float64) field {
	return field{name: name, at: at, digits: digits, lo: lo, hi: hi}
}

// extra are members that are absent where they have nothing to tell.
func extra(all ...field) []field {
	for i := range all {
		all[i].extra = true
	}
	return all
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

// object is a JSON object with known members and others.
type object interface {
	fields() []field // in the order of the text
	others() *[]member
}

// list is a list of what a field may point to.
type list interface {
	size() int
	item(i int) any // points to it
	make(n int)     // of so many empty ones
	clone(has bool) // an empty one becomes nil where the round's kind has none
}

// each is a list of T, of which fields know nothing but that.
type each[T any] struct{ of *[]T }

func eachOf[T any](of *[]T) list { return each[T]{of} }

func (l each[T]) size() int      { return len(*l.of) }
func (l each[T]) item(i int) any { return &(*l.of)[i] }
func (l each[T]) make(n int)     { *l.of = make([]T, n) }

func (l each[T]) clone(has bool) {
	if !has && len(*l.of) == 0 {
		*l.of = nil
		return
	}
	*l.of = append(make([]T, 0, len(*l.of)), *l.of...)
}

// item is one of a list as a field without a name.
func (f field) item(l list, i int) field {
	f.name, f.at = "", l.item(i)
	return f
}

// told are those of an object's fields that are written: all, but for extras that
// have nothing to tell.
func told(o object) iter.Seq[field] {
	return func(yield func(field) bool) {
		for _, f := range o.fields() {
			if !(f.extra && f.empty()) && !yield(f) {
				return
			}
		}
	}
}

// nothing reports whether an object has nothing to write.
func nothing(o object) bool {
	for range told(o) {
		return false
	}
	return len(*o.others()) == 0
}

// roundAll rounds every number of an object to its decimal places. Numbers
// behind pointers are replaced, not changed.
func roundAll(o object) {
	for f := range told(o) {
		f.round()
	}
}

func (f field) round() {
	switch v := f.at.(type) {
	case *float64:
		*v = to(*v, f.digits)
	case **float64:
		if *v != nil {
			*v = new(to(**v, f.digits))
		}
	case list:
		for i := range v.size() {
			f.item(v, i).round()
		}
	case object:
		roundAll(v)
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
	for f := range told(o) {
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
	case list:
		for i := range v.size() {
			if err := f.item(v, i).check(); err != nil {
				return under(index("", i), err)
			}
		}
	case object:
		return ranges(v)
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
	case list:
		return v.size() == 0
	case object:
		return nothing(v)
	}
	panic(fmt.Sprintf("history: %s is a %T", f.name, f.at))
}

func index(path string, i int) string { return fmt.Sprintf("%s[%d]", path, i) }
