package diaryview

import (
	"fmt"
	"math"
	"math/rand/v2"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/audio"
	"groundbeat/game/coach"
	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/round"
	"groundbeat/game/soundview"
	"groundbeat/scoring/history"
)

// A learner is an invented dancer who practises ten minutes a day, six days a week. What
// she practises is what package quiz chooses, and each round goes the way of a real one:
// through package round, package history's text, and the diary. All that is random comes
// from the seed. What is learnt changes from a beginning to an end as
//
//	x(n) = end + (begin − end) e^(−n/10)
//
// exponentially, as single learners do (Heathcote, Brown and Mewhort, The power law
// repealed, Psychonomic Bulletin & Review 7, 185–207, 2000). All numbers are chosen.
//
//   - Names: similarity decays exponentially with how unlike two rhythms are, and a name
//     is chosen among those offered in proportion to it (Shepard, Stimulus and response
//     generalization, Psychometrika 22, 325–345, 1957; Luce, Detection and recognition,
//     in Handbook of Mathematical Psychology I, 1963). Unlike is [rhythm.Distance]. The
//     sensitivity to two rhythms grows with each round in which both were offered.
//   - Hide: the base is heard through a riff with the probability of a logistic function
//     of how far it is hidden (see package threshold). The threshold rises by the day.
//     Who does not hear it guesses, or taps the pattern from any moment of the cycle on.
//   - Tempo: likewise, where between slow, usual and fast she keeps up.
//   - Taps: a clock, a hand, and a part of each asynchrony that is corrected (Vorberg and
//     Wing, Modeling variability and dependence in timing, 1996):
//     A′ = (1−α) A + T + M′ − M. The clock becomes steadier by the day. Each round has a
//     bias of its own about hers; the dum on the & of 2 in sa'idi is rushed.
//   - Dums are left out more often in some rounds than in others (the logit is normally
//     distributed).
//   - The lower rungs: each day fewer answers are guesses.
type learner struct {
	*rand.Rand
	cycles   map[string]*rhythm.Cycle
	pool     []*rhythm.Cycle
	together map[[2]string]int // in how many rounds two names were offered both
	book     *diary.Book
	rounds   []history.Round
	riffs    coach.Riffs
	days     [][]lived // by day; none on a day off
}

// lived is a round of a practice, and how it was to come out.
type lived struct {
	coach.Step
	day      int
	kept     history.Round
	hidden   float64            // her threshold of hide on that day
	likely   map[string]float64 // how likely each name was to be said; of rounds of names
	variance float64            // ms², expected within a round whose dums are tapped
}

const (
	theirOutput = "studio"
	invented    = Invented
	lean        = -14. // ms, her bias
	wander      = 5.   // ms, from round to round
	rushed      = -9.  // ms, the & of 2 in sa'idi
	measured    = 12 * time.Millisecond
	gradual     = .06 // β of hearing through
	outOfStep   = 15. // β of keeping up, in parts of the way from slow to usual tempo
	lapses      = .03
	correction  = .4 // α
	motor       = 8. // ms
)

// grown returns what is learnt after n days, or rounds.
func grown(begin, end, n float64) float64 { return end + (begin-end)*math.Exp(-n/10) }

func sensitivity(together int) float64 { return grown(3, 14, float64(together)) }
func hideNamed(day int) float64        { return grown(.30, .55, float64(day)) }
func hideTapped(day int) float64       { return grown(.30, .55, float64(day)) }
func keepsUp(day int) float64          { return grown(80, 190, float64(day)) } // 100 is the usual tempo
func clockSD(day int) float64          { return grown(28, 16, float64(day)) }  // ms
func guesses(day int) float64          { return grown(.35, .03, float64(day)) }
func leaves(day int) float64           { return grown(-2.6, -3.6, float64(day)) } // logit

func logistic(x float64) float64 { return 1 / (1 + math.Exp(-x)) }

func newLearner(t testing.TB, seed uint64) *learner {
	l := &learner{
		Rand: rand.New(rand.NewPCG(seed, 30)), cycles: map[string]*rhythm.Cycle{}, together: map[[2]string]int{},
	}
	for _, c := range everyRhythm(t) {
		l.cycles[c.ID] = c
		if c.Quiz && !c.Odd() {
			l.pool = append(l.pool, c)
		}
	}
	l.book = diary.New(l.cycle)
	return l
}

func (l *learner) cycle(id string) *rhythm.Cycle { return l.cycles[id] }

// theirDay is the date of a day, from 0: a Monday.
func theirDay(day int) time.Time {
	return time.Date(2026, 3, 2+day, 18, 0, 0, 0, time.FixedZone("", 3600))
}

// latestRounds is how many rounds the next practice rests on, as in the program.
const latestRounds = 400

// knows is what is known of her on a day before she practises.
func (l *learner) knows(day int) coach.Known {
	return coach.Known{
		Rounds: l.rounds[max(0, len(l.rounds)-latestRounds):],
		Met:    l.book.Met(theirOutput), Mixed: l.book.Mixed(theirOutput),
		Today: theirDay(day).Format(time.DateOnly), Cycles: l.cycle, Riffs: &l.riffs,
	}
}

// practise lets her practise so many days.
func (l *learner) practise(t testing.TB, days int) { l.practiseFrom(t, 0, days) }

// practiseFrom lets her practise so many days from one on.
func (l *learner) practiseFrom(t testing.TB, from, days int) {
	for day := from; day < from+days; day++ {
		var of []lived
		if day%7 != 6 {
			at := theirDay(day)
			for n, s := range l.knows(day).Practice(10, l.pool, l.Uint64()) {
				at = at.Add(time.Duration(s.Seconds) * time.Second)
				of = append(of, l.plays(t, day, n, s, at))
			}
		}
		l.days = append(l.days, of)
	}
}

// plays plays a round, which ends at a time, and keeps it.
func (l *learner) plays(t testing.TB, day, n int, s coach.Step, at time.Time) lived {
	p := lived{Step: s, day: day, kept: history.Round{
		Kind: s.Kind, Riff: s.Level.String(), ID: fmt.Sprintf("invented-%d-%d", day+1, n+1), When: at.Format(time.RFC3339),
		Output: theirOutput, Epoch: 1, Rate: int(audio.Rate), Player: invented,
	}}
	if s.Kind == history.Dums {
		l.taps(t, &p)
	} else {
		l.answers(t, &p)
	}
	line, err := history.Format(p.kept)
	require.NoError(t, err)
	p.kept, err = history.Parse(line)
	require.NoError(t, err)
	l.book.Add(p.kept)
	l.rounds = append(l.rounds, p.kept)
	return p
}

// hears notes how far a riff hides the base, and returns how likely it is heard.
func (p *lived) hears(c *rhythm.Cycle, played riff.Part, threshold float64) float64 {
	hide := riff.Hide(c, played, p.kept.BPM)
	if p.Level >= riff.Filled {
		p.kept.Hide = &hide
	}
	if p.Level >= riff.Ornamented {
		p.kept.RiffVersion, p.kept.HideAsked = riff.Version, p.Hide
	}
	p.hidden = threshold
	return (1 - lapses) * logistic((threshold-hide)/gradual)
}

// taps taps the dums.
func (l *learner) taps(t testing.TB, p *lived) {
	c, k := l.cycles[p.Rhythms[0]], &p.kept
	r, err := round.New(round.Setting{
		Kind: round.Dums, Rhythm: c, BPM: p.BPM, Eights: p.Eights, Level: p.Level, Hide: p.Hide, Seed: p.Seed,
	})
	require.NoError(t, err)
	k.Rhythm, k.BPM, k.Eights, k.Seed, k.Window = c.ID, p.BPM, p.Eights, p.Seed, soundview.InMs(r.Within())
	r.Begin()
	lost := time.Duration(0)
	if heard := p.hears(c, r.Played(0), hideTapped(p.day)); l.Float64() >= heard*logistic((keepsUp(p.day)-tempoOf(c, p.BPM))/outOfStep) {
		lost = time.Duration(l.Float64() * float64(c.Length(p.BPM)))
	}
	p.variance = within(clockSD(p.day), len(r.Strokes()))
	for mark, at := range l.tapped(r, p.day) {
		r.Tap(round.Tap{At: at + lost, Mark: mark}, measured)
	}
	r.Hear(time.Hour, measured)
	const base = 60 * int64(audio.Rate)
	for _, s := range r.Strokes() {
		k.Strokes = append(k.Strokes, float64(base+audio.Rate.Frame(s))/float64(audio.Rate))
	}
	for _, tap := range r.Taps() {
		frame := float64(base) + tap.At.Seconds()*float64(audio.Rate)
		k.Taps = append(k.Taps, history.Tap{At: 1000 * frame / float64(audio.Rate), Frame: frame, By: "key"})
	}
	*k, err = history.New(*k, r.Result())
	require.NoError(t, err)
}

// tempoOf is where a tempo lies between slow (0), usual (100) and fast (200).
func tempoOf(c *rhythm.Cycle, bpm int) float64 {
	if bpm < c.Tempo.Usual {
		return 100 * float64(bpm-c.Tempo.Slow) / float64(c.Tempo.Usual-c.Tempo.Slow)
	}
	return 100 + 100*float64(bpm-c.Tempo.Usual)/float64(c.Tempo.Fast-c.Tempo.Usual)
}

// tapped are the times of her taps on the dums of a round, to the microsecond.
func (l *learner) tapped(r *round.Round, day int) []time.Duration {
	out := logistic(leaves(day) + .8*l.NormFloat64())
	bias, asynchrony, hand := lean+wander*l.NormFloat64(), math.Sqrt(variance(clockSD(day)))*l.NormFloat64(), motor*l.NormFloat64()
	var all []time.Duration
	for i, at := range r.Strokes() {
		next := motor * l.NormFloat64()
		asynchrony = (1-correction)*asynchrony + clockSD(day)*l.NormFloat64() + next - hand
		hand = next
		ms := bias + asynchrony
		if c := r.Setting.Rhythm; c.ID == "saidi" && r.Steps()[i]%c.Steps() == 3 {
			ms += rushed
		}
		if l.Float64() >= out {
			all = append(all, at+measured+time.Duration(math.Round(1000*ms))*time.Microsecond)
		}
	}
	return all
}

// variance is that of asynchronies, ms², at a deviation of the clock: of
// A′ = (1−α) A + T + M′ − M it is (T² + 2αM²)/(1−(1−α)²), and the covariance of
// neighbours (1−α) var − M², each further one (1−α) times that.
func variance(clock float64) float64 {
	return (clock*clock + 2*correction*motor*motor) / (1 - (1-correction)*(1-correction))
}

// within is the variance expected within a round of n taps.
func within(clock float64, n int) float64 {
	v := variance(clock)
	var alike float64
	for k := 1; k < n; k++ {
		alike += float64(n-k) * math.Pow(1-correction, float64(k-1)) * ((1-correction)*v - motor*motor)
	}
	return v - 2*alike/float64(n*(n-1))
}

// answers answers a question: of a rhythm by its name, or one of the lower rungs.
func (l *learner) answers(t testing.TB, p *lived) {
	q := l.question(t, p.Step)
	cycles, limit := q.Cycles(), time.Duration(0)
	if q.Ask == quiz.Which {
		limit = time.Duration(q.Eights) * 8 * time.Minute / 100 // an eight lasts as long whatever the tempo
		cycles += int(limit/q.Rhythm.Length(q.BPM)) + 1
	}
	var sections []round.Section
	for i, c := range []*rhythm.Cycle{q.Rhythm, q.Other} {
		if c != nil {
			played, err := round.Riff(c, q.Level, q.Seed, i, p.Hide)
			require.NoError(t, err)
			sections = append(sections, round.Section{Rhythm: c, Cycles: cycles, Riff: played})
		}
	}
	passage, err := round.NewPassage(q.BPM, q.Level, q.Seed, q.Ask == quiz.HowMany || q.Ask == quiz.Same, sections...)
	require.NoError(t, err)
	r, k := round.NewAnswered(passage, limit), &p.kept
	k.Rhythm, k.BPM, k.Eights, k.Seed = q.Rhythm.ID, q.BPM, q.Eights, q.Seed
	for _, c := range q.Choices {
		k.Choices = append(k.Choices, c.ID)
	}
	r.Begin()
	at := r.Start() + time.Duration(2000+l.IntN(6000))*time.Millisecond
	r.Hear(at)
	require.True(t, r.Answer(l.says(p, q, r.Played(0)), at))
	answer, took := r.Given()
	k.Answer, k.Right, k.Took = answer, answer == q.Right, new(soundview.InMs(took))
	k.Heard = float64(min(took, r.End()-r.Start())) / float64(q.Rhythm.Length(q.BPM))
	*k, err = history.NewAnswered(*k)
	require.NoError(t, err)
}

// question is that of a step, as a link with the step's seed asks it.
func (l *learner) question(t testing.TB, s coach.Step) quiz.Question {
	ask := quiz.Ask(s.Kind)
	if s.Kind == history.Which {
		ask = quiz.Which
	}
	var from []*rhythm.Cycle
	for _, id := range s.Rhythms {
		from = append(from, l.cycles[id])
	}
	q, err := quiz.Next(ask, from, min(max(len(from), quiz.MinAnswers), quiz.MaxAnswers), s.BPM, s.Level, s.Seed)
	require.NoError(t, err)
	switch ask {
	case quiz.Which:
		q.Eights = s.Eights
	case quiz.Same:
		q.Eights = max(1, s.Eights/2)
	}
	return q
}

// says gives an answer, and notes how likely each name was.
func (l *learner) says(p *lived, q quiz.Question, played riff.Part) string {
	if q.Ask != quiz.Which {
		if l.Float64() < guesses(p.day) {
			return q.Choices[l.IntN(len(q.Choices))].ID
		}
		return q.Right
	}
	heard, sum := p.hears(q.Rhythm, played, hideNamed(p.day)), 0.
	p.likely = map[string]float64{}
	for _, c := range q.Choices {
		apart := rhythm.Distance(rhythm.CommonPulse(q.Rhythm.Base(), c.Rhythm.Base()))
		p.likely[c.ID] = math.Exp(-sensitivity(l.together[namesOf(q.Right, c.ID)]) * apart)
		sum += p.likely[c.ID]
	}
	name, left := q.Choices[0].ID, l.Float64()
	for i, c := range q.Choices {
		p.likely[c.ID] = heard*p.likely[c.ID]/sum + (1-heard)/float64(len(q.Choices))
		if left >= 0 && left < p.likely[c.ID] {
			name = c.ID
		}
		left -= p.likely[c.ID]
		for _, o := range q.Choices[:i] {
			l.together[namesOf(c.ID, o.ID)]++
		}
	}
	return name
}

// namesOf are two names in order.
func namesOf(a, b string) [2]string { return [2]string{min(a, b), max(a, b)} }
