package stat_test

import (
	"fmt"
	"time"

	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

func ExamplePlayed_Bias() {
	var strokes, taps []time.Duration
	for i, off := range []int{12, 3, 25, -4, 18, 9, 30, 14, 7, 21, 2, 16} {
		stroke := time.Duration(i) * 1250 * time.Millisecond
		strokes = append(strokes, stroke)
		taps = append(taps, stroke+time.Duration(off)*time.Millisecond)
	}
	scored := scoring.Score(strokes, taps, 0, 50*time.Millisecond)
	bias := stat.Played{Pairs: scored.Pairs}.Bias()
	fmt.Printf("%+.1f ms (%+.1f to %+.1f), from %d taps\n", bias.Value, bias.Low, bias.High, bias.N)
	if bias.Excludes(0) && bias.Low > 0 {
		fmt.Println("behind, and not by chance")
	}
	// Output:
	// +12.8 ms (+6.4 to +19.1), from 12 taps
	// behind, and not by chance
}

func ExampleShare() {
	for _, right := range [][2]int{{3, 4}, {18, 20}} {
		e := stat.Share(right[0], right[1])
		if !e.Known {
			fmt.Printf("%d more answers are needed\n", e.Missing())
			continue
		}
		fmt.Printf("%.0f %% (%.0f to %.0f %%)\n", 100*e.Value, 100*e.Low, 100*e.High)
	}
	// Output:
	// 8 more answers are needed
	// 90 % (70 to 97 %)
}
