package main

import (
	"bufio"
	"context"
	"io"
	"net"
	"net/http"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// page makes a folder with a page in it.
func page(t *testing.T) string {
	dir := t.TempDir()
	require.NoError(t, os.WriteFile(filepath.Join(dir, "index.html"), []byte("a page"), 0o600))
	return dir
}

func TestServesUntilInterrupted(t *testing.T) {
	ctx, interrupt := context.WithCancel(t.Context())
	defer interrupt()
	out, in := io.Pipe()
	ended := make(chan error, 1)
	args := []string{"-dir", page(t), "-base", "a/b"}
	go func() { ended <- run(ctx, args, "0", in) }()

	line, err := bufio.NewReader(out).ReadString('\n')
	require.NoError(t, err)
	require.Regexp(t, `^Groundbeat is at http://localhost:[1-9][0-9]*/a/b/\n$`, line)
	address := strings.TrimSpace(strings.TrimPrefix(line, "Groundbeat is at "))
	answer, err := http.Get(address)
	require.NoError(t, err)
	defer answer.Body.Close()
	content, err := io.ReadAll(answer.Body)
	require.NoError(t, err)
	require.Equal(t, "a page", string(content))
	require.Equal(t, "same-origin", answer.Header.Get("Cross-Origin-Opener-Policy"))

	interrupt()
	select {
	case err := <-ended:
		require.NoError(t, err)
	case <-time.After(5 * time.Second):
		t.Fatal("still serving after an interrupt")
	}
}

// Each error is one line that says what is wrong and what to do.
func TestErrors(t *testing.T) {
	busy, err := net.Listen("tcp", "localhost:0")
	require.NoError(t, err)
	defer busy.Close()
	_, port, err := net.SplitHostPort(busy.Addr().String())
	require.NoError(t, err)
	dir := page(t)

	for _, c := range []struct {
		name, env string
		args      []string
		want      string
	}{
		{"busy, from the environment", port, []string{"-dir", dir}, `port ` + port + ` is in use by another program; choose another, for example PORT=[0-9]+`},
		{"busy, the flag before the environment", "0", []string{"-dir", dir, "-port", port}, `port ` + port + ` is in use .*PORT=[0-9]+`},
		{"a word", "eighty", []string{"-dir", dir}, `port "eighty" is no number from 0 to 65535`},
		{"too great", "65536", []string{"-dir", dir}, `port "65536" is no number from 0 to 65535`},
		{"negative", "", []string{"-dir", dir, "-port", "-1"}, `port "-1" is no number from 0 to 65535`},
		{"no page", "0", []string{"-dir", filepath.Join(dir, "none")}, `no page in .*none: build it first \(make build\), or name its folder with -dir`},
	} {
		var out strings.Builder
		err := run(t.Context(), c.args, c.env, &out)
		require.Error(t, err, c.name)
		require.Regexp(t, "^"+c.want+"$", err.Error(), c.name)
		require.Empty(t, out.String(), "%s: no address is promised", c.name)
	}
}
