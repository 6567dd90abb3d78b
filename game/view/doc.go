// Package view is what screens are made of, as data, with no device in sight.
//
// A [Screen] is a tree of [Item] values: headings, texts, buttons, tables, places for
// pictures. One renderer of the page turns it into elements and patches what changed,
// keyed by each item's id. The screens themselves are in packages of their own (roundview and
// its neighbours); here is what they share: roles, action ids, controls, notes, the frame and the foot.
//
// Functions here are pure: a model goes in, a screen comes out. Actions are ids, never
// functions; who performs them is not known here. All wording comes from [say.Words].
//
// Not handled here: layout and type, which are the style sheet's, and events, which are
// the page's.
package view
