package round_test

import (
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"
	"gonum.org/v1/gonum/stat"

	"groundbeat/game/riff"
	"groundbeat/game/round"
	scored "groundbeat/scoring/stat"
)

// carrier is a player, made up, who carries on as Wing and Kristofferson's model says
// (Response delays and the timing of discrete motor responses, Perception &
// Psychophysics 14, 5–12, 1973): her clock gives intervals, and each tap comes a delay
// of the hand after it. With the drums she taps about them.
type carrier struct {
	rhythm      string
	bpm, rounds int     // rounds of 32 eights, ten of them silent
	clock, hand float64 // standard deviations in ms; clock for the root mean square interval
	slower      float64 // of her own tempo
	with        float64 // standard deviation with the drums, ms
}

// taps are the times of her taps on the strokes of a round.
func (p carrier) taps(r *round.Carried, chance *rand.Rand) []time.Duration {
	strokes, steps := r.Strokes(), r.Steps()
	reference := p.reference(r)
	taps := make([]time.Duration, len(strokes))
	silence, hers := r.Silences(), 0. // her clock, less the drums', in ms
	for i, at := range strokes {
		for len(silence) > 0 && steps[i] > silence[0].To {
			silence = silence[1:]
		}
		off := p.with * chance.NormFloat64()
		switch {
		case len(silence) == 0 || steps[i] < silence[0].From:
		case steps[i-1] < silence[0].From: // the first dum of it
			hers = off
			off += p.hand * chance.NormFloat64()
		case steps[i] <= silence[0].To: // and the 1 after it
			gap := float64(at-strokes[i-1]) / 1e6
			hers += p.slower*gap + p.clock*gap/reference*chance.NormFloat64()
			off = hers + p.hand*chance.NormFloat64()
		}
		taps[i] = at + time.Duration(off*1e6)
	}
	return taps
}

// reference is the root mean square of the intervals of a silence, in ms.
func (p carrier) reference(r *round.Carried) float64 {
	var squares, n float64
	s := r.Silences()[0]
	for i, step := range r.Steps() {
		if step > s.From && step <= s.To && r.Steps()[i-1] >= s.From {
			squares, n = squares+math.Pow(float64(r.Strokes()[i]-r.Strokes()[i-1])/1e6, 2), n+1
		}
	}
	return math.Sqrt(squares / n)
}

// plays some rounds and returns what is told of them.
func (p carrier) plays(t *testing.T, seed uint64) (told scored.Carry, back []float64) {
	chance := rand.New(rand.NewPCG(seed, 1973))
	var spells []scored.Spell
	for n := range uint64(p.rounds) {
		r := carried(t, supplied(t, p.rhythm), p.bpm, round.MaxEights, riff.Bare, 100*seed+n)
		r.Begin()
		for _, at := range p.taps(r, chance) {
			r.Tap(round.Tap{At: at}, 0)
		}
		r.Hear(time.Hour, 0)
		spells = append(spells, r.Spells()...)
		for _, k := range r.Kept() {
			if k.Back.Tapped {
				back = append(back, float64(k.Back.Offset)/1e6)
			}
		}
	}
	return scored.Carried(spells), back
}

// Players of known clock and hand, put through the rounds themselves, are told so: of
// those rounds in which clock and hand could be told apart, the root mean square of
// the deviations found lies within 8 % or 1.5 ms, and chance, of the true one; her
// tempo within 0.2 %; and the intervals hold the true deviations in 88 of 100 at least.
// With one round alone it is often too early: one tap left out, or one that may have
// answered the drums, and there are fewer than 40 intervals.
func TestClockAndHandRecovered(t *testing.T) {
	runs := uint64(200)
	if testing.Short() {
		runs = 40
	}
	t.Log("rhythm          at rounds  clock      found  held   hand      found  held  tempo   found  back   told")
	for _, c := range []struct {
		carrier
		told float64 // share of the runs in which clock and hand are told, at least
	}{
		{carrier{rhythm: "maqsum", bpm: 110, rounds: 1, clock: 25, hand: 12, with: 20}, 0.25},
		{carrier{rhythm: "maqsum", bpm: 110, rounds: 4, clock: 25, hand: 12, with: 20}, 0.75},
		{carrier{rhythm: "maqsum", bpm: 110, rounds: 8, clock: 25, hand: 12, with: 20, slower: 0.02}, 0.85},
		{carrier{rhythm: "maqsum", bpm: 80, rounds: 8, clock: 30, hand: 15, with: 20, slower: -0.02}, 0.85},
		{carrier{rhythm: "saidi", bpm: 100, rounds: 3, clock: 20, hand: 10, with: 25}, 0.85},
		{carrier{rhythm: "baladi", bpm: 90, rounds: 6, clock: 25, hand: 10, with: 20, slower: 0.01}, 0.8},
		{carrier{rhythm: "malfuf", bpm: 130, rounds: 4, clock: 20, hand: 12, with: 15}, 0.75},
		{carrier{rhythm: "masmudi-kabir", bpm: 90, rounds: 6, clock: 30, hand: 15, with: 25}, 0.1}, // three intervals tell little
	} {
		c.recovered(t, runs, c.told)
	}
}

func (p carrier) recovered(t *testing.T, runs uint64, least float64) {
	var clocks, hands, tempi, backs []float64
	told, clockHeld, handHeld := 0., 0., 0.
	for seed := range runs {
		c, back := p.plays(t, seed)
		backs, tempi = append(backs, back...), append(tempi, 100*c.Slower.Value)
		if c.Fault != scored.Holds {
			continue
		}
		told++
		clocks, hands = append(clocks, c.Clock.Value), append(hands, c.Motor.Value)
		if !c.Clock.Excludes(p.clock) {
			clockHeld++
		}
		if !c.Motor.Excludes(p.hand) {
			handHeld++
		}
	}
	clock, clockSD := rootMeanSquare(clocks)
	hand, handSD := rootMeanSquare(hands)
	tempo, back := stat.Mean(tempi, nil), stat.Mean(backs, nil)
	t.Logf("%-14s %3d %6d  %4.0f %5.1f ± %4.1f  %.2f  %4.0f %5.1f ± %4.1f  %.2f  %+4.1f  %+6.2f  %+5.0f  %5.2f", p.rhythm, p.bpm, p.rounds,
		p.clock, clock, clockSD, clockHeld/told, p.hand, hand, handSD, handHeld/told, 100*p.slower, tempo, back, told/float64(runs))
	chance := 3 / math.Sqrt(told) // three standard errors of the means
	require.InDelta(t, p.clock, clock, max(0.08*p.clock, 1.5)+chance*clockSD, p.rhythm)
	require.InDelta(t, p.hand, hand, max(0.08*p.hand, 1.5)+chance*handSD, p.rhythm)
	require.InDelta(t, 100*p.slower, tempo, 0.2, p.rhythm)
	require.Greater(t, told/float64(runs), least, p.rhythm)
	require.Greater(t, clockHeld/told, 0.88, p.rhythm)
	require.Greater(t, handHeld/told, 0.88, p.rhythm)
}

// rootMeanSquare is that of some values, and their standard deviation.
func rootMeanSquare(x []float64) (root, deviation float64) {
	mean, deviation := stat.MeanStdDev(x, nil)
	return math.Hypot(mean, deviation), deviation
}

// The spread with the drums, and that about her own tempo: of a player without a
// clock's share the latter is the hand's alone.
func TestSpreadsRecovered(t *testing.T) {
	p := carrier{rhythm: "saidi", bpm: 100, rounds: 1, hand: 15, with: 25, slower: 0.015}
	var with, alone []float64
	for seed := range uint64(60) {
		chance := rand.New(rand.NewPCG(seed, 25))
		r := carried(t, supplied(t, p.rhythm), p.bpm, round.MaxEights, riff.Bare, seed)
		r.Begin()
		for _, at := range p.taps(r, chance) {
			r.Tap(round.Tap{At: at}, 0)
		}
		r.Hear(time.Hour, 0)
		w, a := r.Spreads()
		require.True(t, w.Known && a.Known)
		with, alone = append(with, w.Value), append(alone, a.Value)
	}
	t.Logf("with the drums %.1f of 25 ms, alone %.1f of 15 ms", stat.Mean(with, nil), stat.Mean(alone, nil))
	require.InDelta(t, 25, stat.Mean(with, nil), 1)
	require.InDelta(t, 15, stat.Mean(alone, nil), 1)
}
