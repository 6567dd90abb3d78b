package roundview

import (
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// Nobody is blamed for what the output may have done.
func TestUnmeasuredLean(t *testing.T) {
	w := words(t)
	require.Equal(t, "All your taps come about 40 ms behind: probably your loudspeaker or headphones, not you. "+
		"Set-up measures it once and takes it off.", SayUnmeasured(w, 41*ms, 41*ms))
	require.Equal(t, "All your taps come 20 to 45 ms behind: probably your loudspeaker or headphones, not you. "+
		"Set-up measures it once and takes it off.", SayUnmeasured(w, 19*ms, 44*ms))
	require.Equal(t, "All your taps come 10 to 30 ms ahead, as nearly everybody taps a little ahead of what sounds. "+
		"Set-up measures it once and takes it off.", SayUnmeasured(w, -30*ms, -11*ms))
	to := ToSetUp(w)
	require.Equal(t, []string{view.ActGo, view.ScreenSetUp}, []string{to.Action, to.Value})
}
