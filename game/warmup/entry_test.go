package warmup

import (
	"encoding/csv"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

// Whatever was counted, an entry is one line, which is read as the same again.
func TestEveryEntryIsReadAgain(t *testing.T) {
	chance := rand.New(rand.NewPCG(9, 9))
	for range 200 {
		e := entryBy(chance)
		e.Class = []string{"", "Tuesday", "a\nb", `"quoted"`, "الثلاثاء"}[chance.IntN(5)]
		line := e.Line()
		require.NotContains(t, line, "\n")
		got, unread := ParseDiary(line)
		require.Zero(t, unread)
		require.Equal(t, []Entry{e}, got)
		require.True(t, got[0].Same(e))
		require.Equal(t, e.Key(), got[0].Key())
	}
}

// What does not hold together is not read, and counted; empty lines are not.
func TestUnreadEntries(t *testing.T) {
	good := entry("most few").Line()
	for name, c := range map[string]struct {
		diary  string
		unread int
	}{
		"nothing":        {"", 0},
		"empty lines":    {"\n \r\n\n", 0},
		"no JSON":        {"{", 1},
		"newer":          {strings.Replace(good, `"v":1`, `"v":2`, 1), 1},
		"no time":        {strings.Replace(good, `"when":"2026-03-03T18:00:00Z"`, `"when":"0001-01-01T00:00:00Z"`, 1), 1},
		"hands too few":  {strings.Replace(good, `"hands":["most","few"]`, `"hands":["most"]`, 1), 1},
		"hands too many": {strings.Replace(good, `"hands":["most","few"]`, `"hands":["most","few","few"]`, 1), 1},
		"hands unknown":  {strings.Replace(good, `"few"]`, `"1000"]`, 1), 1},
		"two":            {"x\ny", 2},
	} {
		require.NotEqual(t, good, c.diary, name)
		entries, unread := ParseDiary(c.diary)
		require.Empty(t, entries, name)
		require.Equal(t, c.unread, unread, name)
	}
	entries, unread := ParseDiary("\r\n" + good + "\r\nx\n" + good)
	require.Len(t, entries, 2)
	require.Equal(t, 1, unread)
}

// The same warm-up is told by when it began and by its set, wherever the clock stood.
func TestKeyIsTheSameEverywhere(t *testing.T) {
	a, b := entry("most few"), entry("few most")
	b.When = a.When.In(time.FixedZone("east", 3*60*60))
	require.True(t, a.Same(b))
	require.Equal(t, a.Key(), b.Key())
	b.When = b.When.Add(time.Nanosecond)
	require.False(t, a.Same(b))
	require.NotEqual(t, a.Key(), b.Key())
	b = entry("most few")
	b.Set = "five_bare_say-it_5_2"
	require.False(t, a.Same(b))
	require.NotEqual(t, a.Key(), b.Key())
}

// A diary that is split loses no line: each entry by its key, the last of one key, and
// what cannot be read as it is.
func TestSplitDiaryLosesNothing(t *testing.T) {
	chance := rand.New(rand.NewPCG(3, 9))
	var lines []string
	want := map[string]string{"not ours": "not ours"}
	for range 60 {
		e := entryBy(chance)
		lines = append(lines, e.Line())
		want[e.Key()] = e.Line()
	}
	lines = append(lines, "not ours", "")
	require.Equal(t, want, SplitDiary(strings.Join(lines, "\r\n")))
}

// A run tells of each task that was reached, in order, and nothing of those that were not.
func TestEntryOfARun(t *testing.T) {
	w := warmup(t, "ears", 4, 8)
	r := NewRun(w, "Tuesday")
	require.Empty(t, r.Entry().Tasks)
	for i := range w.Tasks {
		r.Skip(begin)
		e := r.Entry()
		require.Len(t, e.Tasks, i+1)
		require.Equal(t, []string{"Tuesday", w.Link()}, []string{e.Class, e.Set})
		require.True(t, e.When.Equal(begin))
		require.True(t, e.Fits())
		d, task := e.Tasks[i], w.Tasks[i]
		require.Equal(t, []any{task.Kind, task.Rhythm.ID, task.BPM, task.Level.String(), task.Right}, []any{d.Kind, d.Rhythm, d.BPM, d.Riff, d.Right})
		require.Len(t, d.Choices, len(task.Choices))
		for at, c := range task.Choices {
			require.Equal(t, c.ID, d.Choices[at])
		}
	}
	e := r.Entry()
	e.Tasks[0].Hands[0] = Most
	require.NotEqual(t, e, r.Entry(), "what was handed out is not the run's own")
}

// A sheet has a row for each answer and one for each task without any, all as long as the
// first; no cell begins a formula (OWASP, "CSV Injection").
func TestSheetOfEveryEntry(t *testing.T) {
	chance := rand.New(rand.NewPCG(2, 9))
	for range 60 {
		e := entryBy(chance)
		e.Class = []string{"=1+1", "@x", "-1", "+1", "a,b", `a"b`, "plain"}[chance.IntN(7)]
		rows, err := csv.NewReader(strings.NewReader(CSV([]Entry{e, e}))).ReadAll()
		require.NoError(t, err)
		want := 1
		for _, d := range e.Tasks {
			want += 2 * max(1, len(d.Choices))
		}
		require.Len(t, rows, want)
		for _, row := range rows[1:] {
			require.Len(t, row, len(rows[0]))
			require.Equal(t, strings.ContainsAny(e.Class[:1], "=@-+"), row[1] == "'"+e.Class)
			require.Equal(t, row[8] != "", row[9] == "true" || row[9] == "false")
			require.Equal(t, row[8] == row[5], row[9] == "true", "the right answer is what was played")
		}
	}
}
