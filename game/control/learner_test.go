package control_test

import (
	"errors"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/rhythm"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// read reads the diary to its end.
func (p *page) read(t *testing.T) {
	t.Helper()
	p.Learner.Read()
	for range 20 {
		p.Frame()
	}
	require.True(t, p.Learner.IsRead())
}

func ids(all []history.Round) (ids []string) {
	for _, r := range all {
		ids = append(ids, r.ID)
	}
	return ids
}

func TestTheDiaryIsReadInTheBackground(t *testing.T) {
	p := newPage(t, "")
	one, two, three := asked(1, 3, "", "maqsum"), asked(2, 3, "", "saidi"), asked(3, 5, "", "maqsum")
	p.Storage.Put(one, two, three)
	p.Storage.Held = true
	p.Learner.Read()
	require.Zero(t, p.Learner.Kept(), "nothing is known yet")
	var read, countable []bool
	for p.Storage.Pending() > 0 {
		read, countable = append(read, p.Learner.IsRead()), append(countable, p.Learner.Countable())
		p.Storage.Release()
	}
	require.Equal(t, []bool{false, false, false}, read, "people, days, rounds")
	require.Equal(t, []bool{false, false, false}, countable)
	require.True(t, p.Learner.IsRead())
	require.True(t, p.Learner.Countable())
	require.Equal(t, ids([]history.Round{one, two, three}), ids(p.Learner.Rounds), "the latest comes last")
	require.Equal(t, 3, p.Learner.Kept())
	require.Equal(t, []string{"2026-02-03", "2026-02-05"}, p.Learner.Book.Dates())
	require.Equal(t, p.Learner.People, []host.Person{p.Learner.Who})
	require.Equal(t, 3, p.redrawn, "once for each answer")
	require.Equal(t, 2, p.recounted, "once for the days and once for the rounds")
	require.NoError(t, p.Learner.Err)
}

// counting is a diary that is still being counted: a test tells its days.
type counting struct {
	host.Diary
	tell *func(host.Days)
}

func (c counting) Days(done func(host.Days)) { *c.tell = done }

// nobody is a diary that does not say who practises.
type nobody struct{ host.Diary }

func (nobody) People(func([]host.Person, host.Person, error)) {}

func TestItIsReadOnceItIsKnownWhose(t *testing.T) {
	p := newPage(t, "")
	p.Diary = nobody{p.Diary}
	p.Learner.Read()
	p.Frame()
	p.Frame()
	require.True(t, p.Learner.Countable())
	require.False(t, p.Learner.IsRead())
}

// While rounds are still being counted the days can be shown, and nothing rests on them.
func TestDaysThatAreBehindAreNotAll(t *testing.T) {
	p := newPage(t, "")
	p.Storage.Put(asked(1, 3, "", "maqsum"))
	var tell func(host.Days)
	p.Diary = counting{p.Diary, &tell}
	p.Learner.Read()
	p.Frame()
	p.Frame()
	require.Len(t, p.Learner.Rounds, 1)
	require.False(t, p.Learner.Countable(), "no day has come")
	for _, behind := range []int{2, 1, 0} {
		tell(host.Days{Behind: behind})
		require.Equal(t, behind, p.Learner.Days.Behind)
		require.True(t, p.Learner.Countable())
		require.Equal(t, behind == 0, p.Learner.IsRead())
	}
}

// What was asked for one person is out of date when another has been chosen, however late
// it comes.
func TestAnswersOfAnEarlierReadingAreLeftAlone(t *testing.T) {
	p := newPage(t, "")
	p.Storage.Put(asked(1, 3, "", "maqsum"))
	p.Storage.Held = true
	p.Learner.Read()
	times := p.Learner.Times
	p.Learner.Read()
	require.Equal(t, times+1, p.Learner.Times)
	for range 3 {
		p.Storage.Release()
	}
	require.Zero(t, p.redrawn)
	require.Nil(t, p.Learner.Rounds)
	require.False(t, p.Learner.Countable())
	for range 3 {
		p.Storage.Release()
	}
	require.True(t, p.Learner.IsRead())

	p.Learner.Read()
	require.False(t, p.Learner.IsRead(), "asked for anew, it has not come")
	require.Len(t, p.Learner.Rounds, 1, "but what was there is shown until then")
}

// failing is a diary that cannot be read.
type failing struct {
	host.Diary
	err error
}

func (f failing) Latest(_ string, _ int, done func([]history.Round, error)) { done(nil, f.err) }
func (f failing) Days(done func(host.Days))                                 { done(host.Days{Behind: 2, Err: f.err}) }

func TestADiaryThatCannotBeRead(t *testing.T) {
	p := newPage(t, "")
	p.Diary = failing{p.Diary, errors.New("torn")}
	p.Learner.Read()
	p.Frame()
	p.Frame()
	require.EqualError(t, p.Learner.Err, "torn")
	require.True(t, p.Learner.IsRead(), "nothing more is to come, though rounds were not counted")
	p.Diary = p.Storage
	p.read(t)
	require.NoError(t, p.Learner.Err, "read anew, all is well")
}

func TestARoundThatIsKeptIsKnownAtOnce(t *testing.T) {
	p := newPage(t, "")
	p.Learner.Add(asked(1, 3, "", "maqsum"))
	require.Zero(t, p.recounted, "there are no days yet that it could join")
	require.Len(t, p.Learner.Rounds, 1)
	p.read(t)
	before := p.recounted
	p.Learner.Add(asked(2, 4, "", "saidi"))
	require.Equal(t, before+1, p.recounted)
	require.Equal(t, 1, p.Learner.Kept())
	require.Equal(t, []string{"2026-02-04"}, p.Learner.Book.Dates())
}

// The ear is the same on every output: one that is new begins with what is known of the
// one that was used most, and has its own as soon as there is anything on it.
func TestWhatIsKnownIsOfTheOutput(t *testing.T) {
	p := newPage(t, "")
	require.Empty(t, p.Learner.Known("a").Rounds, "before it is read")
	p.Storage.Put(asked(1, 3, "a", "maqsum"), asked(2, 3, "b", "saidi"), asked(3, 4, "b", "malfuf"))
	p.read(t)
	rhythms := func(output string) (all []string) {
		k := p.Learner.Known(output)
		require.Len(t, k.Met, len(k.Rounds))
		for _, m := range k.Met {
			all = append(all, m.Rhythm)
		}
		return all
	}
	require.Equal(t, []string{"maqsum"}, rhythms("a"))
	require.Equal(t, []string{"saidi", "malfuf"}, rhythms("b"))
	require.Equal(t, rhythms("b"), rhythms("c"), "the one that was used most")
	p.Learner.Add(asked(4, 5, "c", "ayyub"))
	require.Equal(t, []string{"ayyub"}, rhythms("c"))
	require.Equal(t, p.Browser.Wall.Date().Format("2006-01-02"), p.Learner.Known("a").Today)
}

func TestOddRhythmsArePractisedOnceTheyWereAskedFor(t *testing.T) {
	p := newPage(t, "")
	p.read(t)
	pool := func() []*rhythm.Cycle { return p.Learner.Pool(p.Known()) }
	before := pool()
	require.NotContains(t, before, p.nine(t))
	p.Learner.Add(asked(1, 3, "", "karsilama"))
	p.Learner.Add(asked(2, 3, "", "maqsum"))
	p.Learner.Add(asked(3, 3, "", "gone"))
	p.Learner.Add(asked(5, 3, "", "karachi"))
	p.Learner.Add(asked(4, 4, "", "karsilama"))
	require.Equal(t, append(before, p.nine(t)), pool(), "each once, none that is not here, and none that is no answer")
	require.Nil(t, p.Learner.Cycle("gone"))
}

// nine is an odd rhythm, of nine beats.
func (p *page) nine(t *testing.T) *rhythm.Cycle {
	t.Helper()
	c := p.Learner.Cycle("karsilama")
	require.NotNil(t, c)
	return c
}

// Wrong answers that come first are those of the player, but not in a question that a link
// names: it is the same for everybody.
func TestALinkAsksEverybodyTheSame(t *testing.T) {
	p := newPage(t, "?screen=which")
	require.Zero(t, p.Lean(), "nothing is known yet")
	p.read(t)
	require.Equal(t, p.Known().Lean(), p.Lean())
	require.NotZero(t, p.Lean())
	p.Set(view.ActFrom, view.FromEven)
	p.Shared.Address.Seed = 12
	require.Zero(t, p.Lean())
}
