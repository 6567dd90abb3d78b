// Package soundview makes the screens that are about what is heard: Listen, Set-up and Sound
// check.
package soundview
