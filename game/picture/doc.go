// Package picture is what is drawn: the drumhead, the line of counts, a room's wall, as
// lists of shapes.
//
// A [Picture] is a list of shapes in units of its own width. A painter draws it where it
// lives and moves; [WriteSVG] writes the same list where it stands still. Every picture has
// a text twin, which says in words what it shows.
//
// Directions and signs. x runs to the right, y down, angles are turns clockwise from the
// top (0 = twelve o'clock, 0.25 = three o'clock). Offsets are tap − stroke: negative ahead,
// positive behind.
package picture
