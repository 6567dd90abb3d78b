package link

import (
	"groundbeat/game/riff"
	"groundbeat/game/warmup"
	"testing"

	"github.com/stretchr/testify/require"
)

func TestClassLink(t *testing.T) {
	s := warmup.Set{From: "five", Level: riff.Filled, Kinds: []warmup.Kind{warmup.HandsUp, warmup.SayIt}, Minutes: 7, Seed: 3}
	require.Equal(t, "?screen=class&set=five_filled_hands-up.say-it_7_3", ClassLink(s))
	testAddresses(t, []addressCase{
		{"screen=class", Address{Screen: "class"}, ""},
		{"screen=class&set=ears", Address{Screen: "class", Set: "ears"}, ""},
		{"screen=class&set=waltz", Address{Screen: "class"}, "set=waltz: allowed is one of those supplied"},
		{"screen=class&seed=3", Address{Screen: "class"}, "seed: class has only screen, set"},
		{"set=ears", Address{Screen: "home"}, "set: home has only screen"},
	})
}
