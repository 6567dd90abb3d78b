package clock_test

import (
	"fmt"

	"groundbeat/audio/clock"
)

func ExampleClock_Heard() {
	c := clock.New(48000)
	// The stream's first second was scheduled half a second into the context.
	c.Place(clock.Placement{Epoch: 1, Context: 24000, Stream: 0, Frames: 48000})

	c.Read(clock.Reading{Running: true}) // zeros: nothing is heard yet
	c.Read(clock.Reading{Context: 0.750, Performance: 3210.4, Running: true})

	p, err := c.Heard(3220.4) // a tap 10 ms after the reading
	fmt.Printf("epoch %d, frame %.1f at %.0f frames a second, %v\n", p.Epoch, p.Frame, p.Rate, err)
	_, err = c.Heard(4210.4)
	fmt.Println(err)
	// Output:
	// epoch 1, frame 12480.0 at 48000 frames a second, <nil>
	// clock: no block was scheduled at that time
}

func ExampleClock_Whole() {
	c := clock.New(48000)
	c.Place(clock.Placement{Epoch: 1, Context: 0, Stream: 0, Frames: 2048})
	c.Place(clock.Placement{Epoch: 1, Context: 2048, Stream: 2048, Frames: 2048})
	c.Place(clock.Placement{Epoch: 1, Context: 8192, Stream: 4096, Frames: 2048}) // late
	fmt.Println(c.Whole(1, 0, 4096), c.Whole(1, 0, 6144))
	// Output: true false
}
