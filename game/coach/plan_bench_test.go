package coach

import (
	"groundbeat/game/quiz"
	"testing"
)

// BenchmarkPractice plans ten minutes for somebody with 600 rounds: the first time, and
// once it is known what riffs of the rhythms are like.
func BenchmarkPractice(b *testing.B) {
	k, five := learners()["4 practised"], pool(b, quiz.Five)
	for name, riffs := range map[string]*Riffs{"first": nil, "again": new(Riffs)} {
		b.Run(name, func(b *testing.B) {
			k.Riffs = riffs
			b.ReportAllocs()
			for b.Loop() {
				k.Practice(10, five, 1)
			}
		})
	}
}
