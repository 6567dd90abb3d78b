package session_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/paper"
	"groundbeat/game/session"
	"groundbeat/game/view"
)

// opened is the page at a link, with a session on it. What is shown is looked at to the
// end of the test.
func opened(t *testing.T, query string, seed uint64) *paper.Browser {
	return on(t, paper.Computer, query, seed)
}

// on is the same on a device.
func on(t *testing.T, d paper.Device, query string, seed uint64) *paper.Browser {
	t.Helper()
	b := paper.New(d, seed)
	b.Open(query, func(o *host.Host) paper.Game { return session.New(o) })
	b.Wait(100)
	t.Cleanup(func() { require.Empty(t, b.Page.Wrong) })
	return b
}

// player is somebody of a manner before it.
func player(b *paper.Browser, m paper.Manner, seed uint64) *paper.Player {
	p := paper.NewPlayer(b, seed)
	p.Manner = m
	return p
}

// roundLinks are the links of all screens on which a round is got ready, with each thing
// that such a screen can ask: found on the screens themselves. A practice is many rounds,
// and a set-up keeps none: they have tests of their own.
func roundLinks(t *testing.T) (links []string) {
	t.Helper()
	for _, screen := range view.Screens() {
		b := opened(t, "?screen="+screen, 1)
		begins := false
		b.Screen().Each(func(it *view.Item) { begins = begins || it.Action == view.ActBegin })
		ask := b.Find("ask")
		switch {
		case !begins, screen == view.ScreenSetUp, screen == view.ScreenPractice:
		case ask == nil:
			links = append(links, b.Query())
		default:
			for _, o := range ask.Options {
				require.NoError(t, b.Choose("ask", o.Value))
				links = append(links, b.Query())
			}
		}
	}
	require.Greater(t, len(links), 6)
	return links
}

// withLevel is a link at a level of the lead drum.
func withLevel(link, level string) string {
	return strings.Replace(link, "riff="+view.LevelBare, "riff="+level, 1)
}
