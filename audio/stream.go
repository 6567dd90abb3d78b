package audio

import (
	"encoding/binary"
	"fmt"
	"io"
	"math"
	"sync"
)

const (
	channels  = 2
	frameSize = channels * 4 // bytes: a little-endian float32 for each channel

	// floor is the least that each channel gives, −144 dBFS.
	floor float32 = 1.0 / (1 << 24)
)

// A Stream is the endless sound of both drums: frames of two little-endian
// float32 values between −1 and 1, left the lead drum, right the bass drum.
//
// No value is ever exactly zero. Each channel carries a floor of ±2⁻²⁴,
// positive on even frames and negative on odd ones, added to the sound; where
// the sum is exactly zero, the floor stands alone. It cannot be heard (it is
// a tone at half the sample rate, 144 dB below full scale). Drivers fill in
// exact zeros for what they did not get in time, so whoever counts the frames
// that are not zero knows which frame of the stream each frame of the device
// was.
//
// One goroutine may read while another schedules; a call waits for the other
// side's call to end, at most one read.
type Stream struct {
	mu    sync.Mutex
	frame int64
	queue queue
	lead  *drum
	bass  *drum

	leadRoom, bassRoom *room
}

var _ io.Reader = (*Stream)(nil)

// NewStream returns a stream at frame 0 with nothing to play. It panics if
// the rate is not between 8000 and 192000 frames per second.
func NewStream(rate SampleRate) *Stream {
	if rate < 8000 || rate > 192000 {
		panic(fmt.Sprintf("audio: sample rate %d is not between 8000 and 192000", rate))
	}
	return &Stream{
		lead: newDrum(&darbuka, rate), leadRoom: newRoom(&byLead, rate),
		bass: newDrum(&dohola, rate), bassRoom: newRoom(&byBass, rate),
	}
}

// Frame returns the next frame to be read, counted from 0.
func (s *Stream) Frame() int64 {
	s.mu.Lock()
	defer s.mu.Unlock()
	return s.frame
}

// Schedule adds hits, in any order. Each must lie at or after Frame; hits of
// one frame all sound. If any hit cannot be played, none is added and the
// error is a [*HitError] for the first of them.
func (s *Stream) Schedule(hits ...Hit) error {
	s.mu.Lock()
	defer s.mu.Unlock()
	for _, h := range hits {
		if err := h.check(s.frame); err != nil {
			return err
		}
	}
	s.queue.add(hits)
	return nil
}

// Drop forgets the hits at or after a frame. What has begun rings on.
func (s *Stream) Drop(from int64) {
	s.mu.Lock()
	defer s.mu.Unlock()
	s.queue.drop(from)
}

// Read renders as many whole frames as fit p, without allocating, and
// returns their size in bytes: less than len(p) if that is no multiple of 8.
// The stream has no end. If p is too short for one frame nothing is rendered
// and the error is [io.ErrShortBuffer]; an empty p gives no error.
func (s *Stream) Read(p []byte) (int, error) {
	n := len(p) / frameSize
	if n == 0 && len(p) > 0 {
		return 0, io.ErrShortBuffer
	}
	s.mu.Lock()
	defer s.mu.Unlock()
	for rest := p[:n*frameSize]; len(rest) > 0; {
		k := s.span(len(rest) / frameSize)
		s.render(rest[:k*frameSize])
		rest = rest[k*frameSize:]
	}
	return n * frameSize, nil
}

// span does what is due at the next frame, control steps and hits, and
// returns how many frames, at most n, can be rendered until something is due
// again. Control steps lie on the grid of blocks and hits on their own
// frames, so that nothing depends on n.
func (s *Stream) span(n int) int {
	if s.frame%block == 0 {
		s.lead.control(s.frame)
		s.bass.control(s.frame)
		s.leadRoom.control()
		s.bassRoom.control()
	}
	for s.queue.next() <= s.frame {
		h := s.queue.take()
		s.drum(h.Voice).strike(h, s.frame)
	}
	due := min(s.frame-s.frame%block+block, s.queue.next())
	return int(min(int64(n), due-s.frame))
}

func (s *Stream) drum(v Voice) *drum {
	if v.lead() {
		return s.lead
	}
	return s.bass
}

// render renders frames up to the end of their block.
func (s *Stream) render(p []byte) {
	var l, r [block]float64
	n := len(p) / frameSize
	s.leadRoom.answer(l[:n], s.lead.render(l[:n]))
	s.bassRoom.answer(r[:n], s.bass.render(r[:n]))
	low := floor
	if s.frame%2 != 0 {
		low = -low
	}
	for i := range n {
		left, right := lift(l[i&(block-1)], low), lift(r[i&(block-1)], low)
		binary.LittleEndian.PutUint64(p[i*frameSize:], uint64(right)<<32|uint64(left))
		low = -low
	}
	s.frame += int64(n)
}

// lift returns the bits of a sample raised by the floor, never zero.
func lift(v float64, low float32) uint32 {
	y := float32(v) + low
	if y == 0 {
		y = low
	}
	return math.Float32bits(y)
}
