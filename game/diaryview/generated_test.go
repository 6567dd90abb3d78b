package diaryview

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"groundbeat/game/diary"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

// A maker makes diaries of any kind, each from its seed: of nothing known, of everything
// known, and of all between.
type maker struct {
	*rand.Rand
	cycles []*rhythm.Cycle // in any order
	sure   float64         // how likely there is enough of something, 0 to 1
}

// Diaries that a property is tried on: of sentences, and of whole screens, which take
// longer to make.
const someSentences, someScreens = 40, 15

// everyDiary tries a property of sentences on many diaries.
func everyDiary(t *testing.T, holds func(*testing.T, *Diary)) { tryDiaries(t, someSentences, holds) }

// everyScreen tries a property of whole screens on some of them.
func everyScreen(t *testing.T, holds func(*testing.T, *Diary)) { tryDiaries(t, someScreens, holds) }

func tryDiaries(t *testing.T, n uint64, holds func(*testing.T, *Diary)) {
	for seed := range n {
		t.Run(fmt.Sprint(seed), func(t *testing.T) { holds(t, makeDiary(t, seed)) })
	}
}

func makeDiary(t testing.TB, seed uint64) *Diary {
	m := maker{Rand: rand.New(rand.NewPCG(seed, 77)), cycles: slices.Clone(everyRhythm(t)), sure: float64(seed%5) / 4}
	m.Shuffle(len(m.cycles), func(i, j int) { m.cycles[i], m.cycles[j] = m.cycles[j], m.cycles[i] })
	d := mira(t)
	d.Figures, d.Invented, d.MayGo = m.figures(), m.IntN(2) == 0, m.IntN(2) == 0
	d.SetAside, d.Newer, d.Minutes = m.IntN(3), m.IntN(3), PracticeMinutes()[m.IntN(3)]
	if m.IntN(3) == 0 {
		d.People, d.Outputs = d.People[:1], nil
	}
	d.Next = d.Next[:0]
	for i := range m.IntN(6) {
		d.Next = append(d.Next, m.next(i))
	}
	return d
}

// next is something to practise: new is only what nothing is known of, and the ear has to
// work only where nothing is told of how it does.
func (m *maker) next(i int) Next {
	n := Next{Reason: Reason(m.IntN(int(ReasonRung) + 1)), Kind: []string{"dums", "which", "stroke"}[m.IntN(3)],
		Rhythms: []string{m.cycles[i].ID, m.cycles[i+1].ID}, Level: levelsInOrder[m.IntN(5)], Tempi: []int{60 + m.IntN(90)}}
	switch n.Reason {
	case ReasonFirst:
		n.Rhythms = []string{m.cycles[len(m.cycles)-1-i].ID}
	case ReasonEdge:
		n.Kind = "stroke"
	}
	return n
}

func (m *maker) enough() bool { return m.Float64() < m.sure }

func (m *maker) figures() (f diary.Figures) {
	f.Output = []string{"", "kitchen"}[m.IntN(2)]
	for _, c := range m.cycles[:m.IntN(6)] {
		f.Accuracy = append(f.Accuracy, m.accuracy(c.ID, false), m.accuracy(c.ID, true))
		f.Fingers = append(f.Fingers, m.fingers(c))
	}
	f.Mixed = m.mixed()
	for _, kind := range []string{"which", "dums", "same"}[:m.IntN(4)] {
		r := diary.Reach{Kind: kind, Now: m.hide()}
		for _, week := range diaryWeeks {
			r.Spans = append(r.Spans, diary.Heard{From: week[0], To: week[1], Hide: m.hide()})
		}
		f.Reach = append(f.Reach, r)
	}
	f.Practised = m.practised()
	return f
}

// accuracy is so many right of so many, in weeks of which some have too few.
func (m *maker) accuracy(id string, tapped bool) diary.Accuracy {
	var weeks [][2]int
	for range len(diaryWeeks) {
		n := 1 + m.IntN(11)
		if m.enough() {
			n = 12 + m.IntN(60)
		}
		weeks = append(weeks, [2]int{m.IntN(n + 1), n})
	}
	return accuracy(id, tapped, weeks...)
}

// fingers is finger timing of a rhythm, with a figure for each of its dums.
func (m *maker) fingers(c *rhythm.Cycle) diary.Fingers {
	f := diary.Fingers{Rhythm: c.ID, Rounds: 1 + m.IntN(30), Out: m.IntN(9), Added: m.IntN(9),
		Bias: m.offset(40), Bins: make([]int, 2*diary.Reached/diary.BinWidth)}
	if f.Bias.Known && m.enough() {
		spread := 5 + 40*m.Float64()
		f.Spread = scoring.Estimated(spread, 0.8*spread, 1.3*spread, f.Rounds, 6)
	}
	for range m.IntN(200) {
		f.Bins[m.IntN(len(f.Bins))]++
		f.Taps++
	}
	for step, s := range c.Skeleton {
		if s.Sounds() && s.Low() {
			f.Counts = append(f.Counts, diary.Count{Step: step, Offset: m.offset(90)})
		}
	}
	return f
}

// offset is an offset to either side, of a most, in ms, or none.
func (m *maker) offset(most float64) scoring.Estimate {
	if !m.enough() {
		return scoring.Unknown(m.IntN(6), 6)
	}
	return estimate(most*(2*m.Float64()-1), 1+most*m.Float64()*m.Float64(), 6+m.IntN(30))
}

func (m *maker) hide() scoring.Estimate {
	if !m.enough() {
		return scoring.Unknown(m.IntN(30), 30)
	}
	middle := 0.6 * m.Float64()
	return scoring.Estimated(middle, 0.8*middle, 1.2*middle+0.02, 40, 30)
}

// mixed is what was said for what was played, and which was said wrongly the most.
func (m *maker) mixed() (x diary.Mixed) {
	for _, c := range m.cycles[:m.IntN(7)] {
		x.Rhythms = append(x.Rhythms, c.ID)
	}
	for i := range x.Rhythms {
		said := make([]int, len(x.Rhythms))
		for j := range said {
			if said[j] = m.IntN(3); m.enough() {
				said[j] = m.IntN(15)
			}
		}
		x.Said = append(x.Said, said)
		for j, n := range said {
			if i != j && n > 0 {
				x.Worst = append(x.Worst, diary.MixUp{Played: x.Rhythms[i], Said: x.Rhythms[j], Share: stat.Share(n, sum(said))})
			}
		}
	}
	slices.SortStableFunc(x.Worst, func(a, b diary.MixUp) int { return cmp.Compare(b.Share.Value, a.Share.Value) })
	return x
}

// practised is up to forty days of practice, the latest first.
func (m *maker) practised() (all []diary.Practice) {
	day, _ := time.Parse(time.DateOnly, diaryToday)
	for range m.IntN(40) {
		p := diary.Practice{Day: day.Format(time.DateOnly), Kinds: map[string]int{}}
		for range 1 + m.IntN(40) {
			p.Kinds[[]string{"dums", "which", "same", "stop"}[m.IntN(4)]]++
			p.Rounds++
		}
		all = append(all, p)
		day = day.AddDate(0, 0, -1-m.IntN(5))
	}
	return all
}

// picturesOf are the pictures of a screen, by id.
func picturesOf(s view.Screen) map[string]*view.Item {
	all := map[string]*view.Item{}
	s.Each(func(it *view.Item) {
		if it.Picture != nil {
			all[it.ID] = it
		}
	})
	return all
}
