package assets_test

import (
	"io/fs"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
)

// Every rhythm of the folder is embedded, byte for byte.
func TestRhythmsAreEmbedded(t *testing.T) {
	paths, err := fs.Glob(os.DirFS("."), "rhythms/*.txt")
	require.NoError(t, err)
	require.Contains(t, paths, "rhythms/maqsum.txt")
	embedded, err := fs.Glob(assets.Rhythms, "rhythms/*")
	require.NoError(t, err)
	require.Equal(t, paths, embedded)
	for _, path := range paths {
		want, err := os.ReadFile(path)
		require.NoError(t, err)
		got, err := assets.Rhythms.ReadFile(path)
		require.NoError(t, err)
		require.Equal(t, string(want), string(got))
	}
}
