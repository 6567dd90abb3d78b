package history

// Stop is the kind of round in which the dums are tapped, and the drummer breaks off now
// and then.
const Stop = "stop"

var stop = Kind{
	ID: Stop, Play: Tapped, Along: true, Guess: anyPlace,
	own: (*Round).stopping, check: checkStop, right: tappedRight,
}

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
		numeric("from", &b.From, 9, 0, maxSeconds),
		numeric("stop", &b.Stop, 0, 0, maxCount),
		numeric("counts", &b.Counts, 0, 1, 64),
		numeric("back", &b.Back, 0, 0, maxCount),
		numeric("taps", &b.Taps, 0, 0, maxCount),
	}
}

func (b *Break) others() *[]member { return &b.rest }

// stopping are the fields of a round with stops: those of all tap rounds, and two more.
func (r *Round) stopping() (what, figures []field) {
	what, figures = r.tapped()
	return append(what, plain("breaks", eachOf(&r.Breaks)), plain("aside", eachOf(&r.Aside))), figures
}

// checkStop checks, besides what all tap rounds have, the breaks and the taps that were
// set aside.
func checkStop(r *Round) error {
	if err := checkTapped(r); err != nil {
		return err
	}
	if err := checkBreaks(r); err != nil {
		return err
	}
	return checkAside(r)
}

// checkBreaks checks what the breaks have to do with the strokes.
func checkBreaks(r *Round) error {
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
	return nil
}

// checkAside checks the taps that were set aside with one another.
func checkAside(r *Round) error {
	aside := Round{Taps: r.Aside}
	for i, t := range r.Aside {
		if t.Stroke != nil {
			return wrong(index("aside", i)+".stroke", "%d, but it was set aside", *t.Stroke)
		}
	}
	_, err := checkTaps(&aside)
	return within("taps", "aside", err)
}
