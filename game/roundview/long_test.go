package roundview

import (
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring"
)

// evenRhythms are those in which eights can be walked, and so stopped and carried on in.
func evenRhythms(t testing.TB) []*rhythm.Cycle {
	return slices.DeleteFunc(everyRhythm(t), (*rhythm.Cycle).Odd)
}

// tapsBy taps the strokes of a round by chance: some left out, some scattered, some added.
func tapsBy(r *round.Round, chance *rand.Rand) {
	r.Begin()
	lean, spread, misses := 40*chance.NormFloat64(), 60*chance.Float64(), 0.6*chance.Float64()
	for _, at := range r.Strokes() {
		if chance.Float64() >= misses {
			r.Tap(round.Tap{At: at + time.Duration((lean+spread*chance.NormFloat64())*float64(ms))}, 0)
		}
		if chance.IntN(9) == 0 {
			r.Tap(round.Tap{At: at + 160*ms}, 0)
		}
	}
	r.Hear(time.Hour, 0)
}

// stoppedBy is a round of stops of a rhythm in review, tapped by chance.
func stoppedBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) (*Stop, *round.Stopped) {
	t.Helper()
	r, err := round.NewStopped(round.Setting{Kind: round.Stops, Rhythm: c, BPM: c.Tempo.Usual, Eights: []int{4, 6, 8}[chance.IntN(3)],
		Level: riff.Bare, Seed: chance.Uint64N(99) + 1})
	require.NoError(t, err)
	tapsBy(&r.Round, chance)
	s := &Stop{Dums: *dumsBy(t, c, view.Ready, chance)}
	s.Kind, s.Phase, s.Any, s.Columns = view.ScreenStop, view.Reviewing, false, 0
	s.Review = ReviewOf(&r.Round)
	s.Result = ResultOf(&r.Round, s.Review)
	s.Result.Measured = chance.IntN(2) == 1
	s.Catch(r)
	return s, r
}

// However stops were caught, the review is whole: one row for each, one finding, and in
// the pictures the dums of the rhythm and no others.
func TestEveryRoundOfStopsIsWhole(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(4, 1))
	for _, c := range evenRhythms(t) {
		for range 4 {
			s, r := stoppedBy(t, c, chance)
			screen := s.Screen(w)
			requireWhole(t, screen, c.ID)
			require.Len(t, s.Caught, len(r.Stops()))
			require.Len(t, screen.Find("stops").Rows, len(s.Caught))
			require.NotEmpty(t, screen.Find("finding").Text)
			for i, stop := range r.Stops() {
				require.Equal(t, c.CountInEight(stop.At), s.Caught[i].Count)
				require.Equal(t, stop.At/(c.CyclesIn(1)*c.Steps())+1, s.Caught[i].Eight)
				require.Contains(t, screen.Find("stops").Rows[i][0], fmt.Sprint(s.Caught[i].Eight))
			}
			for _, l := range s.Review.Landed {
				require.True(t, c.Skeleton[l.Step%c.Steps()].Low(), "a stop is no dum of the rhythm")
			}
			for _, step := range s.Review.LeftOut {
				require.True(t, c.Skeleton[step%c.Steps()].Low())
			}
		}
	}
}

// Each stop is caught as its own taps lay: what was left out is not there, and what was
// tapped lies where it was.
func TestStopsAreCaughtByTheirTaps(t *testing.T) {
	chance := rand.New(rand.NewPCG(4, 2))
	for _, c := range evenRhythms(t) {
		s, r := stoppedBy(t, c, chance)
		for i, k := range r.Catches() {
			got := s.Caught[i]
			require.Equal(t, k.Last.Tapped, got.Last.Tapped)
			require.Equal(t, k.Back.Tapped, got.Back.Tapped)
			if got.Last.Tapped {
				require.Equal(t, k.Last.Offset-r.Result().Setup, got.Last.Offset)
			} else {
				require.Zero(t, got.Last.Offset)
			}
			require.Equal(t, k.InSilence, got.InSilence)
			require.False(t, got.Late && got.Last.Tapped, "what was caught is not late")
		}
	}
}

// A tap is meant for a stop that was left out if it came within a quarter of a second
// after it, and not before it.
func TestAddedSoon(t *testing.T) {
	v := ReviewOf(playedBy(t, supplied(t, "maqsum"), rand.New(rand.NewPCG(1, 1))))
	v.StepTime = 100 * ms
	for at, soon := range map[float64]bool{3.9: false, 4: false, 4.1: true, 6.4: true, 6.5: false, 9: false} {
		v.Added = []float64{at}
		require.Equal(t, soon, addedSoon(v, 4), at)
	}
	v.Added = nil
	require.False(t, addedSoon(v, 4))
}

// All are caught only if each stop and the 1 after it were landed on.
func TestCaught(t *testing.T) {
	good := StopResult{Last: Landing{true, 10 * ms}, Back: Landing{true, -10 * ms}}
	s := &Stop{Caught: []StopResult{good, good}}
	require.True(t, s.caught())
	for _, bad := range []Landing{{}, {true, 40 * ms}, {true, -90 * ms}} {
		s.Caught[1] = StopResult{Last: bad, Back: good.Back}
		require.False(t, s.caught())
		s.Caught[1] = StopResult{Last: good.Last, Back: bad}
		require.False(t, s.caught())
	}
}

// carriedBy is a round with silences of a rhythm in review, tapped by chance.
func carriedBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) (*Carry, *round.Carried) {
	t.Helper()
	r, err := round.NewCarried(round.Setting{Kind: round.Carries, Rhythm: c, BPM: c.Tempo.Usual, Eights: []int{4, 8, 16}[chance.IntN(3)],
		Level: riff.Bare, Seed: chance.Uint64N(99) + 1})
	require.NoError(t, err)
	tapsBy(&r.Round, chance)
	s := &Carry{Dums: *dumsBy(t, c, view.Ready, chance)}
	s.Kind, s.Phase, s.Any, s.Columns = view.ScreenCarry, view.Reviewing, false, 0
	s.Review = ReviewOf(&r.Round)
	s.Result = ResultOf(&r.Round, s.Review)
	s.Result.Measured = chance.IntN(2) == 1
	s.Keep(r)
	s.Own = OwnTime{Clock: scoring.Unknown(8, 40), Hand: scoring.Unknown(8, 40), Why: Untold(1 + chance.IntN(5))}
	return s, r
}

// However it was carried on, the review is whole: one row for each silence, one finding.
func TestEveryRoundOfSilencesIsWhole(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(4, 3))
	for _, c := range evenRhythms(t) {
		for range 4 {
			s, r := carriedBy(t, c, chance)
			screen := s.Screen(w)
			requireWhole(t, screen, c.ID)
			require.Len(t, s.Silences, len(r.Silences()))
			require.Len(t, screen.Find("silences").Rows, len(s.Silences))
			require.NotEmpty(t, screen.Find("finding").Text)
			tapped, asked := s.inSilence()
			require.LessOrEqual(t, tapped, asked)
			require.Equal(t, len(s.Alone.Landed), tapped, "the line of the silences has their taps and no others: %s", c.ID)
			require.Equal(t, asked, tapped+len(s.Alone.LeftOut))
		}
	}
}

// What the drums played and what she kept by herself are together the whole round.
func TestDrummedAndAloneAreTheWhole(t *testing.T) {
	chance := rand.New(rand.NewPCG(4, 4))
	for _, c := range evenRhythms(t) {
		for range 4 {
			s, r := carriedBy(t, c, chance)
			alone, steps := 0, r.Steps()
			for i := range steps {
				if r.Alone()(i) {
					alone++
				}
			}
			require.Equal(t, s.Result.Asked, s.Drummed.Asked+alone, c.ID)
			require.LessOrEqual(t, s.Drummed.Landed, s.Result.Landed)
			require.LessOrEqual(t, s.Drummed.On, s.Drummed.Landed)
			require.Equal(t, s.Drummed.Asked, s.Drummed.Landed+s.Drummed.LeftOut)
			require.Equal(t, s.Drummed.Landed, s.Between.N)
			asked, tapped := 0, 0
			for _, k := range s.Drummed.Counts {
				asked, tapped = asked+k.Asked, tapped+k.Tapped
			}
			require.Equal(t, [2]int{s.Drummed.Asked, s.Drummed.Landed}, [2]int{asked, tapped}, "count by count: %s", c.ID)
		}
	}
}

// She keeps the dums who taps three of four in the silences and is there each time when
// the drums come back.
func TestKeeps(t *testing.T) {
	there, away := Landing{true, 5 * ms}, Landing{true, 60 * ms}
	for tapped := range 9 {
		for _, back := range []Landing{there, away, {}} {
			c := &Carry{Silences: []SilenceResult{{Tapped: min(tapped, 4), Asked: 4, Back: there}, {Tapped: max(0, tapped-4), Asked: 4, Back: back}}}
			require.Equal(t, tapped >= 6 && back == there, c.keeps(), "%d %v", tapped, back)
		}
	}
}

// Clock and hand are told with how sure they are, or why they are not; each reason is
// another.
func TestOwnTimeIsTold(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	own := OwnTime{Clock: scoring.Estimated(24, 17, 30, 44, 40), Hand: scoring.Estimated(11, 4, 16, 44, 40)}
	for own.Why = CanTell; own.Why <= UntoldCorrects; own.Why++ {
		said := own.say(w, "maqsum")
		require.False(t, seen[said], said)
		require.NotContains(t, said, "{")
		seen[said] = true
		if own.Why == CanTell {
			for _, figure := range []string{"24", "17", "30", "11", "4", "16"} {
				require.Contains(t, said, figure)
			}
		}
	}
}

// The figures of a round with silences have what is known, and nothing that is as it
// should be.
func TestFiguresOfSilences(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(4, 5))
	for _, c := range evenRhythms(t) {
		s, _ := carriedBy(t, c, chance)
		screen := view.Screen{Items: s.figures(w)}
		require.Equal(t, s.With.Known, screen.Find("figure-with") != nil)
		require.Equal(t, s.Without.Known, screen.Find("figure-without") != nil)
		require.Equal(t, s.Result.LeftOut > 0, screen.Find("figure-left-out") != nil)
		require.Equal(t, s.Result.Added > 0, screen.Find("figure-added") != nil)
		require.Nil(t, screen.Find("figure-own-tempo"), "it is not known")
	}
}
