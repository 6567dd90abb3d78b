package picture

import (
	"math"
	"time"
)

// breath is how long the rim takes to become bright and dim again while something sounds:
// slower than any count, and the same whatever sounds. Own choice.
const breath = 4 * time.Second

// glowSteps is in how many steps the rim becomes bright: so fine that none is seen, and no
// finer, so that not every frame is another.
const glowSteps = 40

// GlowAt is how much the rim shines so long after something began to sound, 0 to 1: it
// rises and falls as calmly as a breath, and never goes out. still is for a person who
// asks for less motion: then it shines evenly.
func GlowAt(since time.Duration, still bool) float64 {
	if still {
		return 0.8
	}
	at := 0.65 - 0.35*math.Cos(2*math.Pi*float64(since)/float64(breath))
	return math.Round(at*glowSteps) / glowSteps
}

// shine draws light round the skin, as far as it glows.
func (h *Head) shine(p *Picture) {
	if h.Glow <= 0 {
		return
	}
	for i := range 12 {
		width := 0.008 + 0.006*float64(i)
		p.Ring(InkRim, Middle, Middle, skinEdge-width/2, width).Fade(0.055 * h.Glow)
	}
	p.Ring(InkSweep, Middle, Middle, skinEdge-0.005, 0.005).Fade(0.8 * h.Glow)
}
