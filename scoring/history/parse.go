package history

import (
	"bytes"
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"unicode/utf8"
)

// Parse reads one line. It returns an *[Error], with column and field, for a
// line that is not a valid round, and a *[Newer] for one of a newer version.
// Both carry the line.
func Parse(line []byte) (Round, error) {
	r, err := parse(line)
	if err == nil {
		return r, nil
	}
	var e *Error
	var newer *Newer
	switch {
	case errors.As(err, &e):
		e.Raw = slices.Clone(line)
	case errors.As(err, &newer):
		newer.Raw = slices.Clone(line)
	}
	return Round{}, err
}

func parse(line []byte) (Round, error) {
	if err := syntax(line); err != nil {
		return Round{}, err
	}
	object := whole(line)
	members, err := object.members()
	if err != nil {
		return Round{}, err
	}
	members, err = version(object, members)
	if err != nil {
		return Round{}, err
	}
	var r Round
	if err := kind(&r, object, members); err != nil {
		return Round{}, err
	}
	if err := fill(&r, object, members); err != nil {
		return Round{}, err
	}
	roundAll(&r)
	err = check(&r)
	var e *Error
	if errors.As(err, &e) {
		e.Column = object.find(e.Field).from + 1
	}
	return r, err
}

// syntax makes sure that the line is one JSON value in UTF-8.
func syntax(line []byte) error {
	if !utf8.Valid(line) {
		valid := 0
		for c, n := utf8.DecodeRune(line); c != utf8.RuneError || n > 1; c, n = utf8.DecodeRune(line[valid:]) {
			valid += n
		}
		return &Error{Column: valid + 1, Msg: "not UTF-8"}
	}
	if json.Valid(line) {
		return nil
	}
	var raw json.RawMessage
	err := json.Unmarshal(line, &raw)
	var bad *json.SyntaxError
	if errors.As(err, &bad) {
		return &Error{Column: max(1, int(bad.Offset)), Msg: bad.Error()}
	}
	return err
}

// version takes the member v out of the members of an object.
func version(object member, members []member) ([]member, error) {
	i := slices.IndexFunc(members, func(m member) bool { return m.name == "v" })
	if i < 0 {
		return nil, object.lacks("v")
	}
	var v *int
	if err := json.Unmarshal(members[i].raw, &v); err != nil || v == nil || *v < 1 {
		return nil, members[i].wrong("%s is not a version", short(members[i].raw))
	}
	if *v > Version {
		return nil, &Newer{Version: *v}
	}
	return slices.Delete(members, i, i+1), nil
}

// kind reads what kind of round it is, on which its other members depend.
func kind(r *Round, object member, members []member) error {
	i := slices.IndexFunc(members, func(m member) bool { return m.name == "kind" })
	if i < 0 {
		return object.lacks("kind")
	}
	if err := members[i].read(&r.Kind); err != nil {
		return err
	}
	if _, known := KindOf(r.Kind); !known {
		return members[i].wrong("unknown kind %q", r.Kind)
	}
	return nil
}

// fill puts the members of m into the fields of an object; what has no field
// goes to the others.
func fill(o object, m member, members []member) error {
	for _, f := range o.fields() {
		i := slices.IndexFunc(members, func(m member) bool { return m.name == f.name })
		switch {
		case i < 0 && f.extra:
			continue
		case i < 0:
			return m.lacks(f.name)
		}
		if err := members[i].read(f.at); err != nil {
			return err
		}
		if f.extra && f.lo > 0 && f.empty() {
			return members[i].wrong("%s is not from %v to %v", short(members[i].raw), f.lo, f.hi)
		}
		members = slices.Delete(members, i, i+1)
	}
	for _, m := range members {
		*o.others() = append(*o.others(), member{name: m.name, raw: compact(m.raw)})
	}
	return nil
}

// read reads the value of a member.
func (m member) read(into any) error {
	switch v := into.(type) {
	case object:
		members, err := m.members()
		if err != nil {
			return err
		}
		return under(m.name, fill(v, m, members))
	case list:
		return m.readList(v)
	case **int, **float64: // null is nil
	default:
		if string(m.raw) == "null" {
			return m.wrong("null is not %s", wanted(into))
		}
	}
	if json.Unmarshal(m.raw, into) != nil {
		return m.wrong("%s is not %s", short(m.raw), wanted(into))
	}
	return nil
}

// readList reads a list, element by element.
func (m member) readList(into list) error {
	if m.raw[0] != '[' {
		return m.wrong("%s is not %s", short(m.raw), wanted(into))
	}
	parts := m.parts()
	into.make(len(parts))
	for i, part := range parts {
		if err := part.read(into.item(i)); err != nil {
			return under(index(m.name, i), err)
		}
	}
	return nil
}

// members takes an object apart.
func (m member) members() ([]member, error) {
	if m.raw[0] != '{' {
		return nil, m.wrong("%s is not an object", short(m.raw))
	}
	parts := m.parts()
	for i, part := range parts {
		if slices.ContainsFunc(parts[:i], func(p member) bool { return p.name == part.name }) {
			return nil, under(m.name, part.wrong("twice"))
		}
	}
	return parts, nil
}

// wanted names what a value should have been.
func wanted(into any) string {
	switch into.(type) {
	case *string:
		return "a text"
	case *bool:
		return "true or false"
	case *int, *uint64:
		return "a whole number"
	case **int:
		return "a whole number or null"
	case *float64:
		return "a number"
	case **float64:
		return "a number or null"
	}
	return "a list"
}

// short is raw text fit for a message.
func short(raw []byte) string {
	raw = compact(raw)
	if len(raw) <= 24 {
		return string(raw)
	}
	cut := 24
	for !utf8.RuneStart(raw[cut]) {
		cut--
	}
	return fmt.Sprintf("%s…", raw[:cut])
}

func compact(raw []byte) []byte {
	var b bytes.Buffer
	if err := json.Compact(&b, raw); err != nil {
		panic("history: " + err.Error()) // the syntax is known to be right
	}
	return b.Bytes()
}
