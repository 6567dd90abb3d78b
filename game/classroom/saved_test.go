package classroom

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
)

// A set that is asked for by no number that a kept one has is what is put together.
func TestASetThatIsNotKept(t *testing.T) {
	r := newRoom(t, hands)
	r.Use(view.ActClassSetName, "One")
	r.Use(view.ActClassSave, "")
	r.Use(view.ActClassMinutes, "5")
	for _, id := range []string{"saved--1", "saved-1", "saved-", "saved-99999999999999999999"} {
		require.Equal(t, r.class().ready.set, r.class().ready.of(id), id)
	}
	require.Equal(t, 2, r.class().ready.of("saved-0").Minutes)
}
