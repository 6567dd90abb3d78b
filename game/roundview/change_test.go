package roundview

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
)

func changing(t testing.TB, phase view.Phase) *Change {
	c := &Change{Phase: phase, Rhythm: view.RhythmName{ID: "maqsum", Name: "maqsum", Script: "مقسوم", Lang: "ar", Dir: "rtl"},
		Base: pattern(t, "DT-TD-T-"), Counts: inFour, Core: append(core(t), AnyOption(words(t))),
		Answers: 3, From: view.FromFive, Eights: 6, Level: view.LevelBare, Levels: []string{view.LevelBare, view.LevelFilled}, Volume: 60, Round: 2}
	if phase == view.Waiting {
		c.Choices = []view.Option{{Value: "saidi", Label: "sa'idi"}, {Value: "baladi", Label: "baladi (masmudi saghir)"}, {Value: "ciftetelli", Label: "çiftetelli"}}
	}
	return c
}

// noticed is a review of a change from maqsum to the rhythm of an id, or of none.
func noticed(t testing.TB, to string, r ChangeResult) *Change {
	c := changing(t, view.Reviewing)
	c.Sides, c.BPM, c.Result = []Side{{ID: "maqsum", Rhythm: cycle(t, "maqsum")}}, 104, &r
	if to != "" {
		other := cycle(t, to)
		c.Sides = append(c.Sides, Side{ID: to, Rhythm: other})
		c.Differences = rhythm.Differ(c.Sides[0].Rhythm, other)
		r.To = view.Option{Value: other.ID, Label: other.Name}
	}
	return c
}

var baladi = view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}

func changeScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, c *Change) { all["change-"+name] = c.Screen(w) }
	add("ready", changing(t, view.Ready))
	any := changing(t, view.Ready)
	any.Any, any.From, any.FromNames = true, "malfuf.saidi.ayyub", []string{"malfuf", "sa'idi", "ayyub"}
	add("ready-any", any)
	silent := changing(t, view.Ready)
	silent.Volume, silent.Notes = -1, []view.Note{view.NoteNoSound}
	add("ready-silent", silent)
	add("playing", changing(t, view.Playing))
	add("waiting", changing(t, view.Waiting))
	add("void", changing(t, view.Voided))

	heard := noticed(t, "baladi", ChangeResult{Heard: true, Eight: 3, Late: 1731 * ms, Counts: 3, Eighth: 2019 * ms, Said: baladi})
	heard.Notes = []view.Note{view.NoteNoSetUp}
	add("review-heard", heard)
	setUp := 12 * ms
	said := noticed(t, "baladi", ChangeResult{Heard: true, Eight: 3, Late: 90 * ms, Counts: 0.16, Eighth: 380 * ms, Early: 1,
		Said: view.Option{Value: "saidi", Label: "sa'idi"}, SetUp: &setUp})
	said.Sides = append(said.Sides, Side{ID: "saidi", Rhythm: cycle(t, "saidi")})
	said.Sides[1].Hearing = true
	add("review-said", said)
	add("review-chance", noticed(t, "baladi", ChangeResult{Heard: true, Chance: true, Eight: 3, Late: 90 * ms, Counts: 0.16, Eighth: 380 * ms, Early: 13, Said: baladi}))
	add("review-left-out", noticed(t, "masmudi-kabir", ChangeResult{Eight: 4, Early: 1}))
	add("review-none", noticed(t, "", ChangeResult{}))
	add("review-none-pressed", noticed(t, "", ChangeResult{Early: 3}))
	return all
}

// While it is played and while it is asked what it has become, the screen is the
// same whatever the answer is, even where the caller has filled it in too early;
// nothing moves or is counted on the drumhead; and the title names no rhythm.
func TestChangeGivesNothingAway(t *testing.T) {
	w := words(t)
	full := noticed(t, "baladi", ChangeResult{Heard: true, Eight: 3, Counts: 3, Said: baladi})
	for _, phase := range []view.Phase{view.Ready, view.Playing, view.Waiting} {
		want, early := changing(t, phase), changing(t, phase)
		early.Result, early.Sides, early.Differences, early.BPM, early.Board = full.Result, full.Sides, full.Differences, 104, 300
		require.Equal(t, text(t, want.Screen(w)), text(t, early.Screen(w)))
		s := early.Screen(w)
		require.Equal(t, "Hear the change – Groundbeat", s.Title)
		if phase != view.Ready {
			require.Equal(t, picture.Head{Hidden: true}, early.Head())
			s.Each(func(it *view.Item) { require.Nil(t, it.Picture, it.ID); require.Empty(t, it.Live, it.ID) })
		}
		if phase == view.Playing {
			require.NotContains(t, text(t, s), "maqsum")
			require.Equal(t, "tap", s.FocusID())
			require.Equal(t, "2", s.Find("tap").Value)
		}
	}
	any := changing(t, view.Ready)
	any.Any = true
	s := any.Screen(w)
	s.Find("rhythm").Options = nil
	require.NotContains(t, text(t, s), "maqsum")
}

// The names to choose from stand as they were given, and the way out is there.
func TestToWhat(t *testing.T) {
	s := changing(t, view.Waiting).Screen(words(t))
	var names []string
	for _, it := range s.Find("choices").Children {
		require.Equal(t, view.ActAnswer, it.Action)
		names = append(names, it.Value+" "+it.Name)
	}
	require.Equal(t, "saidi sa'idi, baladi baladi (masmudi saghir), ciftetelli çiftetelli", strings.Join(names, ", "))
	require.Equal(t, []string{"heading", view.ActStop}, []string{s.FocusID(), s.Escape})
}

func TestFindingOfChange(t *testing.T) {
	w := words(t)
	for _, c := range []struct {
		result ChangeResult
		want   string
	}{
		{ChangeResult{}, "It did not change, and you kept still."},
		{ChangeResult{Early: 1}, "It did not change. You pressed 1 time."},
		{ChangeResult{Early: 2}, "It did not change. You pressed 2 times."},
		{ChangeResult{To: baladi, Eight: 3, Early: 2}, "It became baladi in eight 3, and no press came after that."},
		{ChangeResult{To: baladi, Heard: true, Counts: 0.49}, "You heard it at once, within half a count."},
		{ChangeResult{To: baladi, Heard: true, Counts: 0.5}, "You heard it after 1 count."},
		{ChangeResult{To: baladi, Heard: true, Counts: 2.6}, "You heard it after 3 counts."},
		{ChangeResult{To: baladi, Heard: true, Counts: 0.1, Early: 1}, "You heard it within half a count, and pressed once too soon."},
		{ChangeResult{To: baladi, Heard: true, Counts: 1.8, Early: 1}, "You heard it after 2 counts, and pressed once too soon."},
		{ChangeResult{To: baladi, Heard: true, Chance: true, Counts: 3, Early: 1}, "1 press came too soon, so the one that met the change may be chance."},
		{ChangeResult{To: baladi, Heard: true, Chance: true, Counts: 0.1, Early: 13}, "13 presses came too soon, so the one that met the change may be chance."},
	} {
		q := Change{Result: &c.result}
		require.Equal(t, c.want, q.Finding(w))
	}
}

// The review says what was said only where that is another name, and tells of early
// presses only beside a change.
func TestReviewOfChange(t *testing.T) {
	w := words(t)
	right := noticed(t, "baladi", ChangeResult{Heard: true, Said: baladi}).Screen(w)
	require.Equal(t, "It went from maqsum to baladi.", right.Find("became").Text)
	require.Nil(t, right.Find("early"))
	require.Nil(t, right.Find("set-up"))
	require.Equal(t, view.ActChange, right.Escape)
	other := changeScreens(t)["change-review-said"]
	require.Equal(t, "It went from maqsum to baladi; you said sa'idi.", other.Find("became").Text)
	require.Equal(t, "One press too soon may happen, and the round counts as heard. Two would not.", other.Find("early-counts").Text)
	mashed := changeScreens(t)["change-review-chance"]
	require.Equal(t, "This round does not count as heard. Keep still until you hear another rhythm, and press once.", mashed.Find("early").Text)
	require.Equal(t, "On the & of 1: tek in maqsum, dum in baladi.", other.Find("difference-1").Text)
	require.Equal(t, view.ActStop, other.Escape, "one side is heard")
	none := changeScreens(t)["change-review-none-pressed"]
	require.Nil(t, none.Find("early"))
	require.Nil(t, none.Find("became"))
	require.Nil(t, none.Find("measured"))
	require.Nil(t, none.Find("hear-b"))
	require.NotNil(t, none.Find("hear-a"))
}
