package classview

import (
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// classBy is a class as it is got ready, all that may be one way or another by chance.
func classBy(chance *rand.Rand) *Class {
	yes := func() bool { return chance.IntN(2) == 1 }
	c := classModel()
	c.Set.Kinds = nil
	for _, k := range warmup.Kinds() {
		if len(c.Set.Kinds) == 0 || yes() {
			c.Set.Kinds = append(c.Set.Kinds, k)
		}
	}
	c.Set.Level = riff.Level(chance.IntN(int(riff.Solo) + 1))
	c.Set.Minutes = warmup.LeastMinutes + chance.IntN(warmup.MostMinutes-warmup.LeastMinutes+1)
	c.Set.Seed = chance.Uint64N(3)
	c.Set.From = []string{view.FromFive, view.FromAll, "maqsum.baladi.saidi", "malfuf.ayyub"}[chance.IntN(4)]
	c.Saved, c.NoCopies, c.Hearing, c.Letters = yes(), yes(), yes(), yes()
	if c.Volume = chance.IntN(102) - 1; yes() {
		c.Problem = "x.txt:2: no colon"
	}
	if yes() {
		c.Unended = &c.Sets[0]
	}
	return c
}

// Whatever is set, the screen is whole, its slider within its bounds, and what is marked
// is what the set says.
func TestClassIsWhole(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(7, 7))
	for range 150 {
		c := classBy(chance)
		s := c.Screen(w)
		require.NoError(t, screenproof.Check(s))
		require.NotContains(t, screenproof.Text(t, s), "{")
		for _, k := range warmup.Kinds() {
			require.Equal(t, slices.Contains(c.Set.Kinds, k), s.Find("kind-"+string(k)).Checked)
			require.Equal(t, view.ActClassKind+string(k), s.Find("kind-"+string(k)).Action)
		}
		require.Equal(t, c.Set.Level.String(), s.Find("level").Value)
		known := c.Set.From != "malfuf.ayyub"
		require.Equal(t, known, s.Find("from").Value == c.Set.From, "what is not among them is not marked")
		require.Equal(t, c.Saved, s.Find("class-forget") != nil)
		require.Equal(t, c.Problem, textOf(s, "class-problem"))
		require.Equal(t, c.Unended != nil, s.Find("class-resume") != nil)
		require.Equal(t, c.Hearing, s.Find("hearing") != nil)
		require.Equal(t, c.NoCopies, s.Find("no-copies") != nil)
		require.Equal(t, c.Letters, s.Find("class-letters").Checked)
	}
}

func textOf(s view.Screen, id string) string {
	if it := s.Find(id); it != nil {
		return it.Text
	}
	return ""
}

// Without sound nothing can be begun, wherever it stands; with it everything.
func TestNothingBeginsWithoutSound(t *testing.T) {
	w := words(t)
	for _, volume := range []int{-1, 0, 60} {
		c := classModel()
		c.Volume = volume
		n, s := 0, c.Screen(w)
		s.Each(func(it *view.Item) {
			if it.Action == view.ActClassBegin {
				n++
				require.Equal(t, volume < 0, it.Disabled, it.ID)
			}
		})
		require.Equal(t, len(c.Sets)+1, n)
	}
}

// What a set's button sends is by what it is found: a supplied one by its own id, what is
// put together by none.
func TestSetsAreFoundByTheirValue(t *testing.T) {
	w := words(t)
	s := classModel().Screen(w)
	for i, id := range warmup.Presets() {
		it := s.Find("set-" + string(rune('1'+i)))
		require.Equal(t, id, it.Value)
		set, ok := warmup.Preset(it.Value)
		require.True(t, ok)
		for _, k := range set.Kinds {
			require.Contains(t, strings.ToLower(it.Text), sayTask(w, k), "it says what it brings")
		}
		require.Contains(t, it.Text, "18:42", "and until when")
	}
	require.Empty(t, s.Find("class-begin").Value)
}

// The link to a set opens that set.
func TestClassLinkOpensItsSet(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(8, 8))
	for range 40 {
		c := classBy(chance)
		s := c.Screen(w)
		_, text, ok := strings.Cut(s.Find("class-link").Value, "set=")
		require.True(t, ok)
		set, err := warmup.ParseLink(text, catalogue(t))
		require.NoError(t, err)
		want := c.Set
		want.Name = ""
		require.Equal(t, want, set)
	}
}

// Each set has a name of its own: those that are supplied, last time's, what a link
// brought, and what a teacher called hers, whatever that is.
func TestSayClassSet(t *testing.T) {
	w, seen := words(t), map[string]string{}
	for _, id := range append(warmup.Presets(), LastSet, PutSet) {
		name := sayClassSet(w, ClassSet{ID: id})
		require.Empty(t, seen[name], "%s and %s", id, seen[name])
		seen[name] = id
	}
	require.Equal(t, "Tuesday", sayClassSet(w, ClassSet{ID: "saved-1", Name: "Tuesday"}))
	require.Equal(t, "Tuesday", sayClassSet(w, ClassSet{ID: PutSet, Name: "Tuesday"}))
	require.Equal(t, w.Say("class-last"), sayClassSet(w, ClassSet{ID: LastSet, Name: "Tuesday"}), "it is last time's, whatever it was")
}

// A set says how far the lead drum goes only if it goes further than the base.
func TestSetSaysItsLevel(t *testing.T) {
	w := words(t)
	for level := riff.Bare; level <= riff.Solo; level++ {
		s := ClassSet{Set: warmup.Set{Level: level, Kinds: []warmup.Kind{warmup.SayIt, warmup.FindTheOne}}, Lasts: ClassLength{3, 4 * time.Minute, "19:00"}}
		text := s.say(w)
		require.True(t, strings.HasPrefix(text, "Say it and find the 1."), text)
		require.Equal(t, level > riff.Bare, strings.Contains(text, "The lead drum up to "+level.String()+"."), text)
		require.True(t, strings.HasSuffix(plainBlanks(text), "3 questions, 4 minutes: now to 19:00."), text)
	}
}

// How long it lasts is what the warm-up says, to the minute in which it ends.
func TestLengthOf(t *testing.T) {
	for seed := uint64(1); seed <= 5; seed++ {
		set, _ := warmup.Preset("ears")
		set.Seed = seed
		run, err := warmup.NewWarmup(set, catalogue(t))
		require.NoError(t, err)
		now := time.Date(2026, 3, 3, 23, 58, 30, 0, time.UTC)
		l := LengthOf(run, now)
		require.Equal(t, len(run.Tasks), l.Tasks)
		require.Equal(t, run.Lasts(), l.Lasts)
		ends, err := time.Parse("15:04", l.Ends)
		require.NoError(t, err)
		require.Equal(t, now.Add(run.Lasts()).Minute(), ends.Minute())
		require.Less(t, ends.Hour(), 1, "past midnight the day begins anew")
	}
}

// A seed of none leaves its field empty, so that each time is another.
func TestSeedText(t *testing.T) {
	require.Empty(t, seedText(0))
	require.Equal(t, "9007199254740991", seedText(warmup.MostSeed))
}

// A length is said to the nearest half minute, never to one that is further away.
func TestMinutesAreTheNearest(t *testing.T) {
	w := words(t)
	for s := 60; s <= 1800; s += 7 {
		d := time.Duration(s) * time.Second
		said := plainBlanks(sayMinutes(w, d))
		number, _, _ := strings.Cut(said, " ")
		minutes, half := strings.CutSuffix(number, "½")
		n, err := time.ParseDuration(minutes + "m")
		require.NoError(t, err, said)
		if half {
			n += 30 * time.Second
		}
		require.LessOrEqual(t, max(n-d, d-n), 15*time.Second, said)
	}
}
