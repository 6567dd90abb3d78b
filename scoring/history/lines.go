package history

import (
	"bufio"
	"bytes"
	"errors"
	"fmt"
	"io"
	"iter"
)

// Lines reads rounds, one a line, in their order: a round, or why it could not be
// read. name is the name of the file for the errors. Empty lines and a byte order
// mark are passed over.
//
// A line that cannot be read does not stop the others: it is reported as an
// *[Error] or a *[Newer] with its number, and holds the line as it was, so that
// the caller can keep it. If r fails, its error comes last, wrapped, with the
// number of the line that could not be read to its end; what there is of that
// line is read like any other.
func Lines(name string, r io.Reader) iter.Seq2[Round, error] {
	return func(yield func(Round, error) bool) {
		in := bufio.NewReader(r)
		for n := 1; ; n++ {
			line, err := in.ReadBytes('\n')
			line = trim(line, n == 1)
			if len(bytes.TrimSpace(line)) > 0 {
				round, bad := Parse(line)
				if bad != nil {
					bad = placed(bad, name, n)
				}
				if !yield(round, bad) {
					return
				}
			}
			if err != nil {
				if err != io.EOF {
					yield(Round{}, fmt.Errorf("%s %w", place(name, n), err))
				}
				return
			}
		}
	}
}

// trim takes off the line break and, of the first line, the byte order mark.
func trim(line []byte, first bool) []byte {
	line = bytes.TrimSuffix(line, []byte("\n"))
	line = bytes.TrimSuffix(line, []byte("\r"))
	if first {
		line = bytes.TrimPrefix(line, []byte("\uFEFF"))
	}
	return line
}

// placed puts file and line into an error of Parse.
func placed(err error, file string, line int) error {
	var e *Error
	var newer *Newer
	switch {
	case errors.As(err, &e):
		e.File, e.Line = file, line
	case errors.As(err, &newer):
		newer.File, newer.Line = file, line
	}
	return err
}
