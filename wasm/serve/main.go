// Command serve shows a built page on this machine.
//
//	serve [-dir dist] [-port 8080] [-base /]
//
// The page is then at http://localhost:8080/, for browsers on this machine only:
// a browser trusts localhost as it trusts https, and gives the page all that it
// needs. The environment variable PORT chooses another port; the flag goes before
// it. Port 0 takes any port that is free. An interrupt ends the program.
package main

import (
	"context"
	"errors"
	"flag"
	"fmt"
	"io"
	"io/fs"
	"net"
	"net/http"
	"os"
	"os/signal"
	"strconv"
	"syscall"
	"time"

	"groundbeat/wasm/site"
)

func main() {
	ctx, stop := signal.NotifyContext(context.Background(), os.Interrupt, syscall.SIGTERM)
	defer stop()
	err := run(ctx, os.Args[1:], os.Getenv("PORT"), os.Stdout)
	if errors.Is(err, flag.ErrHelp) {
		return
	}
	if err != nil {
		fmt.Fprintln(os.Stderr, "serve:", err)
		os.Exit(1)
	}
}

// run serves until ctx is done. envPort is what the environment says of the port.
func run(ctx context.Context, args []string, envPort string, out io.Writer) error {
	flags := flag.NewFlagSet("serve", flag.ContinueOnError)
	dir := flags.String("dir", "dist", "the folder that holds the built page")
	port := flags.String("port", "", "the `port` to serve on (default: $PORT, else 8080)")
	base := flags.String("base", "/", "the `path` that the page lies below")
	if err := flags.Parse(args); err != nil {
		return err
	}
	files := os.DirFS(*dir)
	if _, err := fs.Stat(files, site.Index); err != nil {
		return fmt.Errorf("no page in %s: build it first (make build), or name its folder with -dir", *dir)
	}
	listener, err := listen(first(*port, envPort, "8080"))
	if err != nil {
		return err
	}
	o := site.Options{Base: *base}
	fmt.Fprintf(out, "Groundbeat is at http://localhost:%d%s\n", listener.Addr().(*net.TCPAddr).Port, o.Path())
	return serve(ctx, listener, site.New(files, o))
}

// first is the first of its arguments that is not empty.
func first(words ...string) string {
	for _, w := range words {
		if w != "" {
			return w
		}
	}
	return ""
}

// listen opens a port of this machine, closed to all others. Its errors say what
// to do.
func listen(port string) (net.Listener, error) {
	n, err := strconv.ParseUint(port, 10, 16)
	if err != nil {
		return nil, fmt.Errorf("port %q is no number from 0 to 65535", port)
	}
	l, err := net.Listen("tcp", net.JoinHostPort("localhost", port))
	switch {
	case errors.Is(err, syscall.EADDRINUSE):
		return nil, fmt.Errorf("port %s is in use by another program; choose another, for example PORT=%d", port, another(n))
	case errors.Is(err, syscall.EACCES):
		return nil, fmt.Errorf("port %s may not be opened by this user; choose one above 1023, for example PORT=8080", port)
	case err != nil:
		return nil, fmt.Errorf("port %s cannot be opened: %w", port, err)
	}
	return l, nil
}

// another is a port to suggest in place of n.
func another(n uint64) uint64 {
	if n < 65535 {
		return n + 1
	}
	return 8080
}

// serve answers requests until ctx is done, and lets those that run then finish
// for a second.
func serve(ctx context.Context, l net.Listener, h http.Handler) error {
	server := &http.Server{Handler: h, ReadHeaderTimeout: 10 * time.Second}
	failed := make(chan error, 1)
	go func() { failed <- server.Serve(l) }()
	select {
	case err := <-failed:
		return err
	case <-ctx.Done():
	}
	last, cancel := context.WithTimeout(context.Background(), time.Second)
	defer cancel()
	if err := server.Shutdown(last); err != nil {
		return server.Close()
	}
	return nil
}
