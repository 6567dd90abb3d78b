package roundview

import (
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"time"
)

// sayUnmeasured says of a lean that all taps have in common, on an output that no set-up
// is kept for, what it probably is: how late the sound is heard there, or, ahead, what
// nearly everybody does. It blames nobody. The lean lies from low to high, of one sign,
// + behind; both are the same where one number says it.
//
// Output delays: wired some 10 to 30 ms, wireless 140 to 300 ms (reports, see
// [scoring.MeasureSetUp]). Taps that lead what they go along with by some tens of ms: B. H.
// Repp, Sensorimotor synchronization: a review of the tapping literature, Psychonomic
// Bulletin & Review 12, 969–992, 2005 (the figures from memory).
func SayUnmeasured(w say.Words, low, high time.Duration) string {
	if low > 0 {
		return w.Say("lean-unmeasured-behind", "far", sayFar(w, low, high))
	}
	return w.Say("lean-unmeasured-ahead", "far", sayFar(w, high, low))
}

// sayFar says how far something lies, by the sizes of its least and its most.
func sayFar(w say.Words, least, most time.Duration) string {
	if a, b := about(least), about(most); a != b {
		return w.Say("far-between", "low", a, "high", b)
	}
	return w.Say("far-about", "ms", about(least))
}

// toSetUp is the way to Set-up, beside what says that a delay should be measured.
func ToSetUp(w say.Words) view.Item {
	return view.Item{ID: "to-set-up", Role: view.RoleButton, Name: w.Say("lean-measure"), Action: view.ActGo, Value: view.ScreenSetUp}
}

// sayLean says to which side taps lean and how far, or that it cannot be told.
func SayLean(w say.Words, bias scoring.Estimate) string {
	if bias.Excludes(0) {
		return say.Offset(w, say.Millis(bias.Value))
	}
	return w.Say("lean-none")
}
