package history

import (
	"encoding/csv"
	"slices"
	"strconv"
	"strings"
)

// columns of a sheet, in their order; see the package comment.
var columns = []string{
	"player", "when", "kind", "rhythm", "to", "bpm", "riff", "hide", "eights", "output",
	"score", "matched", "out", "added", "bias", "spread", "median", "drift",
	"right", "answer", "choices", "took", "heard", "reaction", "early",
	"strokes", "taps", "breaks", "silences", "aside", "after", "changes",
	"setup", "window", "close", "coarse", "helps.balance", "helps.bass", "helps.hands",
	"hideAsked", "riffVersion", "seed", "epoch", "rate", "id",
}

// SheetHead is the first row of a sheet: the names of its columns. The byte order
// mark in front tells spreadsheets that it is UTF-8.
func SheetHead() string { return "\uFEFF" + SheetLine(columns) }

// SheetRow is a round as a row of a sheet.
func SheetRow(r Round) string {
	cells := make([]string, len(columns))
	put := func(name, cell string) {
		if i := slices.Index(columns, name); i >= 0 {
			cells[i] = cell
		}
	}
	for f := range told(&r) {
		put(f.name, f.cell())
	}
	for f := range told(&r.Helps) {
		put("helps."+f.name, f.cell())
	}
	if n := len(r.Taps); r.kind().Play == Pressed && n > 0 && r.Taps[n-1].Offset != nil {
		put("reaction", number(*r.Taps[n-1].Offset))
	}
	return SheetLine(cells)
}

// SheetLine writes cells as one line of comma-separated values (RFC 4180).
func SheetLine(cells []string) string {
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
		return Harmless(*v)
	case each[string]:
		return Harmless(strings.Join(*v.of, " "))
	case list:
		return strconv.Itoa(v.size())
	case *bool, *int, *uint64:
		return string(encode(v))
	case *float64:
		return number(*v)
	case **float64:
		if *v == nil {
			return ""
		}
		return number(**v)
	}
	return "" // of an object: its members have columns of their own
}

// number writes a number without an exponent.
func number(x float64) string { return strconv.FormatFloat(x, 'f', -1, 64) }

// Harmless is a text that no spreadsheet takes for a formula.
func Harmless(text string) string {
	if strings.IndexAny(text, "=+-@＝＋－＠\t\r\n") == 0 {
		return "'" + text
	}
	return text
}
