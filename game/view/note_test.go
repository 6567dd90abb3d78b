package view

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

var notes = []Note{NoteQuiet, NoteNoSound, NoteNotKept, NoteCoarse, NoteNoSetUp, NoteRiffs, NoteNotExported}

// Each note has an id and a text of its own, so that all may stand on one screen.
func TestNotesAreTold(t *testing.T) {
	w := words(t)
	ids, texts := map[string]bool{}, map[string]bool{}
	for i, it := range Notes(w, notes) {
		require.False(t, ids[it.ID], it.ID)
		require.False(t, texts[it.Text], it.Text)
		require.Equal(t, sayNote(w, notes[i]), it.Text)
		ids[it.ID], texts[it.Text] = true, true
	}
	require.Len(t, ids, len(notes))
	require.Empty(t, Notes(w, nil))
}

// A note keeps its id whatever stands beside it: it is the same element, and is not said
// anew when another comes.
func TestNoteKeepsItsID(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(1, 4))
	ids := map[Note]string{}
	for range 100 {
		chance.Shuffle(len(notes), func(i, j int) { notes[i], notes[j] = notes[j], notes[i] })
		some := notes[:chance.IntN(len(notes)+1)]
		for i, it := range Notes(w, some) {
			if ids[some[i]] == "" {
				ids[some[i]] = it.ID
			}
			require.Equal(t, ids[some[i]], it.ID)
		}
	}
	require.Len(t, ids, len(notes))
}

// What answers a press is said at once; asides wait to be read.
func TestNoteThatAnswersIsSaidAtOnce(t *testing.T) {
	w := words(t)
	for _, n := range notes {
		it := Notes(w, []Note{n})[0]
		if n == NoteNotExported {
			require.Equal(t, []any{RoleStatus, LookWarning, LiveAssertive}, []any{it.Role, it.Look, it.Live})
			continue
		}
		require.Equal(t, []any{RoleText, LookNote, ""}, []any{it.Role, it.Look, it.Live}, it.Text)
	}
}

// Where a screen says by itself that there is no sound, it says so once, in its own words,
// and all other notes as they are.
func TestNotesWithout(t *testing.T) {
	w := words(t)
	all := []Note{NoteNotKept, NoteNoSound, NoteCoarse}
	usual, own := Notes(w, all), NotesWithout(w, all, "The drum is silent.")
	require.Len(t, own, 3)
	for i := range all {
		require.Equal(t, all[i] == NoteNoSound, usual[i].Text != own[i].Text)
		require.Equal(t, usual[i].ID, own[i].ID)
	}
	require.Equal(t, "The drum is silent.", own[1].Text)
}
