package history

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// A line handed out says who played, and is the line that Format writes of that.
func TestHanded(t *testing.T) {
	r := record(t)
	line, err := Format(r)
	require.NoError(t, err)
	require.Equal(t, string(line), string(Handed(line, "")))
	for _, player := range []string{"Amira", `"quoted" <b>`, "ليلى"} {
		r.Player = player
		want, err := Format(r)
		require.NoError(t, err)
		require.Equal(t, string(want), string(Handed(line, player)))
		require.Equal(t, string(want), string(Handed(want, "another")), "it says who played")
	}
	for _, broken := range []string{"", "}", `{"v":1,"ki`, `["v"]`} {
		require.Equal(t, broken, string(Handed([]byte(broken), "Amira")))
	}
	long := append(make([]byte, 0, 2*len(line)), line...)
	Handed(long, "Amira")
	require.Equal(t, make([]byte, 9), long[:cap(long)][len(line):len(line)+9], "the line is not written to")
}

// The word itself is no nickname: not as the name of an output or a rhythm, nor within a
// member that is not known.
func TestHandedTellsTheMemberByItsName(t *testing.T) {
	r := record(t)
	r.Output = "player"
	line, err := Format(r)
	require.NoError(t, err)
	got, err := Parse(Handed(line, "Amira"))
	require.NoError(t, err)
	require.Equal(t, []string{"Amira", "player"}, []string{got.Player, got.Output})
	for line, want := range map[string]string{
		`{"v":1,"later":{"player":"x"}}`: `{"v":1,"later":{"player":"x"},"player":"Amira"}`,
		`{"v":1,"player":""}`:            `{"v":1,"player":""}`,
		` {"v":1} ` + "\r":               ` {"v":1,"player":"Amira"}`,
		`{}`:                             `{}`,
	} {
		require.Equal(t, want, string(Handed([]byte(line), "Amira")))
	}
}

// What is no line of JSON is handed out byte by byte as it was, also if it ends as one.
func TestHandedLeavesWhatIsBroken(t *testing.T) {
	for _, broken := range []string{"kept for later}", `{"v":1,"kind":}`, `[{"v":1}`, `"v"`, "1", "null", "{\"v\":1,\"a\":\"\xff\"}"} {
		require.Equal(t, broken, string(Handed([]byte(broken), "Amira")))
	}
}
