package classroom

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// Where there is no sound at all nothing is played, and all of it can be gone through.
func TestARoomWithoutSound(t *testing.T) {
	r := newRoom(t, hands)
	r.Sound.None = true
	r.Ticks(50)
	r.Use(view.ActClassBegin, "")
	require.False(t, r.class().loop.On)
	require.NotEmpty(t, r.class().model().Problem)
	r.next()
	r.next()
	require.False(t, r.class().one)
	require.Equal(t, warmup.Counting, r.stage(), "there is nothing to be heard before it")
}
