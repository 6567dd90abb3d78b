//go:build browser && !js

package main

import (
	"testing"

	"github.com/stretchr/testify/require"
)

// What the page's script, window.groundbeat, promises.
func TestPageScript(t *testing.T) {
	s := serve(t)
	b := open(t)
	b.visit(s.URL + quick)
	require.Equal(t, []string{"balance", "heard", "log", "version", "volume"}, get[[]string](b, "Object.keys(groundbeat).sort()"))
	require.NotEmpty(t, get[string](b, "groundbeat.version"))
	require.False(t, get[bool](b, `"groundbeatParts" in window`), "what the parts hand one another is gone")
	require.Nil(t, get[any](b, "groundbeat.heard()"), "nothing is heard yet")
	require.Empty(t, get[[]any](b, "groundbeat.log()"))

	b.begin()
	b.wait("groundbeat.heard()")
	b.rest(300)
	heard := get[[]map[string]float64](b, `(async () => {
		const first = groundbeat.heard();
		await new Promise((r) => setTimeout(r, 500));
		return [first, groundbeat.heard()];
	})()`)
	for _, h := range heard {
		require.Len(t, h, 4)
		require.InDelta(t, 48000, h["rate"], 48000*500e-6)
		require.InDelta(t, get[float64](b, "performance.now()"), h["at"], 5000)
	}
	require.Equal(t, heard[0]["epoch"], heard[1]["epoch"])
	require.InDelta(t, (heard[1]["at"]-heard[0]["at"])*48, heard[1]["frame"]-heard[0]["frame"], 48*20, "frames follow the time")

	b.run(`groundbeat.balance(0, 1, "apart"); groundbeat.balance(1, 1, "centre"); groundbeat.balance(0.5, 1, "spread"); groundbeat.volume(0.5)`)
	require.NotEmpty(t, get[any](b, "groundbeat.heard()"), "and plays on")
}
