package site

import (
	"bytes"
	"crypto/sha256"
	"encoding/hex"
	"io/fs"
	"net/http"
	"path"
	"strconv"
	"strings"
	"time"
)

// Options are what may differ between two places that serve one site.
type Options struct {
	// Base is the path that the site lies below, such as "/a/b/"; empty means
	// "/". Slashes at its ends may be left out.
	Base string
}

// Path is the path of the page: Base with a slash at both ends.
func (o Options) Path() string { return strings.TrimSuffix(path.Join("/", o.Base), "/") + "/" }

// New returns a handler that serves the site in files. It answers GET and HEAD,
// also for ranges and for what the client already has; it knows no listings, and
// no files whose name begins with a dot. It reads a file at each request, so that
// a site that is built anew is served at once.
func New(files fs.FS, o Options) http.Handler {
	return &handler{files, o.Path()}
}

type handler struct {
	files fs.FS
	base  string // with a slash at both ends
}

func (h *handler) ServeHTTP(w http.ResponseWriter, r *http.Request) {
	for _, f := range headers {
		w.Header().Set(f.name, f.value)
	}
	if r.Method != http.MethodGet && r.Method != http.MethodHead {
		w.Header().Set("Allow", "GET, HEAD")
		refuse(w, http.StatusMethodNotAllowed)
		return
	}
	if r.URL.Path+"/" == h.base {
		h.addSlash(w, r)
		return
	}
	name, ok := h.name(r.URL.Path)
	if !ok || !h.serve(w, r, name) {
		refuse(w, http.StatusNotFound)
	}
}

// addSlash sends a client from "/a/b" to "/a/b/", without which the page's own
// references would be looked for in "/a/".
func (h *handler) addSlash(w http.ResponseWriter, r *http.Request) {
	to := h.base
	if r.URL.RawQuery != "" {
		to += "?" + r.URL.RawQuery
	}
	w.Header().Set("Cache-Control", cacheAskAnew)
	http.Redirect(w, r, to, http.StatusTemporaryRedirect)
}

// name turns the path of a request into the name of a file. No such name leads
// out of the site: it has no element "..", and none that begins with a dot.
func (h *handler) name(urlPath string) (string, bool) {
	name, ok := strings.CutPrefix(urlPath, h.base)
	if !ok {
		return "", false
	}
	if name == "" {
		return Index, true
	}
	hidden := strings.HasPrefix(name, ".") || strings.Contains(name, "/.")
	return name, fs.ValidPath(name) && !hidden
}

// serve answers with a file, or reports that there is none.
func (h *handler) serve(w http.ResponseWriter, r *http.Request, name string) bool {
	if !h.holds(name) {
		return false
	}
	e := choose(r.Header.Get("Accept-Encoding"), func(e encoding) bool { return h.holds(name + e.ending) })
	content, err := fs.ReadFile(h.files, name+e.ending)
	if err != nil {
		return false
	}
	describe(w.Header(), name, e, content)
	http.ServeContent(w, r, name, time.Time{}, bytes.NewReader(content))
	return true
}

// holds reports whether the site has a file (not a folder) of this name.
func (h *handler) holds(name string) bool {
	info, err := fs.Stat(h.files, name)
	return err == nil && info.Mode().IsRegular()
}

// describe sets the headers of a file about to be sent in the given coding. The
// entity tag is that of the bytes sent: two codings of one file have two tags.
func describe(h http.Header, name string, e encoding, content []byte) {
	sum := sha256.Sum256(content)
	h.Set("ETag", `"`+hex.EncodeToString(sum[:16])+`"`)
	h.Set("Content-Type", Type(name))
	h.Set("Content-Length", strconv.Itoa(len(content)))
	h.Set("Vary", "Accept-Encoding")
	h.Set("Cache-Control", cacheAskAnew)
	if Hashed(name) {
		h.Set("Cache-Control", cacheForEver)
	}
	if e.token != "" {
		h.Set("Content-Encoding", e.token)
	}
}

// refuse answers with a status and its words as plain text.
func refuse(w http.ResponseWriter, status int) {
	w.Header().Set("Cache-Control", cacheAskAnew)
	http.Error(w, http.StatusText(status), status)
}
