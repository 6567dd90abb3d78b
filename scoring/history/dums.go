package history

// Dums is the kind of round in which the dums of a rhythm are tapped.
const Dums = "dums"

var dums = Kind{
	ID: Dums, Play: Tapped, Along: true, Guess: anyPlace,
	own: (*Round).tapped, check: checkTapped, right: tappedRight,
}
