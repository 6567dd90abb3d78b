package main

import (
	"bytes"
	"os"
	"path/filepath"
	"testing"

	"github.com/stretchr/testify/require"
)

func rendered(t *testing.T, o order) string {
	t.Helper()
	var report bytes.Buffer
	require.NoError(t, o.render(&report))
	return report.String()
}

func plain() order {
	return order{rhythm: "maqsum", riff: "bare", drum: "both", eights: 1, seed: 1}
}

func TestRender(t *testing.T) {
	o := plain()
	o.out = filepath.Join(t.TempDir(), "maqsum.wav")
	require.Contains(t, rendered(t, o), "maqsum, 105 beats a minute, 1 eights, bare: ")
	wav, err := os.ReadFile(o.out)
	require.NoError(t, err)
	// One eight at 105 lasts 8·60/105 s; a second rings out; four bytes a frame
	// after a header of 44.
	require.InDelta(t, 44+4*48000*(8*60.0/105+1), len(wav), 8)
	require.Equal(t, "RIFF", string(wav[:4]))
}

func TestRenderFindsSpellings(t *testing.T) {
	o := plain()
	o.rhythm = "Saiidi"
	require.Contains(t, rendered(t, o), "sa'idi, ")
}

func TestRenderFilledAndOneDrum(t *testing.T) {
	o := plain()
	o.riff, o.drum, o.countIn = "filled", "lead", true
	require.Contains(t, rendered(t, o), "filled")
}

func TestRenderOwnFile(t *testing.T) {
	o := plain()
	o.file = "../../assets/rhythms/ayyub.txt"
	require.Contains(t, rendered(t, o), "ayyub, ")
}

func TestRenderRefuses(t *testing.T) {
	for name, c := range map[string]struct {
		change func(*order)
		says   string
	}{
		"rhythm": {func(o *order) { o.rhythm = "polka" }, `there is no rhythm "polka"; there are baladi, `},
		"file":   {func(o *order) { o.file = "gone.txt" }, "gone.txt"},
		"tempo":  {func(o *order) { o.bpm = 900 }, "900 beats a minute; allowed is 40 to 220"},
		"length": {func(o *order) { o.eights = 0 }, "0 eights; allowed is 1 to 32"},
		"riff":   {func(o *order) { o.riff = "wild" }, "wild"},
		"drum":   {func(o *order) { o.drum = "riq" }, "-drum riq: allowed is both, lead, bass"},
		"out":    {func(o *order) { o.out = filepath.Join("no", "such", "folder.wav") }, "no/such"},
	} {
		t.Run(name, func(t *testing.T) {
			o := plain()
			c.change(&o)
			require.ErrorContains(t, o.render(&bytes.Buffer{}), c.says)
		})
	}
}
