package site

import (
	"crypto/sha256"
	"encoding/hex"
	"path"
	"regexp"
	"strings"
)

// Index is the name of the page, the one file without a hash in its name.
const Index = "index.html"

// hashDigits is how many hexadecimal digits of the SHA-256 a name holds: 48 bits,
// so that among a thousand files two share a name with a chance of about 2⁻²⁹.
const hashDigits = 12

var hashedName = regexp.MustCompile(`\.[0-9a-f]{12}(\.[0-9A-Za-z_]+)+$`)

// Name is the name under which a file of the given content is kept:
// "fonts/sans.woff2" becomes "fonts/sans.0123456789ab.woff2". The hash stands
// before the last extension; a file without one gets the hash at its end and is
// then not seen as hashed by [Hashed].
func Name(name string, content []byte) string {
	sum := sha256.Sum256(content)
	ext := path.Ext(name)
	return strings.TrimSuffix(name, ext) + "." + hex.EncodeToString(sum[:])[:hashDigits] + ext
}

// Hashed reports whether a name holds a hash of its content, so that what it
// names can never change. It holds for a compressed twin too ("app.0123456789ab.wasm.br").
func Hashed(name string) bool { return hashedName.MatchString(path.Base(name)) }

// types are the content types by extension. They are not taken from the
// machine's own tables, which differ from machine to machine: WebAssembly that
// is not application/wasm is refused by the streaming compiler.
var types = map[string]string{
	".css":         "text/css; charset=utf-8",
	".html":        "text/html; charset=utf-8",
	".ico":         "image/x-icon",
	".js":          "text/javascript; charset=utf-8",
	".json":        "application/json",
	".png":         "image/png",
	".svg":         "image/svg+xml",
	".ttf":         "font/ttf",
	".txt":         "text/plain; charset=utf-8",
	".wasm":        "application/wasm",
	".webmanifest": "application/manifest+json",
	".woff2":       "font/woff2",
}

// Type is the content type of a file, by its name; application/octet-stream if
// the extension is not known here.
func Type(name string) string {
	if t, ok := types[path.Ext(name)]; ok {
		return t
	}
	return "application/octet-stream"
}

// Compressible reports whether compressing a file pays: .woff2 and .png are
// compressed already.
func Compressible(name string) bool {
	switch path.Ext(name) {
	case ".woff2", ".png", ".br", ".gz":
		return false
	}
	return true
}
