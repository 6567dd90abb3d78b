// Package site is the static site as HTTP: the names of its files, the headers
// that they are served with, and a handler that serves them.
//
// The command serve runs the handler, the command pack gives the files their
// names, and tests in a real browser play over the same handler, so that what is
// tested is what is served.
//
// A site is one page, index.html, and the files that it refers to. Every file but
// the page has a name that holds a hash of its content (see [Name]), and so may
// be kept by a browser for ever; the page itself is asked for anew each time.
// Beside a file may lie the same file compressed, with .br (Brotli, RFC 7932) or
// .gz (gzip, RFC 1952) added to its name.
//
// Not handled: listings of folders, more than one page, uploads, TLS.
package site
