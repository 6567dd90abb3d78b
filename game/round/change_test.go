package round_test

import (
	"fmt"
	"math"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
)

// quizzed are the rhythms that may be asked for.
func quizzed(t testing.TB) []*rhythm.Cycle {
	t.Helper()
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	return all.Answers(true)
}

func levels() (all []riff.Level) {
	for l := riff.Bare; riff.Available(l); l++ {
		all = append(all, l)
	}
	return all
}

// changed is a round with a change from one rhythm to another.
func changed(t testing.TB, from, to *rhythm.Cycle, at, eights, bpm int, level riff.Level) *round.Changed {
	t.Helper()
	r, err := round.NewChanged(round.Change{From: from, To: to, At: at, Eights: eights, BPM: bpm, Level: level, Seed: 7})
	require.NoError(t, err)
	return r
}

// heard is where a hit is, on which drum, and whether it is low.
type heard struct {
	frame     int64
	bass, low bool
}

// hitsOf are the hits of a passage as a listener takes them: all strokes that are
// no dums count alike. Frames are counted from a time.
func hitsOf(p *round.Passage, from time.Duration) []heard {
	base := audio.Rate.Frame(from)
	var all []heard
	for _, h := range p.Hits(audio.Rate, 0) {
		if h.Frame >= base {
			bass := h.Voice == audio.BassDum || h.Voice == audio.BassTek
			all = append(all, heard{frame: h.Frame - base, bass: bass, low: h.Voice == audio.BassDum || h.Voice == audio.LeadDum})
		}
	}
	return all
}

// lacks is the first frame at which one of a's hits has no like among b's, within a
// frame of it: each is rounded from its own place.
func lacks(a, b []heard) int64 {
	first := int64(math.MaxInt64)
	for _, h := range a {
		if !slices.ContainsFunc(b, func(o heard) bool {
			return o.bass == h.bass && o.low == h.low && max(o.frame-h.frame, h.frame-o.frame) <= 1
		}) {
			first = min(first, h.frame)
		}
	}
	return first
}

// The first stroke that differs is the first at which what sounds is another than
// if the old rhythm had gone on: by brute force over the hits of both drums at Bare
// and Filled, and over those of the bass drum, outside declared breaks and rolls,
// where the lead drum's are left to chance.
func TestFirstDifference(t *testing.T) {
	all := quizzed(t)
	for _, from := range all {
		for _, to := range all {
			if from == to || from.Metre.Unit != to.Metre.Unit {
				continue
			}
			for _, level := range levels() {
				bpm := 61 + 29*len(from.ID)%90
				r := changed(t, from, to, 2, 5, bpm, level)
				at, ok := r.Changes()
				require.True(t, ok)
				differs, ok := r.Differs()
				require.True(t, ok)
				require.GreaterOrEqual(t, differs, at)
				requireFirst(t, r, at, differs, fmt.Sprintln(from.ID, to.ID, level, bpm))
				require.Less(t, differs-at, to.At(to.CyclesIn(1)*to.Steps(), bpm), "within the first eight")
			}
		}
	}
}

func requireFirst(t *testing.T, r *round.Changed, at, differs time.Duration, what string) {
	t.Helper()
	level, eights := r.Change.Level, 2*r.Change.Eights
	old, err := round.NewPassage(r.BPM(), min(level, riff.Filled), 7, true,
		round.Section{Rhythm: r.Change.From, Cycles: eights * r.Change.From.CyclesIn(1)})
	require.NoError(t, err)
	end := audio.Rate.Frame(r.Passage.End()) - audio.Rate.Frame(at)
	left := func(h heard) bool {
		now := at + audio.Rate.Duration(h.frame)
		return h.frame >= end || level > riff.Filled && (!h.bass || slices.ContainsFunc(r.Open(), func(s round.Span) bool {
			return now > s.From-50*time.Microsecond && now < s.To-50*time.Microsecond
		}))
	}
	is, was := slices.DeleteFunc(hitsOf(r.Passage, at), left), slices.DeleteFunc(hitsOf(old, at), left)
	want := min(lacks(is, was), lacks(was, is))
	require.Less(t, want, int64(math.MaxInt64), what)
	require.InDelta(t, want, audio.Rate.Frame(differs)-audio.Rate.Frame(at), 1, what)
}

// Where the new rhythm is not played, in a declared break or roll, nothing of it can
// be heard to differ: wahda and çiftetelli are alike up to 6, and a riff may break off
// before that.
func TestFirstDifferenceAfterABreak(t *testing.T) {
	from, to := supplied(t, "wahda"), supplied(t, "ciftetelli")
	late := 0
	for seed := range uint64(40) {
		r, err := round.NewChanged(round.Change{From: from, To: to, At: 3, Eights: 8, BPM: 100, Level: riff.Solo, Seed: seed})
		require.NoError(t, err)
		at, _ := r.Changes()
		differs, _ := r.Differs()
		if differs-at > 4*time.Second { // six counts and a half at most, unless there was a break
			late++
		}
		requireFirst(t, r, at, differs, fmt.Sprint(seed))
	}
	require.Positive(t, late)
}

// By hand, at 120 with two half counts of 250 ms to a count: after two eights and
// the count-in the change comes at 2 + 8 s.
func TestDiffersByHand(t *testing.T) {
	for _, c := range []struct {
		from, to string
		level    riff.Level
		after    time.Duration
	}{
		{"maqsum", "baladi", riff.Bare, 250 * ms},     // DT-TD-T- and DD-TD-T-: a dum for a tek on the & of 1
		{"baladi", "maqsum", riff.Bare, 250 * ms},     // and a tek for a dum
		{"maqsum", "saidi", riff.Bare, 750 * ms},      // DT-DD-T-: on the & of 2
		{"maqsum", "malfuf", riff.Bare, 250 * ms},     // D--T--T- twice as fast: no stroke on the & of 1, but before it none that is new
		{"malfuf", "maqsum", riff.Bare, 250 * ms},     // the other way round: a stroke too many there
		{"malfuf", "khaliji", riff.Bare, 375 * ms},    // D--D--T-: the fourth quarter of count 1 is low
		{"ciftetelli", "wahda", riff.Bare, 2500 * ms}, // alike until 6, where a dum is left out
	} {
		r := changed(t, supplied(t, c.from), supplied(t, c.to), 2, 4, 120, c.level)
		at, _ := r.Changes()
		require.Equal(t, 10*time.Second, at)
		differs, _ := r.Differs()
		require.InDelta(t, float64(c.after), float64(differs-at), float64(21*time.Microsecond), "%s %s", c.from, c.to)
	}
}

// Until the change both drums play what they would without one.
func TestNothingTellsBefore(t *testing.T) {
	for _, level := range levels() {
		for _, ids := range [][2]string{{"maqsum", "baladi"}, {"malfuf", "ayyub"}, {"karsilama", "roman-9"}} {
			from, to := supplied(t, ids[0]), supplied(t, ids[1])
			r := changed(t, from, to, 3, 6, 110, level)
			never := changed(t, from, nil, 0, 6, 110, level)
			at, _ := r.Changes()
			_, ok := never.Changes()
			require.False(t, ok)
			_, ok = never.Differs()
			require.False(t, ok)
			before := func(p *round.Passage) []struck {
				return slices.DeleteFunc(plain(p.Hits(audio.Rate, 0)), func(h struck) bool { return h.frame >= audio.Rate.Frame(at) })
			}
			require.Greater(t, len(before(r.Passage)), 30)
			require.ElementsMatch(t, before(r.Passage), before(never.Passage))
		}
	}
}

func TestPlacesOfChanges(t *testing.T) {
	for eights, want := range map[int][2]int{4: {1, 2}, 5: {2, 3}, 6: {2, 4}, 7: {2, 5}, 8: {2, 6}} {
		require.Equal(t, want, [2]int{round.FirstChange(eights), round.LastChange(eights)})
		require.GreaterOrEqual(t, 4*round.FirstChange(eights), eights, "not in the first quarter")
		require.Less(t, round.LastChange(eights), eights-1, "not in the last eight")
	}
}

func TestChangesRefused(t *testing.T) {
	good := round.Change{From: supplied(t, "maqsum"), To: supplied(t, "saidi"), At: 2, Eights: 4, BPM: 100}
	_, err := round.NewChanged(good)
	require.NoError(t, err)
	for want, spoil := range map[string]func(c *round.Change){
		"round: no rhythm": func(c *round.Change) { c.From = nil },
		"round: 39 beats a minute; allowed is 40 to 220":         func(c *round.Change) { c.BPM = 39 },
		"round: 3 eights; a change is asked in 4 to 8":           func(c *round.Change) { c.Eights = 3 },
		"round: 9 eights; a change is asked in 4 to 8":           func(c *round.Change) { c.Eights = 9 },
		"round: a change after 0 eights of 4; allowed is 1 to 2": func(c *round.Change) { c.At = 0 },
		"round: a change after 3 eights of 4; allowed is 1 to 2": func(c *round.Change) { c.At = 3 },
		"round: no change, after 2 eights":                       func(c *round.Change) { c.To = nil },
		"round: the change cannot be heard":                      func(c *round.Change) { c.To = c.From },
		"round: riff level Level(9) is not available":            func(c *round.Change) { c.Level = 9 },
	} {
		bad := good
		spoil(&bad)
		_, err := round.NewChanged(bad)
		require.EqualError(t, err, want)
	}
}

// The lead drum does not begin anew with the change: after it, it plays what it would
// have come to had it played the new rhythm from the start. (Its riff is the second
// section's, by its own seed.)
func TestRiffGoesOnOverTheChange(t *testing.T) {
	to := supplied(t, "saidi")
	for _, level := range levels()[riff.Ornamented:] {
		r := changed(t, supplied(t, "maqsum"), to, 3, 8, 100, level)
		whole, err := round.Riff(to, level, 7, 1, 0)
		require.NoError(t, err)
		want, err := whole.At(100).Cycles(3*to.CyclesIn(1), 5*to.CyclesIn(1))
		require.NoError(t, err)
		require.Equal(t, want, r.Played(1))
		anew, err := whole.At(100).Cycles(0, 5*to.CyclesIn(1))
		require.NoError(t, err)
		require.NotEqual(t, anew, r.Played(1))
	}
}
