package rhythm_test

import (
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// Skeletons of every shape of metre, as printed by the sources that
// assets/rhythms and the public pages beside them name.
var shapes = map[string]struct{ metre, grouping, skeleton string }{
	"maqsum":         {"4/4", "", "DT-TD-T-"},           // M. Frishkopf, Percussion piece
	"malfuf":         {"2/4", "", "D--T--T-"},           // M. Frishkopf, Percussion piece
	"ayyub":          {"2/4", "", "D--TD-T-"},           // Wikipedia, Dumbek rhythms
	"masmudi-kabir":  {"8/4", "", "D-D---T-D---T---"},   // UCLA Ethnomusicology, Metric modes
	"karsilama":      {"9/8", "2+2+2+3", "D-T-D-TTT"},   // bellydancegeek.com, 2013, The big 5 9/8s
	"samai-thaqil":   {"10/8", "3+2+2+3", "D--T-DDT--"}, // Arabic Wikipedia
	"devr-i-hindi":   {"7/8", "3+2+2", "DTTD-T-"},       // salihbora.com, Devr-i hindî usulü
	"long":           {"16/4", "", "D---T---D---T---"},  // made up
	"three":          {"3/4", "", "D-T-T-"},             // made up
	"nine-in-halves": {"9/8", "2+2+2+3", "D---T---D---T-T-T-"},
}

var beatNames = map[string]string{"4": "quarter", "8": "eighth"}

// shape parses one of the shapes.
func shape(t testing.TB, id string) *rhythm.Cycle {
	t.Helper()
	s, found := shapes[id]
	require.True(t, found, id)
	text := "name: " + id + "\nmetre: " + s.metre + "\nskeleton: " + s.skeleton +
		"\ntempo: 60 90 120 " + beatNames[s.metre[strings.Index(s.metre, "/")+1:]] + "\nmemory: all\n"
	if s.grouping != "" {
		text += "grouping: " + s.grouping + "\n"
	}
	c, err := rhythm.Parse(id+".txt", strings.NewReader(text))
	require.NoError(t, err)
	return c
}

// ints reads whole numbers with blanks between.
func ints(t testing.TB, s string) []int {
	t.Helper()
	var all []int
	for _, word := range strings.Fields(s) {
		n, err := strconv.Atoi(word)
		require.NoError(t, err)
		all = append(all, n)
	}
	return all
}

// pattern reads strokes, with "." for a rest as papers write it.
func pattern(t testing.TB, s string) rhythm.Pattern {
	t.Helper()
	p, err := rhythm.ParsePattern(strings.ReplaceAll(s, ".", "-"))
	require.NoError(t, err)
	return p
}

// made makes a rhythm of a metre in quarters and a skeleton, at 60 to 120.
func made(t testing.TB, metre, skeleton string) *rhythm.Cycle {
	t.Helper()
	c, err := rhythm.Parse("made.txt", strings.NewReader("name: made\nmetre: "+metre+
		"\nskeleton: "+skeleton+"\ntempo: 60 90 120 quarter\nmemory: all\n"))
	require.NoError(t, err)
	return c
}
