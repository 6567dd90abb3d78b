package diary

import (
	"encoding/json"
	"errors"
	"fmt"
	"slices"
	"time"

	"groundbeat/scoring/history"
)

// Version is the version of the text of a day that this package writes, and the only
// one that it reads.
const Version = 2

// text is a day as it is written.
type text struct {
	V       int      `json:"v"`
	Day     string   `json:"day"`
	Outputs []output `json:"outputs"`
}

// Format writes a day as one line of JSON, without a line break. The same rounds give
// the same text, in whichever order they were added.
func (d *Day) Format() []byte {
	t := text{V: Version, Day: d.date, Outputs: d.outputs}
	if t.Outputs == nil {
		t.Outputs = []output{}
	}
	return encode(t)
}

// ParseDay reads a day. It returns a *[history.Error], with the column or the field,
// for what Format would not write, and a *[history.Newer] for a newer version.
func ParseDay(line []byte) (*Day, error) {
	var t text
	err := json.Unmarshal(line, &t)
	if err != nil || t.V != Version {
		if newer := newer(line); newer != nil {
			return nil, newer
		}
	}
	if err != nil {
		return nil, misread(err, line)
	}
	d := &Day{date: t.Day, outputs: t.Outputs}
	if err := t.check(); err != nil {
		err.Raw = slices.Clone(line)
		return nil, err
	}
	for _, o := range d.outputs {
		if !slices.IsSortedFunc(o.Rounds, compare) {
			slices.SortFunc(o.Rounds, compare)
		}
	}
	return d, nil
}

// newer returns the error of a text of a newer version, nil of any other.
func newer(line []byte) error {
	var t struct {
		V int `json:"v"`
	}
	if json.Unmarshal(line, &t) != nil || t.V <= Version {
		return nil
	}
	return &history.Newer{Version: t.V, Raw: slices.Clone(line)}
}

// misread puts the place into an error of the decoder.
func misread(err error, line []byte) error {
	e := &history.Error{Column: 1, Msg: err.Error(), Raw: slices.Clone(line)}
	var syntax *json.SyntaxError
	var kind *json.UnmarshalTypeError
	switch {
	case errors.As(err, &syntax):
		e.Column = max(1, int(syntax.Offset))
	case errors.As(err, &kind):
		e.Column, e.Field = max(1, int(kind.Offset)), kind.Field
		e.Msg = fmt.Sprintf("a %s is not a %s", kind.Value, kind.Type)
	}
	return e
}

func wrong(field, format string, a ...any) *history.Error {
	return &history.Error{Field: field, Msg: fmt.Sprintf(format, a...)}
}

// check says what of a day is not as Format writes it.
func (t text) check() *history.Error {
	if t.V != Version {
		return wrong("v", "%d is not a version", t.V)
	}
	if _, err := time.Parse(time.DateOnly, t.Day); err != nil && (t.Day != "" || len(t.Outputs) > 0) {
		return wrong("day", "%q is not a day as in 2026-01-31", t.Day)
	}
	for i, o := range t.Outputs {
		if i > 0 && o.Name <= t.Outputs[i-1].Name {
			return wrong(fmt.Sprintf("outputs[%d].output", i), "%q does not ascend", o.Name)
		}
		for k := range o.Rounds {
			if err := o.Rounds[k].check(); err != nil {
				err.Field = fmt.Sprintf("outputs[%d].rounds[%d].%s", i, k, err.Field)
				return err
			}
		}
	}
	return nil
}

// check says what of an entry the figures could not bear.
func (e *entry) check() *history.Error {
	k, _ := history.KindOf(e.Kind)
	rhythm, told := e.named()
	switch {
	case e.Kind == "":
		return wrong("kind", "missing")
	case e.At < 0 || e.At >= 24*3600:
		return wrong("at", "%d is not from 0 to 86399", e.At)
	case e.Riff == "":
		return wrong("riff", "missing")
	case e.Untried && e.Right:
		return wrong("untried", "but right")
	case e.Hide != nil && !(*e.Hide >= 0 && *e.Hide <= 1):
		return wrong("hide", "%v is not from 0 to 1", *e.Hide)
	case e.Choices != 0 && (e.Choices < 2 || e.Choices > 32):
		return wrong("choices", "%d is not from 2 to 32", e.Choices)
	case told && (rhythm == "" || e.Choices == 0):
		return wrong("said", "%q for nothing", e.Said)
	case told && e.Right != (e.Said == rhythm):
		return wrong("right", "%t, but %q was said for %q", e.Right, e.Said, rhythm)
	case k.Along != (e.Tapped != nil):
		return wrong("tapped", "not what a round of kind %q has", e.Kind)
	case k.Along && e.Rhythm == "":
		return wrong("rhythm", "missing")
	case k.Along:
		return e.Tapped.check()
	}
	return nil
}

// most is the greatest number of anything that is counted, and of µs that a tap is kept
// to lie from its dum.
const most = 1_000_000_000

func (t *tapped) check() *history.Error {
	at := 0
	for i, place := range t.Places {
		if at += place; place < 0 || place == 0 && i > 0 || place > most || at > most {
			return wrong(fmt.Sprintf("tapped.places[%d]", i), "%d is no place", place)
		}
	}
	for i, o := range t.Offsets {
		if o < -most || o > most {
			return wrong(fmt.Sprintf("tapped.offsets[%d]", i), "%d is too far", o)
		}
	}
	switch {
	case t.Places != nil && len(t.Places) != len(t.Offsets):
		return wrong("tapped.places", "%d for %d taps", len(t.Places), len(t.Offsets))
	case t.BPM < 20 || t.BPM > 300:
		return wrong("tapped.bpm", "%d is not from 20 to 300", t.BPM)
	case !(t.Window >= 0 && t.Window <= 1000):
		return wrong("tapped.window", "%v is not from 0 to 1000", t.Window)
	case t.Out < 0 || t.Out > most || t.Added < 0 || t.Added > most:
		return wrong("tapped", "%d left out, %d added", t.Out, t.Added)
	}
	return nil
}
