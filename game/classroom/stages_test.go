package classroom

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// Back and on again: each stage is come to once more, what was counted stays, and a question
// that was heard is not played again by going on.
func TestBackAndOnAgain(t *testing.T) {
	r := begun(t, hands)
	r.until(warmup.Counting)
	r.Use(view.ActClassHands, "m")
	counted := r.class().run.Text()
	r.Use(view.ActClassBack, "")
	require.Equal(t, warmup.Asking, r.stage())
	r.next()
	require.Equal(t, counted, r.class().run.Text(), "one press, as it was")
	require.False(t, r.class().one)
	for range 10 {
		r.Use(view.ActClassBack, "")
	}
	require.Equal(t, warmup.WalkIn, r.stage(), "and no farther than the walk-in")
	require.Contains(t, r.class().run.Text(), `"hands":[[`, "what was counted stays")
}

// After every press the run is kept: a page that is loaded anew stands where it stood, and
// nothing sounds by itself.
func TestAPageThatIsLoadedAnewStandsWhereItStood(t *testing.T) {
	r := begun(t, hands)
	for n := range 12 {
		r.next()
		if r.stage() == warmup.Counting {
			r.Use(view.ActClassHands, []string{"m", "f"}[n%2])
		}
		stood := r.class().run.Text()
		r.Load()
		r.Ticks(50)
		require.True(t, r.class().inside)
		require.Equal(t, stood, r.class().run.Text())
		require.False(t, r.class().one || r.class().loop.On)
	}
}

// Who has left the room finds it at its button, and not by loading the page.
func TestALeftRoomIsTakenUpByItsButton(t *testing.T) {
	r := begun(t, hands)
	r.until(warmup.Counting)
	stood := r.class().run.Text()
	require.Equal(t, view.Playing, r.class().Phase())
	r.Use(view.ActClassLeave, "")
	require.Equal(t, view.Ready, r.class().Phase())
	r.Load()
	require.False(t, r.class().inside)
	require.NotNil(t, r.class().readyModel().Unended)
	r.Use(view.ActClassResume, "")
	require.True(t, r.class().inside)
	require.Equal(t, stood, r.class().run.Text())
	r.class().GoOut()
	require.False(t, r.class().inside)
}

func TestARunOfAnotherVersionIsLeftAlone(t *testing.T) {
	for name, text := range map[string]string{"a later one": `{"v":99}`, "torn": `{"v":1,"set":`, "none": ""} {
		r := newRoom(t, hands)
		require.NoError(t, r.Shared.Classes.Keep(keptRun, text))
		r.Use(view.ActOpen, "")
		require.Nil(t, r.class().run, name)
		r.Use(view.ActClassResume, "")
		require.False(t, r.class().inside, name)
		r.Use(view.ActClassBegin, "")
		require.True(t, r.class().inside, "a new one can be begun")
	}
}

// end goes through a warm-up of a class to the page after it.
func (r *room) end(class string) {
	r.Use(view.ActClassName, class)
	r.Use(view.ActClassBegin, "")
	for r.stage() != warmup.After {
		r.Use(view.ActClassSkip, "")
	}
}

// The diary has each warm-up once, and the page after one shows those of its own class.
func TestTheDiaryOfAClass(t *testing.T) {
	r := newRoom(t, hands)
	for n, class := range []string{"Tuesdays", "Fridays", "Tuesdays"} {
		r.Wall.Set(evening.AddDate(0, 0, n))
		r.end(class)
		require.Len(t, r.Storage.KeptUnder(host.KeptDiary), n+1)
		r.Use(view.ActClassBack, "")
		r.until(warmup.After)
		require.Len(t, r.Storage.KeptUnder(host.KeptDiary), n+1, "come to twice, it is kept once")
		if n == 2 {
			break
		}
		r.Use(view.ActClassLeave, "")
		require.Nil(t, r.class().run, "it is over")
		require.Empty(t, r.Shared.Classes.Kept(keptRun))
	}
	earlier := r.class().earlier()
	require.Len(t, earlier, 1)
	require.Equal(t, "Tuesdays", earlier[0].Class)
	require.Equal(t, []string{evening.Local().Format("2006-01-02")}, r.class().afterModel().Dates)

	r.Use(view.ActClassJSON, "")
	r.Use(view.ActClassCSV, "")
	require.Len(t, r.Storage.Files, 2)
	require.True(t, strings.HasSuffix(r.Storage.Files[0].Name, ".jsonl"))
	entries, err := warmup.ParseDiary(r.Storage.Files[0].Text)
	require.Empty(t, err)
	require.Len(t, entries, 2, "those of the class, this one last")
	require.True(t, entries[1].Same(r.class().run.Entry()))
	require.NotContains(t, r.Storage.Files[1].Text, "Fridays")
	require.Equal(t, warmup.CSV(entries), r.Storage.Files[1].Text)
}

func TestWhatCannotBeKeptIsSaid(t *testing.T) {
	r := begun(t, hands)
	require.False(t, r.class().readyModel().NoCopies)
	r.Storage.Full = true
	r.next()
	require.True(t, r.class().unkept)
	require.Equal(t, warmup.Asking, r.stage(), "it goes on all the same")
	r.Storage.Full = false
	r.next()
	r.next()
	require.False(t, r.class().unkept, "kept again, nothing is said")
}

func TestTheScreenCanBeBlanked(t *testing.T) {
	r := begun(t, hands)
	for _, blank := range []bool{true, false, true} {
		r.Use(view.ActClassBlank, "")
		require.Equal(t, blank, r.class().model().Blank)
	}
	r.Use(view.ActClassLeave, "")
	r.Use(view.ActClassResume, "")
	require.False(t, r.class().model().Blank, "who comes back sees it")
}

// Nothing of what is asked stands on the screen before it is told.
func TestNothingIsToldBeforeItsTime(t *testing.T) {
	for seed := range 6 {
		r := begun(t, "five_bare_hands-up_2_"+string(rune('1'+seed)))
		for r.stage() != warmup.Telling {
			m := r.class().model()
			require.Nil(t, m.Told)
			if r.stage() != warmup.WalkIn {
				require.Nil(t, m.Rhythm, "seed %d", seed)
			}
			r.next()
		}
		task, _ := r.class().run.Task()
		told := r.class().model().Told
		require.Equal(t, task.Right, told.Right.Value)
		require.NotEqual(t, told.Right.Value, told.Taken.Value)
	}
}
