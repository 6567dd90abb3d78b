package diary

import (
	"bytes"
	"cmp"
	"encoding/json"
	"fmt"
	"slices"
	"strings"

	"groundbeat/scoring/history"
)

// Day is what all rounds of one calendar day come to, on each output by itself. The
// zero Day is empty, and takes the date of the first round.
type Day struct {
	date    string
	outputs []output // ascending by name
}

// output are the rounds of a day on one output, in order.
type output struct {
	Name   string  `json:"output"`
	Rounds []entry `json:"rounds"`
}

// Date returns the calendar day of a round, as written in it, 2006-01-02: the player's
// own date, wherever that was.
func Date(r history.Round) string { return r.When[:len("2006-01-02")] }

// Date returns the day's, 2006-01-02; "" of an empty day.
func (d *Day) Date() string { return d.date }

// Rounds returns how many rounds the day holds.
func (d *Day) Rounds() int {
	n := 0
	for _, o := range d.outputs {
		n += len(o.Rounds)
	}
	return n
}

// Add adds a round, which must be valid, as package history makes and reads it. One
// that is added twice counts twice. A round of another date than the day's is a
// programmer's mistake and panics.
func (d *Day) Add(r history.Round) {
	if d.date == "" {
		d.date = Date(r)
	}
	if Date(r) != d.date {
		panic(fmt.Sprintf("diary: a round of %s for %s", r.When, d.date))
	}
	o := d.output(r.Output)
	e := entryOf(r)
	at, _ := slices.BinarySearchFunc(o.Rounds, e, compare)
	o.Rounds = slices.Insert(o.Rounds, at, e)
}

// output returns the rounds of an output, to add to.
func (d *Day) output(name string) *output {
	i, found := slices.BinarySearchFunc(d.outputs, name, byName)
	if !found {
		d.outputs = slices.Insert(d.outputs, i, output{Name: name})
	}
	return &d.outputs[i]
}

// on returns the rounds on an output.
func (d *Day) on(name string) []entry {
	if i, found := slices.BinarySearchFunc(d.outputs, name, byName); found {
		return d.outputs[i].Rounds
	}
	return nil
}

func byName(o output, name string) int { return strings.Compare(o.Name, name) }

// compare puts rounds in the order of their times, and those of one second in an order
// that does not depend on which came first here.
func compare(a, b entry) int {
	if by := cmp.Compare(a.At, b.At); by != 0 {
		return by
	}
	return bytes.Compare(encode(a), encode(b))
}

// encode writes what is known to have nothing that JSON has not.
func encode(v any) []byte {
	text, err := json.Marshal(v)
	if err != nil {
		panic("diary: " + err.Error())
	}
	return text
}
