package scoring

import (
	"testing"

	"github.com/stretchr/testify/require"
)

func TestEstimate(t *testing.T) {
	e := Estimated(12, 4, 20, 16, 6)
	require.Equal(t, Figure{12, true}, e.Figure)
	require.Equal(t, 0, e.Missing())
	require.True(t, e.Excludes(0))
	require.True(t, e.Excludes(20.5))
	require.False(t, e.Excludes(4), "the ends are inside")
	require.False(t, e.Excludes(20))

	none := Unknown(2, 6)
	require.False(t, none.Known)
	require.Equal(t, 4, none.Missing())
	require.False(t, none.Excludes(100), "what is not known excludes nothing")
	require.Equal(t, 0, Unknown(9, 6).Missing(), "enough, and yet not to be told")
}
