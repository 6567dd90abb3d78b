package riff

import (
	"math/bits"
	"math/rand/v2"
)

// A stream is what chance is drawn for: each use has draws of its own, so that
// one more draw here moves nothing there.
type stream uint64

const (
	forUsual  stream = iota + 1 // how busy a riff is if nobody asks
	forPlan                     // the order of the bars in a phrase
	forTheme                    // what a theme is made of
	forLead                     // the short fill of a theme
	forBar                      // what one bar has of its own
	forTarget                   // which riff hides enough
)

// chance draws whole numbers. They come from PCG-DXSM (M. O'Neill, "PCG: a family
// of simple fast space-efficient statistically good algorithms for random number
// generation", 2014, as math/rand/v2 has it), begun from a seed and from what is
// drawn; two draws are thrown away, after which neighbours have nothing in common.
type chance struct{ source *rand.PCG }

// draw begins a stream's n-th run of draws at a level.
func draw(seed uint64, level Level, of stream, n int) chance {
	const golden = 0x9e3779b97f4a7c15 // 2⁶⁴ / golden ratio, odd: spreads small numbers
	c := chance{rand.NewPCG(seed, (uint64(n)<<16|uint64(of)<<8|uint64(level))*golden)}
	c.source.Uint64()
	c.source.Uint64()
	return c
}

// below draws a number from 0 to n−1. That some are likelier than others by n/2⁶⁴
// is nothing that can be heard; that it needs exactly one draw keeps seeds alike.
func (c chance) below(n int) int {
	high, _ := bits.Mul64(c.source.Uint64(), uint64(n))
	return int(high)
}

// percent draws whether something happens that does so p times in a hundred.
func (c chance) percent(p int) bool { return c.below(100) < p }

// one draws one of some.
func one[T any](c chance, of []T) T { return of[c.below(len(of))] }
