package audio_test

import (
	"bytes"
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

// A bar of maqsum for listening: two seconds of both drums, mixed at the
// centre, measured and written as a file.
func ExampleWriteWAV() {
	var hits []audio.Hit
	for step, stroke := range "DT-TD-T-" {
		frame := int64(step) * 12000
		switch stroke {
		case 'D':
			hits = append(hits, audio.Hit{Frame: frame, Voice: audio.BassDum, Strength: 1},
				audio.Hit{Frame: frame, Voice: audio.LeadDum, Strength: 1})
		case 'T':
			hits = append(hits, audio.Hit{Frame: frame, Voice: audio.LeadTek, Strength: 0.8})
		}
	}
	frames, err := audio.Render(audio.Rate, 2*int64(audio.Rate), hits...)
	if err != nil {
		fmt.Println(err)
	}
	audio.Full().Apply(frames)

	meter := audio.NewMeter(audio.Rate)
	meter.Add(frames)
	fmt.Printf("%.0f LUFS, %.0f dBTP\n", meter.Loudness(), meter.Peak())

	var file bytes.Buffer
	err = audio.WriteWAV(&file, audio.Rate, frames, 1)
	fmt.Println(file.Len(), err)
	// Output:
	// -26 LUFS, -4 dBTP
	// 384044 <nil>
}

// Half a second of roll into a slap.
func ExampleRoll() {
	roll := audio.Roll{Length: 24000, From: 0.4, To: 0.9, Seed: 7}
	hits := roll.Hits(audio.Rate)
	hits = append(hits, audio.Hit{Frame: 24000, Voice: audio.LeadSak, Strength: 1})
	for _, h := range hits[:3] {
		fmt.Printf("%d %v %.2f\n", h.Frame, h.Voice, h.Strength)
	}
	fmt.Println(len(hits), audio.NewStream(audio.Rate).Schedule(hits...))
	// Output:
	// 0 lead roll tek 0.40
	// 3005 lead roll ka 0.46
	// 5875 lead roll tek 0.52
	// 9 <nil>
}

func ExampleMix() {
	frames := []float32{0.5, 0.25} // lead, bass
	audio.Mix{Lead: 1, Bass: 1, Stage: audio.Apart, Volume: 0.5}.Apply(frames)
	fmt.Println(frames)
	// Output: [0.25 0.125]
}
