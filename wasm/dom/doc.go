//go:build js

// Package dom is the page in the browser: it turns screens into elements, patches what
// changed, tells what a person did, and keeps the browser's history. It knows nothing of what
// is kept.
package dom
