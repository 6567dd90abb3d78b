package session_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/paper"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// practised goes through the practice that is planned, from its plan to the diary, and
// returns how many rounds of it were played. What is new is looked at before it is asked.
func practised(t *testing.T, b *paper.Browser, p *paper.Player) (rounds, met int) {
	t.Helper()
	require.True(t, b.Until(func() bool { return b.Find("plan") != nil }), b.Text())
	require.NoError(t, b.Press("begin"))
	for b.Screen().ID != view.ScreenDiary {
		require.Less(t, rounds, 60, "it ends")
		switch {
		case paper.UnderWay(b.Screen()):
			require.True(t, p.Play(), b.Text())
			rounds++
		case b.Screen().ID == view.ScreenListen:
			met++
			b.Wait(4000)
			require.NoError(t, b.Does(view.ActPracticeAsk, "*"))
		default:
			require.NoError(t, b.Does(view.ActPracticeNext, "*"), b.Text())
		}
	}
	b.Wait(500)
	require.NotNil(t, b.Find("days-told"), "the diary tells of them")
	return rounds, met
}

// newcomer is a browser on Home's way to a first practice of ten minutes.
func newcomer(t *testing.T, seed uint64) *paper.Browser {
	t.Helper()
	b := opened(t, "", seed)
	require.NoError(t, goTo(b, "?screen="+view.ScreenPractice))
	return b
}

// Ten minutes by somebody who hears all: they are about ten minutes, every round of them
// is right, and tempi rise. The next day's plan knows of it: it shows nothing once more as
// new, and asks faster.
func TestPracticeOfAFlawlessPlayer(t *testing.T) {
	b := newcomer(t, 4)
	began := b.Wall.Date()
	p := paper.NewPlayer(b, 4)
	rounds, met := practised(t, b, p)
	require.InDelta(t, 10, b.Wall.Date().Sub(began).Minutes(), 5, "her answers take their time")
	require.Greater(t, rounds, 10)
	require.Positive(t, met)
	all := b.Storage.Rounds()
	require.Len(t, all, rounds)
	for _, r := range all {
		require.True(t, history.Right(r), "%+v", r)
	}
	slow, fast := tempi(all)
	require.NotEmpty(t, rising(slow, fast))

	b.Wall.Sleep(24 * 3600e9)
	b.Load()
	b.Wait(100)
	require.NoError(t, b.Press("home"))
	require.NoError(t, b.Press("practise-now"))
	more, again := practised(t, b, p)
	require.Positive(t, more)
	require.LessOrEqual(t, again, 2, "what was met is not new")
	all = b.Storage.Rounds()
	_, today := tempi(all[rounds:])
	for rhythm, bpm := range today {
		if before, met := slow[rhythm]; met {
			require.Greater(t, bpm, before, rhythm)
		}
	}
	dates := map[string]int{}
	for _, r := range all {
		dates[diary.Date(r)]++
	}
	require.Len(t, dates, 2)
}

// tempi are the first and the fastest tempo at which the dums of each rhythm were tapped.
func tempi(rounds []history.Round) (first, fast map[string]int) {
	first, fast = map[string]int{}, map[string]int{}
	for _, r := range rounds {
		if r.Kind != history.Dums {
			continue
		}
		if first[r.Rhythm] == 0 {
			first[r.Rhythm] = r.BPM
		}
		fast[r.Rhythm] = max(fast[r.Rhythm], r.BPM)
	}
	return first, fast
}

// rising are the rhythms that became faster.
func rising(first, fast map[string]int) (ids []string) {
	for id, bpm := range fast {
		if bpm > first[id] {
			ids = append(ids, id)
		}
	}
	return ids
}

// Ten minutes by somebody who gets nothing right: nothing becomes faster or more hidden,
// and nothing counts as right; so it is by somebody who does not listen, but for what
// chance brings.
func TestPracticeOfAWeakPlayer(t *testing.T) {
	for _, m := range []paper.Manner{paper.Errs, paper.Guesses} {
		b := newcomer(t, 4)
		rounds, _ := practised(t, b, player(b, m, 4))
		all := b.Storage.Rounds()
		require.Len(t, all, rounds)
		right := 0
		for _, r := range all {
			if history.Right(r) {
				right++
			}
		}
		if m == paper.Errs {
			require.Zero(t, right)
			require.Empty(t, rising(tempi(all)))
		}
		require.Less(t, right, rounds/2)
	}
}

// Nobody is there: what is tapped ends by itself and tells nothing of her, what is asked
// waits for ever, and the practice is left at one press, from wherever it is.
func TestPracticeOfNobody(t *testing.T) {
	b := newcomer(t, 4)
	require.True(t, b.Until(func() bool { return b.Find("plan") != nil }))
	plan := b.Find("ring").Text
	require.NoError(t, b.Press("begin"))
	p := player(b, paper.Absent, 4)
	waits := false
	for !waits && b.Screen().ID != view.ScreenDiary {
		switch {
		case paper.UnderWay(b.Screen()):
			waits = !p.Play()
		case b.Screen().ID == view.ScreenListen:
			require.NoError(t, b.Does(view.ActPracticeAsk, "*"))
		default:
			require.NoError(t, b.Does(view.ActPracticeNext, "*"))
		}
	}
	require.True(t, waits, "an answer is waited for")
	for _, r := range b.Storage.Rounds() {
		require.False(t, history.Tried(r), "%+v", r)
	}
	require.NoError(t, b.Press("stop"))
	require.NoError(t, b.Press("practice-end"))
	require.Equal(t, view.ScreenDiary, b.Screen().ID)
	require.NoError(t, goTo(b, "?screen="+view.ScreenPractice))
	require.True(t, b.Until(func() bool { return b.Find("plan") != nil }))
	require.Equal(t, plan, b.Find("ring").Text, "what was not tried changes nothing")
}

// The page is loaded anew in the middle of a practice: what was played is kept, and from
// there one goes on with a new plan.
func TestPracticeReloaded(t *testing.T) {
	b := newcomer(t, 6)
	require.True(t, b.Until(func() bool { return b.Find("plan") != nil }))
	require.NoError(t, b.Press("begin"))
	p := paper.NewPlayer(b, 6)
	for len(b.Storage.Rounds()) < 3 {
		switch {
		case paper.UnderWay(b.Screen()):
			require.True(t, p.Play())
		case b.Screen().ID == view.ScreenListen:
			require.NoError(t, b.Does(view.ActPracticeAsk, "*"))
		default:
			require.NoError(t, b.Does(view.ActPracticeNext, "*"))
		}
	}
	b.Load()
	b.Wait(100)
	require.Len(t, b.Storage.Rounds(), 3)
	require.NoError(t, b.Press("home"))
	require.NoError(t, b.Press("practise-now"), "she has practised here")
	rounds, _ := practised(t, b, p)
	require.Len(t, b.Storage.Rounds(), 3+rounds)
}
