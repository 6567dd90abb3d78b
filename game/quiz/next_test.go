package quiz

import (
	"errors"
	"fmt"
	"math"
	"slices"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// sound checks what holds for every question.
func sound(t testing.TB, q Question) {
	t.Helper()
	right, found := q.Choice(q.Right)
	require.True(t, found)
	require.GreaterOrEqual(t, q.BPM, round.MinBPM)
	require.LessOrEqual(t, q.BPM, round.MaxBPM)
	require.Positive(t, q.Eights)
	seen := map[string]bool{}
	for i, c := range q.Choices {
		require.False(t, seen[c.ID], "%s twice", c.ID)
		seen[c.ID] = true
		require.NotEmpty(t, c.Name)
		require.Equal(t, q.Ask == Which, c.Rhythm != nil)
		for _, o := range q.Choices[:i] {
			require.False(t, q.Ask == Which && Mistakable(c.Rhythm, o.Rhythm), "%s %s", c.ID, o.ID)
		}
	}
	if q.Ask == Which {
		require.Same(t, q.Rhythm, right.Rhythm)
		require.Equal(t, q.BPM, right.BPM)
	}
}

// Every rhythm that can be asked for is, and where the tempo varies every choice
// would be played in its own range, to a beat a minute as dense as what is.
func TestWhich(t *testing.T) {
	for _, s := range settings(0) {
		t.Run(s.String(), func(t *testing.T) {
			asked := map[string]bool{}
			for seed := range uint64(400) {
				q := next(t, Which, s.from, s.answers, 0, s.level, seed)
				sound(t, q)
				require.LessOrEqual(t, len(q.Choices), s.answers)
				require.GreaterOrEqual(t, len(q.Choices), 2)
				asked[q.Right] = true
				heard := density(q.Rhythm, s.level, q.BPM)
				for _, c := range q.Choices {
					require.GreaterOrEqual(t, c.BPM, c.Rhythm.Tempo.Slow)
					require.LessOrEqual(t, c.BPM, c.Rhythm.Tempo.Fast)
					off := 1/float64(c.BPM) + 1/float64(q.BPM)
					require.InEpsilon(t, heard, density(c.Rhythm, s.level, c.BPM), off)
				}
			}
			for _, c := range pool(t, s.from) {
				// sama'i thaqil, filled, is sparser than all others can be.
				alone := c.ID == "samai-thaqil" && s.level == riff.Filled
				require.Equal(t, !alone, asked[c.ID], c.ID)
			}
		})
	}
}

// The nearest come first: each rhythm of the even ones is set most often against
// one of its own family, where it has one that it can be set against.
func TestWrongAnswersAreNear(t *testing.T) {
	together := map[string]map[string]int{}
	for seed := range uint64(2000) {
		q := next(t, Which, Even, 2, 0, riff.Bare, seed)
		for i, c := range q.Choices {
			if together[c.ID] == nil {
				together[c.ID] = map[string]int{}
			}
			together[c.ID][q.Choices[1-i].ID]++
		}
	}
	for id, families := range map[string][]string{
		"maqsum": {"baladi", "saidi"}, "saidi": {"maqsum", "baladi"}, "malfuf": {"khaliji"}, "khaliji": {"ayyub", "malfuf"},
		"wahda": {"ciftetelli"}, "masmudi-kabir": {"wahda", "ciftetelli"}, "ciftetelli": {"wahda", "masmudi-kabir"},
	} {
		family, all := 0, 0
		for other, n := range together[id] {
			all += n
			if slices.Contains(families, other) {
				family += n
			}
		}
		require.Greater(t, 2*family, all, "%s: %v", id, together[id])
	}
	require.Zero(t, together["malfuf"]["wahda"])
	require.Zero(t, together["maqsum"]["fallahi"])
	require.Zero(t, together["baladi"]["masmudi-kabir"])
}

// Each place and each member of a group is right as often as any other.
func TestRightIsNoPlace(t *testing.T) {
	const n = 4000
	var places [4]int
	first := 0 // of the two, by id
	for seed := range uint64(n) {
		q := next(t, Which, "baladi.maqsum.saidi.ayyub", 4, 0, riff.Bare, seed)
		places[slices.IndexFunc(q.Choices, func(c Choice) bool { return c.ID == q.Right })]++
		if next(t, Which, "baladi.maqsum", 2, 0, riff.Bare, seed).Right == "baladi" {
			first++
		}
	}
	for _, hits := range places {
		require.InDelta(t, n/4, hits, 4*math.Sqrt(n*3/16.))
	}
	require.InDelta(t, n/2, first, 4*math.Sqrt(n/4.))
}

func TestFixedTempo(t *testing.T) {
	for _, bpm := range []int{round.MinBPM, 60, 100, round.MaxBPM} {
		for seed := range uint64(100) {
			for _, ask := range []Ask{Stroke, HowMany, Same, Which} {
				q := next(t, ask, All, 4, bpm, riff.Filled, seed)
				sound(t, q)
				require.Equal(t, bpm, q.BPM)
			}
			q := next(t, Which, Five, 4, bpm, riff.Bare, seed)
			require.Len(t, q.Choices, 4, "none is too slow or too fast at a tempo that the player sets")
		}
	}
}

// The order of the pool, and doubles in it, do not matter.
func TestPoolIsASet(t *testing.T) {
	for _, ask := range []Ask{HowMany, Same, Which} {
		for seed := range uint64(50) {
			one := pool(t, All)
			want, err := Next(ask, one, 4, 0, riff.Filled, seed)
			require.NoError(t, err)
			slices.Reverse(one)
			again := append(slices.Clone(one), one[3], get(t, "karachi"))
			got, err := Next(ask, again, 4, 0, riff.Filled, seed)
			require.NoError(t, err)
			require.Equal(t, want, got)
			require.Equal(t, one, again[:len(one)], "the pool is left as it was")
		}
	}
}

// Each answer of a lower rung is right as often as any other that can be.
func TestRungsAreEven(t *testing.T) {
	const n = 3000
	for ask, want := range map[Ask][]string{
		Stroke: {"dum", "tek"}, Same: {"same", "different"}, HowMany: {"1", "2", "3"},
	} {
		hits := map[string]int{}
		for seed := range uint64(n) {
			q := next(t, ask, All, 2, 0, riff.Bare, seed)
			sound(t, q)
			hits[q.Right]++
		}
		require.Len(t, hits, len(want))
		p := 1 / float64(len(want))
		for _, answer := range want {
			require.InDelta(t, n*p, hits[answer], 4*math.Sqrt(n*p*(1-p)), answer)
		}
	}
}

func TestChoicesOfTheRungs(t *testing.T) {
	for ask, want := range map[Ask]string{Stroke: "dum tek", HowMany: "1 2 3 4", Same: "same different"} {
		for seed := range uint64(20) {
			q := next(t, ask, Five, 3, 0, riff.Bare, seed)
			require.Equal(t, want, ids(q.Choices), "always in this order")
			require.Equal(t, ask == Same, q.Other != nil)
			require.Equal(t, ask == Stroke, q.Sound != 0)
		}
	}
	_, found := Question{Choices: Plain(dum, tek)}.Choice("ka")
	require.False(t, found)
}

// A changed rhythm differs at one count, and is still a rhythm that Parse would
// read: its filled form holds its skeleton.
func TestSame(t *testing.T) {
	changed := map[string]bool{}
	for seed := range uint64(600) {
		q := next(t, Same, All, 2, 0, riff.Filled, seed)
		diff := Differences(q, "")
		if q.Right == same {
			require.Same(t, q.Rhythm, q.Other)
			require.Empty(t, diff)
			continue
		}
		require.Len(t, diff, 1, "%s %s", q.Rhythm.Skeleton, q.Other.Skeleton)
		require.NotEqual(t, diff[0].A.Low(), diff[0].B.Low())
		require.NotEmpty(t, q.Other.Dums())
		scale := len(q.Other.Filled) / q.Other.Steps()
		for i, s := range q.Other.Skeleton {
			require.Equal(t, s.Low(), q.Other.Filled[i*scale].Low())
		}
		changed[q.Rhythm.ID+" "+diff[0].Count] = true
	}
	require.Greater(t, len(changed), 50, "places")
	require.Equal(t, "DT-TD-T-", get(t, "maqsum").Skeleton.String(), "the catalogue is left as it was")
	require.Equal(t, []int{3, 6}, exchangeable(get(t, "malfuf")), "its one dum stays")
	require.Len(t, exchangeable(get(t, "maqsum")), 5)
}

func TestNextRefuses(t *testing.T) {
	karachi := []*rhythm.Cycle{get(t, "karachi")}
	many := made(t, "many", "4/4", "DDDDDT--")
	for _, tt := range []struct {
		ask          Ask
		pool         []*rhythm.Cycle
		answers, bpm int
		level        riff.Level
		want         string
	}{
		{"dance", pool(t, Five), 2, 0, riff.Bare, `quiz: unknown ask "dance"`},
		{Which, pool(t, Five), 1, 0, riff.Bare, "quiz: 1 answers; a question has 2 to 4"},
		{Which, pool(t, Five), 5, 0, riff.Bare, "quiz: 5 answers; a question has 2 to 4"},
		{Which, pool(t, Five), 2, round.MinBPM - 1, riff.Bare, "or 0 to vary"},
		{Which, pool(t, Five), 2, round.MaxBPM + 1, riff.Bare, "or 0 to vary"},
		{Which, pool(t, Five), 2, 0, riff.Solo + 1, "quiz: riff level 'Level(5)' is not available"},
		{Which, nil, 2, 0, riff.Bare, "quiz: too few rhythms: none of them may be asked for; a question needs two"},
		{Which, karachi, 2, 0, riff.Bare, "quiz: too few rhythms: none of them may be asked for; a question needs two"},
		{Which, pool(t, "maqsum"), 2, 0, riff.Bare, "quiz: too few rhythms: maqsum alone; a question needs two"},
		{Which, pool(t, "maqsum.fallahi"), 2, 0, riff.Bare, "quiz: too few rhythms: no two of fallahi, maqsum differ in more than speed " +
			"and can be played with as many strokes a second"},
		{Which, pool(t, "maqsum.fallahi"), 2, 100, riff.Bare, "quiz: too few rhythms: no two of fallahi, maqsum differ in more than speed"},
		{Which, pool(t, "maqsum.masmudi-kabir"), 2, 0, riff.Bare, "quiz: too few rhythms: no two of maqsum, masmudi kabir differ"},
		{HowMany, karachi, 2, 0, riff.Bare, "quiz: too few rhythms: none of them has 1 to 4 dums"},
		{HowMany, []*rhythm.Cycle{many}, 2, 0, riff.Bare, "quiz: too few rhythms: none of them has 1 to 4 dums"},
		{Same, nil, 2, 0, riff.Bare, "quiz: too few rhythms: none of them has a stroke that could be another"},
		{Same, []*rhythm.Cycle{made(t, "one", "4/4", "---D")}, 2, 0, riff.Bare, "quiz: too few rhythms: none of them has a stroke that could be another"},
	} {
		q, err := Next(tt.ask, tt.pool, tt.answers, tt.bpm, tt.level, 7)
		require.ErrorContains(t, err, tt.want)
		require.Zero(t, q)
		require.Equal(t, strings.Contains(tt.want, "too few"), errors.Is(err, ErrTooFew))
	}
}

func ExampleNext() {
	catalogue, err := loaded()
	if err != nil {
		fmt.Println(err)
		return
	}
	five, err := From(catalogue, Five)
	if err != nil {
		fmt.Println(err)
		return
	}
	q, err := Next(Which, five, 3, 0, riff.Bare, 7)
	if err != nil {
		fmt.Println(err)
		return
	}
	for _, c := range q.Choices {
		fmt.Println(c.Name, "at", c.BPM)
	}
	fmt.Println("It was", q.Rhythm.Name)
	for _, c := range q.Choices {
		for _, d := range Differences(q, c.ID) {
			fmt.Printf("not %s: %s has %s where it has %s\n", c.Name, d.Count, d.A, d.B)
		}
	}
	// Output:
	// çiftetelli at 89
	// masmudi kabir at 107
	// It was çiftetelli
	// not masmudi kabir: 2 has - where it has D
	// not masmudi kabir: the & of 2 has T where it has -
	// not masmudi kabir: 6 has D where it has -
}

// A question of one stroke sounds one stroke of each drum, whatever the level of the
// lead drum is elsewhere.
func TestOneStrokeIsOne(t *testing.T) {
	for level := riff.Bare; level <= riff.Solo; level++ {
		for seed := range uint64(50) {
			q, err := Next(Stroke, nil, MinAnswers, 0, level, seed)
			require.NoError(t, err)
			played, err := round.Riff(q.Rhythm, q.Level, q.Seed, 0, 0)
			require.NoError(t, err)
			p, err := round.NewPassage(q.BPM, q.Level, q.Seed, false, round.Section{Rhythm: q.Rhythm, Cycles: 1, Riff: played})
			require.NoError(t, err)
			require.Len(t, p.Hits(audio.Rate, 0), 2)
		}
	}
}
