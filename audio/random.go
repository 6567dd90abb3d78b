package audio

// A random is a stream of numbers that depends on its seed alone: SplitMix64
// (Steele, Lea & Flood, "Fast Splittable Pseudorandom Number Generators",
// OOPSLA 2014). A seed is a promise: it gives the same stroke for ever.
type random uint64

func (r *random) next() uint64 {
	*r += 0x9e3779b97f4a7c15
	z := uint64(*r)
	z = (z ^ z>>30) * 0xbf58476d1ce4e5b9
	z = (z ^ z>>27) * 0x94d049bb133111eb
	return z ^ z>>31
}

// signed returns an even choice from −1 up to 1.
func (r *random) signed() float64 {
	return float64(int64(r.next())) * (1.0 / (1 << 63))
}

// about returns 1, give or take at most part.
func (r *random) about(part float64) float64 {
	return 1 + part*r.signed()
}

// short returns 1, or somewhat less, down to 1 less part: most often little
// less. Its standard deviation is 0.3 of part.
func (r *random) short(part float64) float64 {
	u := r.signed()
	return 1 - part*float64(u*u)
}
