package history_test

import (
	"fmt"
	"strings"
	"time"

	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

func ExampleNew() {
	strokes := []time.Duration{2500 * time.Millisecond, 3750 * time.Millisecond}
	taps := []time.Duration{2512250 * time.Microsecond}
	result := scoring.Score(strokes, taps, 8*time.Millisecond, 50*time.Millisecond)
	round, err := history.New(history.Round{
		Kind: history.Dums, Rhythm: "maqsum", BPM: 96, Riff: "bare", Eights: 4, Seed: 7,
		Strokes: []float64{2.5, 3.75},
		Taps: []history.Tap{{
			At: 5123.4, Frame: 120588, By: "key",
			Reading: history.Reading{Context: 3.2, Performance: 5100},
		}},
		ID: "b2f1", When: "2026-01-31T18:30:00+02:00", Output: "studio",
		Epoch: 1, Rate: 48000, Window: 50,
	}, result)
	if err != nil {
		fmt.Println(err)
		return
	}
	line, err := history.Format(round)
	fmt.Println(string(line), err)
	// Output:
	// {"v":1,"kind":"dums","rhythm":"maqsum","bpm":96,"riff":"bare","eights":4,"seed":7,"strokes":[2.5,3.75],"taps":[{"at":5123.4,"offset":12.25,"stroke":0,"frame":120588,"reading":{"context":3.2,"performance":5100},"by":"key"}],"setup":8,"score":0.662914,"id":"b2f1","when":"2026-01-31T18:30:00+02:00","output":"studio","epoch":1,"rate":48000,"coarse":false,"window":50,"bias":null,"spread":null,"median":null,"drift":null,"matched":1,"out":1,"added":0} <nil>
}

func ExampleNewAnswered() {
	took := 5321.5
	round, err := history.NewAnswered(history.Round{
		Kind: history.Which, Rhythm: "maqsum", BPM: 96, Riff: "filled", Eights: 2, Seed: 7,
		Choices: []string{"baladi", "maqsum", "saidi"}, Answer: "baladi", Right: false,
		Took: &took, Heard: 2.128,
		ID: "b2f2", When: "2026-01-31T18:32:00+02:00", Output: "studio", Epoch: 1, Rate: 48000,
	})
	if err != nil {
		fmt.Println(err)
		return
	}
	line, err := history.Format(round)
	fmt.Println(string(line), err)
	// Output:
	// {"v":1,"kind":"which","rhythm":"maqsum","bpm":96,"riff":"filled","eights":2,"seed":7,"choices":["baladi","maqsum","saidi"],"answer":"baladi","right":false,"took":5321.5,"heard":2.128,"id":"b2f2","when":"2026-01-31T18:32:00+02:00","output":"studio","epoch":1,"rate":48000,"coarse":false} <nil>
}

func ExampleLines() {
	text := `{"v":1,"kind":"dums","bpm":96}` + "\n" + `{"v":2,"kind":"dums"}` + "\n"
	for round, err := range history.Lines("rounds.jsonl", strings.NewReader(text)) {
		fmt.Printf("%q %v\n", round.Rhythm, err)
	}
	// Output:
	// "" rounds.jsonl:1:1: rhythm: missing
	// "" rounds.jsonl:2: version 2, this program knows up to 1
}
