package diary_test

import (
	"fmt"
	"math"
	"math/rand/v2"
	"time"

	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// A learner is a made-up player who practises some days. All that is random comes from
// the seed. What is practised changes as
//
//	x(day) = end + (begin − end) e^(−day/10)
//
// exponentially, as single learners do (Heathcote, Brown and Mewhort, The power law
// repealed, Psychonomic Bulletin & Review 7, 185–207, 2000). All numbers are chosen.
//
//   - Names: similarity decays exponentially with how unlike two rhythms are, and a name
//     is chosen among those offered in proportion to it (Shepard, Stimulus and response
//     generalization, Psychometrika 22, 325–345, 1957; Luce, Detection and recognition,
//     in Handbook of Mathematical Psychology I, 1963). Unlike is [rhythm.Distance]. The
//     sensitivity grows.
//   - Hide: the base is heard through a riff with the probability of a logistic function
//     of how far it is hidden (see package threshold). The threshold rises. Who does not
//     hear it guesses, or taps the pattern from any moment of the cycle on.
//   - Taps: a clock, a hand, and a part of each asynchrony that is corrected (Vorberg and
//     Wing, Modeling variability and dependence in timing, 1996):
//     A′ = (1−α) A + T + M′ − M. The clock becomes steadier. Each round has a bias of its
//     own about that of the output; the dum on the & of 2 in sa'idi is rushed.
//   - Dums are left out more often in some rounds than in others (the logit is normally
//     distributed).
type learner struct {
	*rand.Rand
	cycles  map[string]*rhythm.Cycle
	outputs []learnt
}

// learnt is an output, how much of the practice is on it, and how the learner taps there.
type learnt struct {
	name  string
	odds  float64
	bias  float64 // ms, less the set-up
	setup float64 // ms
}

const (
	gradual    = .06 // β of hearing through
	lapses     = .03
	correction = .4  // α
	motor      = 8.  // ms
	wander     = 5.  // ms, from round to round
	rushed     = -9. // ms, the & of 2 in sa'idi
)

// grown returns what is practised on a day, from 0.
func grown(begin, end, day float64) float64 { return end + (begin-end)*math.Exp(-day/10) }

func sensitivity(day float64) float64 { return grown(4, 9, day) }
func hideNamed(day float64) float64   { return grown(.35, .6, day) }
func hideTapped(day float64) float64  { return grown(.45, .7, day) }
func clockSD(day float64) float64     { return grown(28, 16, day) } // ms

// made is a finished round, and how it was to come out.
type made struct {
	history.Round
	hidden float64            // the learner's threshold
	likely map[string]float64 // how likely each name is to be said, if one is
	day    int
}

// five are what the learner practises.
var five = []string{"ciftetelli", "baladi", "saidi", "maqsum", "masmudi-kabir"}

func newLearner(seed uint64, cycles map[string]*rhythm.Cycle) *learner {
	return &learner{
		Rand: rand.New(rand.NewPCG(seed, 30)), cycles: cycles,
		outputs: []learnt{{name: "studio", odds: .75, bias: -14, setup: 12}, {name: "telephone", odds: .25, bias: 6, setup: 180}},
	}
}

// practise returns the rounds of some days, in order.
func (l *learner) practise(days int) []made {
	var all []made
	for day := range days {
		if day%7 == 6 { // a day off
			continue
		}
		var kinds []string
		for kind, n := range map[string]int{
			history.Which: 12, history.Dums: 7, history.Change: 5, history.Same: 2, history.HowMany: 1, history.Stroke: 1, history.Stop: 1,
		} {
			for range n {
				kinds = append(kinds, kind)
			}
		}
		inOrder(kinds)
		l.Shuffle(len(kinds), func(i, j int) { kinds[i], kinds[j] = kinds[j], kinds[i] })
		for i, kind := range kinds {
			all = append(all, l.round(kind, day, i))
		}
	}
	return all
}

// round plays the nth round of a day.
func (l *learner) round(kind string, day, n int) made {
	out := l.outputs[0]
	if l.Float64() < l.outputs[1].odds {
		out = l.outputs[1]
	}
	c := l.cycles[five[l.IntN(len(five))]]
	when := time.Date(2026, 3, 2+day, 18, 0, 30*n, 0, time.FixedZone("", 3600))
	m := made{day: day, Round: history.Round{
		Kind: kind, Rhythm: c.ID, BPM: c.Tempo.Usual, Riff: "filled", Eights: 4, Seed: l.Uint64N(1 << 40),
		ID: fmt.Sprintf("d%dn%d", day, n), When: when.Format(time.RFC3339), Output: out.name, Epoch: 1, Rate: 48000,
	}}
	if l.Float64() < .6 && kind != history.Stroke && kind != history.HowMany && kind != history.Stop {
		m.Riff, m.RiffVersion = "riffing", 1
	}
	switch kind {
	case history.Dums, history.Stop:
		l.tap(&m, c, out)
	case history.Change:
		l.change(&m, c)
	default:
		l.answer(&m, c)
	}
	return m
}

// hears lets a riff hide the base about where it is just heard, and returns how likely
// it is heard.
func (l *learner) hears(m *made, threshold float64) float64 {
	m.hidden = threshold
	if m.Riff != "riffing" {
		return 1 - lapses
	}
	hide := math.Round(1000*min(1, max(0, threshold+.15*l.NormFloat64()))) / 1000
	m.Hide = &hide
	return (1 - lapses) / (1 + math.Exp((hide-threshold)/gradual))
}

// choices are a rhythm and so many others.
func (l *learner) choices(right string, n int) []string {
	all := []string{right}
	for _, i := range l.Perm(len(five)) {
		if five[i] != right && len(all) < n {
			all = append(all, five[i])
		}
	}
	l.Shuffle(n, func(i, j int) { all[i], all[j] = all[j], all[i] })
	return all
}

// likely returns how likely each choice is said for a rhythm that is heard.
func (l *learner) likely(played string, choices []string, day float64) []float64 {
	p, sum := make([]float64, len(choices)), 0.
	for i, c := range choices {
		p[i] = math.Exp(-sensitivity(day) * rhythm.Distance(rhythm.CommonPulse(l.cycles[played].Base(), l.cycles[c].Base())))
		sum += p[i]
	}
	for i := range p {
		p[i] /= sum
	}
	return p
}

// says names what is played, and notes how likely each name was.
func (l *learner) says(m *made, played string, heard float64) string {
	m.likely = map[string]float64{}
	name, left := m.Choices[0], l.Float64()
	for i, p := range l.likely(played, m.Choices, float64(m.day)) {
		p = heard*p + (1-heard)/float64(len(m.Choices))
		m.likely[m.Choices[i]] = p
		if left >= 0 && left < p {
			name = m.Choices[i]
		}
		left -= p
	}
	return name
}

func (l *learner) answer(m *made, c *rhythm.Cycle) {
	heard := l.hears(m, hideNamed(float64(m.day)))
	took := math.Round(2000 + 6000*l.Float64())
	m.Took, m.Heard = &took, 2
	switch m.Kind {
	case history.Which:
		m.Choices = l.choices(c.ID, 3)
		m.Answer = l.says(m, c.ID, heard)
		m.Right = m.Answer == c.ID
	case history.Stroke:
		m.Rhythm, m.Choices = "", []string{"dum", "tek"}
	case history.Same:
		m.Choices = []string{"same", "different"}
	case history.HowMany:
		m.Choices = []string{"1", "2", "3", "4"}
	}
	if m.Kind != history.Which {
		m.Answer, m.Right = m.Choices[l.IntN(len(m.Choices))], l.Float64() < heard+(1-heard)/float64(len(m.Choices))
	}
	m.Round = must(history.NewAnswered(m.Round))
}

// change becomes another rhythm, which is heard late or not at all.
func (l *learner) change(m *made, c *rhythm.Cycle) {
	heard := l.hears(m, hideNamed(float64(m.day)))
	m.Choices = l.choices(c.ID, 4)
	m.Choices = without(m.Choices, c.ID)
	m.To, m.After = m.Choices[0], 2
	at := 20.
	m.Changes, m.Strokes = &at, []float64{20.5}
	name := l.says(m, m.To, 1)
	if press := l.Float64(); press < heard+(1-heard)/2 {
		if press >= heard { // unsure, and pressed all the same
			name = m.Choices[l.IntN(len(m.Choices))]
			for _, c := range m.Choices {
				m.likely[c] = 1 / float64(len(m.Choices))
			}
		}
		late := math.Round(400 + 600*l.Float64())
		frame := (20.5 + late/1000) * 48000
		m.Taps = []history.Tap{{At: 1000, Frame: frame, Offset: &late, Stroke: new(0), By: "key"}}
		m.Answer, m.Right = name, name == m.To
	}
	m.Round = must(history.NewChange(m.Round))
}
