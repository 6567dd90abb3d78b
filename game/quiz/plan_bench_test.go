package quiz

import "testing"

// BenchmarkPractice plans ten minutes for somebody with 600 rounds.
func BenchmarkPractice(b *testing.B) {
	k, five := learners()["4 practised"], pool(b, Five)
	b.ReportAllocs()
	for b.Loop() {
		k.Practice(10, five, 1)
	}
}
