package classview

import (
	"bytes"
	"fmt"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

func classModel() *Class {
	c := &Class{Levels: allLevels, Letters: true, Hearing: true, Volume: 60,
		Pools: []view.Option{{Value: "maqsum.baladi.saidi", Label: "maqsum, baladi and sa'idi"}}}
	for _, id := range warmup.Presets() {
		s, _ := warmup.Preset(id)
		c.Sets = append(c.Sets, ClassSet{ID: id, Set: s, Lasts: ClassLength{9, 9*time.Minute + 31*time.Second, "18:42"}})
	}
	c.Set, c.Lasts = c.Sets[1].Set, ClassLength{1, 2*time.Minute + 10*time.Second, "18:35"}
	return c
}

// roomTask is a room at a stage of a task of a kind; sa'idi is right where that is asked.
func roomTask(t testing.TB, stage warmup.Stage, kind warmup.Kind) *Room {
	r := &Room{Stage: stage, Kind: kind, Nth: 3, Of: 9, Ends: "18:42", Letters: true, Rhythm: supplied(t, "saidi"), Lined: true}
	if kind == warmup.HandsUp {
		r.Rhythm = nil
	}
	return r
}

func toldRoom(t testing.TB, kind warmup.Kind, right, taken view.Option) *Room {
	saidi, maqsum := supplied(t, "saidi"), supplied(t, "maqsum")
	r := roomTask(t, warmup.Telling, kind)
	r.Rhythm = saidi
	r.Told = &Told{Right: right, Taken: taken, Hands: warmup.Most, Differences: rhythm.Differ(saidi, maqsum), Sides: [2]*rhythm.Cycle{saidi, maqsum}, Circled: []int{3}}
	return r
}

func classScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	c := classModel()
	all["class-ready"] = c.Screen(w)
	c.Sets = append([]ClassSet{{ID: PutSet, Set: c.Set, Lasts: c.Lasts}, {ID: LastSet, Set: c.Set, Lasts: c.Lasts}}, c.Sets...)
	c.Sets = append(c.Sets, ClassSet{ID: "saved-1", Name: "Tuesday", Set: c.Set, Lasts: c.Lasts})
	c.Unended, c.Hearing, c.Saved, c.NoCopies, c.Problem = &c.Sets[0], false, true, true, "x.txt:2: no colon"
	c.Set.Name, c.Set.Seed, c.Class = "Tuesday", 12, "blue scarves"
	all["class-ready-later"] = c.Screen(w)
	silent := classModel()
	silent.Volume, silent.Notes = -1, []view.Note{view.NoteNoSound}
	all["class-ready-silent"] = silent.Screen(w)

	in := &Room{Stage: warmup.WalkIn, Sounds: true, Rhythm: supplied(t, "maqsum"), Letters: true, Length: ClassLength{9, 600 * time.Second, "18:42"}}
	all["class-walk-in"] = in.Screen(w)
	for _, k := range warmup.Kinds() {
		all["class-asking-"+string(k)] = roomTask(t, warmup.Asking, k).Screen(w)
	}
	sounds := roomTask(t, warmup.Asking, warmup.HandsUp)
	sounds.Sounds, sounds.Slower, sounds.Help.Alone = true, true, true
	all["class-sounding"] = sounds.Screen(w)
	heard := roomTask(t, warmup.Asking, warmup.HandsUp)
	heard.Heard, heard.Problem, heard.Letters = true, "Nothing.", false
	all["class-heard"] = heard.Screen(w)
	gone := roomTask(t, warmup.Asking, warmup.SayIt)
	gone.Sounds, gone.Lined = true, false
	all["class-line-gone"] = gone.Screen(w)
	blank := roomTask(t, warmup.Counting, warmup.HandsUp)
	blank.Blank = true
	all["class-blanked"] = blank.Screen(w)
	for kind, answer := range map[warmup.Kind]view.Option{
		warmup.HandsUp: {Value: "saidi", Label: "sa'idi"}, warmup.WhatChanged: {Value: "2", Label: "2"}, warmup.FindTheOne: {Value: "3", Label: "3"}, warmup.BaseOrRiff: {Value: warmup.OffBase, Label: "off"},
	} {
		r := roomTask(t, warmup.Counting, kind)
		r.Answer, r.Hands = answer, map[warmup.Kind]warmup.Hands{warmup.HandsUp: warmup.Few, warmup.WhatChanged: "12"}[kind]
		all["class-counting-"+string(kind)] = r.Screen(w)
		all["class-told-"+string(kind)] = toldRoom(t, kind, answer, view.Option{Value: "maqsum", Label: "maqsum"}).Screen(w)
	}
	long := toldRoom(t, warmup.HandsUp, view.Option{Value: "masmudi-kabir", Label: "masmudi kabir"}, view.Option{Value: "ciftetelli", Label: "çiftetelli"})
	long.Rhythm = supplied(t, "masmudi-kabir")
	long.Told.Sides = [2]*rhythm.Cycle{long.Rhythm, supplied(t, "ciftetelli")}
	long.Told.Differences = rhythm.Differ(long.Told.Sides[0], long.Told.Sides[1])
	all["class-told-long"] = long.Screen(w)
	long.Sounds = true
	all["class-told-long-heard"] = long.Screen(w)
	all["class-told-walk"] = roomTask(t, warmup.Telling, warmup.WalkAndClap).Screen(w)
	changed := toldRoom(t, warmup.WhatChanged, view.Option{Value: "2", Label: "2"}, view.Option{})
	changed.Told.Sides[1] = movedIn(changed.Rhythm, 3, 2)
	all["class-told-moved"] = changed.Screen(w)
	off := toldRoom(t, warmup.BaseOrRiff, view.Option{Value: warmup.OffBase, Label: "off"}, view.Option{})
	off.Lead = soloOver(t, off.Rhythm)
	all["class-told-off"] = off.Screen(w)
	off.Sounds, off.Turn = true, warmup.OnBase
	all["class-told-off-heard-on"] = off.Screen(w)
	again := toldRoom(t, warmup.HandsUp, view.Option{Value: "saidi", Label: "sa'idi"}, view.Option{})
	again.Stage, again.Sounds = warmup.Hearing, true
	all["class-hearing"] = again.Screen(w)

	a := classAfter(t)
	all["class-after"] = a.Screen(w)
	a.Left, a.Unkept, a.Earlier, a.Dates = 2, true, []warmup.Entry{a.Entry}, []string{"2026-02-24"}
	all["class-after-later"] = a.Screen(w)
	a = &ClassAfter{Entry: warmup.Entry{Tasks: a.Entry.Tasks[2:]}, Names: a.Names}
	all["class-after-uncounted"] = a.Screen(w)
	return all
}

// While both are heard in turn, what is said belongs to the one that is heard.
func TestBaseIsSaidAsHeard(t *testing.T) {
	r := toldRoom(t, warmup.BaseOrRiff, view.Option{Value: warmup.OffBase, Label: "off"}, view.Option{})
	r.Lead = soloOver(t, r.Rhythm)
	for heard, says := range map[string]string{
		"":             "The lead drum strikes between the bass drum’s dums.",
		warmup.OnBase:  "You hear it on the base: the lead drum’s dums fall with the bass drum’s.",
		warmup.OffBase: "You hear it off the base: the lead drum strikes between the bass drum’s dums.",
	} {
		r.Turn = heard
		s := r.Screen(words(t))
		require.Equal(t, "It was off the base.", s.Find("heading-told").Name)
		require.Equal(t, says, s.Find("reason-1").Text)
	}
}

func classAfter(t testing.TB) *ClassAfter {
	asked := func(rhythm, level string, hands ...warmup.Hands) warmup.Done {
		return warmup.Done{Kind: warmup.HandsUp, Rhythm: rhythm, Riff: level, Choices: []string{"maqsum", "saidi"}, Right: rhythm, Hands: hands}
	}
	return &ClassAfter{Today: "2026-03-03", Seed: 7,
		Names: map[string]string{"maqsum": "maqsum", "saidi": "sa'idi", "baladi": "baladi (masmudi saghir)"},
		Sheet: []*rhythm.Cycle{supplied(t, "maqsum"), supplied(t, "saidi")},
		Entry: warmup.Entry{Tasks: []warmup.Done{asked("maqsum", "bare", warmup.Most, warmup.Few), asked("saidi", "filled", "7", "5"),
			{Kind: warmup.WalkAndClap, Rhythm: "baladi", Riff: "bare"},
			{Kind: warmup.BaseOrRiff, Rhythm: "saidi", Riff: "solo", Choices: []string{"on", "off"}, Right: "off", Hands: []warmup.Hands{"", warmup.Some}}}}}
}

// While something is asked, the screen is the same whatever the answer: nothing on it,
// in its title, its ids or its pictures can tell.
func TestRoomGivesNothingAway(t *testing.T) {
	w := words(t)
	for _, kind := range warmup.Kinds() {
		if !kind.Counted() {
			continue
		}
		for _, stage := range []warmup.Stage{warmup.Asking, warmup.Counting} {
			var dumps []string
			for _, right := range []string{"saidi", "maqsum"} {
				r := roomTask(t, stage, kind)
				r.Sounds, r.Answer = true, view.Option{Value: "baladi", Label: "baladi"}
				r.Told = &Told{Right: view.Option{Value: right, Label: right}, Sides: [2]*rhythm.Cycle{supplied(t, right), supplied(t, right)}, Circled: []int{len(right)}}
				if kind == warmup.HandsUp {
					r.Rhythm = nil
				}
				s := r.Screen(w)
				var b bytes.Buffer
				require.NoError(t, screenproof.Dump(&b, s))
				dumps = append(dumps, fmt.Sprint(b.String(), s.Keys, r.Head()))
				require.True(t, r.Head().Hidden)
				require.False(t, r.Turns())
			}
			require.Equal(t, dumps[0], dumps[1], "%s %d", kind, stage)
		}
	}
}

// One thing to do on every stage, by the same button and the same keys.
func TestRoomHasOneThingToDo(t *testing.T) {
	for name, s := range classScreens(t) {
		if !s.Room {
			continue
		}
		var primary []string
		s.Each(func(it *view.Item) {
			if it.Look == view.LookPrimary {
				primary = append(primary, it.Action)
			}
		})
		want := view.ActClassNext
		if name == "class-blanked" {
			want = view.ActClassBlank
		}
		require.Equal(t, []string{want}, primary, name)
		for _, key := range []string{"PageDown", "ArrowRight", "ArrowDown", "Enter", " "} {
			require.Contains(t, s.Keys, view.Key{Key: key, Action: want, Value: ""}, name)
		}
		require.Equal(t, view.ActClassLeave, s.Escape, name)
		require.Equal(t, "Class warm-up – Groundbeat", s.Title, name)
		keys := map[string]bool{}
		for _, k := range s.Keys {
			require.False(t, keys[k.Key], "%s: %s", name, k.Key)
			keys[k.Key] = true
		}
		letter := slices.ContainsFunc(s.Keys, func(k view.Key) bool { return k.Key == "m" })
		require.Equal(t, name != "class-heard" && name != "class-blanked", letter, name)
	}
}

// What was entered is what is said, and nothing where nobody counted.
func TestTakenIsWhatWasEntered(t *testing.T) {
	w := words(t)
	for hands, want := range map[warmup.Hands]string{
		warmup.Most: "Most took it for maqsum.", warmup.Some: "Some took it for maqsum.", warmup.Few: "A few took it for maqsum.",
		"1": "1 took it for maqsum.", "3": "3 took it for maqsum.", "12": "12 took it for maqsum.", "": "", warmup.None: "",
	} {
		r := toldRoom(t, warmup.HandsUp, view.Option{Value: "saidi", Label: "sa'idi"}, view.Option{Value: "maqsum", Label: "maqsum"})
		r.Told.Hands = hands
		var b bytes.Buffer
		require.NoError(t, screenproof.Dump(&b, r.Screen(w)))
		require.Equal(t, want != "", strings.Contains(b.String(), "took it"), hands)
		require.Contains(t, b.String(), want)
	}
}

// Each name is asked for by itself, and none of the others stands beside it.
func TestAskedNameByName(t *testing.T) {
	s := classScreens(t)["class-counting-hands-up"]
	require.Equal(t, "Hands up for sa'idi?", s.Find("heading-for-saidi").Name)
	var b bytes.Buffer
	require.NoError(t, screenproof.Dump(&b, s))
	require.NotContains(t, b.String(), "maqsum")
}

// The line stands in one row over the whole width, and wraps evenly on a telephone.
func TestRoomLineWraps(t *testing.T) {
	for id, want := range map[string][2]int{"maqsum": {8, 8}, "masmudi-kabir": {16, 8}, "samai-thaqil": {10, 5}} {
		for i, narrow := range []bool{false, true} {
			r := &Room{Stage: warmup.Telling, Kind: warmup.HandsUp, Rhythm: supplied(t, id), Narrow: narrow}
			require.Equal(t, want[i], r.Wall().Columns, id)
		}
	}
}

func TestSayMinutes(t *testing.T) {
	w := words(t)
	for d, want := range map[time.Duration]string{
		time.Minute: "1\u00a0minute", 10*time.Minute + 14*time.Second: "10\u00a0minutes", 10*time.Minute + 16*time.Second: "10½\u00a0minutes",
		9*time.Minute + 46*time.Second: "10\u00a0minutes",
	} {
		require.Equal(t, want, sayMinutes(w, d))
	}
}

// The home sheet has each rhythm's line, and what to listen for.
func TestHomeSheet(t *testing.T) {
	s := classScreens(t)["class-after"]
	for _, id := range []string{"maqsum", "saidi"} {
		require.NotNil(t, s.Find("sheet-"+id+"-line").Picture)
		require.Equal(t, "?screen=dums&rhythm="+id+"&eights=4&riff=bare", s.Find("sheet-"+id+"-link").Value)
	}
	require.True(t, strings.Contains(s.Find("no-interval").Text, "no interval"))
}
