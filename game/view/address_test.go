package view

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

var allowed = Allowed{Screens: []string{"dums"}, Rhythms: []string{"maqsum", "saidi"}, Riffs: []string{"bare"}}

func TestParseAddress(t *testing.T) {
	full := Address{Screen: "dums", Rhythm: "saidi", BPM: 96, Eights: 8, Riff: "bare", Seed: 7}
	for _, c := range []struct {
		query string
		want  Address
		err   string
	}{
		{"", DefaultAddress(), ""},
		{"?", DefaultAddress(), ""},
		{"?screen=dums&rhythm=saidi&bpm=96&eights=8&riff=bare&seed=7", full, ""},
		{"seed=7&riff=bare&eights=8&bpm=96&rhythm=saidi", full, ""},
		{"bpm=40", with(func(a *Address) { a.BPM = 40 }), ""},
		{"bpm=200&eights=32", with(func(a *Address) { a.BPM, a.Eights = 200, 32 }), ""},
		{"seed=9007199254740991", with(func(a *Address) { a.Seed = MostSeed }), ""},
		{"bpm=900", with(func(a *Address) { a.BPM = 200 }), "bpm=900: allowed is 40 to 200"},
		{"bpm=39", with(func(a *Address) { a.BPM = 40 }), "bpm=39: allowed is 40 to 200"},
		{"bpm=0", with(func(a *Address) { a.BPM = 40 }), "bpm=0: allowed is 40 to 200"},
		{"bpm=fast", DefaultAddress(), "bpm=fast: allowed is 40 to 200"},
		{"bpm=", DefaultAddress(), "bpm=: allowed is 40 to 200"},
		{"eights=33", with(func(a *Address) { a.Eights = 32 }), "eights=33: allowed is 1 to 32"},
		{"eights=0", with(func(a *Address) { a.Eights = 1 }), "eights=0: allowed is 1 to 32"},
		{"rhythm=Maqsoum", DefaultAddress(), "rhythm=Maqsoum: allowed is maqsum, saidi"},
		{"rhythm=saiidi", with(func(a *Address) { a.Rhythm = "saidi" }), "rhythm=saiidi: allowed is maqsum, saidi"},
		{"rhythm=waltz", DefaultAddress(), "rhythm=waltz: allowed is maqsum, saidi"},
		{"riff=solo", DefaultAddress(), "riff=solo: allowed is bare"},
		{"seed=-1", DefaultAddress(), "seed=-1: allowed is a whole number from 0 to 9007199254740991"},
		{"tempo=90", DefaultAddress(), "tempo: known are screen, rhythm, bpm, eights, riff, seed"},
		{"bpm=90&bpm=91", with(func(a *Address) { a.BPM = 90 }), "bpm=90, 91: allowed is one value"},
		{"eights=99&bpm=1&zoo=1&ape=2", with(func(a *Address) { a.BPM, a.Eights = 40, 32 }),
			"bpm=1: allowed is 40 to 200; eights=99: allowed is 1 to 32; " +
				"ape: known are screen, rhythm, bpm, eights, riff, seed; zoo: known are screen, rhythm, bpm, eights, riff, seed"},
		{"bpm=%zz", DefaultAddress(), "link=bpm=%zz: allowed is letters, figures, & and ="},
		{"rhythm=" + strings.Repeat("a", 99), DefaultAddress(), "rhythm=" + strings.Repeat("a", 39) + "…: allowed is maqsum, saidi"},
	} {
		t.Run(c.query, func(t *testing.T) {
			got, err := ParseAddress(c.query, allowed)
			require.Equal(t, c.want, got)
			if c.err == "" {
				require.NoError(t, err)
				return
			}
			require.EqualError(t, err, c.err)
			var link *LinkError
			require.True(t, errors.As(err, &link))
			_, err = ParseAddress(got.String(), allowed)
			require.NoError(t, err, "the nearest address is allowed")
		})
	}
}

func with(change func(*Address)) Address {
	a := DefaultAddress()
	change(&a)
	return a
}

func FuzzParseAddress(f *testing.F) {
	f.Add("?screen=dums&rhythm=maqsum&bpm=96&eights=4&riff=bare&seed=7")
	f.Add("bpm=1;eights=&&=&%")
	f.Fuzz(func(t *testing.T, query string) {
		a, _ := ParseAddress(query, allowed)
		back, err := ParseAddress(a.String(), allowed)
		require.NoError(t, err, "what is returned is always allowed")
		require.Equal(t, a, back)
	})
}

// Levenshtein distances: kitten/sitting 3 is the usual example; the others by hand.
func TestChanges(t *testing.T) {
	for _, c := range []struct {
		a, b string
		want int
	}{{"kitten", "sitting", 3}, {"", "abc", 3}, {"abc", "", 3}, {"maqsum", "maqsum", 0}, {"maqsoum", "maqsum", 1}, {"ab", "ba", 2}} {
		require.Equal(t, c.want, changes(c.a, c.b), c.a)
	}
}

func ExampleParseAddress() {
	allowed := Allowed{Screens: []string{"dums"}, Rhythms: []string{"maqsum", "saidi"}, Riffs: []string{"bare"}}
	a, err := ParseAddress("?rhythm=maqsoum&bpm=900", allowed)
	fmt.Println(err)
	fmt.Println(a)
	// Output:
	// rhythm=maqsoum: allowed is maqsum, saidi; bpm=900: allowed is 40 to 200
	// ?screen=dums&rhythm=maqsum&bpm=200&eights=4&riff=bare
}
