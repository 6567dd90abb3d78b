package history

import (
	"bytes"
	"encoding/json"
	"slices"
	"strconv"
	"strings"
)

// member is one value of an object or a list, with its name in an object.
type member struct {
	name string
	raw  json.RawMessage // without space around it
	from int             // offset of raw in the line; 0 once the line is gone
}

// whole is a line, known to be one JSON value, as a member without a name.
func whole(line []byte) member {
	from := space(line, 0)
	return member{raw: bytes.TrimRight(line[from:], blank), from: from}
}

// wrong is an error at this member. Whoever holds the member puts the way to
// it in front of the field, see under.
func (m member) wrong(format string, a ...any) *Error {
	e := wrong(m.name, format, a...)
	e.Column = m.from + 1
	return e
}

// lacks is the error of an object without a member of that name.
func (m member) lacks(name string) *Error {
	return &Error{Column: m.from + 1, Field: name, Msg: "missing"}
}

// parts takes a list or an object apart. Since the syntax is known to be right
// it only looks for the ends.
func (m member) parts() []member {
	var out []member
	for i := space(m.raw, 1); i < len(m.raw)-1; {
		var part member
		if m.raw[0] == '{' {
			end := after(m.raw, i)
			part.name = text(m.raw[i:end])
			i = space(m.raw, space(m.raw, end)+len(":"))
		}
		end := after(m.raw, i)
		part.raw, part.from = m.raw[i:end:end], m.from+i
		out = append(out, part)
		i = space(m.raw, space(m.raw, end)+len(","))
	}
	return out
}

// find follows a field such as "taps[3].stroke", as far as it goes.
func (m member) find(field string) member {
	for step := range strings.FieldsFuncSeq(field, func(c rune) bool { return c == '.' || c == '[' || c == ']' }) {
		if m.raw[0] != '{' && m.raw[0] != '[' {
			break
		}
		parts := m.parts()
		i := slices.IndexFunc(parts, func(p member) bool { return p.name == step })
		if m.raw[0] == '[' {
			i, _ = strconv.Atoi(step)
		}
		if i < 0 || i >= len(parts) {
			break
		}
		m = parts[i]
	}
	return m
}

// blank is the white space of JSON.
const blank = " \t\r\n"

// space returns the first place from i on that is not white space.
func space(raw []byte, i int) int {
	for i < len(raw) && strings.IndexByte(blank, raw[i]) >= 0 {
		i++
	}
	return i
}

// after returns the end of the value that begins at i.
func after(raw []byte, i int) int {
	depth := 0
	for ; i < len(raw); i++ {
		switch c := raw[i]; {
		case c == '"':
			i = quoted(raw, i)
			if depth == 0 {
				return i + 1
			}
		case c == '{' || c == '[':
			depth++
		case c == '}' || c == ']':
			if depth--; depth < 0 {
				return i // of the object or list around a number or a word
			}
			if depth == 0 {
				return i + 1
			}
		case depth == 0 && (c == ',' || strings.IndexByte(blank, c) >= 0):
			return i
		}
	}
	return i
}

// quoted returns the place of the quote that ends the text beginning at i.
func quoted(raw []byte, i int) int {
	for i++; raw[i] != '"'; i++ {
		if raw[i] == '\\' {
			i++
		}
	}
	return i
}

// text reads a quoted text.
func text(raw []byte) string {
	if bytes.IndexByte(raw, '\\') < 0 {
		return string(raw[1 : len(raw)-1])
	}
	var s string
	if err := json.Unmarshal(raw, &s); err != nil {
		panic("history: " + err.Error()) // the syntax is known to be right
	}
	return s
}
