package paper

import (
	"fmt"
	"math/rand/v2"
	"time"
)

// A Wall tells a test's own time and chance.
type Wall struct {
	Start time.Time // wall time when the test began
	Fixed uint64    // the seed each time; 0: another one

	passed float64 // ms since then
	origin float64 // what had passed when the page was loaded
	seeds  *rand.Rand
	ids    int
}

// evening is when tests begin unless they say otherwise.
var evening = time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC)

func newWall(seed uint64) *Wall {
	return &Wall{Start: evening, passed: 1000, seeds: rand.New(rand.NewPCG(seed, 0))}
}

// Now is performance time in ms, which begins anew with each page.
func (w *Wall) Now() float64 { return w.passed - w.origin }

// Date is wall time.
func (w *Wall) Date() time.Time {
	return w.Start.Add(time.Duration(w.passed * float64(time.Millisecond)))
}

// Seed is another random seed each time, below 10⁶ as the page's are.
func (w *Wall) Seed() uint64 {
	if w.Fixed != 0 {
		return w.Fixed
	}
	return 1 + w.seeds.Uint64N(999_999)
}

// Reseed lets chance begin anew from a seed.
func (w *Wall) Reseed(seed uint64) { w.seeds, w.Fixed = rand.New(rand.NewPCG(seed, 0)), 0 }

// ID is another one each time.
func (w *Wall) ID() string {
	w.ids++
	return fmt.Sprintf("%024x", w.ids)
}

// Pass lets some ms pass in which there is no frame.
func (w *Wall) Pass(ms float64) { w.passed += ms }

// Set lets it be a wall time now.
func (w *Wall) Set(now time.Time) { w.Start = w.Start.Add(now.Sub(w.Date())) }

// Sleep lets days pass between two pages, in which nothing happens.
func (w *Wall) Sleep(d time.Duration) { w.Start = w.Start.Add(d) }
