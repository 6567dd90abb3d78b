package riff_test

import (
	"testing"

	"groundbeat/game/riff"
)

// BenchmarkPlay plays 16 cycles of every supplied rhythm at every level; a run is
// one rhythm and level.
func BenchmarkPlay(b *testing.B) {
	for _, c := range supplied(b) {
		for level := range levels {
			b.Run(c.ID+"/"+level.String(), func(b *testing.B) {
				b.ReportAllocs()
				for i := range b.N {
					if _, err := riff.Play(c, level, 16, uint64(i)); err != nil {
						b.Fatal(err)
					}
				}
			})
		}
	}
}
