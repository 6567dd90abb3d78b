package history

import (
	"bytes"
	"slices"
)

// Handed returns a line as it is handed out: as it is, and besides with the
// nickname of who played; "" adds nothing. A line that has one already, or that is
// no object, stays as it is. line is not written to.
func Handed(line []byte, player string) []byte {
	end := bytes.TrimRight(line, blank)
	if player == "" || len(end) < len(`{"v":1}`) || end[len(end)-1] != '}' || bytes.Contains(line, []byte(`"player"`)) {
		return line
	}
	return slices.Concat(end[:len(end)-1], []byte(`,"player":`), encode(player), []byte("}"))
}
