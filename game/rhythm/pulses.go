package rhythm

// Pulses is a rhythm of one voice: for each pulse of a cycle, whether an onset
// falls on it.
type Pulses []bool

// Onsets returns the pulses, from 0, that have an onset, in order.
func (p Pulses) Onsets() []int {
	var onsets []int
	for i, onset := range p {
		if onset {
			onsets = append(onsets, i)
		}
	}
	return onsets
}
