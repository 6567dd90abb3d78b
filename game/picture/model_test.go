package picture

import (
	"fmt"
	"math"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
)

// drawn is a picture of something.
func drawn(d interface{ Draw(*Picture) }) *Picture {
	p := &Picture{}
	d.Draw(p)
	return p
}

// requireSound: every shape of a picture is of a kind and an ink that there are, all its
// numbers are numbers, what must be there is, and nothing lies over the picture's edge.
func requireSound(t *testing.T, p *Picture, of string) {
	t.Helper()
	require.False(t, math.IsNaN(p.Height) || math.IsInf(p.Height, 0), of)
	require.Positive(t, p.Height, of)
	for i := range p.Shapes {
		if wrong := unsound(&p.Shapes[i], p.Height); wrong != "" {
			t.Fatalf("%s, shape %d, %s: %+v", of, i, wrong, p.Shapes[i])
		}
	}
}

// unsound says what is wrong with a shape of a picture so high; "" if nothing is.
func unsound(s *Shape, height float64) string {
	for _, v := range []float64{s.X, s.Y, s.X2, s.Y2, s.R, s.Tip, s.From, s.To, s.Width, s.Size, float64(s.Opacity)} {
		if math.IsNaN(v) || math.IsInf(v, 0) {
			return "a number is none"
		}
	}
	part, round := s.Kind == KindArc || s.Kind == KindWedge, s.Kind == KindDot || s.Kind == KindRing || s.Kind == KindHand
	stroked := s.Kind == KindArc || s.Kind == KindLine || s.Kind == KindRing
	x0, y0, x1, y1 := extent(s)
	switch {
	case s.Kind >= kinds || s.Ink >= inks:
		return "there is no such kind or ink"
	case s.Opacity < 0 || s.Opacity > 1:
		return "opacity"
	case part && (s.From >= s.To || s.To >= s.From+1):
		return "no part of a circle"
	case (part || round) && s.R <= 0, stroked && s.Width <= 0, s.Kind == KindText && s.Size <= 0:
		return "nothing is to be seen of it"
	case x0 < -1e-9 || y0 < -1e-9 || x1 > 1+1e-9 || y1 > height+1e-9:
		return "it lies over the edge"
	}
	return ""
}

// inked are the shapes of a picture that have an ink and are of a kind.
func inked(p *Picture, ink Ink, kind Kind) (all []Shape) {
	for _, s := range p.Shapes {
		if s.Ink == ink && s.Kind == kind {
			all = append(all, s)
		}
	}
	return all
}

// written are the texts of a picture, in order.
func written(p *Picture) (all []string) {
	for _, s := range p.Shapes {
		if s.Kind == KindText {
			all = append(all, s.Text)
		}
	}
	return all
}

// riffBy is what a lead drum plays in a cycle of a rhythm, at a level by chance.
func riffBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) RiffCycle {
	t.Helper()
	part, err := riff.Play(c, riff.Level(1+chance.IntN(int(riff.Solo))), 8, chance.Uint64N(1000)+1)
	require.NoError(t, err)
	return RiffOf(part, c.Steps(), chance.IntN(8))
}

// reviewBy is how the taps of a round of a rhythm lay, by chance.
func reviewBy(c *rhythm.Cycle, chance *rand.Rand) *Review {
	cycles := 1 + chance.IntN(16)
	r := &Review{Steps: cycles * c.Steps(), On: 25 * ms, StepTime: time.Duration(60+chance.IntN(400)) * ms}
	for step := range r.Steps {
		switch {
		case !c.Skeleton[step%c.Steps()].Low():
		case chance.IntN(4) == 0:
			r.LeftOut = append(r.LeftOut, step)
		default:
			r.Landed = append(r.Landed, Landed{step, time.Duration(chance.NormFloat64() * 60 * float64(ms))})
		}
	}
	for range chance.IntN(4) {
		r.Added = append(r.Added, chance.Float64()*float64(r.Steps))
	}
	slices.Sort(r.Added)
	return r
}

// headBy is a head of a rhythm, all that may be one way or another by chance.
func headBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) *Head {
	yes := func() bool { return chance.IntN(2) == 1 }
	h := &Head{Base: c.Skeleton, Counts: CountsOf(c.Base()), Groups: c.Grouping, Hidden: yes(), Turning: yes(),
		Turn: 20 * (chance.Float64() - 0.3), Calm: yes(), Beads: chance.IntN(33), Glow: float64(chance.IntN(3)) / 2}
	h.Gone = chance.IntN(h.Beads + 1)
	if yes() {
		h.Riff = riffBy(t, c, chance)
	}
	if yes() {
		h.Centre = "5"
	}
	for range chance.IntN(5) {
		h.Taps = append(h.Taps, Tap{Turn: 3 * chance.Float64(), Age: chance.IntN(6)})
	}
	if yes() {
		h.Review = reviewBy(c, chance)
	}
	return h
}

// Every head of every rhythm is sound.
func TestEveryHeadIsSound(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 11))
	for _, c := range everyRhythm(t) {
		for i := range 25 {
			h := headBy(t, c, chance)
			p := drawn(h)
			require.Equal(t, 1.0, p.Height)
			requireSound(t, p, fmt.Sprint(c.ID, " ", i))
		}
	}
}

// Every line of every rhythm is sound: of any width, wrapped or not, with what the lead
// drum plays or how the taps lay.
func TestEveryLineIsSound(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 12))
	for _, c := range everyRhythm(t) {
		for i := range 25 {
			requireSound(t, drawn(lineBy(t, c, chance)), fmt.Sprint(c.ID, " ", i))
		}
	}
}

// lineBy is a line of a rhythm as a screen makes one, by chance.
func lineBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) *Line {
	wide := []float64{0, 288, 358, 576, 900}[chance.IntN(5)]
	switch chance.IntN(4) {
	case 0:
		l := (&listened{Rhythm: c, Level: levelRiffing, Riff: riffBy(t, c, chance), Board: wide}).Line(words(t))
		return &l
	case 1:
		l := LineOf(c, c.Base(), c.Filled, wide)
		return &l
	case 2:
		l := LineOf(c, c.Base(), nil, wide)
		l.Review, l.Legend = reviewBy(c, chance), legend
		if wide > 0 {
			l.Columns = ColumnsOf(c.Grouping, c.Steps(), c.StepsPerBeat(), wide, true)
		}
		return &l
	}
	l := LineOf(c, c.Base(), nil, wide)
	l.Hidden, l.Live, l.Step, l.Calm = chance.IntN(2) == 1, true, chance.IntN(c.Steps()), chance.IntN(2) == 1
	l.Circled = []int{chance.IntN(c.Steps())}
	return &l
}

// wallBy is a wall of a rhythm, by chance: bare, beside another form of it, or with what
// the lead drum plays.
func wallBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) *Wall {
	most := []int{8, 16}[chance.IntN(2)]
	rows := (c.Steps() + most - 1) / most
	l := &Wall{Counts: CountsOf(c.Base()), Groups: c.Grouping, Columns: (c.Steps() + rows - 1) / rows,
		Rows: []WallRow{{Base: c.Skeleton, Circled: []int{chance.IntN(c.Steps())}}}, Live: chance.IntN(2) == 1, Step: chance.IntN(c.Steps()),
		Calm: chance.IntN(2) == 1}
	switch chance.IntN(3) {
	case 0:
		l.Rows[0].Name, l.Rows[0].Heard = "First", true
		l.Rows = append(l.Rows, WallRow{Name: "Then", Base: c.Skeleton})
		l.Moved = [2]int{chance.IntN(c.Steps()), chance.IntN(c.Steps())}
	case 1:
		l.Rows[0].Name = "bass"
		l.Rows = append(l.Rows, WallRow{Name: "lead", Lead: riffBy(t, c, chance).Strokes})
	}
	return l
}

// Every wall of every rhythm is sound.
func TestEveryWallIsSound(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 13))
	for _, c := range everyRhythm(t) {
		for i := range 25 {
			requireSound(t, drawn(wallBy(t, c, chance)), fmt.Sprint(c.ID, " ", i))
		}
	}
}

// What is drawn twice is the same picture, and a picture that is drawn again keeps nothing
// of what it was.
func TestDrawingIsTheSameEachTime(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 14))
	for _, c := range everyRhythm(t) {
		for _, d := range []interface{ Draw(*Picture) }{headBy(t, c, chance), lineBy(t, c, chance), wallBy(t, c, chance)} {
			p := drawn(d)
			first := slices.Clone(p.Shapes)
			p.Reset()
			require.Empty(t, p.Shapes)
			require.Empty(t, p.Twin)
			d.Draw(p)
			require.Equal(t, first, p.Shapes, c.ID)
		}
	}
}
