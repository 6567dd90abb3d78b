// Package paper is a browser on paper: all that is outside the session, made of
// nothing but arguments, so that a whole round plays natively in milliseconds. Tests
// alone import it.
//
// A [Browser] has a device whose sound a real [clock.Clock] times, as the page's bridge
// does it: blocks of the stream are placed at exact frames ahead, each start is an epoch,
// and readings tell how the device's clock stands. It shows screens, whose items are
// pressed only where they are really there, keeps a history through which one goes back
// and forward, and keeps rounds, outputs and sets in a [Storage] that outlasts the page.
// Time passes only when the test lets it, frame by frame.
//
// A [Player] sits before it: she hears what the device plays, when it is heard, and taps
// and answers by her [Ear] alone, as exactly or as badly as the test says.
//
// No sound is rendered: of the stream there is what strikes when. That the samples are
// right, audio's own tests say; that the page's scripts do as the device here does, those
// in a browser.
package paper
