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
