package round_test

import (
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/scoring/history"
)

// A round that was kept, and is read back from its line, comes out as it was played, to
// the microsecond that its numbers are rounded to; but not for another rhythm, nor with
// riffs of another version.
func TestRecalled(t *testing.T) {
	for seed := range uint64(20) {
		r := carried(t, supplied(t, "saidi"), 100, 12, riff.Solo, seed+1)
		r.Begin()
		at := append(carrier{clock: 30, hand: 15, with: 25}.taps(r, rand.New(rand.NewPCG(seed, 7))), r.Strokes()[5]+200e6)
		for _, tap := range at {
			r.Tap(round.Tap{At: tap}, 0)
		}
		r.Hear(r.End()+round.Grace, 0)

		const base = 300_000 // frames
		h := history.Round{
			Kind: history.Carry, Rhythm: "saidi", BPM: 100, Riff: "solo", Eights: 12, Seed: seed + 1, RiffVersion: riff.Version,
			ID: "a", When: "2026-03-02T18:00:00Z", Epoch: 1, Rate: 48000, Window: float64(r.Within()) / 1e6,
		}
		for _, s := range r.Strokes() {
			h.Strokes = append(h.Strokes, seconds(base, s))
		}
		for _, tap := range r.Taps() {
			h.Taps = append(h.Taps, history.Tap{At: 1, Frame: heardAt(base, tap.At), By: "key"})
		}
		for _, k := range r.Kept() {
			h.Silences = append(h.Silences, history.Silence{From: seconds(base, r.At(k.From)), To: seconds(base, r.At(k.To)), First: k.First, Last: k.Last})
		}
		kept, err := history.New(h, r.Result())
		require.NoError(t, err)
		line, err := history.Format(kept)
		require.NoError(t, err)
		kept, err = history.Parse(line)
		require.NoError(t, err)

		again, err := round.Recalled(kept, supplied(t, "saidi"))
		require.NoError(t, err)
		require.NotEmpty(t, r.Spells())
		require.Len(t, again.Spells(), len(r.Spells()))
		for i, spell := range r.Spells() {
			require.Len(t, again.Spells()[i].Pairs, len(spell.Pairs))
			for j, p := range spell.Pairs {
				require.InDelta(t, p.Offset, again.Spells()[i].Pairs[j].Offset, 2000)
				require.Equal(t, p.Stroke, again.Spells()[i].Pairs[j].Stroke)
			}
		}

		_, err = round.Recalled(kept, supplied(t, "maqsum"))
		require.ErrorIs(t, err, round.ErrRecalled)
		kept.RiffVersion++
		_, err = round.Recalled(kept, supplied(t, "saidi"))
		require.ErrorIs(t, err, round.ErrRecalled)
	}
}
