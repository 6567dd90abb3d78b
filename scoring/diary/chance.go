package diary

import (
	"math"
	"time"

	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// byChance reports whether a change was heard by a press that may as well have come by
// chance. A record without its presses, or without their frames, is believed.
func byChance(r history.Round) bool {
	last := len(r.Taps) - 1
	if r.Kind != history.Change || last < 0 || r.Taps[last].Offset == nil || len(r.Strokes) == 0 || r.Rate < 1 {
		return false
	}
	presses := make([]time.Duration, len(r.Taps))
	for i, t := range r.Taps {
		presses[i] = milliseconds(1000*(t.Frame/float64(r.Rate)-r.Strokes[0]) - r.Setup)
	}
	presses[last] = max(0, milliseconds(*r.Taps[last].Offset-r.Setup))
	return !scoring.Noticed(presses)
}

func milliseconds(ms float64) time.Duration {
	return time.Duration(math.Round(ms * float64(time.Millisecond)))
}
