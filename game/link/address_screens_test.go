package link

import (
	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// The seed of a link from before there were versions stands for the question that it
// always stood for, and the link stays as it was; this program's own say which.
func TestLinksSayWhichQuestions(t *testing.T) {
	for link, asked := range map[string]int{
		"?screen=which&ask=rhythm&answers=4&from=five&eights=4&riff=bare&seed=7":             1,
		"?screen=which&ask=rhythm&answers=4&from=five&eights=4&riff=bare&seed=7&q=2":         0,
		"?screen=change&rhythm=maqsum&answers=4&from=five&eights=4&riff=solo&seed=7&q=2&v=1": 0,
		"?screen=change&rhythm=maqsum&answers=4&from=five&eights=4&riff=riffing&seed=7&v=1":  1,
		"?screen=which&ask=rhythm&answers=4&from=five&eights=4&riff=bare":                    0,
		"?screen=change&rhythm=maqsum&answers=4&from=five&eights=4&riff=solo&seed=7&q=3&v=1": 3,
	} {
		a, err := Parse(link, riffs)
		require.NoError(t, err)
		require.Equal(t, asked, a.Asked, link)
		require.Equal(t, link, a.String())
	}
}

func TestParseAddressOfListen(t *testing.T) {
	listen := Default(view.ScreenListen)
	testAddresses(t, []addressCase{
		{"screen=listen", listen, ""},
		{"screen=listen&rhythm=karachi&bpm=220&riff=filled&seed=3",
			Address{Screen: "listen", Rhythm: "karachi", BPM: 220, Riff: "filled", Seed: 3}, ""},
		{"screen=listen&rhythm=any", listen, "rhythm=any: allowed is maqsum, saidi, malfuf, karachi"},
		{"screen=listen&eights=4", listen, "eights: listen has only screen, rhythm, bpm, riff, seed"},
		{"screen=listen&from=five&ask=same&zoo=1", listen, "ask: listen has only screen, rhythm, bpm, riff, seed; " +
			"from: listen has only screen, rhythm, bpm, riff, seed; zoo: known are screen, rhythm, bpm, riff, seed"},
		{"screen=listne", listen, "screen=listne: allowed is " + strings.Join(view.Screens(), ", ")},
	})
}

func TestParseAddressOfWhich(t *testing.T) {
	which := Default(view.ScreenWhich)
	but := func(change func(*Address)) Address {
		a := which
		change(&a)
		return a
	}
	const own = "screen, ask, answers, from, bpm, eights, riff, seed, q"
	const froms = "five, even, all, or some of these, each once, with points between: maqsum.saidi.malfuf"
	testAddresses(t, []addressCase{
		{"screen=which", which, ""},
		{"screen=which&ask=how-many&from=even&eights=2&riff=filled&bpm=90&seed=5",
			Address{Screen: "which", Ask: "how-many", Answers: 3, From: "even", BPM: 90, Eights: 2, Riff: "filled", Asked: 1, Seed: 5}, ""},
		{"screen=which&seed=5&q=2", Address{Screen: "which", Ask: "which", Answers: 3, From: "five", Eights: 4, Riff: "bare", Seed: 5}, ""},
		{"screen=which&answers=2&from=saidi.maqsum", but(func(a *Address) { a.Answers, a.From = 2, "saidi.maqsum" }), ""},
		{"screen=which&ask=same&from=saidi", but(func(a *Address) { a.Ask, a.From = "same", "saidi" }), ""},
		{"screen=which&rhythm=maqsum", which, "rhythm: which has only " + own},
		{"screen=which&ask=tempo", which, "ask=tempo: allowed is rhythm, stroke, how-many, same"},
		{"screen=which&answers=5", but(func(a *Address) { a.Answers = 4 }), "answers=5: allowed is 2 to 4"},
		{"screen=which&answers=1", but(func(a *Address) { a.Answers = 2 }), "answers=1: allowed is 2 to 4"},
		{"screen=which&from=saidi.maqsum", which, "from=saidi.maqsum: allowed is as many rhythms as answers, 3"},
		{"screen=which&from=saidi.saidi.maqsum", which, "from=saidi.saidi.maqsum: allowed is " + froms},
		{"screen=which&from=maqsum.saidi.karachi", which, "from=maqsum.saidi.karachi: allowed is " + froms},
		{"screen=which&from=", which, "from=: allowed is " + froms},
		{"screen=which&from=five.maqsum", which, "from=five.maqsum: allowed is " + froms},
	})
}

func TestParseAddressOfAny(t *testing.T) {
	any := Default(view.ScreenDums).WithRhythm(view.Any)
	testAddresses(t, []addressCase{
		{"rhythm=any", any, ""},
		{"rhythm=any&from=karachi", Address{Screen: "dums", Rhythm: "any", From: "karachi", Eights: 4, Riff: "bare"}, ""},
		{"rhythm=any&answers=3", any, "answers: dums has only screen, rhythm, from, bpm, eights, riff, seed"},
		{"from=five", Default(view.ScreenDums), "from: dums has only screen, rhythm, bpm, eights, riff, seed"},
	})
}

func TestAddressTo(t *testing.T) {
	listen := Address{Screen: "listen", Rhythm: "saidi", BPM: 80, Riff: "filled", Seed: 3}
	dums := Address{Screen: "dums", Rhythm: "saidi", BPM: 80, Riff: "filled", Eights: 4}
	require.Equal(t, dums, listen.To(view.ScreenDums), "the seed is the round's own")
	require.Equal(t, Address{Screen: "which", Ask: "which", Answers: 3, From: "five", Eights: 4, Riff: "filled"},
		listen.To(view.ScreenWhich), "a rhythm never leads into a question")
	any := Address{Screen: "dums", Rhythm: "any", From: "all", BPM: 80, Eights: 2, Riff: "bare"}
	require.Equal(t, Default(view.ScreenListen), any.To(view.ScreenListen))
	require.Equal(t, Address{Screen: "which", Ask: "which", Answers: 3, From: "all", Eights: 2, Riff: "bare"}, any.To(view.ScreenWhich))
	any.From = "maqsum.karachi"
	require.Equal(t, "five", any.To(view.ScreenWhich).From, "not all of them are answers")
}

func TestAddressWithRhythm(t *testing.T) {
	a := Address{Screen: "dums", Rhythm: "saidi", BPM: 80, Eights: 2, Riff: "bare"}
	any := a.WithRhythm(view.Any)
	require.Equal(t, Address{Screen: "dums", Rhythm: "any", From: "five", Eights: 2, Riff: "bare"}, any)
	any.From = "all"
	require.Equal(t, "all", any.WithRhythm(view.Any).From)
	require.Equal(t, Address{Screen: "dums", Rhythm: "maqsum", Eights: 2, Riff: "bare"}, any.WithRhythm("maqsum"))
}

// Every parameter is looked at by some screen, and no screen has one unknown.
func TestParameters(t *testing.T) {
	seen := map[string]bool{}
	all := []Address{Default(view.ScreenDums).WithRhythm(view.Any)}
	for _, screen := range view.Screens() {
		all = append(all, Default(screen), Default(screen).WithLevel(view.LevelSolo))
	}
	for _, a := range all {
		for _, name := range a.Parameters() {
			require.Contains(t, every, name)
			seen[name] = true
		}
	}
	require.Len(t, seen, len(every))
	require.NotContains(t, Default(view.ScreenWhich).Parameters(), "rhythm", "the answer must not be in the link")
}

func TestIds(t *testing.T) {
	require.Equal(t, []string{"maqsum", "saidi"}, Address{From: "maqsum.saidi"}.Ids())
	require.Empty(t, Address{From: view.FromFive}.Ids())
	require.Empty(t, Address{}.Ids())
}

func TestParseAddressOfCarry(t *testing.T) {
	carry := Default(view.ScreenCarry)
	testAddresses(t, []addressCase{
		{"screen=carry", carry, ""},
		{"screen=carry&rhythm=karachi&bpm=120&eights=32&riff=filled&seed=5",
			Address{Screen: "carry", Rhythm: "karachi", BPM: 120, Eights: 32, Riff: "filled", Seed: 5}, ""},
		{"screen=carry&rhythm=any", carry, "rhythm=any: allowed is maqsum, saidi, malfuf, karachi"},
		{"screen=carry&eights=3", Address{Screen: "carry", Rhythm: "maqsum", Eights: 4, Riff: "bare"}, "eights=3: allowed is 4 to 32"},
		{"screen=carry&from=five", carry, "from: carry has only screen, rhythm, bpm, eights, riff, seed"},
	})
	dums := Address{Screen: "dums", Rhythm: "karachi", BPM: 90, Eights: 1, Riff: "filled"}
	require.Equal(t, Address{Screen: "carry", Rhythm: "karachi", BPM: 90, Eights: 4, Riff: "filled"}, dums.To(view.ScreenCarry))
}

func TestParseAddressOfChange(t *testing.T) {
	change := Default(view.ScreenChange)
	const own = "screen, rhythm, answers, from, bpm, eights, riff, seed, q"
	testAddresses(t, []addressCase{
		{"screen=change", change, ""},
		{"screen=change&rhythm=saidi&answers=2&from=maqsum.malfuf&bpm=100&eights=8&riff=filled&seed=5",
			Address{Screen: "change", Rhythm: "saidi", Answers: 2, From: "maqsum.malfuf", BPM: 100, Eights: 8, Riff: "filled", Asked: 1, Seed: 5}, ""},
		{"screen=change&rhythm=any&from=even", Address{Screen: "change", Rhythm: "any", From: "even", Answers: 3, Eights: 6, Riff: "bare"}, ""},
		{"screen=change&rhythm=karachi", change, "rhythm=karachi: allowed is maqsum, saidi, malfuf, any"},
		{"screen=change&eights=3", Address{Screen: "change", Rhythm: "maqsum", From: "five", Answers: 3, Eights: 4, Riff: "bare"}, "eights=3: allowed is 4 to 8"},
		{"screen=change&eights=32", Address{Screen: "change", Rhythm: "maqsum", From: "five", Answers: 3, Eights: 8, Riff: "bare"}, "eights=32: allowed is 4 to 8"},
		{"screen=change&from=karachi.saidi", change, "from=karachi.saidi: allowed is five, even, all, or some of these, each once, with points between: maqsum.saidi.malfuf"},
		{"screen=change&ask=same", change, "ask: change has only " + own},
	})
	which := Address{Screen: "which", Ask: "which", Answers: 3, From: "all", Eights: 2, Riff: "filled"}
	require.Equal(t, Address{Screen: "change", Rhythm: "maqsum", Answers: 3, From: "all", Eights: 4, Riff: "filled"}, which.To(view.ScreenChange))
	dums := Address{Screen: "dums", Rhythm: "karachi", BPM: 90, Eights: 16, Riff: "bare"}
	require.Equal(t, Address{Screen: "change", Rhythm: "maqsum", Answers: 3, From: "five", Eights: 8, Riff: "bare"}, dums.To(view.ScreenChange),
		"not every rhythm may be an answer, nor as many eights be played")
	require.Equal(t, "five", change.WithRhythm("saidi").From, "what it may become is another matter")
}

func TestParseAddressOfStop(t *testing.T) {
	stop := Default(view.ScreenStop)
	testAddresses(t, []addressCase{
		{"screen=stop", stop, ""},
		{"screen=stop&rhythm=karachi&bpm=120&eights=8&riff=filled&seed=5",
			Address{Screen: "stop", Rhythm: "karachi", BPM: 120, Eights: 8, Riff: "filled", Seed: 5}, ""},
		{"screen=stop&rhythm=any", stop, "rhythm=any: allowed is maqsum, saidi, malfuf, karachi"},
		{"screen=stop&eights=2", Address{Screen: "stop", Rhythm: "maqsum", Eights: 4, Riff: "bare"}, "eights=2: allowed is 4 to 8"},
		{"screen=stop&from=five", stop, "from: stop has only screen, rhythm, bpm, eights, riff, seed"},
	})
	dums := Address{Screen: "dums", Rhythm: "karachi", BPM: 90, Eights: 1, Riff: "filled"}
	require.Equal(t, Address{Screen: "stop", Rhythm: "karachi", BPM: 90, Eights: 4, Riff: "filled"}, dums.To(view.ScreenStop))
}

func TestParseAddressOfSetUp(t *testing.T) {
	at := Address{Screen: view.ScreenSetUp}
	require.Equal(t, "?screen=set-up", at.String())
	testAddresses(t, []addressCase{
		{"screen=set-up", at, ""},
		{"screen=setup", at, "screen=setup: allowed is " + strings.Join(view.Screens(), ", ")},
		{"screen=set-up&rhythm=maqsum", at, "rhythm: set-up has only screen"},
		{"screen=set-up&zoo=1", at, "zoo: known are screen"},
	})
	require.Equal(t, at, Address{Screen: view.ScreenDums, Rhythm: "saidi", BPM: 80, Riff: "filled", Eights: 2}.To(view.ScreenSetUp))
	for _, screen := range []string{view.ScreenDums, view.ScreenListen, view.ScreenWhich} {
		require.Equal(t, Default(screen), at.To(screen), "set-up shares nothing")
	}
}

func TestParseAddressOfSoundCheck(t *testing.T) {
	at := Address{Screen: view.ScreenCheck}
	require.Equal(t, "?screen=sound-check", at.String())
	testAddresses(t, []addressCase{
		{"screen=sound-check", at, ""},
		{"screen=sound-check&bpm=90", at, "bpm: sound-check has only screen"},
	})
	require.Equal(t, at, Address{Screen: view.ScreenSetUp}.To(view.ScreenCheck))
	require.Equal(t, Address{Screen: view.ScreenSetUp}, at.To(view.ScreenSetUp))
	require.Equal(t, Default(view.ScreenDums), at.To(view.ScreenDums))
	w := proof.Words(t)
	require.Equal(t, "Sound check", (&WrongLink{Nearest: at}).nearest(w))
}

// The first round is one that a link can ask for, and what Home shows.
func TestFirstRound(t *testing.T) {
	first := FirstRound()
	again, err := Parse(first.String(), allowed)
	require.NoError(t, err)
	require.Equal(t, first, again)
	all := proof.EveryRhythm(t)
	maqsum := all[slices.IndexFunc(all, func(c *rhythm.Cycle) bool { return c.ID == first.Rhythm })]
	require.True(t, maqsum.Core)
	require.Less(t, first.BPM, maqsum.Tempo.Slow)
	dums := maqsum.Dums()
	require.Equal(t, 8, first.Eights*maqsum.CyclesIn(1)*len(dums))
	require.Equal(t, maqsum.Steps(), 2*picture.Gap(maqsum.Skeleton, dums[0], rhythm.Stroke.Low), "evenly")
	require.Equal(t, picture.Gap(maqsum.Skeleton, dums[0], rhythm.Stroke.Low), picture.Gap(maqsum.Skeleton, dums[1], rhythm.Stroke.Low))
}

func TestAddressToHome(t *testing.T) {
	dums := Address{Screen: view.ScreenDums, Rhythm: "saidi", BPM: 80, Riff: "filled", Eights: 2}
	require.Equal(t, "?screen=home", dums.To(view.ScreenHome).String())
	require.Equal(t, Default(view.ScreenWhich), dums.To(view.ScreenHome).To(view.ScreenWhich))
}
