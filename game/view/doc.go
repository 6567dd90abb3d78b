// Package view describes screens and pictures as data, with no device in sight.
//
// A [Screen] is a tree of [Item] values: headings, texts, buttons, tables,
// places for pictures. One renderer of the page turns it into elements and
// patches what changed, keyed by each item's id. A [Picture] is a list of
// shapes in units of its own width. A painter draws it where it lives and
// moves; [WriteSVG] writes the same list where it stands still. Every picture
// has a text twin, which says in words what the picture shows.
//
// Functions here are pure: a model goes in, a screen or a picture comes out.
// Actions are ids, never functions; who performs them is not known here.
// All wording comes from [Words], one file for the whole product.
//
// Directions and signs. x runs to the right, y down, angles are turns clockwise
// from the top (0 = twelve o'clock, 0.25 = three o'clock). Offsets are tap −
// stroke: negative ahead, positive behind.
//
// Not handled here: layout and type, which are the style sheet's, and events,
// which are the page's.
package view
