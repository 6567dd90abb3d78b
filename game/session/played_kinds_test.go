package session_test

import (
	"fmt"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/coach"
	"groundbeat/game/diary"
	"groundbeat/game/link"
	"groundbeat/game/paper"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// played plays a round from its link to the record that is kept of it.
func played(t *testing.T, link string, m paper.Manner, seed uint64) history.Round {
	t.Helper()
	b := opened(t, link, seed)
	require.NoError(t, b.Press("begin"))
	require.True(t, player(b, m, seed).Play())
	all := b.Storage.Rounds()
	require.Len(t, all, 1)
	return all[0]
}

// Each kind of the table opens from its link, on the screen that the link names, and what
// is played there is kept as a round of the kind.
func TestEveryKindOpensFromItsLink(t *testing.T) {
	for _, k := range history.Kinds {
		a := link.AddressOf(k.ID)
		b := opened(t, a.String(), 1)
		require.Equal(t, a.Screen, b.Screen().ID, k.ID)
		require.Equal(t, a.String(), b.Query(), k.ID)
		require.Equal(t, k.ID, played(t, a.String(), paper.Listens, 1).Kind)
	}
}

// requireTold makes sure that the diary and the planner take a round for right, or not:
// its rhythm, if it has one, was met rightly, and is not due on the next day; or else it is.
func requireTold(t *testing.T, r history.Round, right bool) {
	t.Helper()
	b := diary.New(func(string) *rhythm.Cycle { return nil })
	b.Add(r)
	met := b.Met(r.Output)
	if r.Rhythm == "" {
		require.Empty(t, met, r.Kind)
		return
	}
	require.Len(t, met, 1, r.Kind)
	require.Equal(t, right, met[0].Right == met[0].N, r.Kind)
	due := coach.DueOn(met, r.Time().AddDate(0, 0, 1).Format(time.DateOnly))
	require.Equal(t, right, len(due) == 0, "%s: %+v", r.Kind, due)
}

// Every kind of round: who listens is right, and who says and taps the contrary is wrong;
// so her record says, and the diary counts it. Rhythms, tempi and questions are drawn by
// seeds. No kind of the table is without a screen on which it is played.
func TestEveryKindIsPlayed(t *testing.T) {
	kinds := map[string]bool{}
	for _, link := range roundLinks(t) {
		for _, level := range []string{view.LevelBare, view.LevelFilled} {
			for seed := range uint64(3) {
				link := fmt.Sprintf("%s&seed=%d", withLevel(link, level), 1+1000*seed)
				flawless := played(t, link, paper.Listens, seed)
				kinds[flawless.Kind] = true
				require.True(t, history.Right(flawless), "%s: %+v", link, flawless)
				require.Zero(t, flawless.Out+flawless.Added+flawless.Early, link)
				if k, _ := history.KindOf(flawless.Kind); k.Play == history.Tapped {
					require.Equal(t, len(flawless.Strokes), flawless.Matched, link)
				}
				requireTold(t, flawless, true)
				wrong := played(t, link, paper.Errs, seed)
				require.False(t, history.Right(wrong), "%s: %+v", link, wrong)
				requireTold(t, wrong, false)
				require.Equal(t, []any{flawless.Kind, flawless.Rhythm, flawless.BPM, flawless.Seed},
					[]any{wrong.Kind, wrong.Rhythm, wrong.BPM, wrong.Seed}, "a link is the same for everybody")
			}
		}
	}
	for _, k := range history.Kinds {
		require.True(t, kinds[k.ID], k.ID)
	}
}

// In every rhythm that there is, odd metres too, whoever taps all dums is told so: in the
// review's table each count was tapped as often as it was asked, and nothing was left out.
func TestEveryRhythmIsReviewed(t *testing.T) {
	for _, link := range tapLinks(t) {
		for i, id := range catalogue(t).IDs() {
			level := []string{view.LevelBare, view.LevelFilled}[i%2]
			b := opened(t, strings.Split(link, "&")[0]+"&rhythm="+id+"&riff="+level, uint64(i))
			finish(t, b, "begin")
			r := b.Storage.Rounds()[0]
			require.Equal(t, id, r.Rhythm)
			if b.Cycle(id).Skeleton[0].Low() { // else after a stop a 1 is asked that is no dum
				require.Equal(t, []int{len(r.Strokes), 0}, []int{r.Matched, r.Out}, link+id)
			}
			for _, row := range b.Find("by-count").Rows {
				var tapped, asked int
				_, err := fmt.Sscanf(row[1], "%d of %d", &tapped, &asked)
				require.NoError(t, err, row)
				require.LessOrEqual(t, tapped, asked, "%s %s: %v", link, id, row)
				if r.Out == 0 {
					require.Equal(t, asked, tapped, "%s %s: %v", link, id, row)
				}
			}
		}
	}
}

// catalogue are the rhythms that are supplied.
func catalogue(t *testing.T) *rhythm.Catalogue {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	return all
}
