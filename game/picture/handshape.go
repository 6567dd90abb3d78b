package picture

import "math"

// Hand adds a hand seen from above, as its owner sees it: the tip of its middle
// finger at (x, y), its fingers pointing to a turn, length from there to the wrist.
// Count is 1 for a right hand, −1 for a left one. With a width above 0 its outline
// is drawn, open at the wrist; else it is filled.
func (p *Picture) Hand(ink Ink, x, y, length, turn float64, left bool, width float64) *Shape {
	side := 1
	if left {
		side = -1
	}
	return p.add(Shape{Kind: KindHand, Ink: ink, X: x, Y: y, R: length, From: turn, Count: side, Width: width})
}

// handOutline is a right hand at rest, fingers up, from the inner side of the wrist
// round the thumb and the fingers to the outer side: x to the right and y down from
// the tip of the middle finger, in parts of the length. Drawn by eye.
var handOutline = [...][2]float64{
	{-0.111, 1.000}, {-0.123, 0.930}, {-0.188, 0.830}, {-0.293, 0.681}, {-0.373, 0.547}, {-0.382, 0.512}, {-0.363, 0.482},
	{-0.328, 0.473}, {-0.297, 0.492}, {-0.196, 0.611}, {-0.179, 0.660}, {-0.184, 0.309}, {-0.194, 0.133}, {-0.184, 0.102},
	{-0.155, 0.087}, {-0.123, 0.097}, {-0.108, 0.127}, {-0.090, 0.302}, {-0.066, 0.462}, {-0.055, 0.243}, {-0.045, 0.043},
	{-0.032, 0.011}, {0.000, 0.000}, {0.031, 0.013}, {0.043, 0.045}, {0.042, 0.246}, {0.041, 0.462}, {0.075, 0.284},
	{0.103, 0.104}, {0.119, 0.076}, {0.150, 0.068}, {0.179, 0.084}, {0.186, 0.116}, {0.167, 0.296}, {0.142, 0.500},
	{0.198, 0.395}, {0.245, 0.264}, {0.262, 0.242}, {0.290, 0.241}, {0.311, 0.258}, {0.313, 0.286}, {0.275, 0.420},
	{0.239, 0.620}, {0.222, 0.740}, {0.182, 0.880}, {0.152, 1.000},
}

// HandCurves is how many curves make an outline, one after the other.
const HandCurves = len(handOutline) - 1

// HandCurve returns one of the outline's curves: its start, the two points that
// draw it, and its end, as Bézier's cubic curves have them. They pass through the
// outline's points (E. Catmull and R. Rom, "A class of local interpolating splines",
// 1974).
func (s *Shape) HandCurve(i int) [4][2]float64 {
	a, b := s.handPoint(max(0, i-1)), s.handPoint(i)
	c, d := s.handPoint(i+1), s.handPoint(min(HandCurves, i+2))
	var curve [4][2]float64
	for k := range 2 {
		curve[0][k], curve[3][k] = b[k], c[k]
		curve[1][k] = b[k] + (c[k]-a[k])/6
		curve[2][k] = c[k] - (d[k]-b[k])/6
	}
	return curve
}

func (s *Shape) handPoint(i int) [2]float64 {
	at := handOutline[i]
	sin, cos := math.Sincos(2 * math.Pi * s.From)
	x, y := s.R*at[0]*float64(s.Count), s.R*at[1]
	return [2]float64{s.X + x*cos - y*sin, s.Y + x*sin + y*cos}
}
