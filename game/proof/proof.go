// Package proof is what the tests of several packages share: the product's words and
// rhythms, and goldens. Tests alone import it.
package proof

import (
	"bytes"
	"flag"
	"os"
	"path/filepath"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/say"
)

var update = flag.Bool("update", false, "write the goldens anew")

// Golden compares what was written with testdata/name; -update writes it.
func Golden(t *testing.T, name string, got []byte) {
	t.Helper()
	path := filepath.Join("testdata", name)
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, got, 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), string(bytes.ReplaceAll(got, []byte("\r"), nil)))
}

// GoldensAreUsed reports files in testdata that no test of the package compares.
func GoldensAreUsed(t *testing.T, known ...string) {
	t.Helper()
	files, err := os.ReadDir("testdata")
	require.NoError(t, err)
	for _, f := range files {
		if !f.IsDir() {
			require.Contains(t, known, f.Name(), "a golden of no test")
		}
	}
}

// Words are the product's sentences.
func Words(t testing.TB) say.Words {
	w, err := say.Load(assets.Words)
	require.NoError(t, err)
	return w
}

var loaded = sync.OnceValues(func() (*rhythm.Catalogue, error) { return rhythm.Load(assets.Rhythms) })

// Supplies are all that is supplied, read once: for what has no test at hand.
func Supplies() (*rhythm.Catalogue, error) { return loaded() }

// Catalogue is all that is supplied.
func Catalogue(t testing.TB) *rhythm.Catalogue {
	catalogue, err := loaded()
	require.NoError(t, err)
	return catalogue
}

// EveryRhythm is every rhythm that is supplied.
func EveryRhythm(t testing.TB) []*rhythm.Cycle {
	catalogue := Catalogue(t)
	var all []*rhythm.Cycle
	for _, id := range catalogue.IDs() {
		c, _ := catalogue.Get(id)
		all = append(all, c)
	}
	return all
}

// Supplied is the rhythm that is supplied under an id.
func Supplied(t testing.TB, id string) *rhythm.Cycle {
	c, found := Catalogue(t).Get(id)
	require.True(t, found, id)
	return c
}

// Made is a rhythm of a metre and a skeleton that is played at 60 to 120 beats a minute.
func Made(t testing.TB, id, metre, skeleton string) *rhythm.Cycle {
	text := "name: " + id + "\nmetre: " + metre + "\nskeleton: " + skeleton + "\ntempo: 60 90 120 quarter\nmemory: all\n"
	c, err := rhythm.Parse(id+".txt", strings.NewReader(text))
	require.NoError(t, err)
	return c
}

// Cycle is a rhythm of the tests' own, with something in every field that a screen shows;
// what is supplied may change.
func Cycle(t testing.TB, id string) *rhythm.Cycle {
	c, err := rhythm.Parse(id+".txt", strings.NewReader(texts[id]))
	require.NoError(t, err)
	return c
}

// Riffed is a part over three cycles of maqsum: nothing; a riff with triplets, a
// slap and a dum off the base; and a roll to the end, from the 3.
func Riffed() riff.Part {
	stroke := func(step, sub int, sound rhythm.Stroke, strength float64) riff.Stroke {
		return riff.Stroke{Step: step, Sub: sub, Sound: sound, Strength: strength}
	}
	return riff.Part{
		Lead: []riff.Stroke{
			stroke(8, 0, rhythm.Dum, 1), stroke(9, 0, rhythm.Tek, 0.8), stroke(9, 6, rhythm.Ka, 0.4),
			stroke(10, 0, rhythm.LightTek, 0.45), stroke(10, 8, rhythm.Ka, 0.45), stroke(11, 4, rhythm.LightTek, 0.45),
			stroke(11, 6, rhythm.Dum, 0.9), stroke(13, 0, rhythm.Sak, 1), stroke(14, 0, rhythm.Tek, 0.8),
			stroke(15, 0, rhythm.Tek, 0.6), stroke(15, 3, rhythm.Ka, 0.4), stroke(15, 6, rhythm.Tek, 0.7), stroke(15, 9, rhythm.Ka, 0.5),
			stroke(16, 0, rhythm.Dum, 1), stroke(17, 0, rhythm.Tek, 0.8),
			{Step: 20, Sound: rhythm.Tek, Strength: 0.35, Roll: 4 * riff.TicksPerStep, Swell: 0.95},
		},
		Open: []riff.Span{{From: 20, To: 24, Kind: riff.Roll}},
	}
}

// texts are rhythms for these tests: what is read here does not change when the
// catalogue does.
var texts = map[string]string{
	"maqsum": `name: maqsum
script: مقسوم
spelling: maqsoum
spelling: maksoum
metre: 4/4
skeleton: DT-TD-T-
filled: D-T-kkT-D-kkT-kk
tempo: about 90 105 130 quarter
role: the commonest base for dance songs and drum solos
listen: dums on 1 and on 3; each dum stands alone
note: fallahi is the same, twice as fast
source: somebody, somewhere
source: somebody else, elsewhere
memory: the tempo range
`,
	"baladi": `name: baladi (masmudi saghir)
metre: 4/4
skeleton: DD-TD-T-
filled: D-D-tkT-D-tkT-tk
tempo: 70 90 110 quarter
listen: two dums together at the start, then one alone
source: somebody, somewhere
`,
	"saidi": `name: sa'idi
metre: 4/4
skeleton: DT-DD-T-
tempo: 90 105 125 quarter
source: somebody, somewhere
`,
	"masmudi-kabir": `name: masmudi kabir
metre: 8/4
skeleton: D-D---T-D---T---
tempo: about 90 105 125 quarter
source: somebody, somewhere
`,
	"samai-thaqil": `name: sama'i thaqil
metre: 10/8
grouping: 3+2+2+3
differ: yes
skeleton: D--T-DDT--
tempo: 114 120 138 eighth
source: somebody, somewhere
`,
}
