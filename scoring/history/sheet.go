package history

import (
	"encoding/csv"
	"fmt"
	"slices"
	"strconv"
	"strings"
)

// A sheet is a table for a spreadsheet: comma-separated values after RFC 4180
// (Shafranovich 2005), in UTF-8, one round a row, lines ending in CR LF. It is for
// looking at; what is to be read again is kept as lines.
//
// A column has the name of a member, as in the package comment, and its unit. What a
// round's kind does not have, and what is null, is an empty cell. Numbers have a
// decimal point. Besides:
//
//	strokes, taps, breaks, aside  how many there are
//	choices                       all, with spaces between
//	reaction                      ms from the first stroke that differs to the press
//	                              that heard the change: the offset of that press
//	helps.balance …               the members of helps
//
// Texts may come from a person or from another's file, and spreadsheets take some
// texts for formulas: one that begins as a formula does (= + - @ and their full-width
// forms, a tab or a line break) has an apostrophe before it (OWASP, "CSV Injection").
var columns = []string{
	"player", "when", "kind", "rhythm", "to", "bpm", "riff", "hide", "eights", "output",
	"score", "matched", "out", "added", "bias", "spread", "median", "drift",
	"right", "answer", "choices", "took", "heard", "reaction",
	"strokes", "taps", "breaks", "aside", "after", "changes",
	"setup", "window", "coarse", "helps.balance", "helps.bass", "helps.hands",
	"hideAsked", "riffVersion", "seed", "epoch", "rate", "id",
}

// SheetHead is the first row of a sheet: the names of its columns. The byte order
// mark in front tells spreadsheets that it is UTF-8.
func SheetHead() string { return "\uFEFF" + row(columns) }

// SheetRow is a round as a row of a sheet.
func SheetRow(r Round) string {
	cells := make([]string, len(columns))
	put := func(name, cell string) {
		if i := slices.Index(columns, name); i >= 0 {
			cells[i] = cell
		}
	}
	for _, f := range told(&r) {
		put(f.name, f.cell())
	}
	for _, f := range told(&r.Helps) {
		put("helps."+f.name, f.cell())
	}
	if n := len(r.Taps); r.Kind == Change && n > 0 && r.Taps[n-1].Offset != nil {
		put("reaction", number(*r.Taps[n-1].Offset))
	}
	return row(cells)
}

// row writes cells as one line.
func row(cells []string) string {
	var b strings.Builder
	w := csv.NewWriter(&b)
	w.UseCRLF = true
	if err := w.Write(cells); err != nil {
		panic("history: " + err.Error()) // a builder takes everything
	}
	w.Flush()
	return b.String()
}

// cell is a field's value in a sheet.
func (f field) cell() string {
	switch v := f.at.(type) {
	case *string:
		return harmless(*v)
	case *[]string:
		return harmless(strings.Join(*v, " "))
	case *bool, *int, *uint64:
		return string(encode(v))
	case *float64:
		return number(*v)
	case **float64:
		if *v == nil {
			return ""
		}
		return number(**v)
	case *[]float64:
		return strconv.Itoa(len(*v))
	case *[]Tap:
		return strconv.Itoa(len(*v))
	case *[]Break:
		return strconv.Itoa(len(*v))
	case object:
		return "" // its members have columns of their own
	}
	panic(fmt.Sprintf("history: %s is a %T", f.name, f.at))
}

// number writes a number without an exponent.
func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// harmless is a text that no spreadsheet takes for a formula.
func harmless(text string) string {
	if strings.IndexAny(text, "=+-@＝＋－＠\t\r\n") == 0 {
		return "'" + text
	}
	return text
}
