//go:build js

// Package store keeps what belongs to the people who practise here, in one database of the
// browser, and what of it must be safe at once in the local storage.
package store
