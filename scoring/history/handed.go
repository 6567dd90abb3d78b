package history

import "slices"

// Handed returns a line as it is handed out: as it is, and besides with the
// nickname of who played; "" adds nothing. A line that has one already, or that is
// no object, stays as it is. line is not written to.
func Handed(line []byte, player string) []byte {
	if player == "" || syntax(line) != nil {
		return line
	}
	object := whole(line)
	members, err := object.members()
	if err != nil || len(members) == 0 || slices.ContainsFunc(members, func(m member) bool { return m.name == "player" }) {
		return line
	}
	end := len(object.raw) - len("}")
	return slices.Concat(line[:object.from], object.raw[:end], []byte(`,"player":`), encode(player), []byte("}"))
}
