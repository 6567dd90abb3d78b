// Package roundview makes the screens of rounds, from getting one ready to its review: Dums,
// Catch the stop, Carry on, Which rhythm? and Hear the change; and the one sentence that a
// review begins with.
package roundview
