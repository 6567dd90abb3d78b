package history

// Break is where the drummer broke off in a round, and what came of it. The package
// comment gives the meaning of every field, under its name in the text.
type Break struct {
	From   float64 // s in the stream
	Stop   int     // index into Round.Strokes
	Counts int
	Back   int // index into Round.Strokes
	Taps   int

	rest []member
}

func (b *Break) fields() []field {
	return []field{
		{"from", &b.From, 9, 0, maxSeconds},
		{"stop", &b.Stop, 0, 0, maxCount},
		{"counts", &b.Counts, 0, 1, 64},
		{"back", &b.Back, 0, 0, maxCount},
		{"taps", &b.Taps, 0, 0, maxCount},
	}
}

func (b *Break) extras() []field   { return nil }
func (b *Break) others() *[]member { return &b.rest }

// stopping are the fields of a round with stops that other tap rounds do not have.
func (r *Round) stopping() []field {
	return []field{
		{"breaks", &r.Breaks, 0, 0, 0},
		{"aside", &r.Aside, 0, 0, 0},
	}
}

// checkStop checks what the breaks have to do with the strokes, and the taps that
// were set aside with one another.
func checkStop(r *Round) error {
	back, taps := -1, 0
	for i, b := range r.Breaks {
		bad := func(field, format string, a ...any) error {
			return wrong(index("breaks", i)+"."+field, format, a...)
		}
		switch {
		case b.Stop >= len(r.Strokes):
			return bad("stop", "%d of %d strokes (counted from 0)", b.Stop, len(r.Strokes))
		case b.Back != b.Stop+1 || b.Back >= len(r.Strokes):
			return bad("back", "%d is not the stroke after the stop, %d, of %d", b.Back, b.Stop, len(r.Strokes))
		case b.From >= r.Strokes[b.Stop] || back >= 0 && b.From <= r.Strokes[back]:
			return bad("from", "%v is not between the strokes before it and its stop at %v", b.From, r.Strokes[b.Stop])
		}
		back, taps = b.Back, taps+b.Taps
	}
	if taps > r.Added {
		return wrong("breaks", "%d taps in silences, of %d added", taps, r.Added)
	}
	aside := Round{Taps: r.Aside}
	for i, t := range r.Aside {
		if t.Stroke != nil {
			return wrong(index("aside", i)+".stroke", "%d, but it was set aside", *t.Stroke)
		}
	}
	_, err := checkTaps(&aside)
	return within("taps", "aside", err)
}
