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
//
// The look. Three sketches of the play screen were put side by side as real screenshots
// (testdata/pictures/sketches.png): a brass hoop with a hand that turns, an inlaid rim
// round which a pearl of light runs, and bare lines with an arc that fills. The hand is
// read as a clock, and the arc as a progress bar; the second is a drum at first sight,
// and keeps the skin free for taps. The teeth of its inlay are 55, no multiple of any
// rhythm's counts, so that none is taken for a step. Beads in the middle are the round's
// eights. Of three sketches of the line with both drums, the drums' names stand before
// the rows: that leaves the strokes most room.
//
// Where the system asks for less motion, nothing glides: the sweep and the mark on the
// line stand on the stroke that was heard last, the hands where they struck last. Strokes
// that are being asked must not be told so: there the sweep stands on the counts.
package picture
