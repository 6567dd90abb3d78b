package diaryview

import (
	"fmt"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/game/diary"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring/stat"
)

var levelsInOrder = []string{view.LevelBare, view.LevelFilled, view.LevelOrnamented, view.LevelRiffing, view.LevelSolo}

// contradicts reports whether a reader would find two claims of one diary at odds.
func contradicts(a, b claim) bool {
	is := func(c claim, any ...says) bool { return slices.Contains(any, c.says) }
	same := a.rhythm == b.rhythm && a.rhythm != ""
	skill := same && a.skill == b.skill
	timed := same || a.rhythm == "" || b.rhythm == ""
	switch {
	case is(a, saysWell):
		return same && is(b, saysLeast, saysLess, saysTaken)
	case is(a, saysMost):
		return skill && is(b, saysLeast, saysLess, saysTaken)
	case is(a, saysMore) && is(b, saysTaken):
		return skill && ofHundred(a.part)+ofHundred(b.part) > 100
	case is(a, saysMore):
		return skill && is(b, saysLess)
	case is(a, saysAlike):
		return a.skill == b.skill && is(b, saysMost, saysLeast)
	case is(a, saysNoneTaken):
		return is(b, saysTaken)
	case is(a, saysAhead):
		return timed && is(b, saysBehind, saysNoLean)
	case is(a, saysBehind):
		return timed && is(b, saysNoLean)
	case is(a, saysNew):
		return same && !is(b, saysNew)
	case is(a, saysWork):
		return is(b, saysHeard, saysHeardMore, saysHeardLess) && a.kind == b.kind &&
			slices.Index(levelsInOrder, a.level) < slices.Index(levelsInOrder, b.level)
	}
	return false
}

// said are all sentences of a diary, and what each claims.
func (d *Diary) said(w say.Words) []finding {
	is := d.find(w)
	all := []finding{is.named, is.tapped, is.fingers, is.round, is.mixed, is.reach}
	for _, n := range d.Next {
		all = append(all, d.offer(w, n, is.claims()))
	}
	return all
}

// requireAgreement asks that no two sentences contradict each other, and that each
// sentence is on the page.
func requireAgreement(t *testing.T, w say.Words, d *Diary) {
	t.Helper()
	shown, s := map[string]bool{"": true}, d.Screen(w)
	s.Each(func(it *view.Item) {
		shown[it.Text] = true
		require.NotContains(t, it.Text, "of 100", "shares are said in one way")
	})
	all := d.said(w)
	for i, f := range all {
		require.True(t, shown[f.text], f.text)
		for _, g := range all[:i] {
			for _, a := range f.claims {
				for _, b := range g.claims {
					require.False(t, contradicts(a, b) || contradicts(b, a), "%q\n%q\n%+v %+v", g.text, f.text, b, a)
				}
			}
		}
	}
}

// Whatever the day, no two sentences of a learner's diary contradict each other: what is
// told, and what is offered and why.
func TestDiaryAgreesWithItself(t *testing.T) {
	w := words(t)
	learners, step := 5, 3
	if testing.Short() {
		learners, step = 3, 5
	}
	for seed := range learners {
		t.Run("", func(t *testing.T) {
			t.Parallel()
			l := newLearner(t, uint64(100+seed))
			var kinds [ReasonRung + 1]int
			for day := 0; day < thirty; day += step {
				l.practiseFrom(t, day, step)
				d := l.diary(t)
				d.Today = theirDay(day + step).Format(time.DateOnly)
				for _, o := range coach.Offers(l.knows(day+step).Practice(20, l.pool, uint64(day)), 9) {
					d.Next = append(d.Next, NextOf(o))
					kinds[d.Next[len(d.Next)-1].Reason]++
				}
				requireAgreement(t, w, d)
			}
			require.Positive(t, kinds[ReasonWell])
			require.Positive(t, kinds[ReasonEdge])
		})
	}
}

// What the check is for: pairs that were said of one diary, each of which it finds.
func TestContradictions(t *testing.T) {
	for _, c := range []struct {
		name string
		a, b claim
	}{
		{"well, and least sure", claim{says: saysWell, rhythm: "baladi"}, claim{says: saysLeast, rhythm: "baladi"}},
		{"well tapped, and mixed up", claim{says: saysWell, skill: skillDums, rhythm: "baladi"}, claim{says: saysTaken, rhythm: "baladi"}},
		{"mixed up, and no mix-up", claim{says: saysTaken, rhythm: "baladi"}, claim{says: saysNoneTaken}},
		{"90 % right, and 44 % mixed up", claim{says: saysMore, rhythm: "baladi", part: .9}, claim{says: saysTaken, rhythm: "baladi", part: .44}},
		{"behind everywhere, and ahead", claim{says: saysBehind}, claim{says: saysAhead, rhythm: "baladi"}},
		{"ahead, and no lean", claim{says: saysAhead, rhythm: "baladi"}, claim{says: saysNoLean}},
		{"new, and done well", claim{says: saysNew, rhythm: "baladi"}, claim{says: saysWell, rhythm: "baladi"}},
		{"more, and fewer", claim{says: saysMore, rhythm: "baladi"}, claim{says: saysLess, rhythm: "baladi"}},
		{"has to work where more is heard through", claim{says: saysWork, kind: "dums", level: view.LevelFilled}, claim{says: saysHeard, kind: "dums", level: view.LevelRiffing}},
	} {
		require.True(t, contradicts(c.a, c.b) || contradicts(c.b, c.a), c.name)
	}
	require.False(t, contradicts(claim{says: saysWell, rhythm: "baladi"}, claim{says: saysLeast, rhythm: "saidi"}))
}

// By hand: what would contradict a sentence before it is not said.
func TestNotSaid(t *testing.T) {
	w, d := words(t), mira(t)
	d.Figures.Accuracy = []diary.Accuracy{accuracy("maqsum", false, [2]int{20, 20}), accuracy("baladi", false, [2]int{8, 20})}
	d.Figures.Mixed = diary.Mixed{Rhythms: []string{"maqsum", "baladi"}, Said: [][]int{{15, 5}, {12, 8}},
		Worst: []diary.MixUp{{Played: "maqsum", Said: "baladi", Share: stat.Share(8, 20)}}}
	require.Equal(t, "No mix-up stands out, as far as this tells.", d.find(w).mixed.text, "maqsum is said to be the surest")

	well := func(rhythm string) string {
		d.Next = []Next{{Reason: ReasonWell, Kind: "dums", Rhythms: []string{rhythm}}}
		s := d.Screen(w)
		if it := s.Find("next-1-begin"); it != nil {
			return fmt.Sprint(it.Name, ": ", it.Text)
		}
		return ""
	}
	require.Equal(t, "Tap maqsum: Something you do well.", well("maqsum"))
	require.Empty(t, well("baladi"), "of which she is least sure")
	requireAgreement(t, w, d)

	d.Next = []Next{{Reason: ReasonMixUp, Kind: "which", Rhythms: []string{"maqsum", "baladi"}}}
	s := d.Screen(w)
	require.Equal(t, "Easily taken for one another, so side by side.", s.Find("next-1-begin").Text)
	require.Equal(t, "Tell maqsum from baladi", s.Find("next-1-begin").Name)
	d.Figures.Mixed.Worst[0] = diary.MixUp{Played: "baladi", Said: "maqsum", Share: stat.Share(12, 20)}
	s = d.Screen(w)
	require.Equal(t, "You often take baladi for maqsum, so side by side.", s.Find("next-1-begin").Text)
	requireAgreement(t, w, d)
}
