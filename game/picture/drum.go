package picture

// The drum's measures, in parts of the picture's width.
const (
	skinEdge    = 0.370  // where the skin bends over
	rimRadius   = 0.3905 // middle of the inlaid wood round it
	rimWidth    = 0.034
	inlaid      = 55                 // triangles in the rim: no multiple of the counts of any rhythm, so that none is taken for one
	groupRadius = rimRadius + 0.0300 // the arc that ties the counts of a group together
	beadEvery   = 0.034
	beadsARow   = 8
)

// drum draws the drum seen from above: the skin, lighter where the hand wears
// it, and round it the rim, of dark wood with an inlay of mother-of-pearl between
// two lines of brass, as darbukas are made.
func Drum(p *Picture) {
	p.Ring(InkWood, Middle, Middle, rimRadius, rimWidth)
	p.Teeth(InkInlay, Middle, Middle, rimRadius-0.0105, rimRadius+0.0100, inlaid)
	p.Ring(InkRim, Middle, Middle, rimRadius+0.0165, 0.0055)
	p.Ring(InkRim, Middle, Middle, rimRadius-0.0185, 0.0075)
	for _, half := range [...]float64{0.11, 0.08, 0.05} { // light from the upper left
		p.Arc(InkShine, Middle, Middle, rimRadius+0.0170, 0.875-half, 0.875+half, 0.003).Fade(0.22)
		p.Arc(InkShine, Middle, Middle, rimRadius-0.0180, 0.875-half, 0.875+half, 0.003).Fade(0.16)
	}
	p.Dot(InkSkin, Middle, Middle, skinEdge)
	for i := range 8 {
		p.Dot(InkGrain, Middle, Middle, 0.32-0.034*float64(i)).Fade(0.035)
	}
	for i := range 2 {
		width := 0.014 / float64(i+1)
		p.Ring(InkGround, Middle, Middle, skinEdge-width/2, width).Fade(0.16)
	}
}

func (h *Head) DrawCounts(p *Picture) {
	for i, c := range h.Counts {
		turn := float64(i) / float64(len(h.Counts))
		if !IsBeat(c) {
			h.DrawSpoke(p, InkDim, turn, rimRadius+0.0265, rimRadius+0.0285, 0.0045)
			continue
		}
		h.DrawSpoke(p, InkBone, turn, rimRadius+0.0255, rimRadius+0.0315, 0.006)
		x, y := Around(Middle, Middle, countRadius, turn)
		p.Text(InkBone, x, y, CountSize, c).Strong()
	}
	h.groups(p)
}

// groups ties the counts of each group of an odd metre together, from its first beat to
// its last, outside the rim.
func (h *Head) groups(p *Picture) {
	beats := 0
	for _, g := range h.Groups {
		beats += g
	}
	from := 0
	for _, g := range h.Groups {
		first, last := float64(from)/float64(beats), float64(from+g-1)/float64(beats)
		p.Arc(InkBone, Middle, Middle, groupRadius, first-0.006, last+0.006, 0.0045)
		from += g
	}
}

func (h *Head) DrawSpoke(p *Picture, ink Ink, turn, from, to, width float64) *Shape {
	x, y := Around(Middle, Middle, from, turn)
	x2, y2 := Around(Middle, Middle, to, turn)
	return p.Line(ink, x, y, x2, y2, width)
}

// beads draws one bead for each eight of a round, rows of eight in the middle of
// the skin, filled when it is over.
func (h *Head) beads(p *Picture) {
	rows := (h.Beads + beadsARow - 1) / beadsARow
	for i := range h.Beads {
		row, column := i/beadsARow, i%beadsARow
		inRow := min(beadsARow, h.Beads-row*beadsARow)
		x := Middle + (float64(column)-float64(inRow-1)/2)*beadEvery
		y := Middle + (float64(row)-float64(rows-1)/2)*beadEvery
		if i < h.Gone {
			p.Dot(InkBass, x, y, 0.0095)
		} else {
			p.Ring(InkDim, x, y, 0.0075, 0.003)
		}
	}
}

// drag draws the light that the pearl drags over inlay and skin.
func drag(p *Picture, turn float64) {
	for i := range 8 {
		p.Wedge(InkBrass, Middle, Middle, skinEdge, turn-0.010*float64(i+1), turn).Fade(0.022)
	}
	for i := range 5 {
		p.Arc(InkBrass, Middle, Middle, rimRadius, turn-0.012*float64(i+1), turn, 0.024).Fade(0.16)
	}
}

// sweep draws the pearl that runs round the rim with the sound, with the light that it
// drags; where it stands from stroke to stroke it drags none.
func (h *Head) sweep(p *Picture) {
	if !h.Turning {
		return
	}
	at := h.Stands()
	if !h.Calm {
		drag(p, at)
	}
	h.DrawSpoke(p, InkSweep, at, 0.215, skinEdge-0.006, 0.0045).Fade(0.9)
	x, y := Around(Middle, Middle, rimRadius, at)
	p.Dot(InkGround, x, y, 0.0195)
	p.Dot(InkSweep, x, y, 0.0155)
}
