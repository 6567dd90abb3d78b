package diary

// Guesses is exported for tests.
var Guesses = guesses
