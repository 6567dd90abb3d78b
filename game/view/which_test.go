package view

import (
	"bytes"
	"fmt"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/rhythm"
)

func which(ask string, phase Phase) *Which {
	q := &Which{Phase: phase, Ask: ask, Answers: 3, From: FromFive, Eights: 4,
		Level: LevelBare, Levels: []string{LevelBare, LevelFilled}, Volume: 60}
	if phase == Playing || phase == Waiting {
		q.Choices, q.Repeat = choices(ask), true
	}
	return q
}

func choices(ask string) []Option {
	var all []Option
	for _, id := range map[string][]string{AskStroke: {"dum", "tek"}, AskHowMany: {"1", "2", "3", "4"},
		AskSame: {"same", "different"}}[ask] {
		all = append(all, Option{Value: id})
	}
	if ask == AskRhythm {
		all = []Option{{"saidi", "sa'idi"}, {"maqsum", "maqsum"}, {"baladi", "baladi (masmudi saghir)"}}
	}
	return all
}

// reviewed is a question with its answer; the first side is what it was.
func reviewed(t testing.TB, ask string, right, said Option, ids ...string) *Which {
	q := which(ask, Reviewing)
	q.Right, q.Said, q.BPM = right, said, 96
	for _, id := range ids {
		q.Sides = append(q.Sides, Side{ID: id, Rhythm: cycle(t, id)})
	}
	if len(ids) == 2 {
		q.Differences = rhythm.Differ(q.Sides[0].Rhythm, q.Sides[1].Rhythm)
	}
	return q
}

func whichScreens(t testing.TB) map[string]Screen {
	w, all := words(t), map[string]Screen{}
	for _, ask := range Asks() {
		all["which-ready-"+ask] = which(ask, Ready).Screen(w)
		counting := which(ask, Playing)
		counting.CountIn = true
		all["which-count-in-"+ask] = counting.Screen(w)
		all["which-playing-"+ask] = which(ask, Playing).Screen(w)
		all["which-waiting-"+ask] = which(ask, Waiting).Screen(w)
	}
	asked := which(AskRhythm, Ready)
	asked.From, asked.FromNames, asked.Answers = "maqsum.baladi", []string{"maqsum", "baladi (masmudi saghir)"}, 2
	asked.Notes = []Note{NoteQuiet}
	asked.Fewer = &Fewer{Least: 2, Most: 2, Few: "fallahi", Apart: [2]string{"fallahi", "maqsum"}, Speed: true}
	all["which-ready-asked"] = asked.Screen(w)
	silent := which(AskStroke, Ready)
	silent.Volume, silent.Notes = -1, []Note{NoteNoSound}
	all["which-ready-silent"] = silent.Screen(w)
	all["which-void"] = which(AskRhythm, Voided).Screen(w)

	maqsum, baladi := Option{"maqsum", "maqsum"}, Option{"baladi", "baladi (masmudi saghir)"}
	all["which-review-right"] = reviewed(t, AskRhythm, maqsum, maqsum, "maqsum").Screen(w)
	other := reviewed(t, AskRhythm, maqsum, baladi, "maqsum", "baladi")
	all["which-review-other"] = other.Screen(w)
	other.Sides[1].Hearing = true
	all["which-review-hearing"] = other.Screen(w)
	samai := Option{"samai-thaqil", "sama'i thaqil"}
	all["which-review-metres"] = reviewed(t, AskRhythm, samai, maqsum, "samai-thaqil", "maqsum").Screen(w)
	masmudi := Option{"masmudi-kabir", "masmudi kabir"}
	all["which-review-long"] = reviewed(t, AskRhythm, masmudi, maqsum, "masmudi-kabir", "maqsum").Screen(w)
	dum, tek := Option{Value: "dum"}, Option{Value: "tek"}
	all["which-review-stroke"] = reviewed(t, AskStroke, dum, dum).Screen(w)
	stroke := reviewed(t, AskStroke, tek, dum)
	stroke.Sides = []Side{{ID: "tek", Hearing: true}}
	all["which-review-stroke-other"] = stroke.Screen(w)
	two, three := Option{Value: "2"}, Option{Value: "3"}
	all["which-review-how-many"] = reviewed(t, AskHowMany, two, three, "maqsum").Screen(w)
	same, different := Option{Value: "same"}, Option{Value: "different"}
	all["which-review-same"] = reviewed(t, AskSame, same, same, "maqsum").Screen(w)
	all["which-review-same-other"] = reviewed(t, AskSame, different, same, "maqsum", "baladi").Screen(w)
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
		require.Equal(t, ActStop, s.Escape)
		s.Each(func(it *Item) { require.Nil(t, it.Picture, it.ID); require.Empty(t, it.Live, it.ID) })
		offered := map[string]bool{}
		for i := range s.Find("choices").Children {
			offered[s.Find("choices").Children[i].Value] = true
		}
		s.Find("choices").Children = nil
		require.NotRegexp(t, `[DT]um on|tek on| counts`, text(t, s))
		for _, id := range catalogue.IDs() {
			c, _ := catalogue.Get(id)
			for _, word := range append([]string{c.ID, c.Name, plain(c.Name)}, c.Spellings...) {
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

func text(t testing.TB, s Screen) string {
	var b bytes.Buffer
	require.NoError(t, Dump(&b, s))
	return b.String()
}

// What is asked looks the same whatever the answer is, even where the caller has
// filled it in too early.
func TestAskedIsTheSameWhateverTheAnswer(t *testing.T) {
	w := words(t)
	for _, ask := range Asks() {
		for _, phase := range []Phase{Ready, Playing, Waiting} {
			want := which(ask, phase)
			early := which(ask, phase)
			full := reviewed(t, ask, Option{"baladi", "baladi"}, Option{"maqsum", "maqsum"}, "maqsum", "baladi")
			early.Right, early.Said, early.BPM, early.Sides, early.Differences = full.Right, full.Said, full.BPM, full.Sides, full.Differences
			require.Equal(t, text(t, want.Screen(w)), text(t, early.Screen(w)))
			require.Equal(t, Head{Hidden: true}, early.Head(), "no counts either: they tell the metre")
		}
	}
}

// From the first step to the answer nothing under the fingers changes but what
// can be pressed.
func TestAskedStandsStill(t *testing.T) {
	w := words(t)
	ids := func(s Screen) (all []string) {
		s.Each(func(it *Item) { all = append(all, it.ID+it.Name) })
		return all
	}
	for _, ask := range Asks() {
		counting, playing, waiting := which(ask, Playing), which(ask, Playing).Screen(w), which(ask, Waiting).Screen(w)
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
	maqsum, baladi := Option{"maqsum", "maqsum"}, Option{"baladi", "baladi (masmudi saghir)"}
	dum, tek := Option{Value: "dum"}, Option{Value: "tek"}
	same, different := Option{Value: "same"}, Option{Value: "different"}
	for _, c := range []struct {
		ask         string
		right, said Option
		want        string
	}{
		{AskRhythm, maqsum, maqsum, "It was maqsum."},
		{AskRhythm, maqsum, baladi, "It was maqsum; you said baladi."},
		{AskRhythm, baladi, maqsum, "It was baladi; you said maqsum."},
		{AskStroke, dum, dum, "It was a dum."},
		{AskStroke, dum, tek, "It was a dum; you said tek."},
		{AskStroke, tek, dum, "It was a tek; you said dum."},
		{AskHowMany, Option{Value: "1"}, Option{Value: "1"}, "It has 1 dum."},
		{AskHowMany, Option{Value: "1"}, Option{Value: "2"}, "It has 1 dum; you said 2."},
		{AskHowMany, Option{Value: "3"}, Option{Value: "3"}, "It has 3 dums."},
		{AskHowMany, Option{Value: "3"}, Option{Value: "4"}, "It has 3 dums; you said 4."},
		{AskSame, same, same, "They were the same."},
		{AskSame, same, different, "They were the same; you said different."},
		{AskSame, different, different, "They were different."},
		{AskSame, different, same, "They were different; you said the same."},
	} {
		q := &Which{Ask: c.ask, Right: c.right, Said: c.said}
		require.Equal(t, c.want, q.Finding(w))
	}
}

// Names beside a word add nothing, and of two ids there are two names to choose.
func TestFromNames(t *testing.T) {
	w, q := words(t), which(AskRhythm, Ready)
	plainly := q.Screen(w)
	q.FromNames = []string{"maqsum", "malfuf"}
	require.Equal(t, text(t, plainly), text(t, q.Screen(w)))
	q.From, q.Answers = "maqsum.malfuf", 3
	s := q.Screen(w)
	require.Equal(t, Option{"maqsum.malfuf", "maqsum and malfuf"}, s.Find("from").Options[3])
	require.Equal(t, []Option{{"2", "2"}}, s.Find("answers").Options)
	require.Empty(t, s.Find("answers").Value, "three are not offered")
	q.FromNames = nil
	require.NoError(t, Check(q.Screen(w)), "names that are not known are left out")
}

// maqsum and baladi differ in one stroke, by their notation.
func TestDifferences(t *testing.T) {
	w := words(t)
	maqsum, baladi := Option{"maqsum", "maqsum"}, Option{"baladi", "baladi (masmudi saghir)"}
	q := reviewed(t, AskRhythm, maqsum, baladi, "maqsum", "baladi")
	list := q.differences(w)
	require.Len(t, list.Children, 1)
	require.Equal(t, "On the & of 1: tek in maqsum, dum in baladi.", list.Children[0].Text)
	require.Equal(t, []int{1}, q.lines(w).ringed(1))
	require.Empty(t, q.lines(w).ringed(0))
	q.Ask = AskSame
	require.Equal(t, "On the & of 1: first tek, then dum.", q.differences(w).Children[0].Text)
	require.Empty(t, q.plainly(w))
	q.Differences = nil
	require.Equal(t, "Their strokes are the same. Only the tempo tells them apart.", q.plainly(w).Text)

	q = reviewed(t, AskRhythm, maqsum, baladi, "maqsum", "masmudi-kabir")
	require.Equal(t, 16, len(q.lines(w).Counts), "a cycle of eight counts beside one of four, twice")
	require.Len(t, q.differences(w).Children, mostDifferences+1)
	q = reviewed(t, AskRhythm, maqsum, baladi, "maqsum", "samai-thaqil")
	require.Equal(t, "maqsum is in 4/4, sama'i thaqil in 10/8.", q.plainly(w).Text)
	require.Nil(t, q.lines(w))
	require.Empty(t, q.differences(w))
}

func TestStrokesInWords(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	for _, s := range []rhythm.Stroke{rhythm.Dum, rhythm.Tek, rhythm.Sak, rhythm.LightTek, rhythm.Ka, rhythm.Rest} {
		require.False(t, seen[sayStroke(w, s)], s)
		seen[sayStroke(w, s)] = true
	}
	require.Equal(t, "nothing", sayStroke(w, rhythm.Rest))
}

// The pictures of a review are those of its sides, and a place without a side
// shows a bare drum.
func TestSideHeads(t *testing.T) {
	q := reviewed(t, AskRhythm, Option{"maqsum", "maqsum"}, Option{"baladi", "baladi"}, "maqsum", "baladi")
	require.Equal(t, Head{Base: pattern(t, "DT-TD-T-"), Counts: inFour}, q.SideHead(0))
	require.Equal(t, Head{Base: pattern(t, "DD-TD-T-"), Counts: inFour}, q.SideHead(1))
	q.Sides = q.Sides[:1]
	require.Equal(t, Head{Hidden: true}, q.SideHead(1))
	stroke := reviewed(t, AskStroke, Option{Value: "dum"}, Option{Value: "dum"})
	require.Equal(t, Head{Base: pattern(t, "D")}, stroke.SideHead(0))
	require.Equal(t, Head{Base: pattern(t, "T")}, stroke.SideHead(1))
}

// Hearing a side changes its button and what Escape does.
func TestHearingChangesOneButton(t *testing.T) {
	w := words(t)
	q := reviewed(t, AskRhythm, Option{"maqsum", "maqsum"}, Option{"baladi", "baladi"}, "maqsum", "baladi")
	before := q.Screen(w)
	q.Sides[0].Hearing = true
	after := q.Screen(w)
	before.Each(func(it *Item) { require.Equal(t, it.ID != "hear-a", Same(it, after.Find(it.ID)), it.ID) })
	require.Equal(t, []string{ActChange, ActStop}, []string{before.Escape, after.Escape})
	require.Equal(t, "Hear maqsum", before.Find("hear-a").Name)
	require.Equal(t, ActStop, after.Find("hear-a").Action)
}

// Before the review of any rhythm nothing of it is shown or said.
func TestAnyIsHidden(t *testing.T) {
	for name, s := range screens(t) {
		if name == "dums-any-ready" || name == "dums-any-playing" {
			s.Each(func(it *Item) { it.Options = nil })
			require.NotContains(t, text(t, s), "maqsum", name)
			require.NotContains(t, text(t, s), "مقسوم", name)
			require.Nil(t, s.Find("line"), name)
		}
	}
}

func ExampleWhich_Finding() {
	w, _ := LoadWords(assets.Words)
	q := Which{Ask: AskRhythm, Right: Option{"maqsum", "maqsum"}, Said: Option{"baladi", "baladi (masmudi saghir)"}}
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
		q := which(AskRhythm, Ready)
		require.Nil(t, find(q.Screen(words(t)), "fewer"))
		q.Fewer = f
		require.Equal(t, want, find(q.Screen(words(t)), "fewer").Text)
		c := changing(t, Ready)
		c.Fewer = f
		require.Equal(t, want, find(c.Screen(words(t)), "fewer").Text)
	}
}

func find(s Screen, id string) *Item { return s.Find(id) }

// The keys 1 to 4 choose a name, in the order in which they stand; a number is chosen by
// itself. During a count-in, and after the answer, they do nothing.
func TestAnswerByDigit(t *testing.T) {
	w := words(t)
	names := []Option{{"baladi", "baladi"}, {"maqsum", "maqsum"}, {"saidi", "sa'idi"}, {"malfuf", "malfuf"}}
	want := []Key{{"1", ActAnswer, "baladi"}, {"2", ActAnswer, "maqsum"}, {"3", ActAnswer, "saidi"}, {"4", ActAnswer, "malfuf"}}
	q := &Which{Phase: Playing, Ask: AskRhythm, Choices: names}
	require.Equal(t, want, q.Screen(w).Keys)
	q.Phase = Waiting
	require.Equal(t, want, q.Screen(w).Keys)
	q.CountIn = true
	require.Empty(t, q.Screen(w).Keys)
	c := &Change{Phase: Waiting, Choices: names[:2]}
	require.Equal(t, want[:2], c.asked(w).Keys)
	many := &Which{Phase: Playing, Ask: AskHowMany, Choices: []Option{{"2", "2"}, {"3", "3"}}}
	require.Equal(t, []Key{{"2", ActAnswer, "2"}, {"3", ActAnswer, "3"}}, many.Screen(w).Keys)
}

// Of two that may differ it is said which is heard; of one, nothing.
func TestWhichHalfIsHeard(t *testing.T) {
	w := words(t)
	q := which(AskSame, Playing)
	require.Equal(t, "You hear the first.", q.Screen(w).Items[1].Text)
	q.Second = true
	require.Equal(t, "You hear the second.", q.Screen(w).Items[1].Text)
	q.Phase = Waiting
	require.Equal(t, "You have heard both.", q.Screen(w).Items[1].Text)
	require.Nil(t, find(which(AskRhythm, Playing).Screen(w), "half"))
}
