package scoring_test

import (
	"fmt"
	"time"

	"groundbeat/scoring"
)

func ExampleMatch() {
	strokes := []time.Duration{1000 * time.Millisecond, 1500 * time.Millisecond}
	taps := []time.Duration{980 * time.Millisecond, 1012 * time.Millisecond}
	m := scoring.Match(strokes, taps, 50*time.Millisecond)
	for _, p := range m.Pairs {
		fmt.Printf("stroke %d: tap %d, %v\n", p.Stroke, p.Tap, p.Offset)
	}
	fmt.Println("left out:", m.Out, "added:", m.Added)
	// Output:
	// stroke 0: tap 1, 12ms
	// left out: [1] added: [0]
}

func ExampleScore() {
	strokes := []time.Duration{1 * time.Second, 2 * time.Second, 3 * time.Second}
	// The player's set-up is 180 ms behind, and so is every tap.
	taps := []time.Duration{1190 * time.Millisecond, 2180 * time.Millisecond, 3200 * time.Millisecond}
	r := scoring.Score(strokes, taps, 180*time.Millisecond, 50*time.Millisecond)
	fmt.Println("raw:", r.Pairs[0].Offset, r.Pairs[1].Offset, r.Pairs[2].Offset)
	fmt.Printf("accuracy %.3f, bias %+.1f ms, spread %.1f ms\n", r.Accuracy, r.Timing.Bias.Value, r.Timing.Spread.Value)
	// Output:
	// raw: 190ms 180ms 200ms
	// accuracy 0.951, bias +10.0 ms, spread 10.0 ms
}
