package diary_test

import (
	"testing"

	"groundbeat/game/diary"
)

// BenchmarkTenThousandRounds: 432 days, of which 371 are practised on, 27 rounds each.
// Figures are those of the output with three quarters of the rounds.
func BenchmarkTenThousandRounds(b *testing.B) {
	made := newLearner(1, supplied(b)).practise(432)
	days := book(b)
	for _, m := range made {
		days.Add(m.Round)
	}
	var texts [][]byte
	size := 0
	for _, date := range days.Dates() {
		texts = append(texts, days.Day(date).Format())
		size += len(texts[len(texts)-1])
	}
	read := func() *diary.Book {
		kept := book(b)
		for _, text := range texts {
			d, err := diary.ParseDay(text)
			if err != nil {
				b.Fatal(err)
			}
			kept.Put(d)
		}
		return kept
	}
	for name, do := range map[string]func(){
		"parse":        func() { read() },
		"figures":      func() { days.Figures("studio") },
		"accuracy":     func() { days.Accuracy("studio") },
		"fingers":      func() { days.Fingers("studio") },
		"mixed":        func() { days.Mixed("studio") },
		"reach":        func() { days.Reach("studio") },
		"met":          func() { days.Met("studio") },
		"all together": func() { read().Figures("studio") },
		"rebuild": func() {
			anew := book(b)
			for _, m := range made {
				anew.Add(m.Round)
			}
		},
	} {
		b.Run(name, func(b *testing.B) {
			b.ReportAllocs()
			for b.Loop() {
				do()
			}
			b.ReportMetric(float64(len(made)), "rounds")
			b.ReportMetric(float64(size)/float64(len(made)), "B/round")
		})
	}
}
