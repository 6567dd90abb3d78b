package screenproof

import (
	"bytes"
	"encoding/xml"
	"errors"
	"io"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
)

// RequireXML reports a text that is not well-formed.
func RequireXML(t *testing.T, text []byte) {
	d := xml.NewDecoder(bytes.NewReader(text))
	for {
		_, err := d.Token()
		if errors.Is(err, io.EOF) {
			return
		}
		require.NoError(t, err)
	}
}

// RequireInside reports what reaches over a picture's edge, where it would be cut off.
func RequireInside(t *testing.T, p *picture.Picture) {
	t.Helper()
	for i := range p.Shapes {
		x0, y0, x1, y1 := extent(&p.Shapes[i])
		require.True(t, x0 >= -1e-9 && y0 >= -1e-9 && x1 <= 1+1e-9 && y1 <= p.Height+1e-9, "%+v", p.Shapes[i])
	}
}

// extent returns the box of a shape; a text's width is taken as 0.62 em a letter, a
// little more than a sans serif's mean.
func extent(s *picture.Shape) (x0, y0, x1, y1 float64) {
	switch s.Kind {
	case picture.KindLine:
		h := s.Width / 2
		return min(s.X, s.X2) - h, min(s.Y, s.Y2) - h, max(s.X, s.X2) + h, max(s.Y, s.Y2) + h
	case picture.KindText:
		wide := 0.62 * s.Size * float64(len([]rune(s.Text)))
		left := s.X - wide*[...]float64{0.5, 0, 1}[s.Anchor]
		return left, s.Y - picture.Baseline*s.Size, left + wide, s.Y + picture.Baseline*s.Size
	case picture.KindHand:
		x0, y0, x1, y1 = s.X, s.Y, s.X, s.Y
		for i := range picture.HandCurves {
			c := s.HandCurve(i)
			for _, p := range [...][2]float64{c[0], c[3]} {
				x0, y0, x1, y1 = min(x0, p[0]), min(y0, p[1]), max(x1, p[0]), max(y1, p[1])
			}
		}
		return x0, y0, x1, y1
	}
	r := s.R + s.Width/2
	return s.X - r, s.Y - r, s.X + r, s.Y + r
}
