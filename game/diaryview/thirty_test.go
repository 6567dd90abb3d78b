package diaryview

import (
	"bytes"
	"flag"
	"fmt"
	"os"
	"path/filepath"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/proof"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

var writeInvented = flag.String("invented", "", "write the rounds and pictures of the invented learner into this folder, to look at")

const thirty = 30

// TestThirtyDays: invented learners practise for thirty days what the program chooses,
// and the diary is read. One of them is written down; of all it is asked whether they
// are found again, and whether what was chosen for them fits.
func TestThirtyDays(t *testing.T) {
	all := make([]*learner, 20)
	if testing.Short() {
		all = all[:3]
	}
	t.Run("practise", func(t *testing.T) {
		for i := range all {
			t.Run("", func(t *testing.T) {
				t.Parallel()
				all[i] = newLearner(t, uint64(i))
				all[i].practise(t, thirty)
			})
		}
	})
	t.Run("golden", func(t *testing.T) {
		proof.Golden(t, "thirty-days.txt", all[0].writeDays(t))
		if *writeInvented != "" {
			all[0].writeFiles(t, *writeInvented)
		}
	})
	t.Run("found", func(t *testing.T) { requireFound(t, all) })
	t.Run("chosen", func(t *testing.T) { requireChosen(t, all) })
}

// diary is hers as the page shows it.
func (l *learner) diary(t testing.TB) *Diary {
	return &Diary{
		People: []Person{{"invented", invented}}, Who: "invented", Outputs: l.book.Outputs(), Rounds: len(l.rounds),
		Figures: l.book.Figures(theirOutput), Today: theirDay(thirty - 1).Format(time.DateOnly), Rhythms: everyRhythm(t),
		Minutes: 10, Invented: true,
	}
}

// writeDays writes what was chosen for her and what came of it, round by round, and what
// her diary says in the end.
func (l *learner) writeDays(t *testing.T) []byte {
	var b bytes.Buffer
	for day, of := range l.days {
		fmt.Fprintf(&b, "%s: hears through %d of 100 hidden\n", theirDay(day).Format(time.DateOnly), ofHundred(hideTapped(day)))
		for _, p := range of {
			fmt.Fprintf(&b, "  %v\n", p)
		}
	}
	s := l.diary(t).Screen(words(t))
	require.NoError(t, screenproof.Dump(&b, s))
	s.Each(func(it *view.Item) {
		if it.Picture != nil {
			screenproof.RequireXML(t, svgOf(t, it))
		}
	})
	return b.Bytes()
}

func svgOf(t testing.TB, it *view.Item) []byte {
	var svg bytes.Buffer
	require.NoError(t, picture.WriteSVG(&svg, it.Picture, it.Name, it.Text))
	return svg.Bytes()
}

// String writes a round short: why, what, how, and what came of it.
func (p lived) String() string {
	k, hide, tempo := &p.kept, "", ""
	if p.Hide > 0 {
		hide = fmt.Sprintf(" %d", p.Hide)
	}
	if p.BPM > 0 {
		tempo = fmt.Sprintf(" at %d", p.BPM)
	}
	came := k.Answer
	if k.Kind == history.Dums {
		came = fmt.Sprintf("%d of %d, %d added", k.Matched, len(k.Strokes), k.Added)
	} else if !k.Right {
		came += ", wrong"
	}
	return strings.TrimSpace(fmt.Sprintf("%s %s %s %s%s%s: %s", p.Reason, p.Kind, strings.Join(p.Rhythms, "."), p.Level, hide, tempo, came))
}

// writeFiles writes her rounds as a file that the page can take in, and the pictures of
// her diary.
func (l *learner) writeFiles(t testing.TB, folder string) {
	var lines bytes.Buffer
	for _, r := range l.rounds {
		line, err := history.Format(r)
		require.NoError(t, err)
		lines.Write(append(line, '\n'))
	}
	require.NoError(t, os.MkdirAll(folder, 0o755))
	require.NoError(t, os.WriteFile(filepath.Join(folder, "invented.jsonl"), lines.Bytes(), 0o644))
	s := l.diary(t).Screen(words(t))
	s.Each(func(it *view.Item) {
		if it.Picture != nil {
			require.NoError(t, os.WriteFile(filepath.Join(folder, it.ID+".svg"), svgOf(t, it), 0o644))
		}
	})
}
