// Package warmup is the warm-up of a class: a set and its seed become tasks for a room, a run
// goes through them as a teacher presses, and what the hands said is an entry of the class's
// diary.
package warmup
