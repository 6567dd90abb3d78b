package diary_test

import (
	"bytes"
	"os"
	"regexp"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
)

// documented is the day of the package comment, on one line.
func documented(t testing.TB) string {
	t.Helper()
	doc, err := os.ReadFile("doc.go")
	require.NoError(t, err)
	from := bytes.Index(doc, []byte("//\t{\n"))
	to := bytes.Index(doc, []byte("//\t}\n"))
	require.Positive(t, from)
	require.Greater(t, to, from)
	text := string(doc[from : to+len("//\t}\n")])
	text = regexp.MustCompile(`(?m)^//\t ?(\s*)`).ReplaceAllString(text, "")
	text = regexp.MustCompile(`(?m) {2,}.*$`).ReplaceAllString(text, "")
	text = strings.ReplaceAll(strings.ReplaceAll(text, "\n", ""), `: `, `:`)
	return strings.ReplaceAll(text, ", ", ",")
}

// The package comment shows a day as it is written.
func TestDocumented(t *testing.T) {
	text := documented(t)
	d, err := diary.ParseDay([]byte(text))
	require.NoError(t, err)
	require.Equal(t, text, string(d.Format()))
	require.Equal(t, 3, d.Rounds())
}

func TestFormat(t *testing.T) {
	var d diary.Day
	d.Add(named("2026-01-31T18:32:00+02:00", "maqsum", "baladi"))
	r := tapped(t, "2026-01-31T18:30:05+02:00", "maqsum", 4.25, -7.99, 999)
	r.Hide, r.Helps.Bass, r.Coarse = new(.583), 1, true
	d.Add(r)
	require.Equal(t, `{"v":2,"day":"2026-01-31","outputs":[{"output":"studio","rounds":[`+
		`{"at":66605,"kind":"dums","rhythm":"maqsum","riff":"bare","hide":0.583,"right":true,"helped":true,`+
		`"tapped":{"bpm":96,"window":100,"coarse":true,"places":[0,8,16,8,16,8],"offsets":[4250,-7990,4250,-7990,4250,-7990],"out":2,"added":0}},`+
		`{"at":66720,"kind":"which","rhythm":"maqsum","riff":"filled","choices":3,"said":"baladi"}`+
		`]}]}`, string(d.Format()))
}

func TestParseRefuses(t *testing.T) {
	var d diary.Day
	d.Add(named("2026-01-31T18:32:00Z", "maqsum", "baladi"))
	d.Add(tapped(t, "2026-01-31T18:33:00Z", "maqsum", 5))
	good := string(d.Format())
	for _, c := range []struct{ old, new, says string }{
		{`{"v":2`, `{v`, "column 2: invalid character 'v' looking for beginning of object key string"},
		{`"v":2`, `"v":0`, "v: 0 is not a version"},
		{`"v":2`, `"v":1`, "v: 1 is not a version"}, // it is made anew
		{`"v":2,`, ``, "v: 0 is not a version"},
		{`"day":"2026-01-31"`, `"day":"2026-02-30"`, `day: "2026-02-30" is not a day as in 2026-01-31`},
		{`"at":66720`, `"at":86400`, "outputs[0].rounds[0].at: 86400 is not from 0 to 86399"},
		{`"at":66720`, `"at":"six"`, "column 77: outputs.rounds.at: a string is not a int"},
		{`"kind":"which"`, `"kind":""`, "outputs[0].rounds[0].kind: missing"},
		{`"riff":"filled"`, `"riff":""`, "outputs[0].rounds[0].riff: missing"},
		{`"riff":"filled"`, `"riff":"filled","hide":1.01`, "outputs[0].rounds[0].hide: 1.01 is not from 0 to 1"},
		{`"choices":3`, `"choices":1`, "outputs[0].rounds[0].choices: 1 is not from 2 to 32"},
		{`"rhythm":"maqsum","riff":"filled"`, `"riff":"filled"`, `outputs[0].rounds[0].said: "baladi" for nothing`},
		{`"right":true`, `"right":true,"untried":true`, "outputs[0].rounds[1].untried: but right"},
		{`"said":"baladi"`, `"said":"baladi","right":true`, `outputs[0].rounds[0].right: true, but "baladi" was said for "maqsum"`},
		{`"kind":"which"`, `"kind":"dums"`, `outputs[0].rounds[0].tapped: not what a round of kind "dums" has`},
		{`"rhythm":"maqsum","riff":"bare"`, `"riff":"bare"`, "outputs[0].rounds[1].rhythm: missing"},
		{`"places":[0,8`, `"places":[0,0`, "outputs[0].rounds[1].tapped.places[1]: 0 is no place"},
		{`"places":[0,8`, `"places":[0`, "outputs[0].rounds[1].tapped.places: 7 for 8 taps"},
		{`"offsets":[5000`, `"offsets":[1000000001`, "outputs[0].rounds[1].tapped.offsets[0]: 1000000001 is too far"},
		{`"bpm":96`, `"bpm":19`, "outputs[0].rounds[1].tapped.bpm: 19 is not from 20 to 300"},
		{`"window":100`, `"window":-1`, "outputs[0].rounds[1].tapped.window: -1 is not from 0 to 1000"},
		{`"out":0`, `"out":-1`, "outputs[0].rounds[1].tapped: -1 left out, 0 added"},
		{`"outputs":[`, `"outputs":[{"output":"studio"},`, `outputs[1].output: "studio" does not ascend`},
	} {
		bad := strings.Replace(good, c.old, c.new, 1)
		require.NotEqual(t, good, bad, c.old)
		_, err := diary.ParseDay([]byte(bad))
		var e *history.Error
		require.ErrorAs(t, err, &e, c.new)
		require.Equal(t, c.says, e.Error())
		require.Equal(t, bad, string(e.Raw))
	}
}

func TestParseNewer(t *testing.T) {
	for _, line := range []string{`{"v":3}`, `{"v":7,"outputs":{"studio":1}}`} {
		_, err := diary.ParseDay([]byte(line))
		var newer *history.Newer
		require.ErrorAs(t, err, &newer)
		require.Equal(t, line, string(newer.Raw))
	}
}

// Whatever is read can be written, read again, and made figures of.
func FuzzParseDay(f *testing.F) {
	var d diary.Day
	for _, m := range newLearner(1, supplied(f)).practise(1) {
		d.Add(m.Round)
	}
	f.Add(string(d.Format()))
	f.Add(documented(f))
	f.Add(`{"v":2,"day":"2026-01-31","outputs":[{"output":"","rounds":[{"at":1,"kind":"dums","rhythm":"maqsum","riff":"?","tapped":{"bpm":96,"window":0,"places":[3],"offsets":[7],"out":9,"added":0}}]}]}`)
	f.Fuzz(func(t *testing.T, line string) {
		d, err := diary.ParseDay([]byte(line))
		if err != nil {
			return
		}
		again(t, d)
		b := book(t)
		b.Put(d)
		for _, output := range b.Outputs() {
			b.Figures(output)
			b.Met(output)
		}
	})
}
