// Package session is what is going on: the screen that is shown, the round that is
// played, and what came of it. It decides what happens next, and knows nothing of
// engine and browser.
//
// Words and controls are not here: a screen is made by package view and shown by the
// page.
package session
