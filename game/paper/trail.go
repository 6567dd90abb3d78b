package paper

// trail is the browser's history. It outlasts the page.
type trail struct {
	entries []entry
	at      int
	going   bool     // on the way back, which takes until the next frame
	after   []func() // what is to be done then
}

type entry struct{ query, mark string }

func newTrail(query string) trail { return trail{entries: []entry{{query: query}}} }

func (t *trail) here() *entry { return &t.entries[t.at] }

// link writes an entry: a new one, or in place. On the way back it waits, or is written
// on arrival.
func (t *trail) link(query, mark string, visit bool) {
	switch {
	case t.going && (visit || len(t.after) > 0):
		t.after = append(t.after, func() { t.write(query, mark, visit) })
	case !t.going:
		t.write(query, mark, visit)
	}
}

func (t *trail) write(query, mark string, visit bool) {
	if query == "" {
		query = t.here().query
	}
	if visit {
		t.entries = append(t.entries[:t.at+1], entry{})
		t.at++
	}
	*t.here() = entry{query, mark}
}

// back begins to go back from the entry of a mark, if that is where the browser is.
func (t *trail) back(mark string) {
	if t.here().mark == mark && !t.going {
		t.going = true
	}
}

// arrive ends the way back; it reports whether the browser has come to an entry of which
// the page is to be told.
func (t *trail) arrive() bool {
	if !t.going {
		return false
	}
	if t.at > 0 {
		t.at--
	}
	return !t.done()
}

// done does what waited for the way back, and reports whether there was anything.
func (t *trail) done() bool {
	after := t.after
	t.going, t.after = false, nil
	for _, do := range after {
		do()
	}
	return len(after) > 0
}

// step goes by some entries, as the browser's buttons do, and reports whether it could.
func (t *trail) step(by int) bool {
	if t.at+by < 0 || t.at+by >= len(t.entries) {
		return false
	}
	t.at += by
	return true
}
