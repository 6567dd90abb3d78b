package history

import (
	"errors"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"testing/iotest"

	"github.com/stretchr/testify/require"
)

// Whatever stands between them, the rounds of a file are read in their order, each line
// that is none is told with its number, and none of either is lost; also where the file
// comes byte by byte, and with the line ends and the mark of other systems.
func TestNoLineOfAFileIsLost(t *testing.T) {
	chance := rand.New(rand.NewPCG(5, 5))
	rounds := everyRound(t)
	for range 60 {
		var text strings.Builder
		var want []Round
		var broken []int
		if chance.IntN(2) == 0 {
			text.WriteString("\uFEFF")
		}
		n := 1 + chance.IntN(12)
		for line := range n {
			switch chance.IntN(4) {
			case 0:
				text.WriteString([]string{"", "  ", "\t"}[chance.IntN(3)])
			case 1:
				text.WriteString([]string{"{", `{"v":2}`, "x"}[chance.IntN(3)])
				broken = append(broken, line+1)
			default:
				r := rounds[chance.IntN(len(rounds))]
				made, err := Format(r)
				require.NoError(t, err)
				text.Write(made)
				want = append(want, r)
			}
			if line < n-1 || chance.IntN(2) == 0 {
				text.WriteString([]string{"\n", "\r\n"}[chance.IntN(2)])
			}
		}
		var got []Round
		var numbers []int
		for r, err := range Lines("f", iotest.OneByteReader(strings.NewReader(text.String()))) {
			var bad *Error
			var newer *Newer
			switch {
			case errors.As(err, &bad):
				numbers = append(numbers, bad.Line)
			case errors.As(err, &newer):
				numbers = append(numbers, newer.Line)
			default:
				require.NoError(t, err)
				got = append(got, r)
			}
		}
		require.True(t, slices.Equal(broken, numbers), "%v %v: %q", broken, numbers, text.String())
		require.Len(t, got, len(want))
		for i := range want {
			require.Equal(t, want[i], got[i])
		}
	}
}

// Who has seen enough of a file does not read on.
func TestLinesCanBeLeft(t *testing.T) {
	n := 0
	for range Lines("f", strings.NewReader("x\ny\nz\n")) {
		n++
		break
	}
	require.Equal(t, 1, n)
}

// A byte order mark stands before a file, and nowhere else.
func TestByteOrderMarkBegins(t *testing.T) {
	line, err := Format(record(t))
	require.NoError(t, err)
	rounds, errs := readLines("f", strings.NewReader("\uFEFF"+string(line)+"\n\uFEFF"+string(line)+"\n"))
	require.Len(t, rounds, 1)
	require.Len(t, errs, 1)
	require.ErrorContains(t, errs[0], "f:2:1")
}
