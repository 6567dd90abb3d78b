package roundview

import (
	"testing"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// What these tests share with others, by short names.

var (
	allLevels       = screenproof.AllLevels
	inFour, inEight = screenproof.InFour, screenproof.InEight
)

const ms = time.Millisecond

func words(t testing.TB) say.Words                   { return proof.Words(t) }
func cycle(t testing.TB, id string) *rhythm.Cycle    { return proof.Cycle(t, id) }
func supplied(t testing.TB, id string) *rhythm.Cycle { return proof.Supplied(t, id) }
func core(t testing.TB) []view.Option                { return screenproof.Core(t) }
func more(t testing.TB) []view.Option                { return screenproof.More(t) }
func played() *picture.Review                        { return screenproof.Played() }
func text(t testing.TB, s view.Screen) string        { return screenproof.Text(t, s) }
func pattern(_ testing.TB, s string) rhythm.Pattern  { return rhythm.Pattern(s) }
