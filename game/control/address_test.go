package control_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
	"groundbeat/game/riff"
	"groundbeat/game/view"
)

func TestATempoIsWithinWhatIsOffered(t *testing.T) {
	p := newPage(t, "?screen=dums&rhythm=maqsum")
	c := p.Shared.Cycle()
	slow, fast := p.Tempi(c)
	require.Equal(t, []int{60, 130}, []int{slow, fast}, "its own 90 to 130, and a third slower to practise")
	for set, want := range map[int]int{1: 60, 60: 60, 99: 99, 130: 130, 500: 130} {
		p.Shared.Address.BPM = 0
		p.Set(view.ActTempo, "0")
		p.Shared.Address.BPM = 0
		p.SetTempo(set)
		require.Equal(t, want, p.Shared.Address.BPM, "set to %d", set)
	}
	p.Shared.Address.BPM = 200
	slow, fast = p.Tempi(c)
	require.Equal(t, []int{60, 200}, []int{slow, fast}, "what the link asks for is offered")
	p.Shared.Address.BPM = 45
	slow, fast = p.Tempi(c)
	require.Equal(t, []int{45, 130}, []int{slow, fast})
	p.Shared.Address.BPM = 0
	slow, fast = p.Tempi(nil)
	require.Equal(t, []int{link.LeastBPM, link.MostBPM}, []int{slow, fast}, "of any rhythm")
	for _, c := range p.Cycles() {
		slow, fast := p.Tempi(c)
		require.GreaterOrEqual(t, slow, link.LeastBPM, c.ID)
		require.LessOrEqual(t, fast, link.MostBPM, c.ID)
		require.Less(t, slow, fast, c.ID)
	}
}

// A link's seed is that of its first question; those after it have the next ones, within
// what a link can say.
func TestTheNextQuestionHasTheNextSeed(t *testing.T) {
	p := newPage(t, "?screen=which&seed=41")
	require.Equal(t, uint64(41), p.Seed())
	require.Equal(t, uint64(41), p.Seed(), "asked twice, it is the same")
	p.Set(view.ActNext, "")
	p.Set(view.ActNext, "")
	require.Equal(t, uint64(43), p.Seed())
	p.Shared.Address.Seed = link.MostSeed - 1
	require.Equal(t, uint64(1), p.Seed(), "after the last comes the first, and never 0")
	p.Shared.Address.Seed = link.MostSeed - 2
	require.Equal(t, uint64(link.MostSeed), p.Seed())
	p.Shared.Address.Seed = 0
	require.NotEqual(t, p.Seed(), p.Seed(), "chosen anew")
}

func TestSettingsStandInTheAddress(t *testing.T) {
	is := func(query string) string {
		a, problems := link.Parse(query, newPage(t, "").Allowed)
		require.Empty(t, problems)
		return a.String()
	}
	for _, one := range []struct{ from, action, value, to string }{
		{"?screen=dums&rhythm=maqsum&bpm=99", view.ActRhythm, "saidi", "?screen=dums&rhythm=saidi"},
		{"?screen=dums&rhythm=maqsum", view.ActTempo, "99", "?screen=dums&rhythm=maqsum&bpm=99"},
		{"?screen=dums&rhythm=maqsum", view.ActEights, "9", "?screen=dums&rhythm=maqsum&eights=9"},
		{"?screen=dums&riff=filled", view.ActLevel, "solo", "?screen=dums&riff=solo"},
		{"?screen=dums&riff=solo", view.ActHide, "40", "?screen=dums&riff=solo&hide=40"},
		{"?screen=which", view.ActAnswers, "2", "?screen=which&answers=2"},
		{"?screen=which", view.ActFrom, "all", "?screen=which&from=all"},
		{"?screen=which", view.ActAsk, "same", "?screen=which&ask=same"},
		{"?screen=which&ask=same&from=saidi", view.ActAsk, view.AskRhythm, "?screen=which"},
		{"?screen=dums", view.ActVolume, "20", "?screen=dums"},
	} {
		p := newPage(t, one.from)
		p.Set(one.action, one.value)
		require.Equal(t, is(one.to), p.Shared.Address.String(), "%s at %s", one.action, one.from)
	}
}

// No more answers are asked for than there are rhythms to choose from.
func TestAnswersFitWhatIsAsked(t *testing.T) {
	p := newPage(t, "?screen=which")
	for _, one := range []struct {
		from           string
		answers, after int
	}{{"saidi.maqsum", 4, 2}, {"saidi.maqsum.ayyub", 4, 3}, {"saidi.maqsum.ayyub", 0, 2}, {"saidi.maqsum.ayyub.malfuf", 3, 3}, {"five", 4, 4}} {
		p.Shared.Address.From, p.Shared.Address.Answers = one.from, one.answers
		p.Set(view.ActAsk, view.AskRhythm)
		require.Equal(t, one.after, p.Shared.Address.Answers, "%d of %s", one.answers, one.from)
		require.Equal(t, one.from, p.Shared.Address.From)
	}
}

func TestWhatALinkMaySay(t *testing.T) {
	p := newPage(t, "")
	a := p.Allowed()
	require.Equal(t, p.Rhythms().IDs(), a.Rhythms)
	require.Equal(t, []string{"bare", "filled"}, p.Levels()[:2])
	require.Equal(t, "solo", p.Levels()[len(p.Levels())-1])
	require.Subset(t, a.Rhythms, a.Answers)
	require.Contains(t, a.Answers, "karsilama", "odd metres are answers too")
	require.NotContains(t, a.Answers, "karachi", "heard, but no answer")
	require.Error(t, a.Set("five_bare"))
	require.NoError(t, a.Set("five_bare_hands-up_2_5"))

	core, more := p.Options()
	seen := map[string]bool{}
	for _, o := range append(core, more...) {
		require.False(t, seen[o.Value], "%s is offered once", o.Value)
		seen[o.Value] = true
	}
	require.Len(t, seen, len(a.Rhythms))
	for _, o := range core {
		require.True(t, p.Learner.Cycle(o.Value).Core, o.Value)
	}
	require.Len(t, core, 5, "the five most used")
	require.Len(t, p.Cycles(), len(a.Rhythms))
}

func TestTheRiffIsThatOfTheAddress(t *testing.T) {
	p := newPage(t, "?screen=dums&rhythm=saidi&riff=ornamented")
	require.Equal(t, riff.Ornamented, p.Level())
	c := p.Shared.Cycle()
	require.Equal(t, "saidi", c.ID)
	require.Equal(t, p.Riff(c, 9), p.Riff(c, 9))
	require.NotEqual(t, p.Riff(c, 9), p.Riff(c, 10))
	p.Shared.Address.Rhythm = view.Any
	require.Nil(t, p.Shared.Cycle(), "any rhythm is none")
	p.Shared.Address.Riff = "of a later version"
	require.Panics(t, func() { p.Level() })
}
