package diary_test

import (
	"fmt"

	"groundbeat/game/diary"
	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

func Example() {
	var day diary.Day
	for i := range 20 {
		said := "maqsum"
		if i%5 == 4 {
			said = "baladi"
		}
		took := 900.
		round, err := history.NewAnswered(history.Round{
			Kind: history.Which, Rhythm: "maqsum", BPM: 96, Riff: "filled", Eights: 2, Seed: 7,
			Choices: []string{"baladi", "maqsum"}, Answer: said, Right: said == "maqsum", Took: &took, Heard: 1,
			ID: fmt.Sprint(i), When: "2026-01-31T18:30:00+02:00", Output: "studio", Epoch: 1, Rate: 48000,
		})
		if err != nil {
			fmt.Println(err)
			return
		}
		day.Add(round)
	}
	kept, err := diary.ParseDay(day.Format())
	if err != nil {
		fmt.Println(err)
		return
	}
	book := diary.New(func(string) *rhythm.Cycle { return nil })
	book.Put(kept)
	for _, output := range book.Outputs() {
		f := book.Figures(output)
		share := f.Accuracy[0].All.Share
		fmt.Printf("%s: %d rounds, %.2f right (%.2f to %.2f)\n", output, f.Rounds, share.Value, share.Low, share.High)
		worst := f.Mixed.Worst[0]
		fmt.Printf("%s taken for %s: %.2f\n", worst.Played, worst.Said, worst.Share.Value)
	}
	// Output:
	// studio: 20 rounds, 0.80 right (0.58 to 0.92)
	// maqsum taken for baladi: 0.20
}
