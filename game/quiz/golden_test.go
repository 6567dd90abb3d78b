package quiz

import (
	"bytes"
	"fmt"
	"testing"

	"groundbeat/game/riff"
)

// A seed is a promise: the same seed gives the same question for ever. The
// golden changes when a rhythm's strokes, family or tempi do, or the bounds of a
// round's tempo, and else never.
func TestGolden(t *testing.T) {
	var b bytes.Buffer
	for _, ask := range []Ask{Stroke, HowMany, Same, Which} {
		for _, from := range []string{Five, All} {
			for i := range uint64(8) {
				seed := i * i * i * 1_234_567_891
				level := riff.Level(i % 2)
				q := next(t, ask, from, 2+int(i%3), 0, level, seed)
				fmt.Fprintf(&b, "%s %s %s %d: %s", ask, from, level, seed, q.Rhythm.Skeleton)
				if q.Other != nil {
					fmt.Fprintf(&b, " %s", q.Other.Skeleton)
				}
				fmt.Fprintf(&b, " at %d, %s of", q.BPM, q.Right)
				for _, c := range q.Choices {
					fmt.Fprintf(&b, " %s", c.ID)
					if c.Rhythm != nil {
						fmt.Fprintf(&b, "/%d", c.BPM)
					}
				}
				fmt.Fprintln(&b)
			}
		}
	}
	golden(t, "questions.txt", b.String())
}
