//go:build js

package main

import (
	"syscall/js"

	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/audio/speaker"
	"groundbeat/wasm/dom"
)

// bridgedSound is the stream, played through the page's bridge and timed by
// the clock.
type bridgedSound struct {
	*audio.Stream
	bridge  js.Value
	clock   *clock.Clock
	speaker *speaker.Speaker
}

// newSound starts the stream. It must not be called without an AudioContext.
func newSound(bridge js.Value) (*bridgedSound, error) {
	stream := audio.NewStream(audio.Rate)
	s, err := speaker.Start(stream, int(audio.Rate))
	if err != nil {
		return nil, err
	}
	return &bridgedSound{Stream: stream, bridge: bridge, clock: clock.New(int(audio.Rate)), speaker: s}, nil
}

func (s *bridgedSound) Play(base int64)            { s.bridge.Call("play", float64(base)) }
func (s *bridgedSound) Stop()                      { s.bridge.Call("stop") }
func (s *bridgedSound) Next() int64                { return s.Frame() }
func (s *bridgedSound) Balance(lead, bass float64) { s.bridge.Call("balance", lead, bass) }
func (s *bridgedSound) Stage(stage audio.Stage)    { s.bridge.Call("stand", stage.String()) }
func (s *bridgedSound) Volume(v float64)           { s.bridge.Call("volume", v) }
func (s *bridgedSound) Audible() bool              { return true }

func (s *bridgedSound) Heard(at float64) (clock.Position, error) { return s.clock.Heard(at) }

func (s *bridgedSound) Whole(epoch int, from, to int64) bool { return s.clock.Whole(epoch, from, to) }

// hear feeds the clock with a letter about the sound.
func (s *bridgedSound) hear(l dom.Letter) {
	switch int(l[0]) {
	case dom.ReadingLetter:
		s.clock.Stamp(clock.Stamp{
			Reading: clock.Reading{Context: l[1], Performance: l[2], Running: l[3] != 0},
			Current: l[4], Now: l[5], Output: l[6], Base: l[7],
		})
	case dom.PlacementLetter:
		s.clock.Place(clock.Placement{Epoch: int(l[1]), Context: int64(l[2]), Stream: int64(l[3]), Frames: int64(l[4])})
	case dom.StateLetter:
		if l[1] == 0 {
			s.clock.Read(clock.Reading{Running: false})
		}
	}
}

// noSound stands in where the browser has no sound: rounds go on in pictures,
// and what would be heard follows the page's own clock.
type noSound struct {
	now   func() float64
	start float64
	epoch int
}

func (s *noSound) Play(base int64) {
	s.epoch++
	s.start = s.now() - float64(base)/float64(audio.Rate)*1000 // base is due now
}

func (s *noSound) Balance(float64, float64) {}
func (s *noSound) Stage(audio.Stage)        {}
func (s *noSound) Volume(float64)           {}
func (s *noSound) Stop()                    {}

// Next is the frame that is due now, as if it were rendered just in time.
func (s *noSound) Next() int64 { return int64((s.now() - s.start) / 1000 * float64(audio.Rate)) }

func (s *noSound) Schedule(...audio.Hit) error { return nil }
func (s *noSound) Drop(int64)                  {}
func (s *noSound) Audible() bool               { return false }

func (s *noSound) Heard(at float64) (clock.Position, error) {
	return clock.Position{
		Epoch:  s.epoch,
		Frame:  (at - s.start) / 1000 * float64(audio.Rate),
		Rate:   float64(audio.Rate),
		At:     at,
		Coarse: true,
	}, nil
}

func (s *noSound) Whole(int, int64, int64) bool { return true }
