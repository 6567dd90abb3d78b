// Package say is what the program says: its sentences by key, and numbers, lists and days
// in words.
package say
