package clock

import "math"

// Reading is one reading of the audio device's output time stamp: the frame
// at Context is at the device's output at Performance.
type Reading struct {
	// Context is the audio context's time in seconds, greater than 0.
	Context float64
	// Performance is the same instant on the clock of the taps, in
	// milliseconds, greater than 0.
	Performance float64
	// Running is false while the context is suspended, interrupted or closed.
	Running bool
}

// offset is context time less performance time, in ms. For 10⁵ s and 10⁸ ms
// float64 still resolves 2×10⁻⁸ ms.
func (r Reading) offset() float64 { return r.Context*1000 - r.Performance }

// Reason says what became of a reading.
type Reason uint8

const (
	// Accepted readings are used.
	Accepted Reason = iota
	// NotRunning: read while the context was suspended or interrupted.
	NotRunning
	// Unset: one of the two times is zero or negative, as before the first
	// block is heard.
	Unset
	// Invalid: not a number, infinite, or beyond 10⁷ s; also a latency that
	// is none. A caller with no reading at all may pass NaN.
	Invalid
	// Repeated: the same pair as the last accepted reading.
	Repeated
	// Frozen: the context time stands while the performance time goes on.
	Frozen
	// Backwards: one of the two times is before that of the last accepted
	// reading.
	Backwards
	// Wild: the two times moved apart by more than a second at once.
	Wild
	// Summed: the performance time of a stamp is now plus the context time.
	Summed
	// Far: the performance time of a stamp is far from now.
	Far
	// Ahead: what is heard is ahead of what is rendered.
	Ahead
	// Shifted: the latency was taken off both times of a stamp, and it is not
	// known yet that it always is; or it always is, and not of this one.
	Shifted
	// Doubtful: the stamp is good by itself, and most of those before are not.
	Doubtful

	reasons = iota
)

var reasonNames = [reasons]string{
	"accepted", "not running", "unset", "invalid", "repeated", "frozen", "backwards", "wild",
	"summed", "far", "ahead", "shifted", "doubtful",
}

// String returns the reason in lower-case words.
func (r Reason) String() string {
	if int(r) >= len(reasonNames) {
		return "unknown"
	}
	return reasonNames[r]
}

// maxSeconds bounds both times of a reading (115 days), so that no later
// arithmetic can overflow.
const maxSeconds = 1e7

// check judges a reading by itself, without those before it.
func (r Reading) check() Reason {
	switch {
	case !r.Running:
		return NotRunning
	case !(math.Abs(r.Context) <= maxSeconds && math.Abs(r.Performance) <= maxSeconds*1000):
		return Invalid
	case r.Context <= 0 || r.Performance <= 0:
		return Unset
	}
	return Accepted
}
