package coach

import (
	"cmp"
	"fmt"
	"math/rand/v2"
	"slices"
	"time"

	"groundbeat/game/diary"
	"groundbeat/game/quiz"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
	"groundbeat/scoring/stat"
)

// supplies finds supplied rhythms.
func supplies(id string) *rhythm.Cycle {
	catalogue, err := loaded()
	if err != nil {
		panic(err)
	}
	c, _ := catalogue.Get(id)
	return c
}

var firstDay = time.Date(2026, 3, 1, 18, 0, 0, 0, time.UTC)

// tappedRound is a round whose dums were tapped, right or not, on the nth day.
func tappedRound(day int, rhythm string, bpm, hide int, right bool) history.Round {
	r := roundOf(history.Dums, day, rhythm, bpm, hide)
	r.Matched, r.Window = 8, 100
	if !right {
		r.Matched, r.Out, r.Added = 3, 5, 4
	}
	return r
}

// namedRound is a round in which a rhythm was told by name.
func namedRound(day int, rhythm, answer string, hide int, choices ...string) history.Round {
	r := roundOf(history.Which, day, rhythm, 100, hide)
	r.Choices, r.Answer, r.Right = choices, answer, answer == rhythm
	return r
}

// rungRound is a round of a lower rung.
func rungRound(day int, ask quiz.Ask, right bool) history.Round {
	r := roundOf(string(ask), day, "maqsum", 100, 0)
	r.Choices, r.Right = []string{"a", "b"}, right
	return r
}

func roundOf(kind string, day int, rhythm string, bpm, hide int) history.Round {
	r := history.Round{
		Kind: kind, Rhythm: rhythm, BPM: bpm, Riff: riff.Bare.String(), Eights: 4, Output: "studio",
		When: firstDay.AddDate(0, 0, day).Format(time.RFC3339),
	}
	if of := riffsAsked()[rhythm]; of != nil {
		r.Riff = of[min(hide, mostAsk)].level.String()
	}
	if r.Riff != riff.Bare.String() && r.Riff != riff.Filled.String() {
		h := float64(hide) / 100
		r.Hide, r.HideAsked = &h, hide
	}
	return r
}

// on is a date so many days after the first.
func on(day int) string { return firstDay.AddDate(0, 0, day).Format(dayLayout) }

// knows is a made-up player: rhythms that were met, how far the ear hears through,
// what is mixed up with what, for so many days, ten tapped rounds and ten names each.
type knows struct {
	rhythms   []string
	threshold float64
	mixed     map[string]string // what is said for what, half of the times
	days      int
	rungs     bool // hold
}

func (k knows) known(seed uint64, pause int) Known {
	r := rand.New(rand.NewPCG(seed, 21))
	all := Known{Today: on(k.days - 1 + pause), Cycles: supplies}
	if k.rungs {
		for _, rung := range LowerRungs() {
			for range rungAnswers {
				all.Rounds = append(all.Rounds, rungRound(0, rung, true))
			}
		}
	}
	taps, names := startWalk(0), startWalk(0)
	said := make([][]int, len(k.rhythms))
	for i := range said {
		said[i] = make([]int, len(k.rhythms))
	}
	for day := range k.days {
		for i := range 10 {
			id := k.rhythms[(day+i)%len(k.rhythms)]
			t := ear{threshold: k.threshold, choices: 8, r: r}.hears(id, ask(taps.level(), taps.offsets.Of(id)))
			taps.answer(t)
			all.Rounds = append(all.Rounds, tappedRound(day, id, 80+day, t.hide, t.right))
			all.Met = append(all.Met, diary.Met{Rhythm: id, Riff: all.Rounds[len(all.Rounds)-1].Riff, Day: on(day), Right: map[bool]int{true: 1}[t.right], N: 1})
			t = ear{threshold: k.threshold, choices: 3, r: r}.hears(id, ask(names.level(), names.offsets.Of(id)))
			answer := id
			if other := k.mixed[id]; !t.right {
				answer = k.rhythms[(slices.Index(k.rhythms, id)+1)%len(k.rhythms)]
			} else if other != "" && r.IntN(2) == 0 {
				answer, t.right = other, false
			}
			names.answer(t)
			all.Rounds = append(all.Rounds, namedRound(day, id, answer, t.hide, k.rhythms...))
			said[slices.Index(k.rhythms, id)][slices.Index(k.rhythms, answer)]++
		}
	}
	all.Mixed = diary.Mixed{Rhythms: k.rhythms, Said: said}
	for i, row := range said {
		n := 0
		for _, c := range row {
			n += c
		}
		for j, c := range row {
			if i != j && c > 0 {
				all.Mixed.Worst = append(all.Mixed.Worst, diary.MixUp{Played: k.rhythms[i], Said: k.rhythms[j], Share: stat.Share(c, max(n, 12))})
			}
		}
	}
	slices.SortStableFunc(all.Mixed.Worst, func(a, b diary.MixUp) int { return cmp.Compare(b.Share.Value, a.Share.Value) })
	return all
}

// learners are the players of the golden.
func learners() map[string]Known {
	three := []string{"baladi", "maqsum", "saidi"}
	return map[string]Known{
		"1 new":        {Cycles: supplies, Today: on(0)},
		"2 beginning":  knows{rhythms: three[:2], threshold: .1, days: 2, mixed: map[string]string{"maqsum": "baladi", "baladi": "maqsum"}}.known(1, 1),
		"3 mixing up":  knows{rhythms: three, threshold: .2, days: 8, rungs: true, mixed: map[string]string{"saidi": "maqsum"}}.known(2, 1),
		"4 practised":  knows{rhythms: fiveIDs, threshold: .45, days: 30, rungs: true}.known(3, 1),
		"5 back again": knows{rhythms: fiveIDs, threshold: .45, days: 30, rungs: true}.known(3, 60),
	}
}

func (s Step) String() string {
	riff := s.Level.String()
	if s.Hide > 0 {
		riff += fmt.Sprintf(" %d", s.Hide)
	}
	return fmt.Sprintf("%-7s %-8s %v %s, %d eights at %d, %d s", s.Reason, s.Kind, s.Rhythms, riff, s.Eights, s.BPM, s.Seconds)
}
