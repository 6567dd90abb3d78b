package round_test

import (
	"fmt"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// changedRecording plays a recording of a round with a change as the game does,
// and writes it with what came of it.
func changedRecording(t *testing.T, text string) string {
	t.Helper()
	note, value := values(t, text)
	level, err := riff.ParseLevel(value["level"])
	require.NoError(t, err)
	c := round.Change{
		From: supplied(t, value["from"]), At: wholeOf(t, value, "at"), Eights: wholeOf(t, value, "eights"),
		BPM: wholeOf(t, value, "bpm"), Level: level, Seed: uint64(wholeOf(t, value, "seed")),
	}
	if value["to"] != "" {
		c.To = supplied(t, value["to"])
	}
	r, err := round.NewChanged(c)
	require.NoError(t, err)
	r.Begin()
	setup, presses := parseMs(t, value["setup"]), timesOf(t, value["presses"])
	var refused []int
	next := 0
	for now := -500 * ms; r.UnderWay() || next < len(presses); now += time.Second / 60 {
		for ; next < len(presses) && presses[next] <= now; next++ {
			if !r.Press(round.Tap{At: presses[next], Mark: next + 1}, setup) {
				refused = append(refused, next+1)
			}
		}
		r.Hear(now, setup)
	}
	r.Answer(value["answer"])
	return note + "\n" + sayKept(value, "from", "to", "at", "eights", "bpm", "level", "seed", "setup", "presses", "answer") +
		sayChange(r, refused)
}

func sayChange(r *round.Changed, refused []int) string {
	changes, _ := r.Changes()
	differs, ok := r.Differs()
	said := "changes: never\n"
	if ok {
		said = fmt.Sprintf("changes: %.3f, differs: %.3f\n", changes.Seconds()*1000, differs.Seconds()*1000)
	}
	n := r.Notice()
	said += fmt.Sprintf("ends: %.3f, refused:%s\n", r.End().Seconds()*1000, sayNumbers(refused))
	if !n.Heard {
		return said + fmt.Sprintf("heard: not, %d too early; right: %t\n", n.Early, n.Right)
	}
	return said + fmt.Sprintf("heard: #%d, late %.3f, %.3f counts, %.3f in its eight, %d too early; right: %t\n",
		r.Presses()[n.Press].Mark, n.Late.Seconds()*1000, n.Counts, n.InEight.Seconds()*1000, n.Early, n.Right)
}

// late holds, for each recording, how late the change was heard, in ms after the
// first stroke that differs, worked out by hand; below 0: not at all.
var late = map[string]float64{
	"at-once":       0,    // 10.25 s: a count-in of 2 s, two eights of 4 s, the & of 1
	"three-counts":  1500, // three counts of 500 ms after 10.25 s
	"too-early":     750,  // 11 s; before it at 6 and, in its eight, at 10.2 s
	"left-out":      -1,
	"never":         -1,
	"never-pressed": -1,
	"set-up":        520,  // 10.95 s, less 180, after 10.25
	"missing":       1000, // 10 s and 2.5 s for the dum on 6 that does not come, then 1 s more
	"filled":        850,  // after D-T- of maqsum and D-Tk of sa'idi: 20.75 counts of 60/97 s, then 850 ms
}

func TestRecordedChanges(t *testing.T) {
	eachRecording(t, "change", len(late), func(t *testing.T, name, text string) string {
		got := changedRecording(t, text)
		want, found := late[name]
		require.True(t, found)
		if want < 0 {
			require.Contains(t, got, "\nheard: not, ")
			return got
		}
		_, after, _ := strings.Cut(got, ", late ")
		said, _, _ := strings.Cut(after, ",")
		is, err := strconv.ParseFloat(said, 64)
		require.NoError(t, err)
		require.InDelta(t, want, is, 0.011, "half a frame is 0.0104 ms")
		return got
	})
}
