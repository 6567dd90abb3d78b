package audio

import (
	"math"
	"testing"

	"github.com/stretchr/testify/require"
)

// Strokes have one fixed level each: no rhythm is made louder or softer, which
// would tell it from another. The limits: no mix of whole eights louder than
// −16 LUFS, no true peak above −1 dBTP (that of EBU R 128), with the gains of
// every stage and full volume.
const (
	loudest = -16.0 // LUFS
	highest = -1.0  // dBTP
)

// skeletons are rhythms as a learner meets them, at a usual tempo: their
// skeletons and steps in a beat, beats a minute.
var skeletons = []struct {
	name, strokes  string
	perBeat, tempo int
}{
	{"maqsum", "DT-TD-T-", 2, 105},
	{"baladi", "DD-TD-T-", 2, 90},
	{"sa'idi", "DT-DD-T-", 2, 105},
	{"masmudi kabir", "D-D---T-D---T---", 2, 85},
	{"çiftetelli", "D--T--T-D-D-T---", 2, 72},
	{"malfuf", "D--T--T-", 4, 125},
	{"ayyub", "D--TD-T-", 4, 120},
	{"wahda", "D--T--T-", 2, 72},
	{"fallahi", "DT-TD-T-", 4, 125},
	{"khaliji", "D--D--T-", 4, 100},
	{"karachi", "T--T--D-", 4, 125},
	{"sama'i thaqil", "D--T-DDT--", 1, 120},
	{"karşılama", "D-T-D-TTT", 1, 144},
	{"Roman 9/8", "D-T-D-TT-", 1, 144},
	{"devr-i hindi", "DTTD-T-", 1, 120},
	{"nawakht", "D-TD-TT", 1, 120},
	{"zaffa", "DTTTDTT-", 2, 95},
	{"nawari", "TD-TD-T-", 2, 110},
}

// eights returns some cycles of a skeleton, bare, as both drums play it: eight
// are whole eights in every metre, however many beats a cycle has.
func eights(strokes string, perBeat, tempo, cycles int) (hits []Hit, frames int64) {
	at := func(step int) int64 { return int64(step) * 60 * int64(Rate) / int64(tempo*perBeat) }
	steps := cycles * len(strokes)
	for i := range steps {
		switch strokes[i%len(strokes)] {
		case 'D':
			hits = append(hits, Hit{at(i), LeadDum, 1, uint64(i)}, Hit{at(i), BassDum, 1, uint64(i)})
		case 'T':
			hits = append(hits, Hit{at(i), LeadTek, 0.8, uint64(i)}, Hit{at(i), BassTek, 0.3, uint64(i)})
		}
	}
	return hits, at(steps)
}

// measured returns loudness and true peak of the hits at a stage.
func measured(t testing.TB, stage Stage, frames int64, hits []Hit) (lufs, dBTP float64) {
	t.Helper()
	x, err := Render(Rate, frames, hits...)
	require.NoError(t, err)
	mix := Full()
	mix.Stage = stage
	mix.Apply(x)
	m := NewMeter(Rate)
	m.Add(x)
	return m.Loudness(), m.Peak()
}

func TestLevelOfRhythms(t *testing.T) {
	from := nowhere
	cycles, some := 8, skeletons
	if testing.Short() {
		cycles, some = 1, skeletons[:2]
	}
	for _, s := range some {
		hits, frames := eights(s.strokes, s.perBeat, s.tempo, cycles)
		loud, peak := measured(t, Centre, frames, hits)
		t.Logf("%-14s %6.1f LUFS %6.2f dBTP", s.name, loud, peak)
		require.LessOrEqual(t, loud, loudest, s.name)
		require.LessOrEqual(t, peak, highest, s.name)
		from = widen(from, loud)
	}
	t.Logf("from %.1f to %.1f LUFS: the denser, and the more dums, the louder", from[0], from[1])
	require.Less(t, from[1]-from[0], 6.0)
}

// The busiest a solo gets, on every stage.
func TestLevelOfASolo(t *testing.T) {
	frames := int64(seeds(16)) * int64(second)
	for stage := range stages {
		if testing.Short() && stage != Centre {
			continue
		}
		loud, peak := measured(t, stage, frames, busy(frames))
		t.Logf("%v: %.1f LUFS, %.2f dBTP", stage, loud, peak)
		require.LessOrEqual(t, loud, loudest, "%v", stage)
		require.LessOrEqual(t, peak, highest, "%v", stage)
	}
}

// Any stroke of the lead drum with any of the bass drum at one instant, firm,
// alone and again and again on a head that still rings: what two players can
// play. (Two strokes on one drum at one instant are for no rhythm here.)
func TestHeadroom(t *testing.T) {
	const sixteenth = 4500 // frames, at 160 quarters a minute
	n := int64(seeds(40))
	for lead := range BassDum {
		if testing.Short() && lead > LeadTek {
			continue
		}
		for _, bass := range []Voice{BassDum, BassTek} {
			if testing.Short() && bass == BassTek {
				continue
			}
			var hits []Hit
			for i := range n {
				hits = append(hits, Hit{i * sixteenth, lead, 1, uint64(i)}, Hit{i * sixteenth, bass, 1, uint64(i)})
			}
			for i := range n { // and each alone
				at := n*sixteenth + i*3*sixteenth
				hits = append(hits, Hit{at, lead, 1, uint64(i + 100)}, Hit{at, bass, 1, uint64(i + 200)})
			}
			x, err := Render(Rate, 4*n*sixteenth, hits...)
			require.NoError(t, err)
			worst := math.Inf(-1)
			for stage := range stages {
				if testing.Short() && stage != Centre {
					continue
				}
				y := append([]float32{}, x...)
				mix := Full()
				mix.Stage = stage
				mix.Apply(y)
				m := NewMeter(Rate)
				m.Add(y)
				worst = max(worst, m.Peak())
				require.LessOrEqual(t, m.Peak(), highest, "%v with %v, %v", lead, bass, stage)
			}
			t.Logf("%v with %v: %.2f dBTP", lead, bass, worst)
		}
	}
}
