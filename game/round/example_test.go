package round_test

import (
	"fmt"
	"strings"
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/round"
)

// One round from Begin to its result: an eight of maqsum at 120, in which the
// player comes in late, leaves out the dum on 5 and taps once where none is.
func Example() {
	maqsum, err := rhythm.Parse("maqsum.txt", strings.NewReader(
		"name: maqsum\nmetre: 4/4\nskeleton: DT-TD-T-\ntempo: 90 105 130 quarter\nmemory: all of it\n"))
	if err != nil {
		fmt.Println(err)
		return
	}
	r, err := round.New(round.Setting{Kind: round.Dums, Rhythm: maqsum, BPM: 120, Eights: 1, Seed: 7})
	if err != nil {
		fmt.Println(err)
		return
	}

	// The hits go to the stream; the round's first frame will be frame 4800.
	hits := r.Hits(audio.Rate, 4800)
	fmt.Println(len(hits), "hits, the first a", hits[0].Voice, "in frame", hits[0].Frame)

	// Then it is told what is heard, and when taps fall, on one time line.
	const setup = 0 // nothing is known of the player
	r.Begin()
	taps := []time.Duration{2030, 3010, 4500, 5010} // ms
	var said []string
	for heard := time.Duration(0); r.Phase() != round.Review; heard += 500 * time.Millisecond {
		for len(taps) > 0 && taps[0]*time.Millisecond <= heard {
			r.Tap(round.Tap{At: taps[0] * time.Millisecond}, setup)
			taps = taps[1:]
		}
		r.Hear(heard, setup)
		said = append(said, strings.TrimSpace(r.Phase().String()+" "+r.Count()))
	}
	fmt.Println(strings.Join(said[:6], ", "))
	fmt.Println(strings.Join(said[6:], ", "))

	result := r.Result()
	for _, p := range result.Pairs {
		fmt.Println("dum on", maqsum.CountInEight(r.Steps()[p.Stroke]), "tapped", p.Offset, "behind")
	}
	for _, i := range result.Out {
		fmt.Println("dum on", maqsum.CountInEight(r.Steps()[i]), "left out")
	}
	fmt.Printf("%d added, score %.2f\n", len(result.Added), result.Accuracy)
	// Output:
	// 24 hits, the first a lead tek in frame 4800
	// count-in 5, count-in 6, count-in 7, count-in 8, playing 1, playing 2
	// playing 3, playing 4, playing 5, playing 6, playing 7, playing 8, playing, review
	// dum on 1 tapped 30ms behind
	// dum on 3 tapped 10ms behind
	// dum on 7 tapped 10ms behind
	// dum on 5 left out
	// 1 added, score 0.67
}
