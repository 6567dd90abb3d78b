package picture

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// The rim's light is none of the flashes of WCAG 2.2.
func TestGlowDoesNotFlash(t *testing.T) {
	for _, palette := range []Palette{Dark(), Light()} {
		require.Zero(t, flashing(&palette, func(frame int, into *Picture) bool {
			at := time.Duration(frame) * time.Second / perSecond
			h := Head{Hidden: true, Glow: GlowAt(at, false)}
			h.Draw(into)
			return at < 5*time.Second
		}))
	}
}

// What plays is shown to play by the rim, whatever it is.
func TestRimBreathes(t *testing.T) {
	least, most := 1.0, 0.0
	for at := time.Duration(0); at < 2*breath; at += breath / 64 {
		g := GlowAt(at, false)
		least, most = min(least, g), max(most, g)
		require.InDelta(t, g, GlowAt(at+breath, false), 1e-9)
		require.Equal(t, GlowAt(0, true), GlowAt(at, true), "no motion")
	}
	require.Greater(t, least, 0.2, "it never goes out")
	require.LessOrEqual(t, most, 1.0)
	require.Greater(t, most-least, 0.5)
}
