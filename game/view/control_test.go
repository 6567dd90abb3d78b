package view

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"
)

func options(values ...string) (all []Option) {
	for _, v := range values {
		all = append(all, Option{Value: v, Label: "the " + v})
	}
	return all
}

func values(options []Option) (all []string) {
	for _, o := range options {
		all = append(all, o.Value)
	}
	return all
}

// Headings are of the first level and the second, so that a page has one and its parts
// stand below it.
func TestHeadings(t *testing.T) {
	require.Equal(t, Item{ID: "a", Role: RoleHeading, Level: 1, Name: "A"}, Heading("a", "A"))
	require.Equal(t, Item{ID: "b", Role: RoleHeading, Level: 2, Name: "B"}, Subheading("b", "B"))
}

// What is not there leaves no hole, and what is there keeps its order.
func TestPresent(t *testing.T) {
	text := func(id string) Item { return Item{ID: id, Role: RoleText} }
	for name, c := range map[string]struct {
		items []Item
		want  []string
	}{
		"nothing":       {nil, nil},
		"nothing there": {[]Item{{}, {}}, nil},
		"all there":     {[]Item{text("a"), text("b")}, []string{"a", "b"}},
		"a hole":        {[]Item{{}, text("a"), {}, text("b"), {}}, []string{"a", "b"}},
		"an id alone":   {[]Item{{ID: "a"}, text("b")}, []string{"b"}},
	} {
		require.Equal(t, c.want, ids(Present(c.items)), name)
	}
}

// A row of settings is there if any of them is.
func TestSettings(t *testing.T) {
	require.Equal(t, RoleNone, Settings().Role)
	require.Equal(t, RoleNone, Settings(Item{}, Item{}).Role)
	row := Settings(Item{}, Volume(words(t), 30), Item{})
	require.Equal(t, []string{"volume"}, ids(row.Children))
	require.Equal(t, LookRow, row.Look)
	require.Equal(t, RoleGroup, row.Role)
}

// The rhythm that is chosen is always in sight; of the others, none.
func TestRhythmsShowsWhatIsChosen(t *testing.T) {
	w, core, more := words(t), options("a", "b"), options("c", "d")
	for value, want := range map[string]struct {
		shown  []string
		marked string
	}{
		"a": {[]string{"a", "b"}, "a"}, "b": {[]string{"a", "b"}, "b"},
		"c": {[]string{"a", "b", "c"}, "c"}, "d": {[]string{"a", "b", "d"}, "d"},
		"e": {[]string{"a", "b"}, ""}, "": {[]string{"a", "b"}, ""},
	} {
		it := Rhythms(w, core, more, value)
		require.Equal(t, want.shown, values(it.Options), value)
		require.Equal(t, want.marked, it.Value, value)
		require.Equal(t, ActRhythm, it.Action)
	}
	both := Rhythms(w, core, append(more, core[0]), "a")
	require.Equal(t, []string{"a", "b"}, values(both.Options), "one that is in both lists stands there once")
	require.Equal(t, RoleNone, Rhythms(w, nil, more, "c").Role)
}

// What is shown beside the most used leaves the list itself as it was: it is the same
// for all screens.
func TestRhythmsLeavesItsLists(t *testing.T) {
	core := append(make([]Option, 0, 8), options("a", "b")...)
	require.Len(t, Rhythms(words(t), core, options("c"), "c").Options, 3)
	require.Equal(t, Option{}, core[:3][2], "nothing is written behind the list's end")
}

// The closed list holds all the others, the chosen one marked.
func TestMoreRhythms(t *testing.T) {
	w := words(t)
	require.Equal(t, RoleNone, MoreRhythms(w, nil, "a").Role)
	for value, marked := range map[string]string{"c": "c", "d": "d", "a": "", "": ""} {
		it := MoreRhythms(w, options("c", "d"), value)
		require.Equal(t, RoleDetails, it.Role)
		require.Len(t, it.Children, 1)
		list := it.Children[0]
		require.Equal(t, []string{"c", "d"}, values(list.Options))
		require.Equal(t, marked, list.Value)
		require.Equal(t, ActRhythm, list.Action, "it is chosen by the same action")
		require.NotEqual(t, Rhythms(w, options("a"), nil, "a").ID, list.ID, "but is another control")
	}
}

func TestChosen(t *testing.T) {
	require.Equal(t, "b", Chosen(options("a", "b"), "b"))
	require.Empty(t, Chosen(options("a", "b"), "c"))
	require.Empty(t, Chosen(options("a", "b"), "the a"), "it is told by its value, not by its label")
	require.Empty(t, Chosen(nil, "a"))
}

// A tempo goes by single counts from the slowest to the fastest, and is said with its unit.
func TestTempo(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(3, 1))
	for range 200 {
		slow := 40 + chance.IntN(100)
		fast := slow + 1 + chance.IntN(80)
		bpm := slow + chance.IntN(fast-slow+1)
		it := Tempo(w, "Tempo in halves", bpm, slow, fast)
		require.Equal(t, [4]float64{float64(slow), float64(fast), 1, float64(bpm)}, [4]float64{it.Min, it.Max, it.Step, it.Num})
		require.Equal(t, fmt.Sprintf("%d counts a minute", bpm), it.Value)
		require.Equal(t, "Tempo in halves", it.Name)
		require.Equal(t, ActTempo, it.Action)
	}
}

// The volume goes from nothing to all by steps that reach both ends; where there is no
// sound there is no slider, and silence is not that.
func TestVolume(t *testing.T) {
	w := words(t)
	require.Equal(t, RoleNone, Volume(w, -1).Role)
	for _, n := range []int{0, 5, 60, 100} {
		it := Volume(w, n)
		require.Equal(t, RoleSlider, it.Role, n)
		require.Equal(t, float64(n), it.Num)
		require.Equal(t, fmt.Sprintf("%d\u00a0%%", n), it.Value)
		requireStepsFit(t, it)
	}
}

// requireStepsFit: a slider's steps lead from its one end to the other.
func requireStepsFit(t *testing.T, it Item) {
	t.Helper()
	require.Less(t, it.Min, it.Max)
	require.Positive(t, it.Step)
	steps := (it.Max - it.Min) / it.Step
	require.Equal(t, float64(int(steps)), steps, "%s: the last step would leave its bounds", it.ID)
}

// Whatever length is asked for is among those that can be chosen, in its place, once; and
// the list that was given stays as it is.
func TestLengthHasWhatIsAsked(t *testing.T) {
	w := words(t)
	for _, given := range [][]int{nil, {4, 6, 8}, {4, 8, 16, 32}} {
		before := slices.Clone(given)
		given = slices.Grow(given, 8) // so that there is room to write into it
		for eights := 1; eights <= 33; eights++ {
			it := Length(w, eights, given)
			var lengths []int
			for _, o := range it.Options {
				n, err := strconv.Atoi(o.Value)
				require.NoError(t, err)
				lengths = append(lengths, n)
				require.Equal(t, w.Say("eights", "n", n), o.Label)
			}
			require.True(t, slices.IsSorted(lengths), "%v", lengths)
			require.Len(t, slices.Compact(slices.Clone(lengths)), len(lengths), "%v", lengths)
			require.Contains(t, lengths, eights)
			require.Subset(t, lengths, given)
			require.LessOrEqual(t, len(lengths), max(4, len(given))+1)
			require.Equal(t, strconv.Itoa(eights), it.Value)
		}
		require.True(t, slices.Equal(before, given))
	}
	require.Equal(t, []string{"1", "2", "4", "8"}, values(Length(w, 2, nil).Options), "without a list")
	require.Equal(t, "1 eight", Length(w, 2, nil).Options[0].Label)
}

// A question is made from one of three sets of rhythms, or from those that a link names,
// which then stand there by their names.
func TestFrom(t *testing.T) {
	w := words(t)
	supplied := []string{FromFive, FromEven, FromAll}
	for _, value := range supplied {
		it := From(w, value, []string{"maqsum"})
		require.Equal(t, supplied, values(it.Options))
		require.Equal(t, value, it.Value)
	}
	it := From(w, "a.b.c", []string{"A", "B", "C"})
	require.Equal(t, append(supplied, "a.b.c"), values(it.Options))
	require.Equal(t, "A, B and C", it.Options[3].Label)
	require.Equal(t, "a.b.c", it.Value)
	it = From(w, "a.b.c", nil)
	require.Equal(t, supplied, values(it.Options), "without names there is nothing to show")
	require.Empty(t, it.Value)
}

// The drumhead has a square place, and its twin in words.
func TestStage(t *testing.T) {
	it := Stage(words(t), "a dum at the top")
	require.Equal(t, 1.0, it.Aspect)
	require.Equal(t, PlaceHead, it.Place)
	require.Equal(t, "a dum at the top", it.Text)
	require.Nil(t, it.Picture, "it is drawn live")
}

func TestFigure(t *testing.T) {
	it := Figure("mean", "mean", "12 ms behind")
	require.Equal(t, Item{ID: "figure-mean", Role: RoleText, Look: LookFigure, Text: "mean", Value: "12 ms behind"}, it)
}

// Each question has a sentence of its own; one that is not known is the one with names.
func TestSayAsk(t *testing.T) {
	w, seen := words(t), map[string]string{}
	for _, ask := range Asks() {
		said := SayAsk(w, ask)
		require.Empty(t, seen[said], "%s and %s are said alike", ask, seen[said])
		seen[said] = ask
	}
	require.Equal(t, AskRhythm, Asks()[0])
	require.Equal(t, SayAsk(w, AskRhythm), SayAsk(w, "nothing"))
	require.ElementsMatch(t, []string{AskRhythm, AskStroke, AskHowMany, AskSame}, Asks())
}
