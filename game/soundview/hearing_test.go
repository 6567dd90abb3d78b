package soundview

import (
	"fmt"
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// listenBy is the screen of a rhythm, all that may be one way or another by chance.
func listenBy(t *testing.T, c *rhythm.Cycle, chance *rand.Rand) *Listen {
	yes := func() bool { return chance.IntN(2) == 1 }
	level := riff.Level(chance.IntN(int(riff.Solo) + 1))
	if level == riff.Filled && len(c.Filled) == 0 {
		level = riff.Bare
	}
	l := &Listen{Rhythm: c, Core: core(t), More: more(t), Playing: yes(), Slow: c.Tempo.Slow, Fast: c.Tempo.Fast,
		BPM: c.Tempo.Slow + chance.IntN(c.Tempo.Fast-c.Tempo.Slow+1), Level: level.String(), Levels: allLevels,
		Hide: chance.IntN(101), Balance: 10 * (chance.IntN(21) - 10), Help: view.Help{Alone: yes(), Hands: yes()},
		Volume: chance.IntN(102) - 1, Board: []float64{0, 288, 358, 576}[chance.IntN(4)]}
	if level > riff.Bare {
		part, err := riff.Play(c, level, 2, chance.Uint64N(50)+1)
		require.NoError(t, err)
		l.Riff = picture.RiffOf(part, c.Steps(), chance.IntN(2))
		l.Sounds, l.Rolls = picture.SoundsOf(part)
		l.Hides = new(chance.Float64())
	}
	return l
}

// Every rhythm under every riff is a whole screen, its pictures within their frames,
// its sliders within their bounds, on a phone and on a projector.
func TestEveryRiffCanBeListenedTo(t *testing.T) {
	w, chance := words(t), rand.New(rand.NewPCG(11, 1))
	for _, c := range everyRhythm(t) {
		for range 12 {
			l := listenBy(t, c, chance)
			for _, s := range []view.Screen{l.Screen(w), l.Meeting(w)} {
				require.NoError(t, screenproof.Check(s), "%s %s", c.ID, l.Level)
				require.NotContains(t, text(t, s), "{", c.ID)
				if line := s.Find("line"); line.Picture != nil {
					screenproof.RequireInside(t, line.Picture)
				}
				require.Equal(t, l.Playing, s.Find("line").Place == view.PlaceLine)
				require.Equal(t, l.Volume < 0, s.Find("volume") == nil, "without sound there is no volume")
			}
			head, p := l.Head(), &picture.Picture{}
			head.Draw(p)
			screenproof.RequireInside(t, p)
		}
	}
}

// Where a rhythm has no filled form, it is not offered; all else is.
func TestLevelsOffered(t *testing.T) {
	w := words(t)
	for _, c := range everyRhythm(t) {
		l := Listen{Rhythm: c, Level: view.LevelBare, Levels: allLevels, BPM: c.Tempo.Usual, Slow: c.Tempo.Slow, Fast: c.Tempo.Fast}
		s := l.Screen(w)
		var offered []string
		for _, o := range s.Find("level").Options {
			offered = append(offered, o.Value)
		}
		want := allLevels
		if len(c.Filled) == 0 {
			want = []string{view.LevelBare, view.LevelOrnamented, view.LevelRiffing, view.LevelSolo}
		}
		require.Equal(t, want, offered, c.ID)
		require.Len(t, l.Levels, 5, "the list itself stays as it is")
	}
}

// While a rhythm is met nothing else can be set; what leads on is one button, and Escape
// stops what plays before it leaves.
func TestMeetingSetsNothing(t *testing.T) {
	w := words(t)
	for _, playing := range []bool{false, true} {
		for _, volume := range []int{-1, 40} {
			l := listen(t, "baladi")
			l.Playing, l.Volume = playing, volume
			s := l.Meeting(w)
			for _, id := range []string{"rhythm", "tempo", "level", "balance", "file", "nav"} {
				require.Nil(t, s.Find(id), id)
			}
			require.Equal(t, volume >= 0, s.Find("play") != nil)
			require.Equal(t, view.ActPracticeAsk, s.Find("ask-me").Action)
			require.Equal(t, view.LookPrimary, s.Find("ask-me").Look)
			require.Equal(t, map[bool]string{false: view.ActPracticeEnd, true: view.ActStop}[playing], s.Escape)
			require.NotContains(t, s.Find("heading").Name, "(", "its plain name")
		}
	}
}

// Each choice of a rhythm, and its tempo, can be opened as a link.
func TestListenIsLinked(t *testing.T) {
	w := words(t)
	for _, c := range everyRhythm(t) {
		l := Listen{Rhythm: c, Core: []view.Option{view.RhythmOption(c, w)}, Level: view.LevelBare, BPM: c.Tempo.Usual, Slow: c.Tempo.Slow, Fast: c.Tempo.Fast}
		s := l.Screen(w)
		query := fmt.Sprintf("?screen=%s&rhythm=%s&bpm=%g", view.ScreenListen, s.Find("rhythm").Value, s.Find("tempo").Num)
		a, err := link.Parse(query, func() link.Allowed { return link.Allowed{Rhythms: []string{"maqsum", c.ID}, Riffs: allLevels} })
		require.NoError(t, err, c.ID)
		require.Equal(t, c.ID, a.Rhythm)
		require.Equal(t, c.Tempo.Usual, a.BPM)
	}
}

// All that is told of a rhythm's sources stands there, sentence by sentence.
func TestSourcesAreTold(t *testing.T) {
	w := words(t)
	for _, c := range everyRhythm(t) {
		about := view.Screen{Items: []view.Item{sources(w, c)}}
		for id, all := range map[string][]string{"facts": c.Notes, "sources": c.Sources, "memory": c.Memory} {
			require.Equal(t, len(all) > 0, about.Find(id) != nil, "%s: %s", c.ID, id)
			require.Equal(t, len(all) > 0, about.Find(id+"-heading") != nil)
			for i, text := range all {
				require.Equal(t, text, about.Find(fmt.Sprintf("%s-%d", id, i+1)).Text)
			}
		}
		if len(c.Spellings) > 0 {
			require.True(t, strings.HasSuffix(strings.TrimSuffix(about.Find("spellings").Text, "."), strings.Join(c.Spellings, ", ")), about.Find("spellings").Text)
		} else {
			require.Nil(t, about.Find("spellings"))
		}
	}
}

// Wherever the picture stands its slider has that step, and what it offers as measured is
// a step of it; both are said with the side to which they lie.
func TestPictureStepsStayInBounds(t *testing.T) {
	w := words(t)
	for mean := -300 * ms; mean <= 900*ms; mean += 7 * ms {
		begin := AsMeasured(mean)
		require.GreaterOrEqual(t, begin, EarliestPicture)
		require.LessOrEqual(t, begin, LatestPicture)
		require.Zero(t, begin%PictureStep)
		if mean > EarliestPicture && mean < LatestPicture {
			require.LessOrEqual(t, max(begin-mean, mean-begin), PictureStep/2)
		}
		c := soundCheck(t)
		c.Measured, c.Later = &mean, begin
		s := c.Screen(w)
		require.NoError(t, screenproof.Check(s))
		n, err := strconv.Atoi(s.Find("measured").Value)
		require.NoError(t, err)
		require.Equal(t, begin, time.Duration(n)*ms)
		require.Equal(t, float64(n), s.Find("later").Num)
		require.Equal(t, n < 0, strings.Contains(s.Find("later").Value, "earlier"))
		require.Equal(t, n > 0, strings.Contains(s.Find("later").Value, "later"))
	}
}

// Pressed again and again, more bass comes to its most and stays there; back goes to none.
func TestMoreBassComesToItsMost(t *testing.T) {
	w := words(t)
	c := soundCheck(t)
	c.Hears = CheckNo
	for range 6 {
		s := c.Screen(w)
		require.Equal(t, "0", s.Find("alike").Value)
		require.Equal(t, c.Bass == 0, s.Find("alike").Pressed)
		next, err := strconv.Atoi(s.Find("more-bass").Value)
		require.NoError(t, err)
		require.Equal(t, min(c.Bass+BassStep, MostBass), next)
		c.Bass = next
	}
	require.Equal(t, MostBass, c.Bass)
	require.Zero(t, MostBass%BassStep)
	c.Hears = CheckYes
	require.Nil(t, find(c.Screen(w), "more-bass"), "who hears it needs no more")
	require.NotNil(t, find(c.Screen(w), "alike"), "but can take it back")
}

func find(s view.Screen, id string) *view.Item { return s.Find(id) }

// A set-up that was refused gives its reason and what to try, each its own; what was
// measured is said to its side.
func TestSetUpSaysWhatItFound(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	for r := RefusedFew; r <= RefusedUnclear; r++ {
		why, try := sayRefusal(w, &Measured{Refusal: r, Taps: 2, Of: 8, Spread: 80 * ms})
		require.False(t, seen[why] || seen[try], why)
		seen[why], seen[try] = true, true
	}
	for mean := -60 * ms; mean <= 60*ms; mean += 3 * ms / 4 {
		said := sayMeasured(w, &Measured{Mean: mean, Spread: 9 * ms})
		whole := int(mean.Round(ms) / ms)
		require.Equal(t, whole > 0, strings.Contains(said, " behind"), said)
		require.Equal(t, whole < 0, strings.Contains(said, " ahead"), said)
		require.Regexp(t, `within 9.ms`, said)
	}
}

// However many outputs are kept and whichever is in use, the screen is whole, one at most
// is marked, and each button speaks of its own.
func TestSetUpOfManyOutputs(t *testing.T) {
	w := words(t)
	for n := range 6 {
		u := &SetUp{Volume: 20, Chosen: "output 2"}
		for i := range n {
			u.Outputs = append(u.Outputs, Output{Name: fmt.Sprint("output ", i), Mean: time.Duration(i-2) * ms, When: "3 March"})
		}
		s := u.Screen(w)
		require.NoError(t, screenproof.Check(s))
		marked := 0
		for i := range n {
			id := fmt.Sprintf("output-%d-", i+1)
			for _, what := range []string{"use", "anew", "forget"} {
				require.Equal(t, u.Outputs[i].Name, s.Find(id+what).Value)
				require.Contains(t, s.Find(id+what).Name, u.Outputs[i].Name)
			}
			if s.Find(id + "use").Pressed {
				marked++
				require.Contains(t, s.Find(id+"figures").Text, "In use.")
			}
		}
		require.Equal(t, n > 2, marked == 1)
	}
}
