// Package link is what a link says: which screen, and how it is set. It reads queries,
// however wrong they are, and writes them; and keeps in step with the browser's history.
package link
