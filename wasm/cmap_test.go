//go:build !js

package main

import (
	"bytes"
	"encoding/binary"
	"fmt"
	"io"
	"math"

	"github.com/andybalholm/brotli"
)

// covers reads which characters a font has a glyph for: a TrueType font
// (OpenType 1.9.1, "cmap") or one packed as WOFF 2 (W3C Recommendation of
// 8 August 2024, §4 and §5).
func covers(font []byte) (map[rune]bool, error) {
	table, err := charTable(font)
	if err != nil {
		return nil, err
	}
	has := map[rune]bool{}
	for i := range int(u16(table, 2)) {
		at := u32(table, 4+8*i+4)
		switch sub := table[at:]; u16(sub, 0) {
		case 4:
			segments(sub, has)
		case 12:
			groups(sub, has)
		}
	}
	return has, nil
}

func u16(b []byte, at int) uint16 { return binary.BigEndian.Uint16(b[at:]) }
func u32(b []byte, at int) uint32 { return binary.BigEndian.Uint32(b[at:]) }

// segments reads a subtable of format 4.
func segments(sub []byte, has map[rune]bool) {
	double := int(u16(sub, 6)) // twice the number of segments
	for i := 0; i < double; i += 2 {
		last, first := u16(sub, 14+i), u16(sub, 16+double+i)
		delta, offset := u16(sub, 16+2*double+i), u16(sub, 16+3*double+i)
		for c := int(first); c <= int(last) && c < math.MaxUint16; c++ {
			glyph := uint16(c)
			if offset != 0 {
				glyph = u16(sub, 16+3*double+i+int(offset)+2*(c-int(first)))
			}
			if glyph != 0 || offset == 0 {
				glyph += delta
			}
			if glyph != 0 {
				has[rune(c)] = true
			}
		}
	}
}

// groups reads a subtable of format 12.
func groups(sub []byte, has map[rune]bool) {
	for i := range int(u32(sub, 12)) {
		first, last, glyph := u32(sub, 16+12*i), u32(sub, 20+12*i), u32(sub, 24+12*i)
		for c := first; c <= last; c++ {
			if glyph+c-first != 0 {
				has[rune(c)] = true
			}
		}
	}
}

// charTable finds the table "cmap".
func charTable(font []byte) ([]byte, error) {
	if bytes.HasPrefix(font, []byte("wOF2")) {
		return unpacked(font)
	}
	for i := range int(u16(font, 4)) {
		if entry := font[12+16*i:]; string(entry[:4]) == "cmap" {
			return font[u32(entry, 8):], nil
		}
	}
	return nil, fmt.Errorf("no table cmap")
}

// Tables have a number in WOFF 2; these are the ones that matter here.
const cmapNumber, glyfNumber, locaNumber, otherTable = 0, 10, 11, 63

// unpacked finds the table "cmap" in a font packed as WOFF 2, where all tables are
// one stream in Brotli.
func unpacked(font []byte) ([]byte, error) {
	entries := bytes.NewReader(font[48:])
	from, before := -1, 0
	for range int(u16(font, 12)) {
		flags, err := entries.ReadByte()
		if err != nil {
			return nil, err
		}
		number, version := flags&63, flags>>6
		if number == otherTable {
			if _, err := entries.Seek(4, io.SeekCurrent); err != nil {
				return nil, err
			}
		}
		length := base128(entries)
		if outline := number == glyfNumber || number == locaNumber; outline == (version == 0) {
			length = base128(entries) // as it was transformed
		}
		if number == cmapNumber {
			from = before
		}
		before += length
	}
	stream := font[len(font)-entries.Len():]
	tables, err := io.ReadAll(brotli.NewReader(bytes.NewReader(stream[:u32(font, 20)])))
	if err != nil || from < 0 {
		return nil, fmt.Errorf("cmap at %d: %w", from, err)
	}
	return tables[from:], nil
}

// base128 reads a UIntBase128.
func base128(r io.ByteReader) (n int) {
	for {
		b, err := r.ReadByte()
		n = n<<7 | int(b&127)
		if err != nil || b < 128 {
			return n
		}
	}
}
