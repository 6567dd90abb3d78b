// Package diary turns finished rounds into what a practice diary shows: days, and the
// figures that rest on them.
package diary
