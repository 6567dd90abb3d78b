//go:build js

package dom

import (
	"io"
	"strings"
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/require"
)

// A file is read to its end, whatever the size of the pieces.
func TestFileReader(t *testing.T) {
	for _, size := range []int{0, 1, pieceSize - 1, pieceSize, pieceSize + 1, 3*pieceSize + 7} {
		text := strings.Repeat("é1234567", size/9+1)[:size]
		bytes := js.Global().Get("Uint8Array").New(size)
		js.CopyBytesToJS(bytes, []byte(text))
		blob := js.Global().Get("Blob").New([]any{bytes})
		got, err := io.ReadAll(&fileReader{file: blob})
		require.NoError(t, err)
		require.Equal(t, text, string(got))
	}
}

// A file that is gone meanwhile is an error, which says why.
func TestFileReaderFails(t *testing.T) {
	gone := js.Global().Call("eval", `({ size: 5, slice: () => ({ arrayBuffer: () => Promise.reject(new DOMException("gone", "NotFoundError")) }) })`)
	_, err := io.ReadAll(&fileReader{file: gone})
	require.EqualError(t, err, "NotFoundError: gone")
}
