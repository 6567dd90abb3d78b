//go:build js

// Package idb is the browser's storage as this program uses it: its database, in
// transactions in which each request is waited for between two frames, long work in slices,
// and the texts of its local storage. What a browser throws becomes an error.
package idb
