package roundview

import (
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func which(ask string, phase view.Phase) *Which {
	q := &Which{Phase: phase, Ask: ask, Answers: 3, From: view.FromFive, Eights: 4,
		Level: view.LevelBare, Levels: []string{view.LevelBare, view.LevelFilled}, Volume: 60}
	if phase == view.Playing || phase == view.Waiting {
		q.Choices, q.Repeat = choices(ask), true
	}
	return q
}

func choices(ask string) []view.Option {
	var all []view.Option
	for _, id := range map[string][]string{view.AskStroke: {"dum", "tek"}, view.AskHowMany: {"1", "2", "3", "4"},
		view.AskSame: {"same", "different"}}[ask] {
		all = append(all, view.Option{Value: id})
	}
	if ask == view.AskRhythm {
		all = []view.Option{{Value: "saidi", Label: "sa'idi"}, {Value: "maqsum", Label: "maqsum"}, {Value: "baladi", Label: "baladi (masmudi saghir)"}}
	}
	return all
}

// reviewed is a question with its answer; the first side is what it was.
func reviewed(t testing.TB, ask string, right, said view.Option, ids ...string) *Which {
	q := which(ask, view.Reviewing)
	q.Right, q.Said, q.BPM = right, said, 96
	for _, id := range ids {
		q.Sides = append(q.Sides, Side{ID: id, Rhythm: cycle(t, id)})
	}
	if len(ids) == 2 {
		q.Differences = rhythm.Differ(q.Sides[0].Rhythm, q.Sides[1].Rhythm)
	}
	return q
}

func whichScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	for _, ask := range view.Asks() {
		all["which-ready-"+ask] = which(ask, view.Ready).Screen(w)
		counting := which(ask, view.Playing)
		counting.CountIn = true
		all["which-count-in-"+ask] = counting.Screen(w)
		all["which-playing-"+ask] = which(ask, view.Playing).Screen(w)
		all["which-waiting-"+ask] = which(ask, view.Waiting).Screen(w)
	}
	asked := which(view.AskRhythm, view.Ready)
	asked.From, asked.FromNames, asked.Answers = "maqsum.baladi", []string{"maqsum", "baladi (masmudi saghir)"}, 2
	asked.Notes = []view.Note{view.NoteQuiet}
	asked.Fewer = &Fewer{Least: 2, Most: 2, Few: "fallahi", Apart: [2]string{"fallahi", "maqsum"}, Speed: true}
	all["which-ready-asked"] = asked.Screen(w)
	silent := which(view.AskStroke, view.Ready)
	silent.Volume, silent.Notes = -1, []view.Note{view.NoteNoSound}
	all["which-ready-silent"] = silent.Screen(w)
	all["which-void"] = which(view.AskRhythm, view.Voided).Screen(w)

	maqsum, baladi := view.Option{Value: "maqsum", Label: "maqsum"}, view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}
	all["which-review-right"] = reviewed(t, view.AskRhythm, maqsum, maqsum, "maqsum").Screen(w)
	other := reviewed(t, view.AskRhythm, maqsum, baladi, "maqsum", "baladi")
	all["which-review-other"] = other.Screen(w)
	other.Sides[1].Hearing = true
	all["which-review-hearing"] = other.Screen(w)
	samai := view.Option{Value: "samai-thaqil", Label: "sama'i thaqil"}
	all["which-review-metres"] = reviewed(t, view.AskRhythm, samai, maqsum, "samai-thaqil", "maqsum").Screen(w)
	masmudi := view.Option{Value: "masmudi-kabir", Label: "masmudi kabir"}
	all["which-review-long"] = reviewed(t, view.AskRhythm, masmudi, maqsum, "masmudi-kabir", "maqsum").Screen(w)
	dum, tek := view.Option{Value: "dum"}, view.Option{Value: "tek"}
	all["which-review-stroke"] = reviewed(t, view.AskStroke, dum, dum).Screen(w)
	stroke := reviewed(t, view.AskStroke, tek, dum)
	stroke.Sides = []Side{{ID: "tek", Hearing: true}}
	all["which-review-stroke-other"] = stroke.Screen(w)
	two, three := view.Option{Value: "2"}, view.Option{Value: "3"}
	all["which-review-how-many"] = reviewed(t, view.AskHowMany, two, three, "maqsum").Screen(w)
	same, different := view.Option{Value: "same"}, view.Option{Value: "different"}
	all["which-review-same"] = reviewed(t, view.AskSame, same, same, "maqsum").Screen(w)
	all["which-review-same-other"] = reviewed(t, view.AskSame, different, same, "maqsum", "baladi").Screen(w)
	return all
}

// An asked question shows no stroke and no count, and names no rhythm besides the
// choices: not in its title, not in a value, an id or the twin of a picture.
func TestAskedGivesNothingAway(t *testing.T) {
	catalogue, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	for name, s := range whichScreens(t) {
		if !strings.Contains(name, "-playing-") && !strings.Contains(name, "-waiting-") && !strings.Contains(name, "-count-in-") {
			continue
		}
		ask := s.Find("heading").Name
		require.Equal(t, ask+" – Groundbeat", s.Title)
		require.Equal(t, view.ActStop, s.Escape)
		s.Each(func(it *view.Item) { require.Nil(t, it.Picture, it.ID); require.Empty(t, it.Live, it.ID) })
		offered := map[string]bool{}
		for i := range s.Find("choices").Children {
			offered[s.Find("choices").Children[i].Value] = true
		}
		s.Find("choices").Children = nil
		require.NotRegexp(t, `[DT]um on|tek on| counts`, text(t, s))
		for _, id := range catalogue.IDs() {
			c, _ := catalogue.Get(id)
			for _, word := range append([]string{c.ID, c.Name, view.Plain(c.Name)}, c.Spellings...) {
				require.NotContains(t, text(t, s), word, name)
			}
		}
		for value := range offered {
			if strings.HasSuffix(name, "-rhythm") {
				require.NotContains(t, text(t, s), value, name)
			}
		}
	}
}

// What is asked looks the same whatever the answer is, even where the caller has
// filled it in too early.
func TestAskedIsTheSameWhateverTheAnswer(t *testing.T) {
	w := words(t)
	for _, ask := range view.Asks() {
		for _, phase := range []view.Phase{view.Ready, view.Playing, view.Waiting} {
			want := which(ask, phase)
			early := which(ask, phase)
			full := reviewed(t, ask, view.Option{Value: "baladi", Label: "baladi"}, view.Option{Value: "maqsum", Label: "maqsum"}, "maqsum", "baladi")
			early.Right, early.Said, early.BPM, early.Sides, early.Differences = full.Right, full.Said, full.BPM, full.Sides, full.Differences
			require.Equal(t, text(t, want.Screen(w)), text(t, early.Screen(w)))
			require.Equal(t, picture.Head{Hidden: true}, early.Head(), "no counts either: they tell the metre")
		}
	}
}

// From the first step to the answer nothing under the fingers changes but what
// can be pressed.
func TestAskedStandsStill(t *testing.T) {
	w := words(t)
	ids := func(s view.Screen) (all []string) {
		s.Each(func(it *view.Item) { all = append(all, it.ID+it.Name) })
		return all
	}
	for _, ask := range view.Asks() {
		counting, playing, waiting := which(ask, view.Playing), which(ask, view.Playing).Screen(w), which(ask, view.Waiting).Screen(w)
		counting.CountIn = true
		s := counting.Screen(w)
		require.Equal(t, ids(s), ids(playing))
		require.Equal(t, ids(playing), ids(waiting))
		require.True(t, s.Find("choice-1").Disabled)
		require.False(t, playing.Find("choice-1").Disabled)
		require.True(t, playing.Find("repeat").Disabled)
		require.False(t, waiting.Find("repeat").Disabled)
	}
}

func TestFindingOfWhich(t *testing.T) {
	w := words(t)
	maqsum, baladi := view.Option{Value: "maqsum", Label: "maqsum"}, view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}
	dum, tek := view.Option{Value: "dum"}, view.Option{Value: "tek"}
	same, different := view.Option{Value: "same"}, view.Option{Value: "different"}
	for _, c := range []struct {
		ask         string
		right, said view.Option
		want        string
	}{
		{view.AskRhythm, maqsum, maqsum, "It was maqsum."},
		{view.AskRhythm, maqsum, baladi, "It was maqsum; you said baladi."},
		{view.AskRhythm, baladi, maqsum, "It was baladi; you said maqsum."},
		{view.AskStroke, dum, dum, "It was a dum."},
		{view.AskStroke, dum, tek, "It was a dum; you said tek."},
		{view.AskStroke, tek, dum, "It was a tek; you said dum."},
		{view.AskHowMany, view.Option{Value: "1"}, view.Option{Value: "1"}, "It has 1 dum."},
		{view.AskHowMany, view.Option{Value: "1"}, view.Option{Value: "2"}, "It has 1 dum; you said 2."},
		{view.AskHowMany, view.Option{Value: "3"}, view.Option{Value: "3"}, "It has 3 dums."},
		{view.AskHowMany, view.Option{Value: "3"}, view.Option{Value: "4"}, "It has 3 dums; you said 4."},
		{view.AskSame, same, same, "They were the same."},
		{view.AskSame, same, different, "They were the same; you said different."},
		{view.AskSame, different, different, "They were different."},
		{view.AskSame, different, same, "They were different; you said the same."},
	} {
		q := &Which{Ask: c.ask, Right: c.right, Said: c.said}
		require.Equal(t, c.want, q.Finding(w))
	}
}

// Names beside a word add nothing, and of two ids there are two names to choose.
func TestFromNames(t *testing.T) {
	w, q := words(t), which(view.AskRhythm, view.Ready)
	plainly := q.Screen(w)
	q.FromNames = []string{"maqsum", "malfuf"}
	require.Equal(t, text(t, plainly), text(t, q.Screen(w)))
	q.From, q.Answers = "maqsum.malfuf", 3
	s := q.Screen(w)
	require.Equal(t, view.Option{Value: "maqsum.malfuf", Label: "maqsum and malfuf"}, s.Find("from").Options[3])
	require.Equal(t, []view.Option{{Value: "2", Label: "2"}}, s.Find("answers").Options)
	require.Empty(t, s.Find("answers").Value, "three are not offered")
	q.FromNames = nil
	require.NoError(t, screenproof.Check(q.Screen(w)), "names that are not known are left out")
}

// maqsum and baladi differ in one stroke, by their notation.
func TestDifferences(t *testing.T) {
	w := words(t)
	maqsum, baladi := view.Option{Value: "maqsum", Label: "maqsum"}, view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}
	q := reviewed(t, view.AskRhythm, maqsum, baladi, "maqsum", "baladi")
	list := q.differences(w)
	require.Len(t, list.Children, 1)
	require.Equal(t, "On the & of 1: tek in maqsum, dum in baladi.", list.Children[0].Text)
	require.Equal(t, []int{1}, q.lines(w).Ringed(1))
	require.Empty(t, q.lines(w).Ringed(0))
	q.Ask = view.AskSame
	require.Equal(t, "On the & of 1: first tek, then dum.", q.differences(w).Children[0].Text)
	require.Empty(t, q.plainly(w))
	q.Differences = nil
	require.Equal(t, "Their strokes are the same. Only the tempo tells them apart.", q.plainly(w).Text)

	q = reviewed(t, view.AskRhythm, maqsum, baladi, "maqsum", "masmudi-kabir")
	require.Equal(t, 16, len(q.lines(w).Counts), "a cycle of eight counts beside one of four, twice")
	require.Len(t, q.differences(w).Children, mostDifferences+1)
	q = reviewed(t, view.AskRhythm, maqsum, baladi, "maqsum", "samai-thaqil")
	require.Equal(t, "maqsum is in 4/4, sama'i thaqil in 10/8.", q.plainly(w).Text)
	require.Nil(t, q.lines(w))
	require.Empty(t, q.differences(w))
}

func TestStrokesInWords(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	for _, s := range []rhythm.Stroke{rhythm.Dum, rhythm.Tek, rhythm.Sak, rhythm.LightTek, rhythm.Ka, rhythm.Rest} {
		require.False(t, seen[picture.SayStroke(w, s)], s)
		seen[picture.SayStroke(w, s)] = true
	}
	require.Equal(t, "nothing", picture.SayStroke(w, rhythm.Rest))
}

// The pictures of a review are those of its sides, and a place without a side
// shows a bare drum.
func TestSideHeads(t *testing.T) {
	q := reviewed(t, view.AskRhythm, view.Option{Value: "maqsum", Label: "maqsum"}, view.Option{Value: "baladi", Label: "baladi"}, "maqsum", "baladi")
	require.Equal(t, picture.Head{Base: pattern(t, "DT-TD-T-"), Counts: inFour}, q.SideHead(0))
	require.Equal(t, picture.Head{Base: pattern(t, "DD-TD-T-"), Counts: inFour}, q.SideHead(1))
	q.Sides = q.Sides[:1]
	require.Equal(t, picture.Head{Hidden: true}, q.SideHead(1))
	stroke := reviewed(t, view.AskStroke, view.Option{Value: "dum"}, view.Option{Value: "dum"})
	require.Equal(t, picture.Head{Base: pattern(t, "D")}, stroke.SideHead(0))
	require.Equal(t, picture.Head{Base: pattern(t, "T")}, stroke.SideHead(1))
}

// Hearing a side changes its button and what Escape does.
func TestHearingChangesOneButton(t *testing.T) {
	w := words(t)
	q := reviewed(t, view.AskRhythm, view.Option{Value: "maqsum", Label: "maqsum"}, view.Option{Value: "baladi", Label: "baladi"}, "maqsum", "baladi")
	before := q.Screen(w)
	q.Sides[0].Hearing = true
	after := q.Screen(w)
	before.Each(func(it *view.Item) { require.Equal(t, it.ID != "hear-a", view.Same(it, after.Find(it.ID)), it.ID) })
	require.Equal(t, []string{view.ActChange, view.ActStop}, []string{before.Escape, after.Escape})
	require.Equal(t, "Hear maqsum", before.Find("hear-a").Name)
	require.Equal(t, view.ActStop, after.Find("hear-a").Action)
}

// Before the review of any rhythm nothing of it is shown or said.
func TestAnyIsHidden(t *testing.T) {
	for name, s := range screens(t) {
		if name == "dums-any-ready" || name == "dums-any-playing" {
			s.Each(func(it *view.Item) { it.Options = nil })
			require.NotContains(t, text(t, s), "maqsum", name)
			require.NotContains(t, text(t, s), "مقسوم", name)
			require.Nil(t, s.Find("line"), name)
		}
	}
}

func ExampleWhich_Finding() {
	w, _ := say.Load(assets.Words)
	q := Which{Ask: view.AskRhythm, Right: view.Option{Value: "maqsum", Label: "maqsum"}, Said: view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}}
	fmt.Println(q.Finding(w))
	// Output: It was maqsum; you said baladi.
}

// Where there are fewer names than were asked for, it is said beside the choice, and why.
func TestFewerNames(t *testing.T) {
	for want, f := range map[string]*Fewer{
		"These can be told apart only 2 at a time: fallahi and maqsum are the same strokes at two speeds.": {
			Least: 2, Most: 2, Few: "fallahi", Apart: [2]string{"fallahi", "maqsum"}, Speed: true},
		"These can be told apart only 3 at a time: wahda and baladi are never played at one tempo.": {
			Least: 3, Most: 3, Few: "wahda", Apart: [2]string{"wahda", "baladi (masmudi saghir)"}},
		"Beside karşılama there are only 2: the others are counted otherwise.": {Least: 2, Most: 4, Few: "karşılama"},
		"Of these there are 3 names in a question.":                            {Least: 3, Most: 3, Few: "wahda"},
	} {
		q := which(view.AskRhythm, view.Ready)
		require.Nil(t, find(q.Screen(words(t)), "fewer"))
		q.Fewer = f
		require.Equal(t, want, find(q.Screen(words(t)), "fewer").Text)
		c := changing(t, view.Ready)
		c.Fewer = f
		require.Equal(t, want, find(c.Screen(words(t)), "fewer").Text)
	}
}

func find(s view.Screen, id string) *view.Item { return s.Find(id) }

// The keys 1 to 4 choose a name, in the order in which they stand; a number is chosen by
// itself. During a count-in, and after the answer, they do nothing.
func TestAnswerByDigit(t *testing.T) {
	w := words(t)
	names := []view.Option{{Value: "baladi", Label: "baladi"}, {Value: "maqsum", Label: "maqsum"}, {Value: "saidi", Label: "sa'idi"}, {Value: "malfuf", Label: "malfuf"}}
	want := []view.Key{{Key: "1", Action: view.ActAnswer, Value: "baladi"}, {Key: "2", Action: view.ActAnswer, Value: "maqsum"}, {Key: "3", Action: view.ActAnswer, Value: "saidi"}, {Key: "4", Action: view.ActAnswer, Value: "malfuf"}}
	q := &Which{Phase: view.Playing, Ask: view.AskRhythm, Choices: names}
	require.Equal(t, want, q.Screen(w).Keys)
	q.Phase = view.Waiting
	require.Equal(t, want, q.Screen(w).Keys)
	q.CountIn = true
	require.Empty(t, q.Screen(w).Keys)
	c := &Change{Phase: view.Waiting, Choices: names[:2]}
	require.Equal(t, want[:2], c.asked(w).Keys)
	many := &Which{Phase: view.Playing, Ask: view.AskHowMany, Choices: []view.Option{{Value: "2", Label: "2"}, {Value: "3", Label: "3"}}}
	require.Equal(t, []view.Key{{Key: "2", Action: view.ActAnswer, Value: "2"}, {Key: "3", Action: view.ActAnswer, Value: "3"}}, many.Screen(w).Keys)
}

// Of two that may differ it is said which is heard; of one, nothing.
func TestWhichHalfIsHeard(t *testing.T) {
	w := words(t)
	q := which(view.AskSame, view.Playing)
	require.Equal(t, "You hear the first.", q.Screen(w).Items[1].Text)
	q.Second = true
	require.Equal(t, "You hear the second.", q.Screen(w).Items[1].Text)
	q.Phase = view.Waiting
	require.Equal(t, "You have heard both.", q.Screen(w).Items[1].Text)
	require.Nil(t, find(which(view.AskRhythm, view.Playing).Screen(w), "half"))
}
