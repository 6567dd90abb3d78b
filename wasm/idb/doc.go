//go:build js

// Package idb is the browser's database as this program uses it: transactions in which each
// request is waited for between two frames, and long work in slices.
package idb
