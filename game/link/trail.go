package link

import "strconv"

// Trail is where the player stands among the entries of the browser's history, through
// which its back and forward buttons go. A visit of an address is an entry. So is a
// round, from its beginning to the last look at its review: it lies on top of the entry
// where it was got ready, and rounds that follow without going back there take its place.
// So the back button leads from a round to where it was got ready, and from anywhere else
// back to the review that one came from, as long as no other round was played there.
type Trail struct {
	name   string // of this opening of the page; marks of another one are not known
	marks  int
	at     string            // the mark of the entry that is shown
	under  string            // while a round is shown: the mark of the entry under it
	rounds map[string]onTop  // by marks
	last   map[string]string // by screens: the mark of the round that lies there
}

// onTop is the entry of a round.
type onTop struct{ screen, under string }

// Came is what the player came to by the browser's buttons.
type Came uint8

// What one can come to.
const (
	CameElsewhere Came = iota // an address, which is opened
	CameHere                  // the entry that is shown already
	CameOut                   // out of the round, to where it is got ready
	CameToRound               // to a round that may still lie where it was
)

// NewTrail begins at an entry. The name is another for each opening of the page.
func NewTrail(name string) *Trail {
	t := &Trail{name: name, rounds: map[string]onTop{}, last: map[string]string{}}
	t.at = t.mark()
	return t
}

func (t *Trail) mark() string {
	t.marks++
	return t.name + "-" + strconv.Itoa(t.marks)
}

// At returns the mark of the entry that is shown.
func (t *Trail) At() string { return t.at }

// In reports whether the entry that is shown is that of a round.
func (t *Trail) In() bool { return t.under != "" }

// Visit makes the entry of another address, and returns its mark.
func (t *Trail) Visit() string {
	t.at, t.under = t.mark(), ""
	return t.at
}

// Enter makes the entry of a round of a screen, and returns its mark.
func (t *Trail) Enter(screen string) string {
	t.under, t.at = t.at, t.mark()
	t.rounds[t.at], t.last[screen] = onTop{screen, t.under}, t.at
	return t.at
}

// Leave goes back from the entry of a round, whose mark it returns, to the one under it.
func (t *Trail) Leave() string {
	left := t.at
	t.at, t.under = t.under, ""
	t.forget(left)
	return left
}

// Clear says that what lay on a screen is there no longer.
func (t *Trail) Clear(screen string) { delete(t.last, screen) }

func (t *Trail) forget(mark string) {
	if screen := t.rounds[mark].screen; t.last[screen] == mark {
		delete(t.last, screen)
	}
	delete(t.rounds, mark)
}

// Come follows the browser to the entry of a mark, and tells what it is; of a round the
// screen too.
func (t *Trail) Come(mark string) (Came, string) {
	r, round := t.rounds[mark]
	switch {
	case mark == t.at:
		return CameHere, ""
	case t.In() && mark == t.under:
		t.Leave()
		return CameOut, ""
	case round && t.last[r.screen] == mark:
		t.at, t.under = mark, r.under
		return CameToRound, r.screen
	}
	t.at, t.under = mark, ""
	return CameElsewhere, ""
}
