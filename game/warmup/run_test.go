package warmup

import (
	"encoding/csv"
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
)

var begin = time.Date(2026, 3, 3, 18, 0, 0, 0, time.UTC)

// A whole warm-up with nothing but one key.
func TestRunGoesThroughEveryStage(t *testing.T) {
	w := warmup(t, "riff", 3, 10)
	r := NewRun(w, "Tuesday")
	require.Equal(t, WalkIn, r.Stage())
	require.True(t, r.Ends().IsZero())
	for i, task := range w.Tasks {
		r.Next(begin)
		require.Equal(t, Asking, r.Stage())
		_, at := r.Task()
		require.Equal(t, i, at)
		for n := range task.Choices {
			r.Next(begin)
			require.Equal(t, Counting, r.Stage())
			require.Equal(t, n, r.Answer())
		}
		r.Next(begin)
		require.Equal(t, Telling, r.Stage())
		if task.Kind.Counted() {
			r.Next(begin)
			require.Equal(t, Hearing, r.Stage())
		}
	}
	require.Equal(t, begin.Add(w.Lasts()), r.Ends(), "as was said")
	r.Next(begin)
	require.Equal(t, After, r.Stage())
	require.Zero(t, r.Left())
	require.False(t, r.GoOn(begin))
	r.Next(begin)
	require.Equal(t, After, r.Stage())
}

// From anywhere, back undoes next; and there is nothing before the walk-in.
func TestBackUndoesNext(t *testing.T) {
	r := NewRun(warmup(t, "riff", 5, 8), "")
	r.Back()
	require.Equal(t, WalkIn, r.Stage())
	r.Next(begin)
	for r.Stage() != After {
		before := r.Text()
		r.Next(begin)
		r.Back()
		task, step := r.kept.Task, r.kept.Step
		r2, err := ResumeRun(before, supplied(t), begin)
		require.NoError(t, err)
		require.Equal(t, [2]int{r2.kept.Task, r2.kept.Step}, [2]int{task, step})
		r.Next(begin)
	}
}

// Whatever is pressed, nothing counted is lost, and what is written down after each
// press is taken up in the same place.
func TestAnyPressesLoseNothing(t *testing.T) {
	all, seeds := 0, uint64(8)
	if testing.Short() {
		seeds = 5
	}
	for seed := range seeds {
		chance := rand.New(rand.NewPCG(seed, 1))
		r := NewRun(warmup(t, "ears", seed+1, 6), "x")
		counted := map[[2]int]Hands{}
		now := begin
		for range 120 {
			now = now.Add(time.Second)
			switch chance.IntN(12) {
			case 0, 1, 2:
				r.Next(now)
			case 3, 6, 7:
				r.Back()
			case 4:
				r.Skip(now)
			case 5:
				r.GoOn(now)
			default:
				key := []string{"most", "few", "7", "1", "none", "x"}[chance.IntN(6)]
				if r.Press(key) {
					_, i := r.Task()
					counted[[2]int{i, r.Answer()}] = r.Hands()[r.Answer()]
				}
			}
			again, err := ResumeRun(r.Text(), supplied(t), now)
			require.NoError(t, err)
			require.Equal(t, r.Stage(), again.Stage())
			require.Equal(t, r.Answer(), again.Answer())
			require.Equal(t, r.Entry(), again.Entry())
			require.Equal(t, "x", again.Class)
			for at, h := range counted {
				require.Equal(t, h, again.kept.Hands[at[0]][at[1]])
			}
		}
		all += len(counted)
	}
	require.Greater(t, all, 20)
}

// It keeps to its end: what would last past it by half is left out, and can be had.
func TestRunKeepsToItsEnd(t *testing.T) {
	w := warmup(t, "ears", 2, 6)
	require.Greater(t, len(w.Tasks), 3)
	r := NewRun(w, "")
	r.Next(begin)
	r.Skip(begin.Add(time.Minute))
	_, i := r.Task()
	require.Equal(t, 1, i)
	r.Skip(begin.Add(6*time.Minute - time.Second))
	require.Equal(t, After, r.Stage())
	require.Equal(t, len(w.Tasks)-2, r.Left())
	r.Back()
	_, i = r.Task()
	require.Equal(t, 1, i)
	require.Equal(t, Hearing, r.Stage())
	r.Next(begin.Add(6 * time.Minute))
	require.True(t, r.GoOn(begin.Add(7*time.Minute)))
	_, i = r.Task()
	require.Equal(t, 2, i)
	r.Skip(begin.Add(20 * time.Minute))
	_, i = r.Task()
	require.Equal(t, 3, i, "who went on is not stopped anew")
}

// A run that was interrupted for a day can be finished.
func TestResumedLater(t *testing.T) {
	r := NewRun(warmup(t, "ears", 2, 6), "")
	r.Next(begin)
	r, err := ResumeRun(r.Text(), supplied(t), begin.Add(24*time.Hour))
	require.NoError(t, err)
	r.Skip(begin.Add(24 * time.Hour))
	require.Equal(t, Asking, r.Stage())
}

func TestResumeErrors(t *testing.T) {
	r := NewRun(warmup(t, "ears", 2, 6), "")
	r.Next(begin)
	good := r.Text()
	for name, text := range map[string]string{
		"no json":   "{",
		"version":   strings.Replace(good, `"v":1`, `"v":2`, 1),
		"set":       strings.Replace(good, "five", "waltz", 1),
		"task":      strings.Replace(good, `"task":0`, `"task":99`, 1),
		"not there": strings.Replace(good, `"task":0`, `"task":1`, 1),
		"step":      strings.Replace(good, `"step":0`, `"step":9`, 1),
		"reached":   strings.Replace(good, `"reached":1`, `"reached":2`, 1),
		"hands":     strings.Replace(good, `"hands":[[`, `"hands":[["many",`, 1),
		"back":      strings.Replace(good, `"task":0`, `"task":-2`, 1),
	} {
		require.NotEqual(t, good, text, name)
		_, err := ResumeRun(text, supplied(t), begin)
		require.Error(t, err, name)
	}
}

func TestHandsPress(t *testing.T) {
	for _, c := range []struct{ keys, want string }{
		{"most", "most"}, {"most few", "few"}, {"1 2", "12"}, {"1 2 3 4", "123"}, {"0 7", "7"}, {"most 4", "4"},
		{"4 some", "some"}, {"4 ", ""}, {"4 x", "4"}, {"", ""}, {"-", ""}, {"none", "none"}, {"12", "12"},
	} {
		h := Hands("")
		for key := range strings.SplitSeq(c.keys, " ") {
			h = h.Press(key)
		}
		require.Equal(t, Hands(c.want), h, c.keys)
	}
}

// Hands in the order maqsum, saidi (right), baladi.
func TestVerdict(t *testing.T) {
	for _, c := range []struct {
		hands   string
		verdict Verdict
		taken   string
	}{
		{"few most none", Knew, "maqsum"},
		{"none most none", Knew, ""},
		{"- most -", Knew, ""},
		{"most some few", MixedUp, "maqsum"},
		{"some some none", MixedUp, "maqsum"},
		{"few none most", MixedUp, "baladi"},
		{"3 12 5", Knew, "baladi"},
		{"12 3 0", MixedUp, "maqsum"},
		{"0 0 0", Untold, ""},
		{"none none none", Untold, ""},
		{"- - -", Untold, ""},
		{"most - few", Untold, "maqsum"},
		{"3 most 2", Untold, "maqsum"}, // a number and a word
		{"0 most none", Knew, ""},
		{"most 0 -", MixedUp, "maqsum"},
	} {
		d := Done{Kind: HandsUp, Rhythm: "saidi", Riff: "bare", Choices: []string{"maqsum", "saidi", "baladi"}, Right: "saidi"}
		for h := range strings.SplitSeq(c.hands, " ") {
			d.Hands = append(d.Hands, Hands(strings.Trim(h, "-")))
		}
		require.Equal(t, c.verdict, d.Verdict(), c.hands)
		require.Equal(t, c.taken, d.TakenFor(), c.hands)
	}
}

func entry(hands ...string) Entry {
	e := Entry{Version: 1, When: begin, Class: "=cmd", Set: "five_riffing_hands-up_5_1"}
	for i, h := range hands {
		d := Done{Kind: HandsUp, Rhythm: "saidi", BPM: 96, Riff: []string{"bare", "filled", "riffing"}[i], Choices: []string{"saidi", "baladi"}, Right: "saidi"}
		for word := range strings.SplitSeq(h, " ") {
			d.Hands = append(d.Hands, Hands(word))
		}
		e.Tasks = append(e.Tasks, d)
	}
	e.Tasks = append(e.Tasks, Done{Kind: SayIt, Rhythm: "maqsum", BPM: 100, Riff: "bare"})
	return e
}

func TestFigures(t *testing.T) {
	e := entry("most few", "most none", "few most")
	f := FiguresOf(e)
	require.Equal(t, Tally{2, 3}, f.Tally)
	require.Equal(t, []Level{{"bare", Tally{1, 1}}, {"filled", Tally{1, 1}}, {"riffing", Tally{0, 1}}}, f.Levels)
	require.Equal(t, []Pair{{"saidi", "baladi", 1}}, f.Mixed)
	require.Equal(t, []string{"saidi"}, f.Known)
	require.Equal(t, []int{3, 1}, []int{f.Counted, f.Moved})
	require.Equal(t, "filled", f.Through())
	require.Equal(t, Dance{"saidi", true, "ornamented", Pair{"saidi", "baladi", 1}}, DanceTo(e))
	require.Equal(t, Dance{Rhythm: "maqsum", Riff: "bare"}, DanceTo(entry()))
	require.Equal(t, []Pair{{"saidi", "baladi", 2}}, FiguresOf(e, e).Mixed)
	require.Equal(t, "", FiguresOf(entry("few most")).Through())
}

func TestDiary(t *testing.T) {
	first, second := entry("most few"), entry("few most")
	second.When = begin.Add(time.Hour)
	again := first
	again.Tasks = again.Tasks[:1]
	require.Equal(t, first.Key(), again.Key())
	require.NotEqual(t, first.Key(), second.Key())
	diary := "not ours\n" + second.Line() + "\n" + again.Line() + "\n"
	entries, unread := ParseDiary(diary)
	require.Equal(t, 1, unread)
	require.Equal(t, []Entry{second, again}, entries)
	require.Equal(t, map[string]string{"not ours": "not ours", second.Key(): second.Line(), again.Key(): again.Line()}, SplitDiary(diary))
	require.Empty(t, SplitDiary(""))
	_, unread = ParseDiary(strings.Replace(first.Line(), `"most"`, `"many"`, 1))
	require.Equal(t, 1, unread)
}

func TestCSV(t *testing.T) {
	rows, err := csv.NewReader(strings.NewReader(CSV([]Entry{entry("most few")}))).ReadAll()
	require.NoError(t, err)
	require.Equal(t, [][]string{
		{"when", "class", "set", "question", "kind", "rhythm", "bpm", "riff", "answer", "right", "hands"},
		{"2026-03-03T18:00:00Z", "'=cmd", "five_riffing_hands-up_5_1", "1", "hands-up", "saidi", "96", "bare", "saidi", "true", "most"},
		{"2026-03-03T18:00:00Z", "'=cmd", "five_riffing_hands-up_5_1", "1", "hands-up", "saidi", "96", "bare", "baladi", "false", "few"},
		{"2026-03-03T18:00:00Z", "'=cmd", "five_riffing_hands-up_5_1", "2", "say-it", "maqsum", "100", "bare", "", "", ""},
	}, rows)
}
