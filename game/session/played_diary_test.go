package session_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/paper"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// rounds plays rounds of a link one after the other.
func rounds(t *testing.T, b *paper.Browser, n int) {
	t.Helper()
	for range n {
		finish(t, b, "begin", "once", "next-question")
	}
}

// diaryOf is the diary of somebody who has played some rounds.
func diaryOf(t *testing.T, seed uint64, n int) *paper.Browser {
	t.Helper()
	b := opened(t, "?screen=dums&eights=1", seed)
	rounds(t, b, n)
	require.NoError(t, goTo(b, "?screen="+view.ScreenDiary))
	b.Wait(500)
	return b
}

// The diary of two people on one machine: each has her own rounds, they are put together
// at two presses, and erased not by mistake.
func TestDiaryOfTwo(t *testing.T) {
	b := diaryOf(t, 1, 2)
	require.Contains(t, b.Find("days-finding").Text, "2 rounds")
	require.NoError(t, b.Type("nickname", "Mira"))
	require.NoError(t, b.Press("rename"))
	b.Wait(300)
	require.NoError(t, b.Type("nickname", " mira "))
	require.NoError(t, b.Press("add"))
	b.Wait(300)
	require.NotEmpty(t, b.Find("name-problem").Text, "there is a Mira")
	require.NoError(t, b.Type("nickname", "Leila"))
	require.NoError(t, b.Press("add"))
	b.Wait(500)
	require.Nil(t, b.Find("days-told"), "she has no rounds")
	require.NoError(t, goTo(b, "?screen="+view.ScreenWhich))
	rounds(t, b, 3)
	require.NoError(t, goTo(b, "?screen="+view.ScreenDiary))
	b.Wait(500)
	require.Contains(t, b.Find("days-finding").Text, "3 rounds")
	who := b.Find("who")
	require.Equal(t, "Mira", who.Options[0].Label)
	require.NoError(t, b.Choose("who", who.Options[0].Value))
	b.Wait(500)
	require.Contains(t, b.Find("days-finding").Text, "2 rounds")

	require.NoError(t, b.Does(view.ActDiaryMerge, "*"))
	require.NoError(t, b.Does(view.ActDiaryMergeNo, "*"))
	require.NoError(t, b.Does(view.ActDiaryMerge, "*"))
	require.NoError(t, b.Does(view.ActDiaryMergeYes, "*"))
	b.Wait(500)
	require.Contains(t, b.Find("days-finding").Text, "5 rounds")
	require.NoError(t, b.Press("erase"))
	require.Error(t, b.Press("home"), "a dialog is answered first")
	require.NoError(t, b.Key("Escape"))
	require.Len(t, b.Storage.Rounds(), 5, "not by mistake")
	require.NoError(t, b.Press("erase"))
	require.NoError(t, b.Press("erase-yes"))
	b.Wait(500)
	require.Empty(t, b.Storage.Rounds())
	require.NotNil(t, b.Find("empty"))
}

// A diary is a file for another machine: there it is looked into, taken, taken back and
// taken again, under its own nickname or as one's own; what is there already is not taken
// twice. The two diaries tell the same.
func TestDiaryGoesToAnotherMachine(t *testing.T) {
	b := diaryOf(t, 1, 3)
	require.NoError(t, b.Type("nickname", "Mira"))
	require.NoError(t, b.Press("rename"))
	b.Wait(300)
	told := b.Find("days-finding").Text
	require.NoError(t, b.Press("export"))
	require.NoError(t, b.Press("csv"))
	b.Wait(100)
	require.Len(t, b.Storage.Files, 2)
	lines, sheet := b.Storage.Files[0].Text, b.Storage.Files[1].Text
	require.Equal(t, 3, strings.Count(lines, `"player":"Mira"`))
	require.Equal(t, 4, strings.Count(strings.TrimSpace(sheet), "\n")+1, "a head and a row each")

	other := opened(t, "?screen="+view.ScreenDiary, 2)
	other.Wait(300)
	for _, own := range []bool{false, true} {
		require.NoError(t, other.OpenFile("import", "mira.jsonl", lines+"{}\n"))
		other.Wait(100)
		require.Contains(t, other.Text(), "3")
		if own {
			require.NoError(t, other.Tick("own", true))
		}
		require.Empty(t, other.Storage.Rounds(), "nothing is taken yet")
		require.NoError(t, other.Does(view.ActDiaryTake, "*"))
		other.Wait(500)
		require.Len(t, other.Storage.Rounds(), 3)
		require.Equal(t, own, other.Find("days-finding") != nil, "whose they are")
		require.Equal(t, !own, other.Find("who") != nil)
		if !own {
			require.NoError(t, other.Does(view.ActDiaryUndo, "*"))
			other.Wait(500)
			require.Empty(t, other.Storage.Rounds())
		}
	}
	require.Equal(t, told, other.Find("days-finding").Text)
	require.NoError(t, other.OpenFile("import", "mira.jsonl", lines))
	other.Wait(100)
	require.Error(t, other.Does(view.ActDiaryTake, "*"), "there is nothing new in it")
}

// What the browser refuses waits and is told, on every screen; it is handed over as a file,
// is not lost with the page, and is kept once there is room.
func TestRoundsThatWait(t *testing.T) {
	b := opened(t, "?screen=dums&eights=1", 1)
	b.Storage.Full = true
	rounds(t, b, 2)
	b.Wait(100)
	require.Contains(t, b.Find("waiting").Text, "2 rounds")
	require.NoError(t, b.Press("once"))
	require.Nil(t, b.Find("waiting"), "a round is not disturbed")
	require.NoError(t, b.Press("home"))
	require.NoError(t, b.Press("save-waiting"))
	require.Equal(t, 2, strings.Count(b.Storage.Files[0].Text, "\n"))
	require.NoError(t, b.Press("go-set-up"))
	require.NotNil(t, b.Find("waiting"))
	b.Load()
	b.Wait(100)
	require.NotNil(t, b.Find("waiting"), "after a reload too")
	b.Storage.Full = false
	b.Load()
	b.Wait(100)
	require.Nil(t, b.Find("waiting"))
	require.Len(t, b.Storage.Rounds(), 2)
	require.NoError(t, goTo(b, "?screen="+view.ScreenDiary))
	b.Wait(500)
	require.Contains(t, b.Find("days-finding").Text, "2 rounds")
	b.Storage.Older = true
	b.Wait(50)
	require.NoError(t, b.Press("reload"), "a later page has been here")
	require.Equal(t, 1, b.Reloads)
	b.Storage.Older = false
	b.Wait(50)
	require.Nil(t, b.Find("keeping"))
}

// Where the browser keeps nothing, rounds are played and told for as long as the page is
// open, and it says so.
func TestNothingIsKept(t *testing.T) {
	b := opened(t, "?screen=dums&eights=1", 1)
	b.Storage.None = true
	rounds(t, b, 2)
	b.Wait(100)
	require.NotNil(t, b.Find("keeping"))
	require.NoError(t, goTo(b, "?screen="+view.ScreenDiary))
	b.Wait(500)
	require.Contains(t, b.Find("days-finding").Text, "2 rounds")
	b.Load()
	b.Wait(500)
	require.Nil(t, b.Find("days-finding"))
}

// Storage that answers late: a plan waits for all that it rests on, a round played
// meanwhile is kept, and nothing is told twice.
func TestLateStorage(t *testing.T) {
	b := opened(t, "?screen=dums&eights=1", 1)
	b.Storage.Frames = 120
	rounds(t, b, 1)
	require.NoError(t, b.Press("home"))
	require.NoError(t, b.Press("practise-now"))
	b.Load()
	b.Wait(100)
	require.NotNil(t, b.Find("reading"))
	require.True(t, b.Until(func() bool { return b.Find("plan") != nil }))
	require.Len(t, b.Storage.Rounds(), 1)
	require.NoError(t, b.Press("begin"))
	for len(b.Storage.Rounds()) < 3 {
		switch {
		case paper.UnderWay(b.Screen()):
			require.True(t, paper.NewPlayer(b, 1).Play())
		case b.Screen().ID == view.ScreenListen:
			require.NoError(t, b.Does(view.ActPracticeAsk, "*"))
		default:
			require.NoError(t, b.Does(view.ActPracticeNext, "*"))
		}
	}
	require.NoError(t, b.Press("practice-end"))
	require.True(t, b.Until(func() bool {
		told := b.Find("days-finding")
		return told != nil && strings.Contains(told.Text, "3 rounds")
	}), "the last comes a while after")
	for _, r := range b.Storage.Rounds() {
		require.True(t, history.Right(r))
	}
}
