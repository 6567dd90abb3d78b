package diary_test

import (
	"bytes"
	"flag"
	"fmt"
	"math"
	"os"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/diary"
	"groundbeat/game/rhythm"
	"groundbeat/scoring"
	"groundbeat/scoring/history"
)

// finding gathers how an estimate did over many learners.
type finding struct {
	known, held  int
	sum, squares float64 // of value less truth
}

func (f *finding) add(e scoring.Estimate, truth float64) {
	if !e.Known {
		return
	}
	f.known++
	if !e.Excludes(truth) {
		f.held++
	}
	off := e.Value - truth
	f.sum, f.squares = f.sum+off, f.squares+off*off
}

func (f finding) bias() float64 { return f.sum / float64(f.known) }
func (f finding) sd() float64 {
	return math.Sqrt(max(0, f.squares/float64(f.known)-f.bias()*f.bias()))
}
func (f finding) share() float64 { return float64(f.held) / float64(f.known) }

// mean adds up what a mean is taken of.
type mean struct{ sum, n float64 }

func (m *mean) add(x float64) { m.sum, m.n = m.sum+x, m.n+1 }
func (m mean) value() float64 { return m.sum / m.n }
func latest(x []float64) (m mean) {
	for _, v := range x[max(0, len(x)-diary.LatestHeard):] {
		m.add(v)
	}
	return m
}

// truth is what a diary is to find of the rounds of one learner on one output.
type truth struct {
	said    map[[2]string]*mean // how likely it is that the second is said for the first
	spread  mean                // variance within rounds of maqsum
	hidden  map[string][]float64
	outputs map[string]float64 // bias
}

func truthOf(l *learner, all []made) truth {
	t := truth{said: map[[2]string]*mean{}, hidden: map[string][]float64{}, outputs: map[string]float64{}}
	for _, o := range l.outputs {
		t.outputs[o.name] = o.bias
	}
	for _, m := range all {
		if m.Output != "studio" {
			continue
		}
		if m.Answer != "" && m.likely != nil {
			t.told(m)
		}
		if m.Rhythm == "maqsum" && m.Kind == history.Dums && history.Right(m.Round) {
			t.spread.add(within(clockSD(float64(m.day)), len(m.Strokes)))
		}
		if m.Hide != nil {
			t.hidden[m.Kind] = append(t.hidden[m.Kind], m.hidden)
		}
	}
	return t
}

// told adds a round in which a rhythm was told.
func (t truth) told(m made) {
	played := m.Rhythm
	if m.To != "" {
		played = m.To
	}
	for _, name := range five {
		pair := [2]string{played, name}
		if t.said[pair] == nil {
			t.said[pair] = new(mean)
		}
		t.said[pair].add(m.likely[name])
	}
}

// worst is how likely the likeliest mix-up is.
func (t truth) worst() float64 {
	worst := 0.
	for pair, m := range t.said {
		if pair[0] != pair[1] {
			worst = max(worst, m.value())
		}
	}
	return worst
}

// study is how the figures of many learners did.
type study struct {
	found map[string]*finding
	worst int // learners whose worst mix-up is at least half as likely as the likeliest
	taps  map[string][]scoring.Estimate
	dums  map[string]*mean // share of all dums tapped, of all learners
}

func (s *study) add(name string, e scoring.Estimate, truth float64) {
	if s.found[name] == nil {
		s.found[name] = new(finding)
	}
	s.found[name].add(e, truth)
}

// addTaps keeps a share of dums until the true one is known, from all learners.
func (s *study) addTaps(a diary.Accuracy) {
	if s.dums[a.Rhythm] == nil {
		s.dums[a.Rhythm] = new(mean)
	}
	s.taps[a.Rhythm] = append(s.taps[a.Rhythm], a.All.Share)
	s.dums[a.Rhythm].sum += float64(a.All.Right)
	s.dums[a.Rhythm].n += float64(a.All.N)
}

// learn lets a learner practise and compares what a diary says with the truth.
func (s *study) learn(t *testing.T, seed uint64, cycles map[string]*rhythm.Cycle) {
	l := newLearner(seed, cycles)
	all := l.practise(30)
	b := book(t)
	for _, m := range all {
		b.Add(m.Round)
	}
	f, truth := b.Figures("studio"), truthOf(l, all)
	for _, a := range f.Accuracy {
		if a.Tapped {
			s.addTaps(a)
		} else {
			s.add("right", a.All.Share, truth.said[[2]string{a.Rhythm, a.Rhythm}].value())
		}
	}
	for _, x := range f.Fingers {
		switch x.Rhythm {
		case "maqsum":
			s.add("bias", x.Bias, truth.outputs["studio"])
			s.add("spread", x.Spread, math.Sqrt(truth.spread.value()))
		case "saidi":
			s.add("& of 2", x.Counts[1].Offset, truth.outputs["studio"]+rushed)
		}
	}
	for _, x := range b.Fingers("telephone") {
		s.add("bias, telephone", x.Bias, truth.outputs["telephone"])
	}
	for _, r := range f.Reach {
		s.add("hide, "+r.Kind, r.Now, latest(truth.hidden[r.Kind]).value())
	}
	require.NotEmpty(t, f.Mixed.Worst)
	w := f.Mixed.Worst[0]
	if 2*truth.said[[2]string{w.Played, w.Said}].value() >= truth.worst() {
		s.worst++
	}
}

// TestLearnerIsFound: what a diary of 30 days says of a made-up learner, against what she
// was made with: how far off it is on average, how far it scatters, and how often its
// interval holds. The bounds are those measured with 400 learners, rounded up.
//
// Hide is found a little too low where rhythms are named: names that are mixed up in any
// case look like a riff that is not heard through. Bias is drawn to 0 a little by rounds
// that were right by accident.
func TestLearnerIsFound(t *testing.T) {
	learners := 200
	if testing.Short() {
		learners = 25
	}
	s := study{found: map[string]*finding{}, taps: map[string][]scoring.Estimate{}, dums: map[string]*mean{}}
	for seed := range learners {
		s.learn(t, uint64(seed), supplied(t))
	}
	for id, all := range s.taps {
		for _, e := range all {
			s.add("dums tapped", e, s.dums[id].value())
		}
	}
	for _, c := range []struct {
		name           string
		bias, sd, held float64
	}{
		{"right", .005, .05, .96},
		{"dums tapped", .005, .075, .94},
		{"bias", .8, 3.5, .93}, // ms, and so are the next three
		{"bias, telephone", .8, 5.5, .94},
		{"& of 2", 1, 3.3, .94},
		{"spread", .4, 1.4, .93},
		{"hide, which", .025, .045, .90},
		{"hide, change", .03, .06, .90},
		{"hide, dums", .01, .04, .91},
	} {
		f := s.found[c.name]
		t.Logf("%-16s bias %+.4f, sd %.4f, interval holds in %.3f of %d", c.name, f.bias(), f.sd(), f.share(), f.known)
		// What a learner has of many rhythms is not independent: as if of one.
		slack := 4 / math.Sqrt(float64(learners))
		require.InDelta(t, 0, f.bias(), c.bias+c.sd*slack, c.name)
		require.Less(t, f.sd(), c.sd*(1+slack), c.name)
		require.Greater(t, f.share(), c.held-slack*math.Sqrt(c.held*(1-c.held)), c.name)
	}
	t.Logf("worst mix-up at least half as likely as the likeliest: %d of %d", s.worst, learners)
	require.Greater(t, s.worst, learners*9/10-2)
}

var update = flag.Bool("update", false, "write the goldens anew")

// TestLearnerGolden: all that a diary tells of one learner.
func TestLearnerGolden(t *testing.T) {
	const path = "testdata/learner.txt"
	b := book(t)
	for _, m := range newLearner(1, supplied(t)).practise(30) {
		b.Add(m.Round)
	}
	var text bytes.Buffer
	for _, output := range b.Outputs() {
		write(&text, b.Figures(output))
	}
	if *update {
		require.NoError(t, os.MkdirAll("testdata", 0o755))
		require.NoError(t, os.WriteFile(path, text.Bytes(), 0o644))
	}
	want, err := os.ReadFile(path)
	require.NoError(t, err)
	require.Equal(t, string(want), text.String())
}

// said is an estimate as text.
func said(e scoring.Estimate) string {
	if !e.Known {
		return fmt.Sprintf("unknown from %d, %d more needed", e.N, e.Missing())
	}
	return fmt.Sprintf("%.3f (%.3f to %.3f) from %d", e.Value, e.Low, e.High, e.N)
}

func write(w *bytes.Buffer, f diary.Figures) {
	fmt.Fprintf(w, "output %s: %d rounds on %d days\n", f.Output, f.Rounds, len(f.Practised))
	for _, a := range f.Accuracy {
		fmt.Fprintf(w, "\n%s, tapped %t: %d of %d, %s\n", a.Rhythm, a.Tapped, a.All.Right, a.All.N, said(a.All.Share))
		for _, s := range a.Spans {
			fmt.Fprintf(w, "  %s to %s: %d of %d, %s\n", s.From, s.To, s.Right, s.N, said(s.Share))
		}
		for _, l := range a.Levels {
			fmt.Fprintf(w, "  %s: %d of %d, %s\n", l.Riff, l.Right, l.N, said(l.Share))
		}
	}
	for _, x := range f.Fingers {
		fmt.Fprintf(w, "\nfingers in %s, %s to %s: %d rounds, %d taps, %d out, %d added\n", x.Rhythm, x.From, x.To, x.Rounds, x.Taps, x.Out, x.Added)
		fmt.Fprintf(w, "  bias %s\n  spread %s\n  %v\n", said(x.Bias), said(x.Spread), x.Bins)
		for _, c := range x.Counts {
			fmt.Fprintf(w, "  step %d: %s\n", c.Step, said(c.Offset))
		}
	}
	fmt.Fprintf(w, "\nmixed\n")
	for i, id := range f.Mixed.Rhythms {
		fmt.Fprintf(w, "  %-14s %v\n", id, f.Mixed.Said[i])
	}
	for _, m := range f.Mixed.Worst {
		fmt.Fprintf(w, "  %s said for %s: %s\n", m.Said, m.Played, said(m.Share))
	}
	for _, r := range f.Reach {
		fmt.Fprintf(w, "\nheard through, %s: %d rounds, now %s\n", r.Kind, r.N, said(r.Now))
		for _, s := range r.Spans {
			fmt.Fprintf(w, "  %s to %s: %s\n", s.From, s.To, said(s.Hide))
		}
	}
	last := f.Practised[0]
	fmt.Fprintf(w, "\nlast practised %s: %d rounds, %v\n\n", last.Day, last.Rounds, last.Kinds)
}
