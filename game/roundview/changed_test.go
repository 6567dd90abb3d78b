package roundview

import (
	"math/rand/v2"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
)

// changedBy is a change of a rhythm into another in review, noticed by chance.
func changedBy(t *testing.T, from, to *rhythm.Cycle, chance *rand.Rand) *Change {
	yes := func() bool { return chance.IntN(2) == 1 }
	c := changing(t, view.Reviewing)
	c.Rhythm, c.Base, c.Groups = view.NameOf(from), from.Skeleton, from.Grouping
	c.Volume, c.BPM, c.Board = chance.IntN(102)-1, from.Tempo.Usual, []float64{0, 358}[chance.IntN(2)]
	c.Sides = []Side{{ID: from.ID, Rhythm: from}}
	c.Result = &ChangeResult{Early: chance.IntN(3)}
	if to == nil {
		return c
	}
	c.Sides = append(c.Sides, Side{ID: to.ID, Rhythm: to})
	c.Differences = quiz.DifferencesOf(from, to)
	c.Result.To, c.Result.Eight, c.Result.Heard = view.Option{Value: to.ID, Label: to.Name}, 2+chance.IntN(5), yes()
	if c.Result.Heard {
		c.Result.Chance = c.Result.Early > 0 && yes()
		c.Result.Late = time.Duration(chance.IntN(6000)) * ms
		c.Result.Counts = float64(c.Result.Late) / float64(600*ms)
		c.Result.Eighth = c.Result.Late + 200*ms
		c.Result.Said = c.Result.To
		if yes() {
			c.Result.Said = view.Option{Value: "other", Label: "other (another)"}
		}
	}
	return c
}

// Every change of every two rhythms has a whole review, whatever was noticed of it.
func TestEveryChangeIsWhole(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(5, 1))
	all := everyRhythm(t)
	for i, from := range all {
		for _, to := range append(all[:i:i], nil) {
			c := changedBy(t, from, to, chance)
			s := c.Screen(w)
			requireWhole(t, s, from.ID)
			require.Equal(t, c.Finding(w), s.Find("heading").Name)
			require.Equal(t, c.Result.Heard, s.Find("became") != nil, "who heard nothing was asked nothing")
			require.Equal(t, c.Result.Heard, s.Find("measured") != nil)
			if to != nil && c.Result.Heard {
				require.Contains(t, s.Find("became").Text, view.Plain(to.Name))
			}
		}
	}
}

// A change that was heard, that was not, that was hit by chance and that there was not
// are told apart, whatever else is the case.
func TestFindingsOfChangesDiffer(t *testing.T) {
	w := words(t)
	to := view.Option{Value: "baladi", Label: "baladi (masmudi saghir)"}
	findings := map[string]ChangeResult{}
	for _, r := range []ChangeResult{
		{}, {Early: 2}, {To: to, Eight: 3}, {To: to, Heard: true}, {To: to, Heard: true, Early: 1}, {To: to, Heard: true, Early: 4, Chance: true},
		{To: to, Heard: true, Counts: 3}, {To: to, Heard: true, Counts: 3, Early: 1},
	} {
		finding := (&Change{Result: &r}).Finding(w)
		_, known := findings[finding]
		require.False(t, known, "%+v and %+v: %s", r, findings[finding], finding)
		require.NotContains(t, finding, "(", "its plain name")
		findings[finding] = r
	}
}

// How many counts it took is rounded to the nearest, and less than half of one is at once.
func TestCountsOfAChange(t *testing.T) {
	w := words(t)
	at := func(counts float64) string {
		return (&Change{Result: &ChangeResult{To: view.Option{Value: "a", Label: "a"}, Heard: true, Counts: counts}}).Finding(w)
	}
	require.Equal(t, at(0), at(0.49))
	require.NotEqual(t, at(0.49), at(0.5))
	require.Equal(t, at(1), at(1.4))
	require.Equal(t, at(4), at(3.6))
	require.Contains(t, at(3.6), "4")
}

// Presses that came before there was anything to hear are told where they cost something,
// and once.
func TestEarlyPressesAreTold(t *testing.T) {
	w := words(t)
	to := view.Option{Value: "saidi", Label: "sa'idi"}
	for _, c := range []struct {
		r    ChangeResult
		told bool
	}{
		{ChangeResult{}, false}, {ChangeResult{Early: 2}, false}, {ChangeResult{To: to}, false}, {ChangeResult{To: to, Early: 1}, true},
		{ChangeResult{To: to, Heard: true, Early: 1}, false}, {ChangeResult{To: to, Heard: true, Early: 5, Chance: true}, true},
	} {
		require.Equal(t, c.told, (&Change{Result: &c.r}).early(w).Role != view.RoleNone, "%+v", c.r)
	}
}

// While a round is played, and while it is asked to what it changed, the screen is the
// same whatever it became.
func TestNothingOfTheChangeIsShownBefore(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(5, 2))
	all := everyRhythm(t)
	for _, phase := range []view.Phase{view.Ready, view.Playing, view.Waiting} {
		bare := changing(t, phase)
		want := text(t, bare.Screen(w))
		for _, to := range all {
			after := changedBy(t, all[0], to, chance)
			told := *bare
			told.Result, told.Sides, told.Differences, told.BPM = after.Result, after.Sides, after.Differences, after.BPM
			require.Equal(t, want, text(t, told.Screen(w)), to.ID)
			require.Equal(t, bare.Head(), told.Head())
			require.Equal(t, phase != view.Ready, told.Head().Hidden)
		}
	}
}

// The names that it may have become have their digits, and what these send is what their
// buttons send.
func TestDigitsOfAChange(t *testing.T) {
	s := changing(t, view.Waiting).Screen(words(t))
	buttons := s.Find("choices").Children
	require.Len(t, s.Keys, len(buttons))
	for i, k := range s.Keys {
		require.Equal(t, buttons[i].Value, k.Value)
		require.Equal(t, buttons[i].Action, k.Action)
		require.Equal(t, string(rune('1'+i)), k.Key)
	}
}

// Why there are fewer names is said with both rhythms that are never asked together, if
// they are known, and by speed or tempo as it is; where there are none fewer it is not.
func TestFewerIsSaid(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	require.Equal(t, view.RoleNone, (*Fewer)(nil).say(w).Role)
	for _, f := range []Fewer{
		{Least: 2, Most: 3, Few: "fallahi"}, {Least: 2, Most: 2, Few: "fallahi"},
		{Least: 2, Most: 2, Few: "fallahi", Apart: [2]string{"fallahi (a)", "maqsum (b)"}, Speed: true},
		{Least: 2, Most: 2, Few: "fallahi", Apart: [2]string{"fallahi (a)", "maqsum (b)"}},
	} {
		said := f.say(w).Text
		require.False(t, seen[said], said)
		seen[said] = true
		if f.Apart[0] != "" {
			require.True(t, strings.Contains(said, "fallahi") && strings.Contains(said, "maqsum"), said)
			require.NotContains(t, said, "(")
		}
	}
	require.Nil(t, FewerOf(quiz.Names{}))
	maqsum, saidi := supplied(t, "maqsum"), supplied(t, "saidi")
	f := FewerOf(quiz.Names{Least: 2, Most: 3, Few: maqsum, Apart: [2]*rhythm.Cycle{maqsum, saidi}, Speed: true})
	require.Equal(t, &Fewer{Least: 2, Most: 3, Few: maqsum.Name, Apart: [2]string{maqsum.Name, saidi.Name}, Speed: true}, f)
}

// What can be set of how a round is heard once more shows what is set: both drums unless
// another was chosen.
func TestAgainShowsWhatIsSet(t *testing.T) {
	w := words(t)
	for drums, want := range map[string]string{"": DrumsBoth, DrumsBoth: DrumsBoth, DrumsBass: DrumsBass, DrumsLead: DrumsLead} {
		for _, slowly := range []bool{false, true} {
			items := Replay{Drums: drums, Slowly: slowly}.controls(w)
			require.Equal(t, want, items[0].Value)
			require.Equal(t, want, view.Chosen(items[0].Options, want))
			require.Equal(t, slowly, items[1].Checked)
		}
	}
	d := dums(t, view.Reviewing)
	d.Volume = -1
	require.Equal(t, view.RoleNone, d.again(w).Role, "without sound there is nothing to be heard")
	d.Volume, d.Replay.Hearing = 0, true
	require.Equal(t, view.ActStop, d.again(w).Children[0].Action)
}
