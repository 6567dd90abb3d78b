package audio

import "time"

// A SampleRate is a number of frames per second; a frame is one sample of
// every channel. It converts between the two units of the stream's own time
// line, both counted from its first frame.
type SampleRate int

// Rate is the sample rate that everything is made at.
const Rate SampleRate = 48000

// Frame returns the frame nearest to the time d from the first frame. Half
// frames round away from zero. Times before the first frame are negative.
// It panics if r is not positive.
func (r SampleRate) Frame(d time.Duration) int64 {
	return scale(int64(d), int64(r), int64(time.Second))
}

// Duration returns the time of a frame from the first frame, rounded to the
// nearest nanosecond, so that r.Frame(r.Duration(f)) == f for any rate up to
// 500 MHz. It panics if r is not positive.
func (r SampleRate) Duration(frame int64) time.Duration {
	return time.Duration(scale(frame, int64(time.Second), int64(r)))
}

// scale returns n·mul/div, rounded to nearest, halves away from zero. The
// whole part is taken out first, so that n·mul need not fit an int64.
func scale(n, mul, div int64) int64 {
	if mul <= 0 || div <= 0 {
		panic("audio: a sample rate must be positive")
	}
	whole, rest := n/div, n%div
	half := div / 2
	if n < 0 {
		half = -half
	}
	return whole*mul + (rest*mul+half)/div
}
