package rhythm

// A Difference is one place where two rhythms do not sound alike.
type Difference struct {
	Count string // as said in a sentence: "the & of 2"
	A, B  Stroke // what each plays there, perhaps nothing: Rest
}

// Differ returns where the skeletons of two rhythms differ as they sound at the
// same number of beats a minute, in the order of time; none if they sound alike.
//
// They are laid side by side on a [CommonPulse] and counted straight through
// it: maqsum against malfuf 1 to 4, baladi against masmudi kabir 1 to 8. Where
// neither cycle goes into the other, as 9/8 and 4/4, the list is right but long;
// say the metres instead.
func Differ(a, b *Cycle) []Difference { return a.Base().Differ(b.Base()) }

// Differ is [Differ] of two forms, such as the filled forms of two rhythms.
func (f Form) Differ(other Form) []Difference {
	p, q := CommonPulse(f, other)
	var all []Difference
	for step, s := range p.Pattern {
		if s != q.Pattern[step] {
			all = append(all, Difference{p.Spoken(step), s, q.Pattern[step]})
		}
	}
	return all
}
