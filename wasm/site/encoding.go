package site

import (
	"math"
	"strconv"
	"strings"
)

// encoding is a content coding and the ending of the files that hold it.
type encoding struct{ token, ending string }

// encodings are the codings that a file may lie ready in, best first.
var encodings = [...]encoding{{"br", ".br"}, {"gzip", ".gz"}}

// weights reads an Accept-Encoding header (RFC 9110, §12.5.3): coding to weight,
// 0 (refused) to 1. A weight that is no number, or out of range, counts as 0: a
// coding is not forced on a client that wrote nonsense.
func weights(header string) map[string]float64 {
	w := map[string]float64{}
	for item := range strings.SplitSeq(header, ",") {
		token, parameters, _ := strings.Cut(item, ";")
		if token = strings.ToLower(strings.TrimSpace(token)); token != "" {
			w[token] = weight(parameters)
		}
	}
	return w
}

// weight reads the "q=0.5" behind a coding; without one the weight is 1.
func weight(parameters string) float64 {
	name, value, found := strings.Cut(parameters, "=")
	if !found || !strings.EqualFold(strings.TrimSpace(name), "q") {
		return 1
	}
	q, err := strconv.ParseFloat(strings.TrimSpace(value), 64)
	if err != nil || !(q >= 0 && q <= 1) {
		return 0
	}
	return q
}

// choose picks the coding to send: the one with the greatest weight among those
// that lie ready, the better compressed where weights are equal. It returns the
// zero encoding for the file as it is, which is also what a client gets that
// refuses everything.
func choose(header string, ready func(encoding) bool) encoding {
	w := weights(header)
	best, most := encoding{}, plain(w)
	for _, e := range encodings {
		q, named := w[e.token]
		if !named {
			q = w["*"]
		}
		if q > 0 && q > most && ready(e) {
			best, most = e, q
		}
	}
	return best
}

// plain is the weight that a coding must exceed to be sent in place of the file
// as it is: what the header says of "identity", and 0 where it says nothing.
// At equal weights the coding wins, since it saves time.
func plain(w map[string]float64) float64 {
	return math.Nextafter(w["identity"], -1)
}
