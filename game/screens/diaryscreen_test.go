package screens

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/view"
)

// find is an item of the diary as it is shown now.
func (d *diaried) find(id string) *view.Item {
	s := d.Diary.Screen()
	return s.Find(id)
}

// The diary says that it is being read until its figures have been worked out, once; a
// round that comes later does not make it say so again.
func TestTheDiaryIsReadOnce(t *testing.T) {
	d := newDiary(t, "a", "a")
	require.Nil(t, d.find("reading"))
	require.Nil(t, d.find("empty"))
	d.Count()
	require.Nil(t, d.find("reading"), "the figures before stand until the new ones are there")

	g, _, _ := newTestGame(t, "?screen=home")
	x := NewDiary(&g.Shared)
	g.Shared.Address = link.Default(view.ScreenDiary)
	x.Prepare()
	s := x.Screen()
	require.NotNil(t, s.Find("reading"))
	require.False(t, x.Tick(0))
	require.NotNil(t, newDiary(t).find("empty"), "of somebody who has played nothing")
}

// What is wrong with a nickname is said beside it, and nothing once it is mended.
func TestTheDiarySaysWhatIsWrongWithAName(t *testing.T) {
	d := newDiary(t)
	for name, said := range map[string]string{" ": "name-missing", strings.Repeat("a", 41): "name-long"} {
		d.Act(view.ActDiaryName, name)
		d.Act(view.ActDiaryRename, "")
		d.settle()
		require.Equal(t, d.Shared.Words.Say(said), d.find("name-problem").Text)
		require.Equal(t, name, d.find("nickname").Value, "it can be mended")
	}
	who := d.Shared.Learner.Who.ID
	d.Act(view.ActDiaryName, "Mira")
	d.Act(view.ActDiaryRename, "")
	d.settle()
	require.Empty(t, d.find("name-problem").Text)
	require.Equal(t, host.Person{ID: who, Name: "Mira"}, d.Shared.Learner.Who, "the same person under a name")
	require.Len(t, d.Shared.Learner.People, 1)
	require.Contains(t, d.find("rename").Name, "Mira")
}

// What is asked before it is done is asked on the screen, with a way out of it, and gone
// once it was answered.
func TestTheDiaryAsksFirst(t *testing.T) {
	d := newDiary(t, "a")
	first := d.Shared.Learner.Who.ID
	d.Act(view.ActDiaryErase, first)
	require.Equal(t, first, d.find("erase-yes").Value)
	d.Act(view.ActDiaryErase, host.Everybody)
	require.Equal(t, host.Everybody, d.find("erase-yes").Value)
	d.Act(view.ActDiaryEraseNo, "")
	require.Nil(t, d.find("erase-yes"))
	require.Len(t, d.Storage.Rounds(), 1)

	d.Act(view.ActDiaryName, "Mira")
	d.Act(view.ActDiaryAdd, "")
	d.settle()
	d.Act(view.ActDiaryMerge, first)
	require.Equal(t, first, d.find("merge-yes").Value)
	d.Act(view.ActDiaryMergeNo, "")
	require.Nil(t, d.find("merge-yes"))
	require.Len(t, d.Shared.Learner.People, 2)
	d.Act(view.ActDiaryMerge, first)
	d.Prepare()
	require.Nil(t, d.find("merge-yes"), "who comes back is not asked any more")
}

// Each person's rounds can be had as a table, under its head, and as lines.
func TestTheDiaryIsHandedOver(t *testing.T) {
	d := newDiary(t, "a", "a")
	who := d.Shared.Learner.Who.ID
	d.Act(view.ActDiaryCSV, who)
	d.Act(view.ActDiaryExport, who)
	d.settle()
	require.Len(t, d.Storage.Files, 2)
	rows := strings.Split(strings.TrimSpace(d.Storage.Files[0].Text), "\n")
	require.Len(t, rows, 3, "a head and two rounds")
	require.Equal(t, 2, strings.Count(strings.TrimSpace(d.Storage.Files[1].Text), "\n")+1)
}

// A file shows what it would bring before it is taken, and afterwards what it brought, with
// the way back; whose it is can be chosen.
func TestTheDiaryShowsAFile(t *testing.T) {
	from, d := newDiary(t, "a", "a"), newDiary(t)
	from.Act(view.ActDiaryExport, host.Everybody)
	from.settle()
	require.Nil(t, d.find("preview"))
	d.Shared.File = strings.NewReader(from.Storage.Files[0].Text)
	d.Act(view.ActDiaryImport, "rounds.jsonl")
	d.settle()
	require.Contains(t, d.find("preview").Name, "rounds.jsonl")
	require.Contains(t, d.find("take").Name, "2")
	d.Act(view.ActDiaryOwn, "yes")
	require.True(t, d.own)
	d.Act(view.ActDiaryTake, "")
	d.settle()
	require.Nil(t, d.find("preview"))
	require.Contains(t, d.find("imported-text").Text, "2")
	require.Equal(t, 2, d.Shared.Learner.Kept(), "they are the player's own now")
	d.Act(view.ActDiaryUndo, "")
	d.settle()
	require.Nil(t, d.find("imported"))
	d.Act(view.ActDiaryImport, "rounds.jsonl")
	d.settle()
	require.Nil(t, d.find("preview"), "no file was opened")
}

// A practice can be as long as was chosen last.
func TestHowLongAPracticeIsOffered(t *testing.T) {
	d := newDiary(t, "a")
	for _, minutes := range []string{"5", "20"} {
		d.Act(view.ActDiaryMinutes, minutes)
		s := d.Diary.Screen()
		var offered []string
		s.Each(func(it *view.Item) {
			if it.Action == view.ActDiaryPractise {
				offered = append(offered, it.Value)
			}
		})
		require.Equal(t, []string{minutes}, offered)
	}
}

// The plan says that it is being read until it is made; then it has parts, and a button that
// begins it, but not where there is no sound.
func TestThePlanIsShown(t *testing.T) {
	g, _, _ := newTestGame(t, "?screen=home")
	s := &g.Shared
	s.Address = link.Default(view.ScreenPractice)
	var x control.Controller = NewPlan(s)
	shown := func(id string) *view.Item {
		s := x.Screen()
		return s.Find(id)
	}
	x.Prepare()
	require.NotNil(t, shown("reading"))
	require.Nil(t, shown("begin"))
	s.Learner.Read()
	g.Ticks(50)
	require.True(t, x.Tick(0))
	require.Nil(t, shown("reading"))
	require.NotNil(t, shown("begin"))
	require.NotEmpty(t, shown("plan").Children)
	require.Equal(t, g.Shared.Words.Say("plan-first"), shown("plan-how").Text, "nothing was practised before")
	require.Nil(t, x.Draw(view.PlaceHead))
	g.Sound.None = true
	g.Ticks(50)
	require.NotNil(t, shown("silent"))
	require.Nil(t, shown("begin"))
}
