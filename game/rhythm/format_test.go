package rhythm_test

import (
	"bytes"
	"errors"
	"os"
	"path/filepath"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

func TestFormat(t *testing.T) {
	c, err := rhythm.Parse("x.txt", strings.NewReader(full))
	require.NoError(t, err)
	var b bytes.Buffer
	require.NoError(t, rhythm.Format(&b, c))
	require.Equal(t, `name: Sa'idi of mine
script: صعيدي
spelling: saidi
spelling: sayyidi
family: maqsum
core: yes
quiz: no
differ: yes
metre: 4/4
grouping: 2+2
skeleton: DT-DD-T-
filled: D-Tk-kD-D-tkT---
variant: heavy = DD-DD-T-
variant: a=b = D-TkkkD-D-tkT-tk
tempo: about 90 105 125 quarter
role: cane dance
listen: dums on 1, on the & of 2 and on 3
note: see https://example.org/a#b: there
source: Iana, 2020
memory: the fast tempo
memory: what it is
`, b.String())
}

func TestFormatRefuses(t *testing.T) {
	tests := map[string]func(*rhythm.Cycle){
		"a line break that would be another key": func(c *rhythm.Cycle) { c.Role = "a\nlisten: b" },
		"a carriage return":                      func(c *rhythm.Cycle) { c.Role = "a\rlisten: b" },
		"a line break that would be a comment":   func(c *rhythm.Cycle) { c.Role = "a\n# b" },
		"blanks that would be lost":              func(c *rhythm.Cycle) { c.Name = " two  blanks" },
		"an empty source":                        func(c *rhythm.Cycle) { c.Sources = append(c.Sources, "") },
		"no name":                                func(c *rhythm.Cycle) { c.Name = "" },
		"an id that is no file name":             func(c *rhythm.Cycle) { c.ID = "a/b" },
		"a stroke that is none":                  func(c *rhythm.Cycle) { c.Skeleton[0] = 'q' },
		"a stroke that is no letter":             func(c *rhythm.Cycle) { c.Skeleton[0] = 0xff },
		"a tempo upside down":                    func(c *rhythm.Cycle) { c.Tempo.Slow = 200 },
		"a metre that does not fit":              func(c *rhythm.Cycle) { c.Metre.Beats = 3 },
		"a metre of nothing":                     func(c *rhythm.Cycle) { c.Metre = rhythm.Metre{} },
		"a variant without a name":               func(c *rhythm.Cycle) { c.Variants = []rhythm.Variant{{Pattern: c.Skeleton}} },
	}
	for name, spoil := range tests {
		t.Run(name, func(t *testing.T) {
			c := shape(t, "maqsum")
			spoil(c)
			var b bytes.Buffer
			require.Error(t, rhythm.Format(&b, c))
			require.Zero(t, b.Len())
		})
	}
}

func TestFormatWriteError(t *testing.T) {
	full := errors.New("disc full")
	require.ErrorIs(t, rhythm.Format(failing{full}, shape(t, "maqsum")), full)
}

type failing struct{ err error }

func (f failing) Write([]byte) (int, error) { return 0, f.err }

func FuzzParse(f *testing.F) {
	f.Add([]byte(full))
	f.Add([]byte(whole + "variant: a = = DD-DD-T-\nnote: \u200f\n"))
	f.Add([]byte("\uFEFFname: x\r\nmetre: 9/8\rgrouping: 2+2+2+3\nskeleton: D-T-D-TTT\ntempo: 60 60 60 eighth\nmemory: a\n"))
	f.Add([]byte("name: x\nmetre: 4/4\nskeleton: DT-TD-T\xff"))
	paths, err := filepath.Glob("../../assets/rhythms/*.txt")
	require.NoError(f, err)
	for _, path := range paths {
		text, err := os.ReadFile(path)
		require.NoError(f, err)
		f.Add(text)
	}
	f.Fuzz(func(t *testing.T, text []byte) {
		c, err := rhythm.Parse("fuzz.txt", bytes.NewReader(text))
		if err != nil {
			var mistake *rhythm.Error
			require.ErrorAs(t, err, &mistake)
			require.Positive(t, mistake.Line)
			require.Positive(t, mistake.Column)
			require.NotEmpty(t, mistake.Msg)
			return
		}
		var b bytes.Buffer
		require.NoError(t, rhythm.Format(&b, c))
		back, err := rhythm.Parse("fuzz.txt", bytes.NewReader(b.Bytes()))
		require.NoError(t, err)
		require.Equal(t, c, back)
		for _, v := range append(c.Variants, rhythm.Variant{Pattern: c.Skeleton}) {
			form := c.Form(v.Pattern)
			require.NotEmpty(t, form.Spoken(form.Steps()-1))
			require.Empty(t, form.Differ(form))
		}
		for step := -c.Steps(); step < 2*c.Steps(); step++ {
			require.NotEmpty(t, c.Count(step))
			require.NotEmpty(t, c.CountInEight(step))
			require.Less(t, c.At(step, c.Tempo.Usual), c.At(step+1, c.Tempo.Usual))
		}
	})
}
