package screens

import (
	"errors"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/game/diaryview"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// diaried is the practice diary of somebody who has answered some questions, each on an
// output.
type diaried struct {
	*testGame
	*Diary
}

func newDiary(t *testing.T, outputs ...string) *diaried {
	t.Helper()
	g, _, _ := newTestGame(t, "?screen=home")
	took := 900.
	for i, output := range outputs {
		g.Storage.Put(history.Round{
			Kind: history.Which, Rhythm: "maqsum", BPM: 100, Riff: "bare", Eights: 4, Seed: 7, ID: fmt.Sprintf("%024x", 1000+i),
			When: "2026-01-30T12:00:00Z", Output: output, Rate: 48000, Epoch: 1, Choices: []string{"maqsum", "saidi"},
			Answer: "maqsum", Right: true, Took: &took, Heard: 2,
		})
	}
	d := &diaried{g, NewDiary(&g.Shared)}
	g.Shared.Address = link.Default(view.ScreenDiary)
	g.Shared.Learner.Recount = d.Count
	g.Shared.Learner.Read()
	d.Prepare()
	d.settle()
	return d
}

// settle lets all answers come, and all figures be worked out.
func (d *diaried) settle() {
	d.Ticks(100)
	for range 100 {
		d.Diary.Tick(0)
	}
	d.Ticks(100)
}

func TestFiguresAreWorkedOutAPartInAFrame(t *testing.T) {
	d := newDiary(t, "a", "a")
	require.True(t, d.counted)
	d.Count()
	parts := len(d.parts)
	require.Greater(t, parts, 2)
	for n := range parts {
		require.Equal(t, n == parts-1, d.Diary.Tick(0), "the screen is another after the last")
	}
	require.False(t, d.Diary.Tick(0))
	d.Shared.Address = link.Default(view.ScreenHome)
	d.Count()
	require.Empty(t, d.parts, "on no other screen")
}

// What is told is of the output in use; where nothing was played on it, of the one that was
// used most; and of the one that is asked for.
func TestWhoseOutputIsTold(t *testing.T) {
	d := newDiary(t, "a", "b", "b")
	require.Equal(t, "b", d.output)
	d.Act(view.ActDiaryOutput, "a")
	require.Equal(t, "a", d.output)
	d.Act(view.ActDiaryOutput, "gone")
	require.Equal(t, "b", d.output)
}

func TestNicknamesThatCannotBe(t *testing.T) {
	d := newDiary(t)
	problem := func() diaryview.NameProblem {
		d.settle()
		p, failed := d.named()
		require.False(t, failed)
		return p
	}
	for name, want := range map[string]diaryview.NameProblem{" ": diaryview.NameMissing, strings.Repeat("a", 41): diaryview.NameLong} {
		d.Act(view.ActDiaryName, name)
		d.Act(view.ActDiaryAdd, "")
		require.Equal(t, want, problem())
		require.Equal(t, name, d.typed, "it can be mended")
	}
	d.Act(view.ActDiaryName, "Mira")
	d.Act(view.ActDiaryAdd, "")
	require.Equal(t, diaryview.NameFine, problem())
	require.Empty(t, d.typed)
	require.Equal(t, "Mira", d.Shared.Learner.Who.Name)
	d.Act(view.ActDiaryName, "MIRA")
	d.Act(view.ActDiaryAdd, "")
	require.Equal(t, diaryview.NameUsed, problem())
	d.Act(view.ActDiaryMergeYes, "nobody")
	require.Equal(t, diaryview.NameGone, problem())
	d.saved(errors.New("full"))
	_, failed := d.named()
	require.True(t, failed, "that is no matter of names")
}

// Nothing is erased or put together at one press.
func TestErasedAndMergedAtTwoPresses(t *testing.T) {
	d := newDiary(t, "a", "a")
	first := d.Shared.Learner.Who.ID
	for value, want := range map[string]diaryview.Erase{first: diaryview.EraseOne, host.Everybody: diaryview.EraseEverybody} {
		d.Act(view.ActDiaryErase, value)
		require.Equal(t, want, d.erasing)
		d.Act(view.ActDiaryEraseNo, "")
		require.Equal(t, diaryview.EraseNothing, d.erasing)
	}
	d.Act(view.ActDiaryName, "Mira")
	d.Act(view.ActDiaryAdd, "")
	d.settle()
	require.Zero(t, d.Shared.Learner.Kept(), "she has none")
	d.Act(view.ActDiaryMerge, first)
	d.settle()
	require.Zero(t, d.Shared.Learner.Kept())
	d.Act(view.ActDiaryMergeYes, first)
	d.settle()
	require.Equal(t, 2, d.Shared.Learner.Kept())
	require.Len(t, d.Shared.Learner.People, 1)
	d.Act(view.ActDiaryEraseYes, host.Everybody)
	d.settle()
	require.Zero(t, d.Shared.Learner.Kept())
	require.Empty(t, d.Storage.Rounds())
}

// A file is looked at before it is taken, and taken back as it was taken.
func TestAFileIsTakenAndTakenBack(t *testing.T) {
	from, d := newDiary(t, "a", "a", "b"), newDiary(t)
	from.Act(view.ActDiaryExport, host.Everybody)
	from.settle()
	require.Len(t, from.Storage.Files, 1)
	text := from.Storage.Files[0].Text
	d.Act(view.ActDiaryImport, "rounds.jsonl\n"+text)
	d.settle()
	require.Nil(t, d.preview, "no file was opened")
	open := func() {
		d.Shared.File = strings.NewReader(text + "no round\n")
		d.Act(view.ActDiaryImport, "rounds.jsonl\n")
		d.settle()
		require.Nil(t, d.Shared.File)
		require.Equal(t, 3, d.preview.New)
	}
	open()
	shown := shownImport(d.preview, true)
	require.Len(t, shown.Broken, 1)
	require.Positive(t, shown.Broken[0].Line, "with its place")
	d.Act(view.ActDiaryLeave, "")
	require.Nil(t, d.preview)
	require.Empty(t, d.Storage.Rounds())
	open()
	d.Act(view.ActDiaryTake, "")
	d.settle()
	require.Equal(t, 3, d.imported.Rounds)
	require.Len(t, d.Storage.Rounds(), 3)
	d.Act(view.ActDiaryUndo, "")
	d.settle()
	require.Empty(t, d.Storage.Rounds())
	require.Zero(t, d.imported)
}

// What is offered begins at a press; what is not offered does not.
func TestWhatIsOfferedBegins(t *testing.T) {
	d := newDiary(t, "a")
	var begun [][]coach.Step
	d.Shared.Practice.Begin = func(steps []coach.Step) { begun = append(begun, steps) }
	require.NotEmpty(t, d.next)
	d.Act(view.ActDiaryNext, "0")
	d.Act(view.ActDiaryNext, fmt.Sprint(len(d.next)))
	d.Act(view.ActDiaryNext, "-1")
	require.Equal(t, [][]coach.Step{d.next[0]}, begun)
}
