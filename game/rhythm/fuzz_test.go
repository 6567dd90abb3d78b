package rhythm_test

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// FuzzParse: a mistake has a place, and what is no mistake can be counted and timed.
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
		for _, v := range append(c.Variants, rhythm.Variant{Pattern: c.Skeleton}) {
			form := c.Form(v.Pattern)
			require.NotEmpty(t, form.Spoken(form.Steps()-1))
			require.Empty(t, form.Differ(form))
		}
		for step := -c.Steps(); step < 2*c.Steps(); step++ {
			require.NotEmpty(t, c.Base().Count(step))
			require.NotEmpty(t, c.CountInEight(step))
			require.Less(t, c.At(step, c.Tempo.Usual), c.At(step+1, c.Tempo.Usual))
		}
	})
}
