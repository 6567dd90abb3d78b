package site

// Policy is the content security policy of the page, in the form that a
// <meta http-equiv> element may carry: hosts that let nobody set headers have
// only that. Everything comes from the page's own origin; compiling WebAssembly
// is allowed, evaluating text as a script is not, and neither are inline scripts,
// inline styles and blob: addresses.
const Policy = "default-src 'none'; script-src 'self' 'wasm-unsafe-eval'; connect-src 'self'; " +
	"img-src 'self'; style-src 'self'; font-src 'self'; manifest-src 'self'; worker-src 'self'; " +
	"base-uri 'none'; form-action 'none'"

// HeaderPolicy is Policy with what only a header may say: nobody may frame the
// page (a <meta> element must not carry frame-ancestors, CSP level 3, §3.3).
const HeaderPolicy = Policy + "; frame-ancestors 'none'"

// headers are sent with every answer, also with errors. The first two make the
// page cross-origin isolated, which is what gives event time stamps their finer
// resolution (0.005 ms in place of 0.1 ms in Chromium).
var headers = [...]struct{ name, value string }{
	{"Cross-Origin-Opener-Policy", "same-origin"},
	{"Cross-Origin-Embedder-Policy", "require-corp"},
	{"Cross-Origin-Resource-Policy", "same-origin"},
	{"Content-Security-Policy", HeaderPolicy},
	{"X-Content-Type-Options", "nosniff"},
	{"Referrer-Policy", "no-referrer"},
	{"Permissions-Policy", "microphone=(), camera=(), geolocation=()"},
}

// The two lives of a file in a browser's cache.
const (
	cacheForEver = "public, max-age=31536000, immutable"
	cacheAskAnew = "no-cache"
)
