package warmup

import "slices"

// A Kind is what a room is asked, or asked to do, in a warm-up before class.
type Kind string

// The kinds. Hands are counted where the room answers; the rest is movement.
const (
	HandsUp      Kind = "hands-up"       // a rhythm is played; its name is asked, one by one
	SayIt        Kind = "say-it"         // dum tek, spoken along with the line; then without it
	WalkAndClap  Kind = "walk-and-clap"  // walk the pulse, clap the dums; then the drums drop out for an eight
	WhatChanged  Kind = "what-changed"   // heard twice, one stroke moved: in which count?
	BaseOrRiff   Kind = "base-or-riff"   // is the lead drum on the base or off it?
	FindTheOne   Kind = "find-the-1"     // it begins anywhere and breaks off: on which count?
	CatchTheStop Kind = "catch-the-stop" // freeze where the drums break off
)

// Kinds lists all kinds, in the order in which they are offered.
func Kinds() []Kind {
	return []Kind{HandsUp, SayIt, WalkAndClap, WhatChanged, BaseOrRiff, FindTheOne, CatchTheStop}
}

// Counted reports whether hands are counted.
func (k Kind) Counted() bool {
	return slices.Contains([]Kind{HandsUp, WhatChanged, BaseOrRiff, FindTheOne}, k)
}
