package history

import (
	"errors"
	"io"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"
)

// readLines gives the rounds of [Lines] and the errors apart.
func readLines(name string, r io.Reader) ([]Round, []error) {
	var rounds []Round
	var errs []error
	for round, err := range Lines(name, r) {
		if err != nil {
			errs = append(errs, err)
		} else {
			rounds = append(rounds, round)
		}
	}
	return rounds, errs
}

func TestLines(t *testing.T) {
	good := edit(t, `"id":"b2f1"`, `"id":"one"`)
	two := edit(t, `"id":"b2f1"`, `"id":"two"`)
	broken := edit(t, `"bpm":96`, `"bpm":5`)
	newer := `{"v":3,"kind":"dums"}`
	text := "\uFEFF" + good + "\r\n\n" + broken + "\n  \n" + newer + "\n{\"v\":1,\n" + two
	for _, r := range []io.Reader{strings.NewReader(text), iotest.OneByteReader(strings.NewReader(text))} {
		rounds, errs := readLines("rounds.jsonl", r)
		require.Len(t, rounds, 2)
		require.Equal(t, "one", rounds[0].ID)
		require.Equal(t, "two", rounds[1].ID)
		require.Len(t, errs, 3)

		require.EqualError(t, errs[0], "rounds.jsonl:3:46: bpm: 5 is not from 20 to 300")
		var e *Error
		require.ErrorAs(t, errs[0], &e)
		require.Equal(t, broken, string(e.Raw))

		require.EqualError(t, errs[1], "rounds.jsonl:5: version 3, this program knows up to 1")
		var n *Newer
		require.ErrorAs(t, errs[1], &n)
		require.Equal(t, Newer{"rounds.jsonl", 5, 3, []byte(newer)}, *n)

		require.EqualError(t, errs[2], "rounds.jsonl:6:7: unexpected end of JSON input")
	}
}

func TestLinesOfNothing(t *testing.T) {
	rounds, errs := readLines("", strings.NewReader("\n"))
	require.Empty(t, rounds)
	require.Empty(t, errs)
}

func TestLinesKeepsWhatCameBeforeAFault(t *testing.T) {
	fault := errors.New("disk gone")
	good := edit(t, `"id":"b2f1"`, `"id":"one"`)
	rounds, errs := readLines("a", io.MultiReader(strings.NewReader(good+"\n"+good[:20]), iotest.ErrReader(fault)))
	require.Len(t, rounds, 1)
	require.Len(t, errs, 2)
	require.EqualError(t, errs[0], "a:2:20: unexpected end of JSON input")
	require.ErrorIs(t, errs[1], fault)
	require.EqualError(t, errs[1], "a:2: disk gone")
}

func TestErrorWithoutPlace(t *testing.T) {
	require.EqualError(t, wrong("bpm", "missing"), "bpm: missing")
	require.EqualError(t, &Error{Line: 3, Msg: "no"}, "line 3: no")
	require.EqualError(t, &Error{Line: 3, Column: 4, Msg: "no"}, "line 3:4: no")
	require.EqualError(t, &Newer{Version: 2, Line: 3}, "line 3: version 2, this program knows up to 1")
}

func BenchmarkLines(b *testing.B) {
	r, err := New(studio())
	require.NoError(b, err)
	line, err := Format(r)
	require.NoError(b, err)
	text := strings.Repeat(string(line)+"\n", 1000)
	b.SetBytes(int64(len(text)))
	b.ReportAllocs()
	for b.Loop() {
		rounds, errs := readLines("", strings.NewReader(text))
		if len(rounds) != 1000 || errs != nil {
			b.Fatal(errs)
		}
	}
}
