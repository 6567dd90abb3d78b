package host_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
)

// Outputs in one text are read as they were kept; what is of another format, or no text
// of outputs at all, is told from them.
func TestParseOutputs(t *testing.T) {
	got, err := host.ParseOutputs(`{"v":1,"chosen":"kitchen","outputs":[{"name":"kitchen","mean":41.5,"spread":12,"when":"2026-01-31T18:30:00Z","later":120,"bass":30},{"name":"hall","mean":0,"spread":0}]}`)
	require.NoError(t, err)
	require.Len(t, got.List, 2)
	require.Equal(t, "kitchen", got.Measured().Name)
	require.Equal(t, []any{41.5, 12.0}, []any{got.Measured().Mean, got.Measured().Spread})
	require.Equal(t, host.Adjustment{Later: 120, Bass: 30}, got.Adjustment())
	got.Chosen = "hall"
	require.Nil(t, got.Measured(), "it was not measured")

	for text, want := range map[string]string{
		`{"v":2,"chosen":""}`: "outputs: format 2, not 1",
		`{}`:                  "outputs: format 0, not 1",
		`{"v":1,"outputs":7}`: "outputs: json: cannot unmarshal",
		`{"v":1`:              "outputs: unexpected end",
		"":                    "outputs: unexpected end",
	} {
		none, err := host.ParseOutputs(text)
		require.ErrorContains(t, err, want, text)
		require.Zero(t, none, text)
	}
}
