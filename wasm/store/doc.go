//go:build js

// Package store keeps what belongs to the people who practise here, in one database of
// the browser, and what of it must be safe at once in the local storage.
//
// Of each round there is its line, as it was written; beside it a card by which it is
// found, which says who played; and a summary of each person's day (package diary), from
// which pictures are drawn at once. All three are written in one transaction. A summary
// of another number of rounds than there are cards is made anew from the lines, so who
// changes many rounds at once just removes the summaries. A transaction goes on for as
// long as each wait in it is for the browser's own answer; each answer is a task of its
// own, and so is each slice of other long work: none holds up a frame.
//
// A round lies in the local storage (the spool) before its review is shown, and until the
// database has it; the next page to open the database takes what lies there. What the
// browser refused waits, is tried again, and is told of ([view.Storage]).
//
// Outputs, what belongs to classes and what is remembered of settings are things: small
// texts, each a record of the database under a key of its own, with the time at which it
// was written; of two the later counts (package memo). All of them are in the local
// storage too, which can be read before the first frame, and a window that writes one
// tells the others. What programs before the things had kept is taken over at the start.
//
// A window lets go of the database when another wants to upgrade it. A page that finds a
// later version touches nothing, and asks to be reloaded. Stores are made wherever they
// lack: [databaseVersion] says how versions are counted.
package store
