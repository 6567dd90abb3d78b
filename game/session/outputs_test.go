package session

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/scoring/history"
)

var someDay = time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC)

// A round says which output it was played on, and its mean, if that was measured;
// one that the sound check alone knows is none.
func TestRecordsOfOutputs(t *testing.T) {
	for _, c := range []struct {
		output host.Output
		name   string
		mean   time.Duration
	}{
		{host.Output{Name: "studio", Mean: 38, When: someDay, Adjustment: host.Adjustment{Later: 50}}, "studio", 38 * time.Millisecond},
		{host.Output{Name: "this device", Adjustment: host.Adjustment{Later: 50}}, "", 0},
	} {
		g, _, _ := newTestGame(t, readyLink)
		g.session.shared.Outputs = host.Outputs{Chosen: c.output.Name, List: []host.Output{c.output}}
		require.Equal(t, c.name, g.session.shared.Blank(history.Dums, "maqsum").Output)
		require.Equal(t, c.mean, g.session.shared.SetUp())
		g.session.visit("?screen=set-up")
		s := g.session.screen()
		require.Equal(t, c.name != "", s.Find("outputs") != nil, "Set-up lists what it measured")
	}
}
