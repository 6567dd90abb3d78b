package rhythm

// eight is the length of a dancer's phrase, in counts.
const eight = 8

// CountInEight returns what is said on a step in dancers' eights: as
// [Form.Count], but numbers run from 1 to 8 through the cycles. Step 0 is the
// first of the first cycle; in 4/4 the second cycle counts 5 & 6 & 7 & 8 &.
// The four beats before step 0 count 5, 6, 7, 8. An odd metre has no eights:
// there it equals [Form.Count].
func (c *Cycle) CountInEight(step int) string {
	return c.Base().CountInEight(step)
}

// Spoken returns the count of a step inside a cycle as it is said in a
// sentence: "3", "the & of 2", "the e of 1".
func (c *Cycle) Spoken(step int) string {
	return c.Base().Spoken(step)
}

// CyclesIn returns how many cycles fill a number of eights, an eight being 8
// counts: one eight is 2 cycles of 4/4, 4 of 2/4, 1 of 8/4. Where they do not
// come out even, as in odd metres, it returns the fewest whole cycles that last
// at least as many counts: one eight is 1 cycle of 9/8, 2 of 7/8. It returns 0
// for 0 eights or less. Up to 10⁸ eights do not overflow an int of 32 bits.
func (c *Cycle) CyclesIn(eights int) int {
	if eights <= 0 {
		return 0
	}
	return (eights*eight + c.Beats() - 1) / c.Beats()
}
