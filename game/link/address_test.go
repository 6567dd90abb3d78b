package link

import (
	"errors"
	"fmt"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

func allowed() Allowed {
	return Allowed{
		Rhythms: []string{"maqsum", "saidi", "malfuf", "karachi"}, Answers: []string{"maqsum", "saidi", "malfuf"},
		Riffs: []string{"bare", "filled"},
		Set: func(text string) error {
			if slices.Contains(warmup.Presets(), text) {
				return nil
			}
			return errors.New("one of those supplied")
		},
	}
}

type addressCase struct {
	query string
	want  Address
	err   string
}

func testAddresses(t *testing.T, cases []addressCase) {
	for _, c := range cases {
		t.Run(c.query, func(t *testing.T) {
			got, err := Parse(c.query, allowed)
			require.Equal(t, c.want, got)
			again, none := Parse(got.String(), allowed)
			require.NoError(t, none, "the nearest address is allowed")
			require.Equal(t, got, again)
			if c.err == "" {
				require.NoError(t, err)
				return
			}
			require.EqualError(t, err, c.err)
			var link *Error
			require.True(t, errors.As(err, &link))
		})
	}
}

func TestParseAddress(t *testing.T) {
	full := Address{Screen: "dums", Rhythm: "saidi", BPM: 96, Eights: 8, Riff: "bare", Seed: 7}
	home, dums := Address{Screen: "home"}, Default(view.ScreenDums)
	testAddresses(t, []addressCase{
		{"", home, ""},
		{"?", home, ""},
		{"?screen=home", home, ""},
		{"?zoo=1", home, "zoo: known are screen"},
		{"?screen=home&bpm=90", home, "bpm: home has only screen"},
		{"?screen=dums", dums, ""},
		{"?screen=dums&rhythm=saidi&bpm=96&eights=8&riff=bare&seed=7", full, ""},
		{"seed=7&riff=bare&eights=8&bpm=96&rhythm=saidi", full, ""},
		{"bpm=40", with(func(a *Address) { a.BPM = 40 }), ""},
		{"bpm=220&eights=32", with(func(a *Address) { a.BPM, a.Eights = 220, 32 }), ""},
		{"seed=9007199254740991", with(func(a *Address) { a.Seed = MostSeed }), ""},
		{"bpm=900", with(func(a *Address) { a.BPM = 220 }), "bpm=900: allowed is 40 to 220"},
		{"bpm=39", with(func(a *Address) { a.BPM = 40 }), "bpm=39: allowed is 40 to 220"},
		{"bpm=0", with(func(a *Address) { a.BPM = 40 }), "bpm=0: allowed is 40 to 220"},
		{"bpm=fast", dums, "bpm=fast: allowed is 40 to 220"},
		{"bpm=", dums, "bpm=: allowed is 40 to 220"},
		{"eights=33", with(func(a *Address) { a.Eights = 32 }), "eights=33: allowed is 1 to 32"},
		{"eights=0", with(func(a *Address) { a.Eights = 1 }), "eights=0: allowed is 1 to 32"},
		{"rhythm=Maqsoum", dums, "rhythm=Maqsoum: allowed is maqsum, saidi, malfuf, karachi, any"},
		{"rhythm=saiidi", with(func(a *Address) { a.Rhythm = "saidi" }), "rhythm=saiidi: allowed is maqsum, saidi, malfuf, karachi, any"},
		{"rhythm=waltz", dums, "rhythm=waltz: allowed is maqsum, saidi, malfuf, karachi, any"},
		{"riff=solo", dums, "riff=solo: allowed is bare, filled"},
		{"seed=-1", dums, "seed=-1: allowed is a whole number from 0 to 9007199254740991"},
		{"eights=4&tempo=90", dums, "tempo: known are screen, rhythm, bpm, eights, riff, seed"},
		{"screen=plan", home, "screen=plan: allowed is " + strings.Join(view.Screens(), ", ")},
		{"bpm=90&bpm=91", with(func(a *Address) { a.BPM = 90 }), "bpm=90, 91: allowed is one value"},
		{"eights=99&bpm=1&zoo=1&ape=2", with(func(a *Address) { a.BPM, a.Eights = 40, 32 }),
			"bpm=1: allowed is 40 to 220; eights=99: allowed is 1 to 32; " +
				"ape: known are screen, rhythm, bpm, eights, riff, seed; zoo: known are screen, rhythm, bpm, eights, riff, seed"},
		{"bpm=%zz", home, "link=bpm=%zz: allowed is letters, figures, & and ="},
		{"rhythm=" + strings.Repeat("a", 99), dums, "rhythm=" + strings.Repeat("a", 39) + "…: allowed is maqsum, saidi, malfuf, karachi, any"},
	})
}

func with(change func(*Address)) Address {
	a := Default(view.ScreenDums)
	change(&a)
	return a
}

func FuzzParseAddress(f *testing.F) {
	f.Add("?screen=dums&rhythm=maqsum&bpm=96&eights=4&riff=bare&seed=7")
	f.Add("?screen=dums&rhythm=any&from=maqsum.karachi&bpm=96")
	f.Add("?screen=listen&rhythm=saidi&bpm=200&riff=filled")
	f.Add("?screen=which&ask=same&answers=4&from=saidi.malfuf&seed=9&rhythm=maqsum")
	f.Add("?screen=set-up&eights=4")
	f.Add("?screen=home&seed=4")
	f.Add("?screen=change&rhythm=any&from=saidi.malfuf&eights=9&riff=filled")
	f.Add("?screen=stop&rhythm=karachi&eights=3")
	f.Add("?screen=class&set=ears&seed=3")
	f.Add("?screen=carry&rhythm=karachi&eights=33")
	f.Add("bpm=1;eights=&&=&%")
	f.Fuzz(func(t *testing.T, query string) {
		a, _ := Parse(query, allowed)
		back, err := Parse(a.String(), allowed)
		require.NoError(t, err, "what is returned is always allowed")
		require.Equal(t, a, back)
		for _, screen := range view.Screens() {
			to := a.To(screen)
			back, err := Parse(to.String(), allowed)
			require.NoError(t, err, "so is what leads from it to %s", screen)
			require.Equal(t, to, back)
		}
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

// Home has no rhythm: those that there are need not be known.
func TestParseAddressOfHome(t *testing.T) {
	unknown := func() Allowed { panic("asked for") }
	for _, query := range []string{"", "?screen=home", "?screen=diary", "?screen=home&bpm=90"} {
		require.NotPanics(t, func() { _, _ = Parse(query, unknown) }, query)
	}
	require.Panics(t, func() { _, _ = Parse("?screen=dums", unknown) })
}

func ExampleParse() {
	allowed := func() Allowed { return Allowed{Rhythms: []string{"maqsum", "saidi"}, Riffs: []string{"bare"}} }
	a, err := Parse("?rhythm=maqsoum&bpm=900", allowed)
	fmt.Println(err)
	fmt.Println(a)
	// Output:
	// rhythm=maqsoum: allowed is maqsum, saidi, any; bpm=900: allowed is 40 to 220
	// ?screen=dums&rhythm=maqsum&bpm=220&eights=4&riff=bare
}
