package rhythm

import "fmt"

// An Error says where the text of a rhythm is wrong, and how.
//
// Line and Column count from 1, the column in runes. Line is 0 if the mistake
// belongs to the whole file or if the text is a lone pattern; Column is then 0
// or a place in the pattern. File is empty for a lone pattern.
type Error struct {
	File   string
	Line   int
	Column int
	Msg    string
}

// Error returns "file:line:column: message" without the parts that are absent.
func (e *Error) Error() string {
	switch {
	case e.Line > 0:
		return fmt.Sprintf("%s:%d:%d: %s", e.File, e.Line, e.Column, e.Msg)
	case e.File != "":
		return fmt.Sprintf("%s: %s", e.File, e.Msg)
	case e.Column > 0:
		return fmt.Sprintf("column %d: %s", e.Column, e.Msg)
	}
	return e.Msg
}
