// Package classview makes the screens of Class: the warm-up as a teacher gets it ready, as a
// room sees it, and the page after it.
package classview
