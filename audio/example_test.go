package audio_test

import (
	"errors"
	"fmt"
	"time"

	"groundbeat/audio"
)

// One cycle of maqsum, D T - T D - T -, at 96 quarters a minute: the time of
// each stroke is calculated from its step, and rounded once.
func ExampleStream() {
	stream := audio.NewStream(audio.Rate)
	for step, stroke := range "DT-TD-T-" {
		frame := audio.Rate.Frame(time.Duration(step) * time.Minute / 96 / 2)
		hit := audio.Hit{Frame: frame, Strength: 0.9, Seed: uint64(step)}
		switch stroke {
		case 'D':
			hit.Voice = audio.BassDum
		case 'T':
			hit.Voice = audio.BassTek
		default:
			continue
		}
		if err := stream.Schedule(hit); err != nil {
			fmt.Println(err)
		}
		fmt.Println(frame, hit.Voice)
	}
	block := make([]byte, 2048*8) // two float32 a frame
	n, err := stream.Read(block)
	fmt.Println(n, err, stream.Frame())

	// Output:
	// 0 bass dum
	// 15000 bass tek
	// 45000 bass tek
	// 60000 bass dum
	// 90000 bass tek
	// 16384 <nil> 2048
}

func ExampleStream_Schedule() {
	stream := audio.NewStream(audio.Rate)
	stream.Read(make([]byte, 4800*8))
	err := stream.Schedule(audio.Hit{Frame: 4799, Voice: audio.LeadDum, Strength: 1})
	fmt.Println(err)
	fmt.Println(errors.Is(err, audio.ErrPast))
	// Output:
	// audio: hit at frame 4799 (lead dum, strength 1): the frame has been read already
	// true
}

func ExampleSampleRate() {
	fmt.Println(audio.Rate.Frame(312500 * time.Microsecond))
	fmt.Println(audio.Rate.Duration(15000))
	// Output:
	// 15000
	// 312.5ms
}
