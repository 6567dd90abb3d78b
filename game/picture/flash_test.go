package picture

import (
	"math"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// WCAG 2.2, success criterion 2.3.1 and "general flash and red flash thresholds":
// a flash is a pair of opposing changes of relative luminance by 0.1 or more, the
// darker below 0.8. More than three of them in a second must not cover more than a
// quarter of 341 by 256 CSS pixels, at 1024 by 768.
const (
	flashChange = 0.1
	flashMost   = 3
	fieldWidth  = 341 // pixels
	fieldHeight = 256
	flashArea   = fieldWidth * fieldHeight / 4.0 // square pixels
	headHeight  = 700.0                          // pixels: the head on that screen; while a round is played it is 658 high
	perSecond   = 30                             // frames looked at
)

// fastest is the fastest tempo that a link can ask for.
const fastest = 220

// At the fastest tempo there is, nothing in the drumhead flashes, neither count-in
// nor sweep nor strokes, whether the sweep runs or stands from stroke to stroke. The drummer's hands, where they are asked for, move over it
// and change less of it than the limit.
func TestNothingFlashes(t *testing.T) {
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	palettes := []Palette{Dark(), Light()}
	ids := all.IDs()
	if testing.Short() {
		palettes, ids = palettes[:1], []string{"malfuf", "karsilama"} // the shortest, and one in nine
	}
	hands, which := 0.0, ""
	for _, id := range ids {
		c, _ := all.Get(id)
		p, err := round.NewPassage(fastest, riff.Filled, 7, true, round.Section{Rhythm: c, Cycles: c.CyclesIn(2)})
		require.NoError(t, err)
		for i := range palettes {
			for _, calm := range []bool{false, true} {
				require.Zero(t, flashing(&palettes[i], headFrames(p, false, calm)), id)
				if area := flashing(&palettes[i], headFrames(p, true, calm)); area > hands {
					hands, which = area, id
				}
			}
		}
	}
	t.Logf("the hands change at most %.0f square pixels more than %d times in a second (%s); the limit is %.0f", hands, flashMost, which, flashArea)
	require.LessOrEqual(t, hands, flashArea)
}

// headFrames draws three seconds of a passage, from the count-in on.
func headFrames(p *round.Passage, hands, calm bool) func(frame int, into *Picture) bool {
	c, strikes := p.Rhythm(0), p.Strikes()
	h := Head{Base: c.Skeleton, Riff: RiffOf(p.Played(0), c.Steps(), 0), Counts: CountsOf(c.Base()), ShowHands: hands, Calm: calm, Beads: 4}
	return func(frame int, into *Picture) bool {
		at := time.Duration(frame) * time.Second / perSecond
		h.Centre, h.Turning = p.CountAt(at), at >= p.Start()
		if h.Turning {
			h.Centre, h.Turn = "", p.TurnAt(at)
		}
		if h.Hands = HandsAt(strikes, at); calm {
			h.Hands = HandsStanding(strikes, at)
		}
		h.Draw(into)
		return at < 3*time.Second
	}
}

// The measure itself: a skin that lights up with every stroke is seen to flash,
// one that does so three times a second is not, and neither is a small spot.
func TestFlashIsSeen(t *testing.T) {
	lit := func(times, size float64) float64 {
		palette := Dark()
		return flashing(&palette, func(frame int, into *Picture) bool {
			Drum(into)
			if math.Mod(float64(frame)/perSecond*times, 1) < 0.5 {
				into.Dot(InkBone, Middle, Middle, size)
			}
			return frame < 2*perSecond
		})
	}
	require.InEpsilon(t, fieldWidth*fieldHeight, lit(7.3, skinEdge), 0.1, "all of a field")
	require.Greater(t, lit(4.5, 0.15), flashArea)
	require.InEpsilon(t, math.Pi*0.1*0.1*headHeight*headHeight, lit(4.5, 0.1), 0.02)
	require.Zero(t, lit(3, skinEdge))
	require.Less(t, lit(7.3, dumSize), flashArea)
}

// flashing returns how much of a square picture flashes too often in one and the
// same second within a field of 10 degrees, in square pixels. frames draws one
// frame after the other and says whether there are more.
func flashing(palette *Palette, frames func(frame int, into *Picture) bool) float64 {
	var cells [flashCells * flashCells]flicker
	var often [flashCells * flashCells]bool
	g := newGround(palette)
	var p Picture
	most := 0
	for frame, more := 0, true; more; frame++ {
		p.Reset()
		more = frames(frame, &p)
		g.draw(p.Shapes)
		n := 0
		for i := range cells {
			if often[i] = cells[i].see(g.luminance(i), frame); often[i] {
				n++
			}
		}
		if n > most {
			most = max(most, inField(&often))
		}
	}
	const cell = headHeight / flashCells
	return float64(most) * cell * cell
}

// inField is the greatest number of marked cells within a field.
func inField(marked *[flashCells * flashCells]bool) int {
	var before [flashCells + 1][flashCells + 1]int // marked above and to the left
	for y := range flashCells {
		for x := range flashCells {
			n := before[y][x+1] + before[y+1][x] - before[y][x]
			if marked[y*flashCells+x] {
				n++
			}
			before[y+1][x+1] = n
		}
	}
	const wide, high = fieldWidth*flashCells/int(headHeight) + 1, fieldHeight*flashCells/int(headHeight) + 1
	most := 0
	for y := range flashCells + 1 - high {
		for x := range flashCells + 1 - wide {
			most = max(most, before[y+high][x+wide]-before[y+high][x]-before[y][x+wide]+before[y][x])
		}
	}
	return most
}

// flicker follows the luminance of one spot.
type flicker struct {
	way       int     // of the last change that counts: 1 up, −1 down, 0 there was none yet
	low, high float64 // since then
	changes   []int   // frames of the changes of the last second
}

// see takes the luminance in a frame and reports whether the spot has flashed too
// often in the second before.
func (f *flicker) see(luminance float64, frame int) bool {
	if frame == 0 {
		f.low, f.high = luminance, luminance
	}
	f.low, f.high = min(f.low, luminance), max(f.high, luminance)
	switch {
	case f.way <= 0 && luminance-f.low >= flashChange && f.low < 0.8:
		f.change(1, luminance, frame)
	case f.way >= 0 && f.high-luminance >= flashChange && luminance < 0.8:
		f.change(-1, luminance, frame)
	}
	for len(f.changes) > 0 && frame-f.changes[0] >= perSecond {
		f.changes = f.changes[1:]
	}
	return len(f.changes) > 2*flashMost
}

func (f *flicker) change(way int, luminance float64, frame int) {
	f.way, f.low, f.high = way, luminance, luminance
	f.changes = append(f.changes, frame)
}
