package diaryview

import (
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// nicknames are such as people take, and such as a file may bring.
var nicknames = []string{"Mira", "مها الصغيرة", "נועה", strings.Repeat("long ", 30), "a {n} b", "<b>", "Zoë \"Zo\" O'Neill", "🥁"}

// Whatever people are called, each is called so wherever she is named, and the one without
// a nickname never by an empty one.
func TestEveryNicknameIsShown(t *testing.T) {
	w := words(t)
	for _, name := range append(slices.Clone(nicknames), "") {
		d := mira(t)
		d.People = []Person{{"a", name}, {"b", "Leila"}}
		called := d.nickname(w, "a")
		require.NotEmpty(t, called)
		require.True(t, name == "" || called == name)
		d.Import = &Import{File: "f", New: 1, People: []string{"Samia"}}
		d.Erasing = EraseOne
		s := d.Screen(w)
		require.NoError(t, screenproof.Check(s))
		for _, id := range []string{"erase", "rename", "merge-2", "own", "erase-ask"} {
			require.Contains(t, s.Find(id).Name, called, id)
		}
		require.Equal(t, []view.Option{{Value: "a", Label: called}, {Value: "b", Label: "Leila"}}, s.Find("who").Options)
		require.Equal(t, "a", s.Find("who").Value)
		d.Merging = "b"
		s = d.Screen(w)
		require.Contains(t, s.Find("merge-ask").Name, called)
		require.Contains(t, s.Find("merge-ask").Name, "Leila")
	}
}

// Of one person there is no choice, nobody to put together with, and nothing of everybody;
// of many each of the others can be put to her, and she not to herself.
func TestOneAndManyPeople(t *testing.T) {
	w := words(t)
	for n := 1; n <= 9; n++ {
		d := mira(t)
		d.People = nil
		for i := range n {
			d.People = append(d.People, Person{ID: string(rune('a' + i)), Name: nicknames[i%len(nicknames)]})
		}
		for _, p := range d.People {
			d.Who = p.ID
			s := d.Screen(w)
			require.NoError(t, screenproof.Check(s))
			require.Equal(t, n > 1, s.Find("who") != nil)
			require.Equal(t, n > 1, s.Find("everybody") != nil)
			var others []string
			s.Each(func(it *view.Item) {
				if it.Action == view.ActDiaryMerge {
					others = append(others, it.Value)
				}
			})
			require.Len(t, others, n-1)
			require.NotContains(t, others, p.ID)
			require.Equal(t, p.ID, s.Find("export").Value)
		}
	}
	require.Empty(t, Who(w, nil, ""))
	require.Empty(t, Who(w, []Person{{"a", "Mira"}, {"b", ""}}, "gone")[0].Value, "who is gone is not chosen")
}

// Outputs are told apart where there are several; the one that is told is chosen, and none
// where its rounds are gone.
func TestOutputs(t *testing.T) {
	w, d := words(t), mira(t)
	for _, name := range append(slices.Clone(nicknames), "") {
		d.Outputs, d.Figures.Output = []string{name, "kitchen"}, name
		s := d.Screen(w)
		require.NoError(t, screenproof.Check(s))
		require.Equal(t, name, s.Find("output").Value)
		require.Equal(t, name == "", s.Find("output").Options[0].Label != name, "what has no name is called something")
		d.Figures.Output = "gone"
		s = d.Screen(w)
		require.Empty(t, s.Find("output").Value)
		d.Outputs = d.Outputs[:1]
		s = d.Screen(w)
		require.Nil(t, s.Find("output"))
	}
}

// What a file would bring is told in numbers that add up: a line for each broken one up to
// five, then how many more; it can be taken where something is new, and left always.
func TestImportAddsUp(t *testing.T) {
	w := words(t)
	for broken := range 9 {
		for _, n := range []int{0, 1, 31} {
			d := mira(t)
			d.Import = &Import{File: nicknames[broken%len(nicknames)], New: n, Here: n / 2, Newer: broken}
			for i := range broken {
				d.Import.Broken = append(d.Import.Broken, Broken{Line: 10 * (i + 1), Why: "no comma"})
			}
			s := d.Screen(w)
			require.NoError(t, screenproof.Check(s))
			require.Contains(t, s.Find("preview").Name, d.Import.File)
			require.Equal(t, n == 0, s.Find("take").Disabled)
			require.False(t, s.Find("leave").Disabled)
			require.Equal(t, n/2 > 0, s.Find("found-here") != nil)
			require.Equal(t, broken > 0, s.Find("found-newer") != nil)
			require.Equal(t, broken > 0, s.Find("broken") != nil)
			require.Equal(t, broken > 5, s.Find("broken-more") != nil)
			require.Nil(t, s.Find("whose"), "a file that names nobody")
			if broken > 0 {
				lines := s.Find("broken").Children
				require.Len(t, lines, min(broken, 6))
				require.Contains(t, lines[min(broken, 5)-1].Text, view.Plain(w.Say("broken-line", "line", 10*min(broken, 5), "why", "")))
			}
			if broken > 5 {
				require.True(t, strings.HasPrefix(s.Find("broken-more").Text, string(rune('0'+broken-5))))
			}
		}
	}
}

// Whether all of a file belongs to one person is as it was chosen, and asked only while the
// file is looked at; an import is told until it is taken back or nothing of it is left.
func TestImportIsShownAndUndone(t *testing.T) {
	w, d := words(t), mira(t)
	for _, own := range []bool{false, true} {
		d.Import = &Import{File: "f", New: 2, People: nicknames, Own: own}
		s := d.Screen(w)
		require.Equal(t, own, s.Find("own").Checked)
		for _, name := range nicknames {
			require.Contains(t, s.Find("whose-names").Text, name)
		}
	}
	d.Import = nil
	for _, rounds := range []int{0, 1, 40} {
		d.Imported = Imported{File: "مها.jsonl", Day: diaryToday, Rounds: rounds}
		s := d.Screen(w)
		require.Nil(t, s.Find("preview"))
		require.Equal(t, rounds > 0, s.Find("undo") != nil)
		if rounds > 0 {
			require.Contains(t, s.Find("imported-text").Text, w.Say("rounds", "n", rounds))
			require.Contains(t, s.Find("imported-text").Text, "مها.jsonl, today")
			require.Equal(t, view.ActDiaryUndo, s.Find("undo").Action)
		}
	}
}

// A rhythm that is not here is called by its ID wherever it is told, and has no drumhead.
func TestRhythmThatIsNotHere(t *testing.T) {
	w := words(t)
	everyScreen(t, func(t *testing.T, d *Diary) {
		d.Rhythms = nil
		s := d.Screen(w)
		require.NoError(t, screenproof.Check(s))
		for _, f := range d.Figures.Fingers {
			require.Nil(t, s.Find("round-"+f.Rhythm))
			require.NotEmpty(t, rowsOf(s, "named-table", f.Rhythm), f.Rhythm)
		}
		require.Nil(t, s.Find("round-told"))
	})
}
