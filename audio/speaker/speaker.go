//go:build js

// Package speaker plays an endless stream through the engine's audio, and is
// the only place that knows that audio.
//
// It starts one player at volume 1 and never asks it where it is: its position
// runs ahead of what is heard and goes on with no sound at all. What is heard
// when is found out by package clock.
package speaker

import (
	"io"
	"time"

	"github.com/hajimehoshi/ebiten/v2/audio"
)

// Buffer is how much of the stream the player reads ahead of the page. Below
// the driver's block of 2,048 frames the web driver breaks.
const Buffer = 100 * time.Millisecond

// Speaker is the one player. It must be kept for as long as it should sound.
type Speaker struct {
	player *audio.Player
}

// Start plays src: float32 little endian samples, two channels interleaved, at
// rate frames per second. It may be called once in a program, and only where
// the browser has an AudioContext: without one the engine ends the program.
func Start(src io.Reader, rate int) (*Speaker, error) {
	p, err := audio.NewContext(rate).NewPlayerF32(src)
	if err != nil {
		return nil, err
	}
	p.SetBufferSize(Buffer)
	p.Play()
	return &Speaker{player: p}, nil
}
