package history

// Tap is one tap of a round.
type Tap struct {
	At      float64  // ms, the event's own time stamp
	Offset  *float64 // ms, raw: + behind, − ahead; nil where added
	Stroke  *int     // index into Round.Strokes; nil where added
	Frame   float64  // frame of the stream heard, with fraction
	Reading Reading
	By      string // "key", "touch", "mouse" or "pen"

	rest []member
}

// Reading is the clock reading by which a tap's frame was found.
type Reading struct {
	Context     float64 // s
	Performance float64 // ms

	rest []member
}

func (t *Tap) fields() []field {
	return []field{
		numeric("at", &t.At, 3, 0, maxMS),
		numeric("offset", &t.Offset, 3, -maxMS, maxMS),
		numeric("stroke", &t.Stroke, 0, 0, maxCount),
		numeric("frame", &t.Frame, 3, -maxFrame, maxFrame),
		plain("reading", &t.Reading),
		plain("by", &t.By),
	}
}

func (r *Reading) fields() []field {
	return []field{
		numeric("context", &r.Context, 9, 0, maxSeconds),
		numeric("performance", &r.Performance, 3, 0, maxMS),
	}
}

func (t *Tap) others() *[]member     { return &t.rest }
func (r *Reading) others() *[]member { return &r.rest }
