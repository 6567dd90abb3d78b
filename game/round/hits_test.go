package round_test

import (
	"cmp"
	"fmt"
	"math"
	"math/big"
	"slices"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/round"
)

// The strokes, written out once more, and the voice of each on the two drums.
var (
	skeletons = map[string]string{"maqsum": "DT-TD-T-", "saidi": "DT-DD-T-"}
	leadOf    = map[rune]audio.Voice{'D': audio.LeadDum, 'T': audio.LeadTek, 'S': audio.LeadSak}
	bassOf    = map[rune]audio.Voice{'D': audio.BassDum, 'T': audio.BassTek, 'S': audio.BassTek}
)

// exactFrame is the frame of a step counted from the "5", in rational numbers
// and rounded once, halves up: rate · step · 60 / (bpm · steps per beat).
func exactFrame(rate, step, bpm, perBeat int64) int64 {
	frame := big.NewRat(rate*step*60, bpm*perBeat)
	frame.Add(frame, big.NewRat(1, 2))
	return new(big.Int).Div(frame.Num(), frame.Denom()).Int64() // Euclidean: rounds down
}

// struck is a hit without its small variation.
type struck struct {
	frame int64
	voice audio.Voice
}

// expected are the hits of a rhythm in 4/4 of eight steps, from its skeleton.
func expected(skeleton string, bpm, eights int, base int64) []struck {
	const perBeat = 2
	frame := func(step int) int64 { return base + exactFrame(48000, int64(step), int64(bpm), perBeat) }
	var hits []struck
	for beat := range 4 {
		hits = append(hits, struck{frame: frame(beat * perBeat), voice: audio.LeadTek})
	}
	for cycle := range 2 * eights {
		for i, stroke := range skeleton {
			if stroke == '-' {
				continue
			}
			at := frame(4*perBeat + cycle*len(skeleton) + i)
			hits = append(hits, struck{frame: at, voice: bassOf[stroke]}, struck{frame: at, voice: leadOf[stroke]})
		}
	}
	return hits
}

// plain are hits without their variation, in their order.
func plain(hits []audio.Hit) []struck {
	all := make([]struck, len(hits))
	for i, h := range hits {
		all[i] = struck{frame: h.Frame, voice: h.Voice}
	}
	return all
}

// requireHits compares hits with those expected, in any order.
func requireHits(t *testing.T, want []struck, got []audio.Hit, where ...any) {
	t.Helper()
	hits := plain(got)
	for _, list := range [][]struck{want, hits} {
		slices.SortFunc(list, func(a, b struck) int {
			return cmp.Or(cmp.Compare(a.frame, b.frame), cmp.Compare(a.voice, b.voice))
		})
	}
	require.Equal(t, want, hits, where...)
}

// Every hit of 32 eights lies on the frame nearest to its own exact time: both
// drums, wherever in the stream the round begins. Sums of rounded steps would be
// out by 185 frames at the end of 32 eights at 97.
func TestHitsLieOnTheirFrames(t *testing.T) {
	for id, skeleton := range skeletons {
		for _, bpm := range []int{40, 61, 90, 96, 97, 105, 113, 120, 199, 200} {
			for _, base := range []int64{0, 1, 123_457, 1 << 40} {
				t.Run(fmt.Sprint(id, bpm, base), func(t *testing.T) {
					r := ready(t, supplied(t, id), bpm, 32)
					requireHits(t, expected(skeleton, bpm, 32, base), r.Hits(audio.Rate, base))
				})
			}
		}
	}
}

// The time of a step is rounded to a nanosecond before it becomes a frame. That
// could move a hit only if its exact place, 48000·60·step / (bpm · steps per
// beat), were a half: not with 2⁹ in 48000·60 and less than 2¹⁰ below the line.
func TestHitsAtEveryTempo(t *testing.T) {
	c := supplied(t, "maqsum")
	for bpm := round.MinBPM; bpm <= round.MaxBPM; bpm++ {
		r := ready(t, c, bpm, 4)
		requireHits(t, expected(skeletons["maqsum"], bpm, 4, 0), r.Hits(audio.Rate, 0), "at %d", bpm)
	}
}

// The whole question is as long as its beats, to half a frame: no drift.
func TestHitsDoNotDrift(t *testing.T) {
	for _, bpm := range []int{61, 97, 113} {
		r := ready(t, supplied(t, "maqsum"), bpm, 32)
		hits := r.Hits(audio.Rate, 0)
		last := hits[len(hits)-1].Frame // the tek on 8 of the last eight: beat 4 + 255
		require.InDelta(t, 48000.*60*(4+255)/float64(bpm), float64(last), 0.5, "at %d", bpm)
	}
}

func TestCountInIsFourTeksOnTheBeat(t *testing.T) {
	r := ready(t, supplied(t, "saidi"), 96, 1) // a beat is 30,000 frames
	first := r.Hits(audio.Rate, 1000)[:5]
	require.Equal(t, []struck{
		{frame: 1000, voice: audio.LeadTek}, {frame: 31000, voice: audio.LeadTek}, {frame: 61000, voice: audio.LeadTek}, {frame: 91000, voice: audio.LeadTek},
		{frame: 121000, voice: audio.BassDum},
	}, plain(first))
	for _, h := range first[:4] {
		require.Less(t, h.Strength, first[4].Strength, "the count-in is softer than a dum")
	}
}

// Every dum asked for sounds on the bass drum, firmly, and on the lead drum.
func TestDumsSoundOnBothDrums(t *testing.T) {
	r := ready(t, supplied(t, "saidi"), 113, 2)
	dums := map[audio.Voice][]int64{}
	for _, h := range r.Hits(audio.Rate, 0) {
		if h.Voice == audio.BassDum || h.Voice == audio.LeadDum {
			require.Equal(t, float32(1), h.Strength)
			dums[h.Voice] = append(dums[h.Voice], h.Frame)
		}
	}
	var asked []int64
	for _, s := range r.Strokes() {
		asked = append(asked, audio.Rate.Frame(s))
	}
	require.Len(t, asked, 12)
	require.Equal(t, asked, dums[audio.BassDum])
	require.Equal(t, asked, dums[audio.LeadDum])
}

func TestSlapsSoundOnTheLeadDrum(t *testing.T) {
	r := ready(t, made(t, "4/4", "DS-TD-S-"), 100, 1)
	requireHits(t, expected("DS-TD-S-", 100, 1, 0), r.Hits(audio.Rate, 0))
}

// Every stroke has a variation of its own; the same question always has the
// same, and another seed only other variations.
func TestSeedsOfHits(t *testing.T) {
	q := round.Setting{Kind: round.Dums, Rhythm: supplied(t, "maqsum"), BPM: 97, Eights: 32}
	for _, seed := range []uint64{0, 1, 7, math.MaxUint64} {
		q.Seed = seed
		r, err := round.New(q)
		require.NoError(t, err)
		hits, seen := r.Hits(audio.Rate, 0), map[uint64]bool{}
		for _, h := range hits {
			require.False(t, seen[h.Seed], "twice: %d", h.Seed)
			seen[h.Seed] = true
		}
		require.Len(t, seen, 4+2*5*64)
		again, err := round.New(q)
		require.NoError(t, err)
		require.Equal(t, hits, again.Hits(audio.Rate, 0))

		q.Seed++
		other, err := round.New(q)
		require.NoError(t, err)
		require.Equal(t, plain(hits), plain(other.Hits(audio.Rate, 0)))
		require.NotEqual(t, hits, other.Hits(audio.Rate, 0))
	}
}

// The first five numbers of SplitMix64 from 1234567, as Rosetta Code gives them
// ("Pseudo-random numbers/Splitmix64"): a seed is a promise.
func TestSeedsAreSplitMix64(t *testing.T) {
	r, err := round.New(round.Setting{
		Kind: round.Dums, Rhythm: supplied(t, "maqsum"), BPM: 96, Eights: 1, Seed: 1234567,
	})
	require.NoError(t, err)
	want := []uint64{
		6457827717110365317, 3203168211198807973, 9817491932198370423, 4593380528125082431, 16408922859458223821,
	}
	for i, h := range r.Hits(audio.Rate, 0)[:len(want)] {
		require.Equal(t, want[i], h.Seed)
	}
}
