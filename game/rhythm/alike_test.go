package rhythm_test

import (
	"math/rand/v2"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

func TestStepForStep(t *testing.T) {
	malfuf, nine := shape(t, "malfuf"), shape(t, "karsilama")
	a, b := rhythm.StepForStep(malfuf.Base(), shape(t, "masmudi-kabir").Base())
	require.Equal(t, "D-----T-----T---", a.Pattern.String())
	require.Equal(t, "D-D---T-D---T---", b.Pattern.String())
	require.Equal(t, rhythm.Metre{Beats: 8, Unit: 4}, a.Metre, "of the longer")
	require.Equal(t, a.Metre, b.Metre)
	a, b = rhythm.StepForStep(malfuf.Base(), nine.Base())
	require.Equal(t, []int{72, 72, 9, 9}, []int{a.Steps(), b.Steps(), a.Metre.Beats, b.Metre.Beats})
}

func TestCommonPulse(t *testing.T) {
	maqsum, malfuf := shape(t, "maqsum"), shape(t, "malfuf")
	a, b := rhythm.CommonPulse(maqsum.Base(), malfuf.Base())
	require.Equal(t, "D-T---T-D---T---", a.Pattern.String(), "a step of 4/4 lasts twice as long")
	require.Equal(t, "D--T--T-D--T--T-", b.Pattern.String())
	require.Equal(t, rhythm.Metre{Beats: 4, Unit: 4}, a.Metre)
	require.Equal(t, a.Metre, b.Metre)
	a, b = rhythm.CommonPulse(maqsum.Base(), shape(t, "karsilama").Base())
	require.Equal(t, []int{72, 72, 36, 36}, []int{a.Steps(), b.Steps(), a.Metre.Beats, b.Metre.Beats})
}

// Costs in the comment of Distance, by hand.
func TestDistance(t *testing.T) {
	const none = "-----------------"
	tests := []struct {
		name, a, b string
		want       float64
	}{
		{"the same", "DT-TD-T-", "DT-TD-T-", 0},
		{"tek, slap and ka alike", "DT-T", "Dk-S", 0},
		{"silence", none[:4], none[:4], 0},
		{"a tek too many of 4", "D---T-T-", "DT--T-T-", 1.0 / 4},
		{"a dum too many of 4", "D---T-T-", "DD--T-T-", 2.0 / 4},
		{"a dum for a tek", "DT--T-T-", "DD--T-T-", 1.0 / 4},
		{"a tek half a beat late", "DT--T-T-", "D-T-T-T-", 0.5 / 4},
		{"a dum half a beat late", "TD--T-T-", "T-D-T-T-", 1.0 / 4},
		{"a dum half a beat late, as a tek", "TD--T-T-", "T-T-T-T-", 1.5 / 4},
		{"a tek so late that it is another", "-T------", "-------T", 2},
		{"all strokes too many", "D-T-D-T-", none[:8], 6.0 / 4},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			metre := rhythm.Metre{Beats: 4, Unit: 4}
			a, b := rhythm.Form{Metre: metre, Pattern: pattern(t, tt.a)}, rhythm.Form{Metre: metre, Pattern: pattern(t, tt.b)}
			require.InDelta(t, tt.want, rhythm.Distance(a, b), 1e-12)
			require.InDelta(t, tt.want, rhythm.Distance(b, a), 1e-12)
		})
	}
	require.Panics(t, func() { rhythm.Distance(shape(t, "maqsum").Base(), shape(t, "malfuf").Base()) }, "4 beats against 2")
}

// What any measure of distance owes, on made-up rhythms: symmetry, nothing only
// for the same voices, no notice of how finely a rhythm is written, and (times
// the strokes) no shorter way by a third.
func TestDistanceIsOne(t *testing.T) {
	random := rand.New(rand.NewPCG(5, 6))
	metre := rhythm.Metre{Beats: 4, Unit: 4}
	form := func() rhythm.Form {
		p := rests(8)
		for i := range p {
			p[i] = rhythm.Stroke("DT--"[random.IntN(4)])
		}
		return rhythm.Form{Metre: metre, Pattern: p}
	}
	cost := func(a, b rhythm.Form) float64 {
		strokes := func(f rhythm.Form) int { return len(f.Pattern.Pulses(rhythm.Stroke.Sounds).Onsets()) }
		return rhythm.Distance(a, b) * float64(max(strokes(a), strokes(b)))
	}
	for range 500 {
		a, b, c := form(), form(), form()
		d := rhythm.Distance(a, b)
		require.InDelta(t, d, rhythm.Distance(b, a), 1e-12)
		require.Equal(t, a.Pattern.String() == b.Pattern.String(), d == 0)
		require.LessOrEqual(t, cost(a, c), cost(a, b)+cost(b, c)+1e-9)
		fine := rests(16)
		for i, s := range b.Pattern {
			fine[2*i] = s
		}
		require.InDelta(t, d, rhythm.Distance(a, rhythm.Form{Metre: metre, Pattern: fine}), 1e-12)
	}
}

// Pairs that dancers' pages warn of, as far as the strokes explain it: the
// second is among the few nearest of those that a quiz may ask, or of the odd
// ones for an odd one. Sources: Iana, Three common rhythms; bauchtanzinfo.de;
// NWR Hawaii; Mellilah, Khaliji dance; G. D. Sawa; bellydancegeek.com.
func TestConfusedAreNear(t *testing.T) {
	tests := []struct {
		id, confused string // one or more ids
	}{
		{"maqsum", "baladi saidi ayyub fallahi"},
		{"baladi", "maqsum saidi masmudi-kabir"},
		{"saidi", "maqsum baladi"},
		{"masmudi-kabir", "baladi"},
		{"malfuf", "khaliji wahda"},
		{"khaliji", "malfuf ayyub"},
		{"ayyub", "maqsum"},
		{"wahda", "malfuf ciftetelli"},
		{"ciftetelli", "wahda"},
		{"fallahi", "maqsum"},
		{"karsilama", "roman-9"},
		{"roman-9", "karsilama"},
	}
	all := supplied(t)
	for _, tt := range tests {
		t.Run(tt.id, func(t *testing.T) {
			c := get(t, tt.id)
			for _, confused := range strings.Fields(tt.confused) {
				nearer := 0
				for _, other := range all.Answers(c.Odd()) {
					if other.ID != tt.id && rhythm.Apart(c, other) < rhythm.Apart(c, get(t, confused)) {
						nearer++
					}
				}
				require.Less(t, nearer, 5, confused)
			}
		})
	}
}

// Sa'idi has maqsum's onsets: only the voices set them apart.
func TestVoicesCount(t *testing.T) {
	maqsum, saidi := get(t, "maqsum"), get(t, "saidi")
	onsets := func(c *rhythm.Cycle) rhythm.Pulses { return c.Skeleton.Pulses(rhythm.Stroke.Sounds) }
	require.Equal(t, onsets(maqsum), onsets(saidi))
	require.InDelta(t, 0.2, rhythm.Apart(maqsum, saidi), 1e-12, "one voice of five strokes")
	require.Zero(t, rhythm.Apart(maqsum, get(t, "fallahi")))
	require.Equal(t, rhythm.Apart(saidi, maqsum), rhythm.Apart(maqsum, saidi))
}
