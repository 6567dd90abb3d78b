package link

import (
	"groundbeat/game/view"
	"testing"

	"github.com/stretchr/testify/require"
)

// entries is a browser's history, by marks.
type entries struct {
	marks []string
	at    int
}

func (e *entries) push(mark string) {
	e.marks = append(e.marks[:e.at+1], mark)
	e.at++
}

func (e *entries) go1(t *Trail, by int) (Came, string) {
	e.at += by
	return t.Come(e.marks[e.at])
}

func trailed() (*Trail, *entries) {
	t := NewTrail("x")
	return t, &entries{marks: []string{t.At()}}
}

// From a round, and from its review, back leads to where it was got ready, and from there
// to where one was before.
func TestBackFromARound(t *testing.T) {
	trail, browser := trailed() // Home
	browser.push(trail.Visit()) // Dums
	ready := trail.At()
	browser.push(trail.Enter(view.ScreenDums))
	require.True(t, trail.In())
	came, _ := browser.go1(trail, -1)
	require.Equal(t, CameOut, came)
	require.Equal(t, ready, trail.At())
	require.False(t, trail.In())
	came, _ = browser.go1(trail, -1)
	require.Equal(t, CameElsewhere, came)
	came, _ = browser.go1(trail, 2)
	require.Equal(t, CameElsewhere, came, "what was left is no longer there: its address is opened")
	require.False(t, trail.In())
}

// Leaving a round by a button leads to the same entry as the back button, so that no
// entries pile up.
func TestLeavingIsGoingBack(t *testing.T) {
	trail, browser := trailed()
	ready := trail.At()
	for range 3 {
		browser.push(trail.Enter(view.ScreenDums))
		require.Equal(t, browser.marks[browser.at], trail.Leave(), "the entry to step back from")
		came, _ := browser.go1(trail, -1)
		require.Equal(t, CameHere, came)
		require.Equal(t, ready, trail.At())
	}
	require.Len(t, browser.marks, 2)
}

// From Set-up and what is played there, back leads to the review that one came from.
func TestBackToTheReview(t *testing.T) {
	trail, browser := trailed()
	ready := trail.At()
	browser.push(trail.Enter(view.ScreenDums))
	review := trail.At()
	browser.push(trail.Visit()) // Set-up
	browser.push(trail.Enter(view.ScreenSetUp))
	trail.Leave() // it is measured, and kept
	came, _ := browser.go1(trail, -1)
	require.Equal(t, CameHere, came)
	came, screen := browser.go1(trail, -1)
	require.Equal(t, CameToRound, came)
	require.Equal(t, view.ScreenDums, screen)
	require.Equal(t, review, trail.At())
	came, _ = browser.go1(trail, -1)
	require.Equal(t, CameOut, came)
	require.Equal(t, ready, trail.At())
}

// A review that has given way to another round is not come back to: its address is opened.
func TestReviewHasGivenWay(t *testing.T) {
	trail, browser := trailed()
	browser.push(trail.Enter(view.ScreenDums))
	browser.push(trail.Visit()) // Listen
	browser.push(trail.Visit()) // Dums, another round
	trail.Clear(view.ScreenDums)
	browser.push(trail.Enter(view.ScreenDums))
	newer := trail.At()
	require.Len(t, browser.marks, 5)
	came, _ := browser.go1(trail, -3)
	require.Equal(t, CameElsewhere, came)
	came, screen := browser.go1(trail, 3)
	require.Equal(t, CameToRound, came)
	require.Equal(t, view.ScreenDums, screen)
	require.Equal(t, newer, trail.At())
}

// After a reload the entries of before are addresses, no more.
func TestEntriesOfBefore(t *testing.T) {
	before, browser := trailed()
	browser.push(before.Enter(view.ScreenDums))
	trail := NewTrail("y")
	browser.marks[browser.at] = trail.At() // the page marks the entry that it opens with
	came, _ := browser.go1(trail, -1)
	require.Equal(t, CameElsewhere, came)
	require.False(t, trail.In())
}
