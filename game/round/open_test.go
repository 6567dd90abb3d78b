package round_test

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// opened is a passage of maqsum at 120 with a declared span of a kind, from the
// first seed that has one in its first eight cycles, and what is played in it. A
// step lasts a quarter of a second.
func opened(t *testing.T, kind riff.Kind, countIn bool) (*round.Passage, riff.Part) {
	t.Helper()
	c := supplied(t, "maqsum")
	for seed := range uint64(100) {
		r, err := riff.New(c, riff.Solo, seed)
		require.NoError(t, err)
		part, err := r.Cycles(0, 8)
		require.NoError(t, err)
		if len(part.Open) == 1 && part.Open[0].Kind == kind {
			p, err := round.NewPassage(120, riff.Solo, 7, countIn, round.Section{Rhythm: c, Cycles: 8, Riff: r})
			require.NoError(t, err)
			return p, part
		}
	}
	require.Fail(t, "no such riff", kind)
	return nil, riff.Part{}
}

const maqsumStep = 250 * ms

// A declared break or roll is where its steps are, in sections and after a
// count-in alike; its stop is the last stroke of the bass drum in it.
func TestOpenSpans(t *testing.T) {
	for _, countIn := range []bool{true, false} {
		before := map[bool]time.Duration{true: 2 * time.Second}[countIn]
		for _, kind := range []riff.Kind{riff.Break, riff.Roll} {
			p, part := opened(t, kind, countIn)
			o := part.Open[0]
			stop := o.From
			for _, s := range part.Bass {
				if o.Contains(s.Step) {
					stop = s.Step
				}
			}
			at := func(step int) time.Duration { return before + time.Duration(step)*maqsumStep }
			require.Equal(t, []round.Span{{Kind: kind, From: at(o.From), Stop: at(stop), To: at(o.To)}}, p.Open())
		}
	}
	r := ready(t, supplied(t, "maqsum"), 120, 4)
	require.Empty(t, r.Open())
}

// None of the strokes of a declared break or roll is asked for, and all the others
// of the base are.
func TestNothingIsAskedInOpenSpans(t *testing.T) {
	for _, kind := range []riff.Kind{riff.Break, riff.Roll} {
		p, part := opened(t, kind, false)
		var want []time.Duration
		for cycle := range 8 {
			for _, step := range []int{0, 4} {
				if step += 8 * cycle; !part.Open[0].Contains(step) {
					want = append(want, time.Duration(step)*maqsumStep)
				}
			}
		}
		require.Less(t, len(want), 16)
		require.Equal(t, want, p.Strokes(rhythm.Stroke.Low))
	}
}

// A roll sounds as the drum room rolls it: many strokes of the fingers on the lead
// drum, from its first frame, growing, and none after its end.
func TestRollsSound(t *testing.T) {
	p, _ := opened(t, riff.Roll, true)
	o := p.Open()[0]
	const base = 1000
	from, to := base+audio.Rate.Frame(o.From), base+audio.Rate.Frame(o.To)
	var rolled []audio.Hit
	for _, h := range p.Hits(audio.Rate, base) {
		if h.Voice == audio.LeadRollTek || h.Voice == audio.LeadRollKa {
			rolled = append(rolled, h)
		} else if h.Frame >= from && h.Frame < to {
			require.Equal(t, struck{frame: from, voice: audio.BassDum}, struck{frame: h.Frame, voice: h.Voice})
		}
	}
	seconds := (o.To - o.From).Seconds()
	require.InDelta(t, 16*seconds, len(rolled), 1, "16 a second, an even number")
	require.Equal(t, from, rolled[0].Frame)
	require.Less(t, rolled[len(rolled)-1].Frame, to)
	require.Less(t, 2*rolled[0].Strength, rolled[len(rolled)-1].Strength)
	require.NoError(t, audio.NewStream(audio.Rate).Schedule(rolled...))
}

// A loop of passages of one cycle sounds like one passage of them all, but for the
// small variation of strokes; and each has other variations.
func TestCyclesInALoop(t *testing.T) {
	c := supplied(t, "maqsum")
	r, err := riff.New(c, riff.Solo, 5)
	require.NoError(t, err)
	passage := func(first, cycles int) *round.Passage {
		p, err := round.NewPassage(120, riff.Solo, 5, false, round.Section{Rhythm: c, Cycles: cycles, First: first, Riff: r})
		require.NoError(t, err)
		return p
	}
	const cycles = 8
	var joined []audio.Hit
	variations := map[uint64]bool{}
	for i := range cycles {
		hits := passage(i, 1).Hits(audio.Rate, int64(i)*2*int64(audio.Rate))
		joined = append(joined, hits...)
		for _, h := range hits {
			require.False(t, variations[h.Seed])
			variations[h.Seed] = true
		}
	}
	steady := func(hits []audio.Hit) []audio.Hit {
		var all []audio.Hit
		for _, h := range hits {
			if h.Voice != audio.LeadRollTek && h.Voice != audio.LeadRollKa {
				all = append(all, h)
			}
		}
		return all
	}
	requireHits(t, plain(steady(passage(0, cycles).Hits(audio.Rate, 0))), steady(joined))
}

// Above the rhythm's fastest tempo the passage plays what two hands can.
func TestPassageThinsWhatIsTooFast(t *testing.T) {
	c := supplied(t, "saidi")
	lead := func(bpm int) int {
		p, err := round.NewPassage(bpm, riff.Ornamented, 3, false, round.Section{Rhythm: c, Cycles: 8})
		require.NoError(t, err)
		return len(p.Hits(audio.Rate, 0))
	}
	require.Equal(t, lead(c.Tempo.Slow), lead(c.Tempo.Fast))
	require.Less(t, lead(round.MaxBPM), lead(c.Tempo.Fast))
}

func TestSectionsRiffIsOfItsRhythm(t *testing.T) {
	r, err := riff.New(supplied(t, "saidi"), riff.Solo, 1)
	require.NoError(t, err)
	_, err = round.NewPassage(100, riff.Solo, 1, false, round.Section{Rhythm: supplied(t, "maqsum"), Cycles: 1, Riff: r})
	require.EqualError(t, err, "round: a riff over sa'idi for maqsum")
}
