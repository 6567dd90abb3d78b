package warmup

import (
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
)

// everyHands are the words, some numbers, and nothing.
func everyHands() []Hands {
	return append(HandsWords(), "", "0", "1", "2", "9", "10", "12", "99", "100", "999")
}

// What is valid is a word, a number of at most three figures as it is written, or nothing.
func TestHandsValid(t *testing.T) {
	for _, h := range everyHands() {
		require.True(t, h.Valid(), h)
	}
	for _, h := range []Hands{"1000", "-1", "+1", "007", "1.5", "Most", "many", " 7", "7 ", "٧"} {
		require.False(t, h.Valid(), h)
	}
}

// A number is told as what it is, and none as 0; words and nothing are no numbers.
func TestHandsNumber(t *testing.T) {
	for n := range 1000 {
		got, ok := Hands(strconv.Itoa(n)).Number()
		require.True(t, ok)
		require.Equal(t, n, got)
	}
	n, ok := None.Number()
	require.True(t, ok)
	require.Zero(t, n)
	for _, h := range []Hands{Most, Some, Few, ""} {
		_, ok := h.Number()
		require.False(t, ok, h)
	}
}

// Whatever is pressed, what stands there is valid; a key that means nothing changes
// nothing; and to take back always does.
func TestPressKeepsHandsValid(t *testing.T) {
	keys := []string{"", "most", "some", "few", "none", "x", "-", "12", " ", "MOST"}
	for figure := range 10 {
		keys = append(keys, strconv.Itoa(figure))
	}
	for _, h := range everyHands() {
		for _, key := range keys {
			next := h.Press(key)
			require.True(t, next.Valid(), "%q and %q", h, key)
			if !Hands(key).Valid() {
				require.Equal(t, h, next)
			}
			require.Equal(t, Hands(""), next.Press(""))
		}
	}
}

// Every number of at most three figures can be pressed figure by figure, after whatever
// word or none stood there.
func TestEveryNumberCanBePressed(t *testing.T) {
	for _, before := range append(HandsWords(), "") {
		for n := range 1000 {
			h := before
			for _, figure := range strconv.Itoa(n) {
				h = h.Press(string(figure))
			}
			require.Equal(t, Hands(strconv.Itoa(n)), h)
		}
	}
}

// More than other hands is less the other way round; what cannot be compared cannot
// either way; and hands are as many as themselves, but for nothing.
func TestCompareBothWays(t *testing.T) {
	for _, a := range everyHands() {
		for _, b := range everyHands() {
			more, ok := a.compare(b)
			less, back := b.compare(a)
			require.Equal(t, ok, back, "%q %q", a, b)
			if ok {
				require.Equal(t, more, -less, "%q %q", a, b)
			}
		}
		same, ok := a.compare(a)
		require.Equal(t, a != "", ok)
		require.Zero(t, same)
	}
}

// Words go from most to none, numbers as they are counted, and no hands are no hands in
// either; any other word and number cannot be compared.
func TestCompareInOrder(t *testing.T) {
	words := HandsWords()
	for i := range words[1:] {
		more, ok := words[i].compare(words[i+1])
		require.True(t, ok && more > 0, "%s and %s", words[i], words[i+1])
	}
	more, ok := Hands("10").compare("9")
	require.True(t, ok && more > 0, "as numbers, not letter by letter")
	same, ok := None.compare("0")
	require.True(t, ok && same == 0)
	for _, word := range []Hands{Most, Some, Few} {
		_, ok := word.compare("3")
		require.False(t, ok, word)
		more, ok := word.compare("0")
		require.True(t, ok && more > 0, word)
	}
	more, ok = Hands("3").compare(None)
	require.True(t, ok && more > 0)
}

// Hands are up but for none, 0 and nothing.
func TestUp(t *testing.T) {
	for _, h := range everyHands() {
		require.Equal(t, h != "" && h != None && h != "0", h.up(), h)
	}
}

// What a task was taken for is never the right answer and always has hands; no wrong
// answer has more that can be compared with it.
func TestTakenHasTheMostHands(t *testing.T) {
	choices := quiz.Plain("a", "b", "c")
	for _, a := range everyHands() {
		for _, b := range everyHands() {
			for _, c := range everyHands() {
				hands := map[string]Hands{"a": a, "b": b, "c": c}
				id := taken(choices, "b", []Hands{a, b, c})
				if id == "" {
					require.False(t, a.up() || c.up(), "%q %q", a, c)
					continue
				}
				require.NotEqual(t, "b", id)
				require.True(t, hands[id].up())
				other := map[string]string{"a": "c", "c": "a"}[id]
				more, ok := hands[other].compare(hands[id])
				require.False(t, ok && more > 0, "%q %q", a, c)
			}
		}
	}
}

// A verdict tells that a room knew only where the right answer has hands and more than
// any other that was counted; and that it mixed two up only where another has hands.
func TestVerdictFollowsTheHands(t *testing.T) {
	for _, right := range everyHands() {
		for _, a := range everyHands() {
			for _, b := range everyHands() {
				d := Done{Kind: HandsUp, Choices: []string{"x", "y", "z"}, Right: "y", Hands: []Hands{a, right, b}}
				swapped := Done{Kind: HandsUp, Choices: []string{"z", "x", "y"}, Right: "y", Hands: []Hands{b, a, right}}
				require.Equal(t, d.Verdict(), swapped.Verdict(), "the order of the answers tells nothing")
				switch d.Verdict() {
				case Knew:
					require.True(t, right.up())
					for _, other := range []Hands{a, b} {
						more, ok := right.compare(other)
						require.True(t, other == "" || ok && more > 0, "%q of %q %q", right, a, b)
					}
				case MixedUp:
					require.True(t, a.up() || b.up())
					require.NotEmpty(t, d.TakenFor())
				}
			}
		}
	}
	require.Equal(t, Untold, Done{Right: "y"}.Verdict(), "nothing was asked")
}
