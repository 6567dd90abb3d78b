package history

import "slices"

// tapped are the fields of tap rounds: what was tapped, and the figures that
// stand at the end.
func (r *Round) tapped() (what, figures []field) {
	what = []field{
		numeric("strokes", eachOf(&r.Strokes), 9, 0, maxSeconds),
		plain("taps", eachOf(&r.Taps)),
		numeric("setup", &r.Setup, 3, -5000, 5000),
		numeric("score", &r.Score, 6, 0, 1),
	}
	figures = []field{
		numeric("window", &r.Window, 3, 0, 1000),
		numeric("bias", &r.Bias, 3, -maxMS, maxMS),
		numeric("spread", &r.Spread, 3, 0, maxMS),
		numeric("median", &r.Median, 3, -maxMS, maxMS),
		numeric("drift", &r.Drift, 3, -maxMS, maxMS),
		numeric("matched", &r.Matched, 0, 0, maxCount),
		numeric("out", &r.Out, 0, 0, maxCount),
		numeric("added", &r.Added, 0, 0, maxCount),
	}
	return what, figures
}

// closely are those of all tap rounds that older lines have not.
func (r *Round) closely() []field { return extra(numeric("close", &r.Close, 3, 0, 1000)) }

// tappedRight is whether a tap round came out right: at least three of four strokes were
// tapped within its window, and the taps that belong to none are at most a quarter as
// many as the strokes.
//
// The bounds are chosen, without a source. Three of four lets one slip pass in two bars
// of a rhythm with two dums, and is missed where one of the dums of a rhythm with three
// (baladi, sa'idi) is never heard, or is heard in the wrong place. The other bound keeps
// who taps every beat from being right: in maqsum that is as many taps again as there
// are dums. What is still right by chance is counted as such, see [Kind].
func tappedRight(r *Round) bool {
	dums := r.Matched + r.Out
	return dums > 0 && 4*r.Matched >= 3*dums && 4*r.Added <= dums
}

// checkTapped checks what the strokes and the taps have to do with each other.
func checkTapped(r *Round) error {
	for i := 1; i < len(r.Strokes); i++ {
		if r.Strokes[i] <= r.Strokes[i-1] {
			return wrong(index("strokes", i), "strokes do not ascend: %v after %v", r.Strokes[i], r.Strokes[i-1])
		}
	}
	matched, err := checkTaps(r)
	if err != nil {
		return err
	}
	return checkCounts(r, matched)
}

// checkTaps checks what taps have to do with each other and with the strokes,
// and counts those that belong to a stroke.
func checkTaps(r *Round) (matched int, err error) {
	next := 0 // the first stroke that may still have a tap
	for i, t := range r.Taps {
		bad := func(field, format string, a ...any) (int, error) {
			return 0, wrong(index("taps", i)+"."+field, format, a...)
		}
		switch {
		case !slices.Contains([]string{"key", "touch", "mouse", "pen", "click"}, t.By):
			return bad("by", "%q is not key, touch, mouse, pen or click", t.By)
		case i > 0 && t.Frame < r.Taps[i-1].Frame:
			return bad("frame", "taps do not ascend: %v after %v", t.Frame, r.Taps[i-1].Frame)
		case (t.Offset == nil) != (t.Stroke == nil):
			return bad("offset", "offset and stroke are not null together")
		case t.Stroke == nil:
			continue
		case *t.Stroke >= len(r.Strokes):
			return bad("stroke", "%d of %d strokes (counted from 0)", *t.Stroke, len(r.Strokes))
		case *t.Stroke < next:
			return bad("stroke", "%d again, or after a later one", *t.Stroke)
		}
		next = *t.Stroke + 1
		matched++
	}
	return matched, nil
}

func checkCounts(r *Round, matched int) error {
	for _, c := range []struct {
		field     string
		got, want int
	}{
		{"matched", r.Matched, matched},
		{"out", r.Out, len(r.Strokes) - matched},
		{"added", r.Added, len(r.Taps) - matched},
	} {
		if c.got != c.want {
			return wrong(c.field, "%d, but the taps make it %d", c.got, c.want)
		}
	}
	for _, f := range []struct {
		field string
		value *float64
	}{{"bias", r.Bias}, {"spread", r.Spread}, {"median", r.Median}, {"drift", r.Drift}} {
		if f.value != nil && matched < 2 {
			return wrong(f.field, "%v of %d taps", *f.value, matched)
		}
	}
	return nil
}
