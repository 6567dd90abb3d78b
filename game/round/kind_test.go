package round

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// Each kind of round whose strokes are tapped is dealt here, asks for some strokes and not
// for all, and in lengths that there are.
func TestKindsAreThoseThatAreTapped(t *testing.T) {
	for _, k := range history.Kinds {
		mine, has := kindOf(k.ID)
		require.Equal(t, k.Play == history.Tapped, has, k.ID)
		if !has {
			continue
		}
		require.NotEqual(t, Asks(k.ID)(rhythm.Dum), Asks(k.ID)(rhythm.Tek), k.ID)
		require.False(t, Asks(k.ID)(rhythm.Rest), k.ID)
		require.Equal(t, k.Along, k.Along && Asks(k.ID)(rhythm.Dum), "%s: the diary takes what is tapped along for dums", k.ID)
		require.NoError(t, mine.check(mine.least))
		require.Error(t, mine.check(mine.least-1))
		require.Error(t, mine.check(mine.most+1))
	}
	require.True(t, Asks("clapping")(rhythm.Dum))
}
