package warmup

import (
	"slices"
	"strconv"
)

// Hands are how many of a room went up for one answer: a word, a number of at most
// three figures, or nothing if nobody counted. People copy one another, so that no
// interval is ever computed from hands.
type Hands string

// The words.
const (
	Most Hands = "most"
	Some Hands = "some"
	Few  Hands = "few"
	None Hands = "none"
)

// HandsWords lists the words, most hands first.
func HandsWords() []Hands { return []Hands{Most, Some, Few, None} }

// mostFigures is how long a number of hands may be.
const mostFigures = 3

// Number returns the hands as a number, if they are one; none is 0.
func (h Hands) Number() (int, bool) {
	if h == None {
		return 0, true
	}
	n, err := strconv.Atoi(string(h))
	return n, err == nil
}

// Valid reports whether the hands are what [Hands] says.
func (h Hands) Valid() bool {
	n, err := strconv.Atoi(string(h))
	return h == "" || slices.Contains(HandsWords(), h) || err == nil && n >= 0 && h == Hands(strconv.Itoa(n)) && len(h) <= mostFigures
}

// Press returns the hands after one more key: a word takes the place of what was
// there, and so does the first figure after a word; further figures make a longer
// number. "" takes all back. Anything else leaves them as they were.
func (h Hands) Press(key string) Hands {
	next := Hands(key)
	if _, err := strconv.Atoi(string(h)); err == nil && len(key) == 1 && key >= "0" && key <= "9" {
		next = h + Hands(key)
		if h == "0" {
			next = Hands(key)
		}
	}
	if !next.Valid() {
		return h
	}
	return next
}

// compare returns how hands compare, + for more of h, and whether they can be
// compared: a word and a number other than 0 cannot.
func (h Hands) compare(other Hands) (int, bool) {
	if h == "" || other == "" {
		return 0, false
	}
	a, number := h.Number()
	b, otherNumber := other.Number()
	if number && otherNumber {
		return a - b, true
	}
	i, j := slices.Index(HandsWords(), h.worded()), slices.Index(HandsWords(), other.worded())
	return j - i, i >= 0 && j >= 0
}

// worded is the word for no hands, where a number says so.
func (h Hands) worded() Hands {
	if h == "0" {
		return None
	}
	return h
}

// up reports whether any hand was up.
func (h Hands) up() bool {
	n, number := h.Number()
	return h != "" && (!number || n > 0)
}
