package history

import (
	"errors"
	"fmt"
	"strings"
)

// Error says what is wrong with a line, and where.
type Error struct {
	File   string // "" where it is not known
	Line   int    // from 1; 0 where it is not known
	Column int    // in bytes, from 1; 0 where there is no text
	Field  string // such as "taps[3].stroke"; "" where it is not one field
	Msg    string
	Raw    []byte // the line as it was, without its line break; nil where there is none
}

// Error gives the place and what is wrong there, such as
// "rounds.jsonl:3:14: bpm: 5 is not from 20 to 300".
func (e *Error) Error() string {
	var b strings.Builder
	b.WriteString(place(e.File, e.Line))
	switch {
	case e.Column > 0 && e.Line > 0:
		fmt.Fprintf(&b, "%d: ", e.Column)
	case e.Column > 0:
		fmt.Fprintf(&b, "column %d: ", e.Column)
	case e.Line > 0:
		b.WriteString(" ")
	}
	if e.Field != "" {
		b.WriteString(e.Field + ": ")
	}
	return b.String() + e.Msg
}

// Newer reports a line of a version that this program does not know yet. The
// line is not an error of the player's, and is left as it is.
type Newer struct {
	File    string // "" where it is not known
	Line    int    // from 1; 0 where it is not known
	Version int    // above [Version]
	Raw     []byte // the line as it was, without its line break
}

// Error gives the place and both versions.
func (e *Newer) Error() string {
	at := place(e.File, e.Line)
	if at != "" {
		at += " "
	}
	return fmt.Sprintf("%sversion %d, this program knows up to %d", at, e.Version, Version)
}

// place gives "file:line:", as much of it as is known.
func place(file string, line int) string {
	switch {
	case line <= 0:
		return ""
	case file == "":
		return fmt.Sprintf("line %d:", line)
	}
	return fmt.Sprintf("%s:%d:", file, line)
}

func wrong(field, format string, a ...any) *Error {
	return &Error{Field: field, Msg: fmt.Sprintf(format, a...)}
}

// under puts the way to an object or a list element in front of the field of
// an error, nil included.
func under(way string, err error) error {
	var e *Error
	if errors.As(err, &e) {
		switch {
		case way == "":
		case e.Field == "" || e.Field[0] == '[':
			e.Field = way + e.Field
		default:
			e.Field = way + "." + e.Field
		}
	}
	return err
}

// within puts the name of another list in the place of the one in an error's field,
// nil included.
func within(list, other string, err error) error {
	var e *Error
	if errors.As(err, &e) {
		e.Field = other + strings.TrimPrefix(e.Field, list)
	}
	return err
}
