package classroom

import (
	"math/rand/v2"
	"slices"
	"strconv"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/classview"
	"groundbeat/game/host"
	"groundbeat/game/quiz"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

func TestASetIsPutTogether(t *testing.T) {
	for _, one := range []struct{ action, value, want string }{
		{view.ActFrom, "even", "even_bare_hands-up_2_5"},
		{view.ActLevel, "filled", "five_filled_hands-up_2_5"},
		{view.ActClassMinutes, "10", "five_bare_hands-up_10_5"},
		{view.ActClassSeed, " 77 ", "five_bare_hands-up_2_77"},
		{view.ActClassSeed, "", "five_bare_hands-up_2"},
		{view.ActClassSeed, "7x", hands},
		{view.ActLevel, "of a later version", hands},
		{view.ActClassKind + "say-it", "yes", "five_bare_hands-up.say-it_2_5"},
	} {
		r := newRoom(t, hands)
		r.Use(one.action, one.value)
		require.Equal(t, one.want, r.class().ready.set.Link(), "%s %q", one.action, one.value)
		require.Equal(t, one.want, r.Shared.Address.Set, "the address says it")
		require.Empty(t, r.class().ready.problem)
	}
}

// What cannot be put together says why, and leaves the set as it was; the next control
// takes the words away.
func TestWhatCannotBePutTogether(t *testing.T) {
	for action, value := range map[string]string{
		view.ActClassMinutes: "31", view.ActFrom: "nowhere", view.ActClassSeed: strconv.FormatUint(warmup.MostSeed+1, 10),
		view.ActClassKind + "hands-up": "", view.ActClassSave: "", view.ActFile: "set.txt\nno set",
	} {
		r := newRoom(t, hands)
		r.Use(action, value)
		require.NotEmpty(t, r.class().ready.problem, action)
		require.Equal(t, hands, r.class().ready.set.Link(), action)
		require.Empty(t, r.Storage.KeptUnder(host.KeptSet))
		r.Use(view.ActClassName, "Tuesdays")
		require.Empty(t, r.class().ready.problem, action)
	}
}

// Kinds stand in their own order, each once, whatever is ticked in which order.
func TestKindsThatAreTicked(t *testing.T) {
	all := warmup.Kinds()
	for seed := range uint64(50) {
		chance := rand.New(rand.NewPCG(seed, 1))
		on := map[warmup.Kind]bool{}
		var kinds []warmup.Kind
		for range 30 {
			k := all[chance.IntN(len(all))]
			on[k] = chance.IntN(2) == 0
			kinds = with(kinds, k, on[k])
			var want []warmup.Kind
			for _, k := range all {
				if on[k] {
					want = append(want, k)
				}
			}
			require.True(t, slices.Equal(want, kinds), "seed %d: %v, not %v", seed, kinds, want)
		}
	}
	require.Equal(t, all, warmup.Kinds(), "and the list itself is as it was")
}

func TestWhichSetIsBegun(t *testing.T) {
	r := newRoom(t, hands)
	x := &r.class().ready
	for _, name := range []string{"One", "Two"} {
		r.Use(view.ActClassSetName, name)
		r.Use(view.ActClassSave, "")
	}
	require.Len(t, x.saved, 2)
	for _, id := range warmup.Presets() {
		want, _ := warmup.Preset(id)
		require.Equal(t, want, x.of(id))
	}
	require.Equal(t, "One", x.of("saved-0").Name)
	require.Equal(t, "Two", x.of("saved-1").Name)
	for _, id := range []string{"", "saved-2", "saved-x", classview.LastSet, classview.PutSet} {
		require.Equal(t, x.set, x.of(id), "%q: what is put together", id)
	}
	r.Use(view.ActClassBegin, "ears")
	r.Use(view.ActClassLeave, "")
	ears, _ := warmup.Preset("ears")
	require.Equal(t, ears.Kinds, x.of(classview.LastSet).Kinds)
	require.Zero(t, x.of(classview.LastSet).Seed, "with other questions")
	require.Equal(t, []bool{true, true}, []bool{x.last != nil, x.linked})
	r.Use(view.ActClassForget, "")
	require.Equal(t, []string{"One"}, []string{x.saved[0].Name}, "the one whose name stands there is gone")
}

// A file of sets that was handed over is read back as it was: the first is put in place,
// and those that have a name are kept.
func TestSetsAsAFile(t *testing.T) {
	r := newRoom(t, "even_solo_say-it.hands-up_12_99")
	r.Use(view.ActClassSetName, "Advanced")
	r.Use(view.ActClassFile, "")
	require.Len(t, r.Storage.Files, 1)
	other := newRoom(t, hands)
	other.Use(view.ActFile, "set.txt\n"+r.Storage.Files[0].Text)
	require.Equal(t, r.class().ready.set, other.class().ready.set)
	require.Len(t, other.Storage.KeptUnder(host.KeptSet), 1)
	require.Equal(t, r.class().ready.set, other.class().ready.saved[0])
}

// Families are offered whole, and of each enough to ask which it was.
func TestFamiliesToChooseFrom(t *testing.T) {
	r := newRoom(t, hands)
	pools := r.class().ready.pools()
	require.NotEmpty(t, pools)
	seen := map[string]bool{}
	for _, pool := range pools {
		all, err := quiz.From(r.Shared.Rhythms(), pool.Value)
		require.NoError(t, err)
		require.Greater(t, len(all), 1, pool.Label)
		for _, c := range all {
			require.Equal(t, all[0].Family, c.Family)
			require.False(t, seen[c.ID], "%s is offered once", c.ID)
			seen[c.ID] = true
		}
		require.NotContains(t, pool.Label, "(")
	}
}

func TestWhatIsKeptOfAClass(t *testing.T) {
	r := newRoom(t, hands)
	require.True(t, r.class().ready.letters)
	r.Use(view.ActClassName, "  Tuesdays ")
	r.Use(view.ActClassLetters, "")
	r.Load()
	require.Equal(t, "Tuesdays", r.class().ready.class)
	require.False(t, r.class().ready.letters)
	r.Use(view.ActClassLetters, "yes")
	r.Load()
	require.True(t, r.class().ready.letters)
	r.Storage.Full = true
	r.Use(view.ActClassName, "Fridays")
	require.True(t, r.class().readyModel().NoCopies)
}

// When it would end is said anew each minute, where it is said.
func TestTheEndMovesWithTheClock(t *testing.T) {
	r := newRoom(t, hands)
	x := &r.class().ready
	x.tick(true)
	require.False(t, x.tick(true))
	r.Wall.Set(evening.Add(61 * time.Second))
	require.True(t, x.tick(true))
	require.False(t, x.tick(true))
	r.Wall.Set(evening.Add(3 * time.Minute))
	require.False(t, x.tick(false))
}
