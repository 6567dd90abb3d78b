package roundview

import (
	"bytes"
	"maps"
	"os"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/view"
	"groundbeat/scoring"
	"groundbeat/scoring/stat"
)

func dums(t testing.TB, phase view.Phase) *Dums {
	return &Dums{
		Phase:  phase,
		Rhythm: view.RhythmName{ID: "maqsum", Name: "maqsum", Script: "مقسوم", Lang: "ar", Dir: "rtl"},
		Base:   pattern(t, "DT-TD-T-"), Counts: inFour,
		BPM: 96, Slow: 60, Fast: 140, Eights: 4,
	}
}

func result(t testing.TB, r *picture.Review) *Result {
	setUp := 12 * ms
	out := &Result{Asked: 16, On: 7, Landed: len(r.Landed), LeftOut: len(r.LeftOut), Added: len(r.Added),
		Bias: 15 * ms, Spread: 29 * ms, Lean: leanIn(r), SetUp: &setUp, Measured: true, Counts: r.Tally(pattern(t, "DT-TD-T-"), inFour)}
	for _, l := range r.Landed[:6] {
		state := TapOn
		if l.Offset > r.On {
			state = TapBehind
		}
		if l.Offset < -r.On {
			state = TapAhead
		}
		out.Taps = append(out.Taps, TapResult{1 + l.Step/16, picture.CountName(inEight, l.Step%16), state, l.Offset})
	}
	out.Taps = append(out.Taps, TapResult{Eight: 4, Count: "7", State: TapLeftOut},
		TapResult{Eight: 4, Count: "8", State: TapAdded})
	return out
}

// leanIn is the mean of a review's offsets.
func leanIn(r *picture.Review) scoring.Estimate {
	var p stat.Played
	for i, l := range r.Landed {
		p.Pairs = append(p.Pairs, scoring.Pair{Stroke: i, Tap: i, Offset: l.Offset})
	}
	return p.Bias()
}

func screens(t testing.TB) map[string]view.Screen {
	w, all := words(t), map[string]view.Screen{}
	add := func(name string, phase view.Phase, change func(*Dums)) {
		d := dums(t, phase)
		change(d)
		all["dums-"+name] = d.Screen(w)
	}
	add("ready", view.Ready, func(d *Dums) { d.Notes = []view.Note{view.NoteQuiet} })
	add("ready-odd", view.Ready, func(d *Dums) {
		d.Rhythm, d.Eights, d.Hidden = view.RhythmName{ID: "x", Name: "x"}, 3, true
		d.Notes = []view.Note{view.NoteNoSound, view.NoteNotKept}
	})
	add("playing", view.Playing, func(*Dums) {})
	add("review", view.Reviewing, func(d *Dums) {
		d.Review = played()
		d.Result = result(t, d.Review)
		d.Notes = []view.Note{view.NoteCoarse}
	})
	add("review-nothing", view.Reviewing, func(d *Dums) {
		d.BPM = d.Slow
		d.Review = &picture.Review{Steps: 64, StepTime: 400 * ms, On: 25 * ms}
		d.Result = &Result{Asked: 16, LeftOut: 16, Counts: d.Review.Tally(d.Base, d.Counts)}
		d.Notes = []view.Note{view.NoteNoSetUp}
	})
	add("review-unmeasured", view.Reviewing, func(d *Dums) {
		d.Review = played()
		for i := range d.Review.Landed {
			d.Review.Landed[i].Offset += 30 * ms
		}
		d.Result = result(t, d.Review)
		d.Result.SetUp, d.Result.Measured = nil, false
		d.Notes = []view.Note{view.NoteNoSetUp}
	})
	add("void-cut", view.Voided, func(*Dums) {})
	add("void-hidden", view.Voided, func(d *Dums) { d.Why = view.WhyHidden })
	add("void-paused", view.Voided, func(d *Dums) { d.Why = view.WhyPaused })

	add("ready-rhythms", view.Ready, func(d *Dums) {
		d.Core, d.More = append(core(t), AnyOption(w)), more(t)
		d.Level, d.Levels = view.LevelBare, []string{view.LevelBare, view.LevelFilled}
	})
	add("ready-riff", view.Ready, func(d *Dums) {
		d.Level, d.Levels, d.Hide, d.Hides, d.Notes = view.LevelSolo, allLevels, view.MostHide, new(0.5), []view.Note{view.NoteRiffs}
	})
	add("review-riff", view.Reviewing, func(d *Dums) {
		d.Level, d.Review, d.Again = view.LevelRiffing, played(), Again{Hearing: true, Drums: DrumsBass, Slowly: true}
		d.Review.Open, d.Review.LeftOut = []picture.OpenSteps{{28, 32, false}, {58, 64, true}}, nil
		d.Review.Landed = slices.DeleteFunc(d.Review.Landed, func(l picture.Landed) bool { return l.Step == 28 || l.Step == 60 })
		d.Result = result(t, d.Review)
		d.Result.Open = Opened(d.Review, cycle(t, "maqsum").CountInEight, 16)
	})
	add("any-ready", view.Ready, func(d *Dums) {
		d.Any, d.From, d.BPM = true, view.FromFive, 0
		d.Core, d.More = append(core(t), AnyOption(w)), more(t)
	})
	add("any-ready-asked", view.Ready, func(d *Dums) {
		d.Any, d.From, d.FromNames = true, "malfuf.saidi", []string{"malfuf", "sa'idi"}
	})
	add("any-playing", view.Playing, func(d *Dums) { d.Any = true })
	add("any-review", view.Reviewing, func(d *Dums) {
		d.Any, d.Review = true, played()
		d.Result = result(t, d.Review)
	})
	for name, query := range map[string]string{
		"link-home":   "screen=hom",
		"link":        "rhythm=maqsoum&bpm=900&zoom=2",
		"link-listen": "screen=listen&rhythm=saidi&answers=2",
		"link-which":  "screen=which&rhythm=maqsum&ask=howmany",
		"link-any":    "rhythm=any&eights=0&from=waltz",
		"link-set-up": "screen=setup&seed=3",
		"link-check":  "screen=soundcheck&bpm=90",
		"link-change": "screen=change&eights=2",
	} {
		nearest, err := link.Parse(query, allowed)
		link := &link.WrongLink{Problems: err.(*link.Error).Problems, Nearest: nearest, Rhythm: nearest.Rhythm}
		all[name] = link.Screen(w)
	}
	maps.Copy(all, listenScreens(t))
	maps.Copy(all, whichScreens(t))
	maps.Copy(all, setUpScreens(t))
	maps.Copy(all, soundCheckScreens(t))
	maps.Copy(all, homeScreens(t))
	maps.Copy(all, diaryScreens(t))
	maps.Copy(all, practiceScreens(t))
	maps.Copy(all, changeScreens(t))
	maps.Copy(all, stopScreens(t))
	maps.Copy(all, classScreens(t))
	maps.Copy(all, carryScreens(t))
	return all
}

func TestScreens(t *testing.T) {
	for name, s := range screens(t) {
		t.Run(name, func(t *testing.T) {
			require.NoError(t, view.Check(s))
			var b bytes.Buffer
			require.NoError(t, view.Dump(&b, s))
			require.NotContains(t, b.String(), "{", "a placeholder was not filled")

			golden(t, name+".txt", b.Bytes())
		})
	}
}

// One button is named Begin, before a round or a practice and nowhere else.
func TestOnlyOneBegin(t *testing.T) {
	for name, s := range screens(t) {
		n := 0
		s.Each(func(it *view.Item) {
			if it.Role == view.RoleButton && it.Name == "Begin" {
				n++
			}
		})
		before := strings.Contains(name, "-ready") || name == "practice-plan" || name == "practice-plan-first"
		require.Equal(t, before && !strings.HasPrefix(name, "listen"), n == 1, name)
	}
}

// While a round is played nothing is announced, and there is nothing but a line that says
// what to do, the drumhead and the ways out.
func TestPlayingIsQuiet(t *testing.T) {
	s := screens(t)["dums-playing"]
	var ids []string
	s.Each(func(it *view.Item) {
		ids = append(ids, it.ID)
		require.Empty(t, it.Live)
	})
	require.Equal(t, []string{"heading", "tap", "head", "bar", "home", "alone", "hands", "stop"}, ids)
	require.Equal(t, "tap", s.FocusID())
}

func TestGoldensAreUsed(t *testing.T) {
	files, err := os.ReadDir("testdata")
	require.NoError(t, err)
	known := map[string]bool{"fuzz": true, "thirty-days.txt": true}
	for name := range screens(t) {
		known[name+".txt"] = true
	}
	for name := range pictures(t) {
		known[name+".svg"] = true
	}
	for _, f := range files {
		require.True(t, known[f.Name()], "testdata/%s is no golden of any test", f.Name())
	}
}

func TestCheckFinds(t *testing.T) {
	for _, c := range []struct {
		name string
		item view.Item
		want string
	}{
		{"no id", view.Item{Role: view.RoleText, Text: "a"}, "no id"},
		{"twice", view.Item{ID: "h", Role: view.RoleText, Text: "a"}, "id used twice"},
		{"no role", view.Item{ID: "a"}, "no role"},
		{"look", view.Item{ID: "a", Role: view.RoleText, Text: "a", Look: "loud"}, `look "loud"`},
		{"dir", view.Item{ID: "a", Role: view.RoleText, Text: "a", Dir: "up"}, `direction "up"`},
		{"live", view.Item{ID: "a", Role: view.RoleStatus, Live: "loud"}, `live "loud"`},
		{"heading", view.Item{ID: "a", Role: view.RoleHeading, Name: "a"}, "heading of level 0"},
		{"text", view.Item{ID: "a", Role: view.RoleText}, "text without text"},
		{"figure", view.Item{ID: "a", Role: view.RoleText, Text: "a", Look: view.LookFigure}, "figure without a value"},
		{"button name", view.Item{ID: "a", Role: view.RoleButton, Action: "a"}, "button without a name"},
		{"button action", view.Item{ID: "a", Role: view.RoleButton, Name: "a"}, "button without an action"},
		{"choice", view.Item{ID: "a", Role: view.RoleChoice, Name: "a", Action: "a", Value: "2", Options: []view.Option{{"1", "one"}}}, `value "2" is none`},
		{"option", view.Item{ID: "a", Role: view.RoleChoice, Name: "a", Action: "a", Value: "1", Options: []view.Option{{"1", ""}}}, "without a label"},
		{"choice of nothing", view.Item{ID: "a", Role: view.RoleChoice, Name: "a", Action: "a"}, "choice of nothing"},
		{"file", view.Item{ID: "a", Role: view.RoleFile, Name: "a"}, "file without an action"},
		{"one end", view.Item{ID: "a", Role: view.RoleSlider, Name: "a", Action: "a", Max: 2, Step: 1, Ends: [2]string{"x"}}, "only one end"},
		{"slider", view.Item{ID: "a", Role: view.RoleSlider, Name: "a", Action: "a", Min: 1, Max: 2, Num: 3, Step: 1}, "3 is not from 1 to 2"},
		{"slider step", view.Item{ID: "a", Role: view.RoleSlider, Name: "a", Action: "a", Min: 1, Max: 2, Num: 1}, "step 0"},
		{"progress", view.Item{ID: "a", Role: view.RoleProgress, Name: "a"}, "from 0 to 0"},
		{"list", view.Item{ID: "a", Role: view.RoleList}, "empty list"},
		{"list of texts", view.Item{ID: "a", Role: view.RoleList, Children: []view.Item{{ID: "b", Role: view.RoleText, Text: "b"}}}, "no list item"},
		{"list item", view.Item{ID: "a", Role: view.RoleListItem}, "empty list item"},
		{"table", view.Item{ID: "a", Role: view.RoleTable, Name: "a", Columns: []string{"a"}, Rows: [][]string{{"a", "b"}}}, "not as long"},
		{"picture", view.Item{ID: "a", Role: view.RolePicture, Name: "a", Aspect: 1, Place: "a"}, "without a text twin"},
		{"picture of nothing", view.Item{ID: "a", Role: view.RolePicture, Name: "a", Text: "a", Aspect: 1}, "shapes or a place"},
		{"status", view.Item{ID: "a", Role: view.RoleStatus}, "never announced"},
		{"group", view.Item{ID: "a", Role: view.RoleGroup}, "empty group"},
		{"dialog", view.Item{ID: "a", Role: view.RoleDialog, Name: "a", Action: "a"}, "empty dialog"},
		{"details", view.Item{ID: "a", Role: view.RoleDetails, Name: "a"}, "empty details"},
		{"link", view.Item{ID: "a", Role: view.RoleLink, Name: "a"}, "link to nowhere"},
		{"tap area", view.Item{ID: "a", Role: view.RoleTapArea, Name: "a"}, "taparea without an action"},
	} {
		t.Run(c.name, func(t *testing.T) {
			s := view.Screen{ID: "s", Title: "t", Lang: "en", Dir: "ltr", Items: []view.Item{view.Heading("h", "h"), c.item}}
			require.ErrorContains(t, view.Check(s), c.want)
		})
	}
	require.ErrorContains(t, view.Check(view.Screen{}), "nothing to focus")
	require.ErrorContains(t, view.Check(view.Screen{ID: "s", Title: "t", Lang: "en", Dir: "ltr", Focus: "x"}), `focus "x" is not`)
}

func TestTwins(t *testing.T) {
	w := words(t)
	h := heads(t)["head-review"]
	require.Equal(t, "The drum seen from above. 4 counts go once round, clockwise. Dum on 1 and 3; tek on 1 &, 2 & and 4. "+
		"Your 1: 8 of 8 tapped, mean 8 ms ahead. Your 3: 7 of 8 tapped, mean 41 ms behind. 2 taps added. "+
		"On the drumhead, distances from a dum are drawn 2 times as long as they are.", h.Twin(w))
	require.NotContains(t, heads(t)["head-play"].Twin(w), "Dum on", "what is hidden is not told")
	require.NotContains(t, lines(t)["line-hidden"].Twin(w), "Dum on", "what is hidden is not told")
	require.Contains(t, lines(t)["line-left-out"].Twin(w), "Your 3: left out every time.")
}

func TestCountName(t *testing.T) {
	for i, want := range []string{"1", "1 &", "2", "2 &", "3"} {
		require.Equal(t, want, picture.CountName(inFour, i))
	}
	require.Equal(t, "", picture.CountName(nil, 0))
	require.Equal(t, "&", picture.CountName([]string{"&"}, 0))
}

func TestSame(t *testing.T) {
	a, b := screens(t), screens(t)
	for name, s := range a {
		other := b[name]
		s.Each(func(it *view.Item) {
			twin := other.Find(it.ID)
			require.True(t, view.Same(it, twin), "%s #%s", name, it.ID)
			require.Zero(t, testing.AllocsPerRun(10, func() { view.Same(it, twin) }))
			changed := *twin
			changed.Name += "x"
			require.False(t, view.Same(it, &changed))
		})
	}
	base := view.Item{ID: "a", Role: view.RoleTable, Rows: [][]string{{"1"}}, Options: []view.Option{{"a", "b"}}, Picture: &picture.Picture{}}
	for i, change := range []func(*view.Item){
		func(it *view.Item) { it.Rows = [][]string{{"2"}} }, func(it *view.Item) { it.Columns = []string{"a"} },
		func(it *view.Item) { it.Options = nil }, func(it *view.Item) { it.Picture = nil },
		func(it *view.Item) { it.Picture = &picture.Picture{Shapes: make([]picture.Shape, 1)} }, func(it *view.Item) { it.Disabled = true },
		func(it *view.Item) { it.Ends[1] = "a" },
		func(it *view.Item) { it.Num = 1 }, func(it *view.Item) { it.Aspect = 2 }, func(it *view.Item) { it.Text = "a" },
	} {
		other := base
		change(&other)
		require.False(t, view.Same(&base, &other), i)
	}
}

// A frame of the busiest drumhead allocates nothing once the picture has grown.
func TestDrawingAllocatesNothing(t *testing.T) {
	for name, h := range heads(t) {
		p := &picture.Picture{}
		h.Draw(p)
		require.Zero(t, testing.AllocsPerRun(20, func() { p.Reset(); h.Draw(p) }), name)
	}
}

func TestColumns(t *testing.T) {
	for _, c := range []struct {
		steps, perBeat int
		width          float64
		review         bool
		want           int
	}{
		{8, 2, 900, false, 8}, {8, 2, 300, false, 8}, {8, 2, 300, true, 4}, {16, 2, 300, false, 8},
		{16, 2, 900, false, 16}, {16, 4, 300, false, 8}, {16, 4, 100, false, 8}, {9, 1, 100, false, 9},
	} {
		require.Equal(t, c.want, picture.Columns(c.steps, c.perBeat, c.width, c.review), "%+v", c)
	}
}

func TestEnlarged(t *testing.T) {
	h := heads(t)["head-review"] // a cycle of 2.5 s: 100 ms are 0.04 turns, room for 0.11
	require.Equal(t, 2, h.Enlarged())
	h.Review.StepTime = 900 * time.Millisecond
	require.Equal(t, 7, h.Enlarged(), "7.2 s: 0.0139 turns, 7.9 fit")
	h.Review.StepTime = 10 * time.Second
	require.Equal(t, 8, h.Enlarged(), "at most 8")
	h.Base = pattern(t, "DD-TD-T-")
	h.Review.StepTime = 312500 * time.Microsecond
	require.Equal(t, 1, h.Enlarged(), "0.46 of an eighth of a turn: 0.0575")
	h.Review = nil
	require.Equal(t, 1, h.Enlarged())
}

func BenchmarkHead(b *testing.B) {
	h := heads(b)["head-review"]
	p := &picture.Picture{}
	b.ReportAllocs()
	for b.Loop() {
		p.Reset()
		h.Draw(p)
	}
}
