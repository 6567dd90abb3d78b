package history

import (
	"bytes"
	"encoding/json"
)

// Format writes a round as one line of JSON, without a line break at its end.
// Numbers are rounded as the package comment says. A round that is not valid
// is refused with an *[Error] that names the field.
func Format(r Round) ([]byte, error) {
	r = r.clone()
	roundAll(&r)
	if err := check(&r); err != nil {
		return nil, err
	}
	var b bytes.Buffer
	write(&b, &r, member{name: "v", raw: encode(Version)})
	return b.Bytes(), nil
}

// write writes an object: first members, then its fields, then the others.
func write(b *bytes.Buffer, o object, first ...member) {
	comma := byte('{')
	put := func(name string) {
		b.WriteByte(comma)
		b.Write(encode(name))
		b.WriteByte(':')
		comma = ','
	}
	for _, m := range first {
		put(m.name)
		b.Write(m.raw)
	}
	for f := range told(o) {
		put(f.name)
		writeValue(b, f.at)
	}
	for _, m := range *o.others() {
		put(m.name)
		b.Write(m.raw)
	}
	b.WriteByte('}')
}

func writeValue(b *bytes.Buffer, at any) {
	switch v := at.(type) {
	case object:
		write(b, v)
	case list:
		b.WriteByte('[')
		for i := range v.size() {
			if i > 0 {
				b.WriteByte(',')
			}
			writeValue(b, v.item(i))
		}
		b.WriteByte(']')
	default:
		b.Write(encode(at))
	}
}

// encode writes a text, a truth, a number or null as JSON. Of these
// only NaN and infinities cannot be written, and check has refused them.
func encode(v any) []byte {
	var b bytes.Buffer
	e := json.NewEncoder(&b)
	e.SetEscapeHTML(false)
	if err := e.Encode(v); err != nil {
		panic("history: " + err.Error())
	}
	return bytes.TrimSuffix(b.Bytes(), []byte("\n"))
}
