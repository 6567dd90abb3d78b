package clock

import "sort"

// instant is what a track knows of an asked time.
type instant struct {
	point point
	heard float64 // context time in ms
	slope float64
}

// at returns what was heard at a performance time. With ErrInterrupted the
// instant still holds the last reading before the interruption.
func (t *track) at(at float64, cut int) (instant, error) {
	oldest := max(0, t.n-kept)
	i := oldest + sort.Search(t.n-oldest, func(i int) bool {
		return t.point(oldest+i).performance > at
	}) - 1
	if i < oldest {
		return t.early(at, oldest)
	}
	p := t.point(i)
	switch {
	case at > p.performance && t.ends(i, cut):
		return instant{point: *p}, ErrInterrupted
	case at > p.performance+t.reach(i):
		return instant{point: *p}, ErrStale
	}
	return t.instant(*p, at), nil
}

// early answers for a time before every reading: the very first one is used
// for half a second before itself, if no interruption came before it.
func (t *track) early(at float64, oldest int) (instant, error) {
	if t.n == 0 || oldest > 0 || t.point(0).cut > 0 || at < t.point(0).performance-lead {
		return instant{point: point{cut: -1}}, ErrNoReading
	}
	return t.instant(*t.point(0), at), nil
}

// ends reports whether an interruption follows reading i.
func (t *track) ends(i, cut int) bool {
	if i+1 < t.n {
		return t.point(i+1).cut != t.point(i).cut
	}
	return t.point(i).cut != int32(cut)
}

// reach is how far reading i may be used, in ms.
func (t *track) reach(i int) float64 {
	if i == t.n-1 && t.frozen >= iceCount {
		return reachIce
	}
	return reach
}

// instant computes the context time heard, from the reading p at or before
// the time, or from the line through noisy readings around it.
func (t *track) instant(p point, at float64) instant {
	for k := len(t.lines) - 1; k >= 0; k-- {
		s := t.lines[k]
		if s.cut != p.cut || p.performance < s.from || p.performance >= s.to {
			continue
		}
		if k == len(t.lines)-1 && t.scatter.noisy {
			s.line = t.fit.line()
		}
		return instant{point: p, heard: at + s.line.at(at), slope: s.slope}
	}
	heard := p.offset + at + float64(p.slope)*(at-p.performance)
	if at >= p.performance {
		heard = max(heard, p.floor)
	}
	return instant{point: p, heard: heard, slope: float64(p.slope)}
}
