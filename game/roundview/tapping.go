package roundview

import (
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// tapping is how a kind of round whose strokes are tapped is put in words; rhythm is the
// name of what is played, "" where it is not named before the review.
type tapping struct {
	page    func(w say.Words, rhythm string) string            // the page's title
	heading func(w say.Words, rhythm string) string            // what is to be tapped
	how     func(w say.Words, rhythm string, riff bool) string // and how, over a riff or not
	playing func(w say.Words, rhythm string) string            // in short, while it is played
	found   func(w say.Words, f found, values ...any) string   // whatever names the strokes
}

// tappings are those of all kinds of round whose strokes are tapped, by their ids.
var tappings = map[string]tapping{
	history.Dums: dumsTapping, history.Stop: stopTapping, history.Carry: carryTapping,
}

// tappingOf is that of a kind, and of one that is not known that of Dums.
func tappingOf(kind string) tapping {
	if t, ok := tappings[kind]; ok {
		return t
	}
	return dumsTapping
}

// found is what may be said of taps that names the strokes: dums are no teks.
type found uint8

const (
	foundOn         found = iota // on the stroke
	foundNothing                 // no taps came
	foundOut                     // strokes are left out
	foundOutAt                   // those on one count are
	foundAdded                   // taps came where no stroke is
	foundUnmeasured              // likewise, where nobody knows how late the sound is
	foundCountAhead              // one count comes ahead of the others
	foundCountBehind
	foundSteady // most are on
	foundNoLean // so many are on
	foundClose  // how near a tap must lie to be on
	foundArea   // where to tap
	foundOpen   // where none is asked for
)

var dumsTapping = tapping{
	page: func(w say.Words, rhythm string) string {
		if rhythm == "" {
			return w.Say("dums-any-page")
		}
		return w.Say("dums-page", "rhythm", rhythm)
	},
	heading: func(w say.Words, rhythm string) string {
		if rhythm == "" {
			return w.Say("dums-any-heading")
		}
		return w.Say("dums-heading", "rhythm", rhythm)
	},
	how:     dumsHow,
	playing: playingDums,
	found:   foundDums,
}

func dumsHow(w say.Words, rhythm string, riff bool) string {
	switch {
	case rhythm == "" && riff:
		return w.Say("dums-any-how-riff")
	case rhythm == "":
		return w.Say("dums-any-how")
	case riff:
		return w.Say("dums-how-riff")
	}
	return w.Say("dums-how")
}

func playingDums(w say.Words, rhythm string) string {
	if rhythm == "" {
		return w.Say("playing-any")
	}
	return w.Say("playing-dums", "rhythm", rhythm)
}

// foundDums is what may be said of taps on dums.
func foundDums(w say.Words, f found, values ...any) string {
	switch f {
	case foundNothing:
		return w.Say("find-nothing")
	case foundOut:
		return w.Say("find-some-left-out", values...)
	case foundOutAt:
		return w.Say("find-left-out", values...)
	case foundAdded:
		return w.Say("find-added", values...)
	case foundUnmeasured:
		return w.Say("find-added-unmeasured", values...)
	case foundCountAhead:
		return w.Say("find-count-ahead-others", values...)
	case foundCountBehind:
		return w.Say("find-count-behind-others", values...)
	case foundSteady:
		return w.Say("find-steady", values...)
	case foundNoLean:
		return w.Say("find-no-lean", values...)
	case foundClose:
		return w.Say("review-close", values...)
	}
	return foundOfDums(w, f, values...)
}

// foundOfDums is what may be said of a round of dums, whatever the taps.
func foundOfDums(w say.Words, f found, values ...any) string {
	switch f {
	case foundArea:
		return w.Say("dums-area")
	case foundOpen:
		return w.Say("opened", values...)
	}
	return w.Say("on")
}

// named is the name of the rhythm, "" where it is not named before the review.
func (d *Dums) named() string {
	if d.Any {
		return ""
	}
	return d.Rhythm.Name
}

// screen is the id of the round's screen: that of its kind.
func (d *Dums) screen() string {
	if d.Kind == "" {
		return view.ScreenDums
	}
	return d.Kind
}
