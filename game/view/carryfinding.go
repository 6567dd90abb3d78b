package view

import "time"

// leastTempo is from what share of a time on her own tempo is worth a word, beside how
// far off it has brought her: 0.5 %. Own choice.
const leastTempo = 0.005

// Finding says the single most useful thing: that no tap came in the silences, or few;
// else where she was when the drums came back; else that her taps were spread in the
// silences; else what Dums would say; and if there is nothing to say of that either,
// that the dums were kept.
func (c *Carry) Finding(w Words) string {
	tapped, asked := 0, 0
	for _, s := range c.Silences {
		tapped, asked = tapped+s.Tapped, asked+s.Asked
	}
	switch {
	case c.Result.Landed+c.Result.Added == 0:
		return w.Say("find-nothing")
	case tapped == 0:
		return w.Say("carry-nothing")
	case 2*(asked-tapped) >= asked:
		return w.Say("carry-left-out", "out", asked-tapped, "of", asked)
	}
	if text := c.findBack(w); text != "" {
		return text
	}
	if c.Without != nil && *c.Without >= leastSpread {
		return w.Say("carry-spread", "ms", about(*c.Without))
	}
	if rest := Finding(*c.Result, w); rest != steady(*c.Result, w) {
		return rest
	}
	return w.Say("carry-kept")
}

// findBack says where she was when the drums came back: on the whole, with her tempo
// where that explains it, or at the farthest; nothing where that is near enough.
func (c *Carry) findBack(w Words) string {
	var back []Landing
	var sum, low, high time.Duration
	slower := 0.0
	for _, s := range c.Silences {
		back = append(back, s.Back)
		sum, low, high = sum+s.Back.Offset, min(low, s.Back.Offset), max(high, s.Back.Offset)
		if s.Slower != nil {
			slower += *s.Slower / float64(len(c.Silences))
		}
	}
	out, farthest := landed(back)
	if out == len(back) {
		return w.Say("carry-back-out")
	}
	mean := sum / time.Duration(len(back)-out)
	switch {
	case mean >= leastLanding && slower >= leastTempo:
		return w.Say("carry-behind-slower", "ms", about(mean), "percent", sayPercent(slower))
	case -mean >= leastLanding && -slower >= leastTempo:
		return w.Say("carry-ahead-faster", "ms", about(mean), "percent", sayPercent(slower))
	case magnitude(mean) >= leastLanding:
		return either(mean, w.Say("carry-behind", "ms", about(mean)), w.Say("carry-ahead", "ms", about(mean)))
	case magnitude(farthest) < leastLanding:
		return ""
	case low < 0 && high > 0:
		return w.Say("carry-both", "ahead", about(low), "behind", about(high))
	}
	return either(farthest, w.Say("carry-once-behind", "ms", about(farthest)), w.Say("carry-once-ahead", "ms", about(farthest)))
}
