package diaryview

import (
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/coach"
	"groundbeat/game/screenproof"
	"groundbeat/game/soundview"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// planned is the plan of a learner after some days; of none, of somebody new.
func planned(t testing.TB, days int) *Plan {
	return &Plan{Minutes: 10, Steps: plannedSteps(t, days), First: days == 0, Rhythms: everyRhythm(t), Volume: 60}
}

var plans sync.Map // by days: each takes some tenths of a second to come to

func plannedSteps(t testing.TB, days int) []coach.Step {
	if steps, ok := plans.Load(days); ok {
		return steps.([]coach.Step)
	}
	l := newLearner(t, 7)
	l.practise(t, days)
	steps := l.knows(days).Practice(10, l.pool, 5)
	plans.Store(days, steps)
	return steps
}

func practiceScreens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, days int, change func(*Plan)) {
		p := planned(t, days)
		change(p)
		all["practice-"+name] = p.Screen(w)
	}
	add("plan-first", 0, func(*Plan) {})
	add("plan", 5, func(p *Plan) { p.Notes = []view.Note{view.NoteNotKept} })
	add("plan-reading", 0, func(p *Plan) { p.Reading, p.Steps = true, nil })
	add("plan-silent", 0, func(p *Plan) { p.Volume, p.Notes = -1, []view.Note{view.NoteNoSound} })

	strip := Practice{Part: 2, Parts: 6, Reason: coach.ReasonFirst, Minutes: 8}
	meet := func(name string, change func(*soundview.Listen)) {
		l := listen(t, "maqsum")
		change(l)
		all["practice-meet-"+name] = strip.On(l.Meeting(w), w)
	}
	meet("still", func(*soundview.Listen) {})
	meet("playing", func(l *soundview.Listen) { l.Playing = true })
	meet("silent", func(l *soundview.Listen) { l.Volume, l.Notes = -1, []view.Note{view.NoteNoSound} })
	d := dums(t, view.Reviewing)
	strip.Done = true
	all["practice-review"] = strip.On(d.Screen(w), w)
	all["practice-void"] = Practice{Part: 2, Parts: 6, Reason: coach.ReasonFirst, Minutes: 8}.On(dums(t, view.Voided).Screen(w), w)
	strip.Last = true
	all["practice-last"] = strip.On(d.Screen(w), w)
	return all
}

// Every part of a plan says what it is, how long it lasts and why now; the parts last as
// long as the whole; and begun it is by the one filled button.
func TestPlan(t *testing.T) {
	w := words(t)
	for _, days := range []int{0, 2, 9} {
		p := planned(t, days)
		s := p.Screen(w)
		require.NoError(t, screenproof.Check(s))
		parts := coach.Parts(p.Steps)
		list := s.Find("plan").Children
		require.Len(t, list, len(parts))
		for i := range parts {
			require.Len(t, list[i].Children, 3)
			for _, said := range list[i].Children {
				require.NotEmpty(t, said.Text)
			}
		}
		require.Contains(t, s.Find("ring").Text, "10 minutes, once round the drum")
		bar := s.Find("bar").Children
		require.Equal(t, []string{view.ActBegin, view.LookPrimary}, []string{bar[len(bar)-1].Action, bar[len(bar)-1].Look})
	}
	first := planned(t, 0).Screen(w)
	require.Equal(t, "First rounds", first.Find("part-1-what").Text)
	require.Equal(t, "Maqsum, baladi and çiftetelli: heard and seen first, then asked.", first.Find("part-1-why").Text)
	require.Equal(t, "From slow to faster", first.Find("part-2-what").Text)
	require.Contains(t, first.Find("plan-how").Text, "For a beginning.")
}

func TestSayLong(t *testing.T) {
	w := words(t)
	for seconds, want := range map[int]string{5: "half a minute", 44: "half a minute", 46: "1 minute", 74: "1 minute", 76: "1½\u00a0minutes", 119: "2 minutes", 600: "10 minutes"} {
		require.Equal(t, want, sayLong(w, seconds), seconds)
	}
}

// On every stage of a practice one button is filled at most, wherever there is something
// to go on to exactly one, and it can be left out and ended on all of them.
func TestOneFilledButton(t *testing.T) {
	for name, s := range practiceScreens(t) {
		var filled []string
		s.Each(func(it *view.Item) {
			if it.Look == view.LookPrimary {
				filled = append(filled, it.Action)
			}
		})
		want := map[string][]string{
			"practice-plan": {view.ActBegin}, "practice-plan-first": {view.ActBegin}, "practice-plan-reading": nil, "practice-plan-silent": nil,
			"practice-meet-still": {view.ActPracticeAsk}, "practice-meet-playing": {view.ActPracticeAsk}, "practice-meet-silent": {view.ActPracticeAsk},
			"practice-review": {view.ActPracticeNext}, "practice-last": {view.ActPracticeNext}, "practice-void": {view.ActOnce},
		}
		require.Contains(t, want, name)
		require.Equal(t, want[name], filled, name)
		if s.ID != view.ScreenPractice {
			require.NotNil(t, s.Find("practice-end"), name)
			require.NotNil(t, s.Find("practice-on"), name)
		}
	}
}

// A rhythm that is new is heard and seen, with what to listen for, and nothing else is
// to be chosen.
func TestMeeting(t *testing.T) {
	all := practiceScreens(t)
	s := all["practice-meet-playing"]
	require.Equal(t, "New to you: maqsum", s.Find("heading").Name)
	for _, id := range []string{"head", "line", "listen", "play"} {
		require.NotNil(t, s.Find(id), id)
	}
	for _, id := range []string{"rhythm", "tempo", "level", "nav", "own"} {
		require.Nil(t, s.Find(id), id)
	}
	require.Equal(t, view.ActStop, s.Find("play").Action)
	silent := all["practice-meet-silent"]
	require.Nil(t, silent.Find("play"))
}

// What a round is called where it is offered is what is done in it.
func TestSayDo(t *testing.T) {
	w := words(t)
	for want, n := range map[string]Next{
		"Tap maqsum":                          {Kind: history.Dums, Rhythms: []string{"maqsum"}},
		"Tell baladi from maqsum":             {Kind: history.Which, Rhythms: []string{"baladi", "maqsum"}},
		"Tell baladi, maqsum and wahda apart": {Kind: history.Which, Rhythms: []string{"baladi", "maqsum", "wahda"}},
		"Dum or tek?":                         {Kind: history.Stroke},
		"How many dums?":                      {Kind: history.HowMany},
	} {
		require.Equal(t, want, sayDo(w, n, everyRhythm(t)))
	}
}
