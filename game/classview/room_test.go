package classview

import (
	"math/rand/v2"
	"strconv"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// roomsOf goes through a warm-up of a seed, each of its stages as a room sees it.
func roomsOf(t *testing.T, seed uint64, each func(*Room, *warmup.Task)) {
	t.Helper()
	set, _ := warmup.Preset("riff")
	set.Seed = seed
	w, err := warmup.NewWarmup(set, catalogue(t))
	require.NoError(t, err)
	chance := rand.New(rand.NewPCG(seed, 3))
	for i := range w.Tasks {
		task := &w.Tasks[i]
		for stage := warmup.Asking; stage <= warmup.Hearing; stage++ {
			if !task.Kind.Counted() && (stage == warmup.Counting || stage == warmup.Hearing) {
				continue
			}
			each(roomOf(task, stage, i+1, len(w.Tasks), chance), task)
		}
	}
}

// roomOf is a task at a stage, all that may be one way or another by chance.
func roomOf(task *warmup.Task, stage warmup.Stage, nth, of int, chance *rand.Rand) *Room {
	yes := func() bool { return chance.IntN(2) == 1 }
	r := &Room{Stage: stage, Kind: task.Kind, Nth: nth, Of: of, Ends: "18:42", Rhythm: task.Rhythm,
		Sounds: yes(), Heard: yes(), Slower: yes(), Letters: yes(), Narrow: yes(), Lined: yes(), Help: view.Help{Alone: yes()}}
	if stage < warmup.Telling && task.Kind == warmup.HandsUp {
		r.Rhythm = nil
	}
	if stage == warmup.Counting {
		c := task.Choices[chance.IntN(len(task.Choices))]
		r.Answer = view.Option{Value: c.ID, Label: named(task, c.ID)}
		r.Hands = []warmup.Hands{"", warmup.Most, warmup.None, "7", "120"}[chance.IntN(5)]
	}
	if stage >= warmup.Telling && task.Kind.Counted() {
		r.Told = toldOf(task, chance)
	}
	return r
}

// named is what an answer is called: a rhythm by its name, all else by its id.
func named(task *warmup.Task, id string) string {
	if c, ok := task.Choice(id); ok && c.Rhythm != nil {
		return c.Rhythm.Name
	}
	return id
}

func toldOf(task *warmup.Task, chance *rand.Rand) *Told {
	told := &Told{Right: view.Option{Value: task.Right, Label: named(task, task.Right)}, Sides: [2]*rhythm.Cycle{task.Rhythm, task.Other}}
	for _, c := range task.Choices {
		if c.ID != task.Right && told.Taken.Value == "" {
			told.Taken = view.Option{Value: c.ID, Label: named(task, c.ID)}
			told.Hands = []warmup.Hands{"", warmup.Some, "1", "12"}[chance.IntN(4)]
			if c.Rhythm != nil {
				told.Sides[1], told.Differences = c.Rhythm, rhythm.Differ(task.Rhythm, c.Rhythm)
			}
		}
	}
	return told
}

// Every stage of every task of whole warm-ups is a screen that a room can read and a
// screen reader too: one heading, in focus, one thing to do, four parts in their places.
func TestEveryStageIsWhole(t *testing.T) {
	w := words(t)
	for seed := uint64(1); seed <= 12; seed++ {
		roomsOf(t, seed, func(r *Room, task *warmup.Task) {
			s := r.Screen(w)
			require.NoError(t, screenproof.Check(s), "%v %d", task, r.Stage)
			require.NotContains(t, screenproof.Text(t, s), "{", "%v %d", task, r.Stage)
			first, primary := 0, 0
			s.Each(func(it *view.Item) {
				if it.Role == view.RoleHeading && it.Level == 1 {
					first++
				}
				if it.Look == view.LookPrimary {
					primary++
				}
			})
			require.Equal(t, [2]int{1, 1}, [2]int{first, primary})
			require.Equal(t, view.RoleHeading, s.Find(s.FocusID()).Role)
			require.Equal(t, "say", s.Items[0].ID)
			require.Equal(t, "drum", s.Items[1].ID)
			require.Equal(t, "foot", s.Items[len(s.Items)-1].ID)
			require.True(t, s.Room)
		})
	}
}

// What a key or a button of the hands sends is taken by the hands that it is sent to.
func TestHandsAreTaken(t *testing.T) {
	w := words(t)
	for seed := uint64(1); seed <= 4; seed++ {
		roomsOf(t, seed, func(r *Room, _ *warmup.Task) {
			s := r.Screen(w)
			for _, k := range s.Keys {
				if k.Action == view.ActClassHands {
					require.Equal(t, warmup.Hands(k.Value), warmup.Hands("").Press(k.Value), k.Key)
				}
			}
			s.Each(func(it *view.Item) {
				if it.Action == view.ActClassHands {
					require.Equal(t, warmup.Hands(it.Value), warmup.Hands(warmup.Most).Press(it.Value), it.ID)
				}
			})
		})
	}
}

// While something is asked by ear, no name of a rhythm that may be the answer stands
// anywhere, but the one that hands are counted for.
func TestNoNameStandsInAQuestion(t *testing.T) {
	w := words(t)
	for seed := uint64(1); seed <= 12; seed++ {
		roomsOf(t, seed, func(r *Room, task *warmup.Task) {
			if task.Kind != warmup.HandsUp || r.Stage > warmup.Counting {
				return
			}
			text := strings.ToLower(screenproof.Text(t, r.Screen(w)))
			for _, c := range task.Choices {
				if r.Stage == warmup.Asking || c.ID != r.Answer.Value {
					require.NotContains(t, strings.Fields(strings.Trim(text, `"?`)), `"`+strings.ToLower(view.Plain(c.Rhythm.Name)))
					require.NotContains(t, text, strings.ToLower(c.Rhythm.Name)+"?")
				}
			}
		})
	}
}

// Before it is told no line stands but the one that is spoken from, as long as it shall
// stand; and the drum shows no strokes but those.
func TestLineStandsWhereItMay(t *testing.T) {
	w := words(t)
	for seed := uint64(1); seed <= 8; seed++ {
		roomsOf(t, seed, func(r *Room, task *warmup.Task) {
			s := r.Screen(w)
			may := r.Stage >= warmup.Telling || task.Kind == warmup.SayIt && r.Lined
			require.Equal(t, may, s.Find("line") != nil, "%v %d", task, r.Stage)
			require.Equal(t, may, r.Turns(), "%v %d", task, r.Stage)
			require.Equal(t, may, len(r.Head().Base) > 0)
			if line := s.Find("line"); line != nil {
				require.Equal(t, r.Sounds, line.Place == view.PlaceLine, "it moves while it is heard")
				require.Equal(t, r.Sounds, line.Picture == nil)
			}
		})
	}
}

// The line in a picture stays within its frame, whatever the rhythm, on a wall and on a
// telephone.
func TestEveryRhythmsLineStaysInside(t *testing.T) {
	w := words(t)
	for _, c := range everyRhythm(t) {
		for _, narrow := range []bool{false, true} {
			r := &Room{Stage: warmup.Telling, Kind: warmup.CatchTheStop, Rhythm: c, Narrow: narrow}
			line := r.Screen(w).Items[2]
			require.Equal(t, "line", line.ID)
			screenproof.RequireInside(t, line.Picture)
			require.InDelta(t, 1/line.Picture.Height, line.Aspect, 1e-9)
			wall := r.Wall()
			require.LessOrEqual(t, wall.Columns, map[bool]int{false: 16, true: 8}[narrow], c.ID)
			rows := (c.Steps() + wall.Columns - 1) / wall.Columns
			require.Less(t, wall.Columns*(rows-1), c.Steps(), "no row is empty")
		}
	}
	require.Empty(t, (&Room{}).Wall().Rows, "without a rhythm there is nothing on it")
}

// The one button says what comes: it is played, then hands are counted, or on to the next.
func TestAskingLeadsOn(t *testing.T) {
	w := words(t)
	for _, k := range warmup.Kinds() {
		name := func(sounds, heard bool) string {
			r := roomTask(t, warmup.Asking, k)
			r.Sounds, r.Heard = sounds, heard
			s := r.Screen(w)
			require.Equal(t, !sounds && !heard, s.Find("once").Disabled, "nothing was heard yet to be heard once more")
			require.Equal(t, sounds, !s.Find("alone").Disabled)
			return s.Find("go").Name
		}
		after := w.Say("class-on")
		if k.Counted() {
			after = w.Say("class-to-hands")
		}
		require.Equal(t, w.Say("play"), name(false, false), k)
		require.Equal(t, w.Say("class-on"), name(true, false), k)
		require.Equal(t, w.Say("class-on"), name(true, true), k)
		require.Equal(t, after, name(false, true), k)
	}
}

// Each kind asks in words of its own, and has an id of its own for its heading, so that
// the focus goes there anew.
func TestKindsAskInTheirOwnWords(t *testing.T) {
	w := words(t)
	asks, hows, names := map[string]bool{}, map[string]bool{}, map[string]bool{}
	for _, k := range warmup.Kinds() {
		r := roomTask(t, warmup.Asking, k)
		s := r.Screen(w)
		require.Equal(t, "heading-"+string(k), s.FocusID())
		ask, how := s.Find(s.FocusID()).Name, s.Find("how").Text
		require.False(t, asks[ask] || hows[how] || names[sayTask(w, k)], k)
		asks[ask], hows[how], names[sayTask(w, k)] = true, true, true
	}
}

// Once the line is gone that is said aloud; before and for other kinds it is not.
func TestLineGoneIsSaid(t *testing.T) {
	w := words(t)
	for _, k := range warmup.Kinds() {
		for _, lined := range []bool{true, false} {
			r := roomTask(t, warmup.Asking, k)
			r.Lined = lined
			it := find(r.Screen(w), "alone-now")
			require.Equal(t, k == warmup.SayIt && !lined, it != nil, "%s %t", k, lined)
			if it != nil {
				require.Equal(t, view.LivePolite, it.Live)
			}
		}
	}
}

// While hands are counted, what was counted is pressed and said, and can be taken back;
// before that, the hint says what can be pressed.
func TestCountingShowsWhatWasCounted(t *testing.T) {
	w := words(t)
	for _, hands := range append(warmup.HandsWords(), "", "0", "7", "120") {
		r := roomTask(t, warmup.Counting, warmup.HandsUp)
		r.Answer, r.Hands = view.Option{Value: "saidi", Label: "sa'idi (upper Egypt)"}, hands
		s := r.Screen(w)
		for _, h := range warmup.HandsWords() {
			require.Equal(t, h == hands, s.Find("hands-"+string(h)).Pressed, "%q %q", h, hands)
		}
		require.Equal(t, hands == "", s.Find("or-number") != nil)
		require.Equal(t, hands != "", s.Find("clear") != nil)
		require.Equal(t, hands == "", s.Find("counted").Text == "")
		if _, err := strconv.Atoi(string(hands)); err == nil {
			require.Contains(t, s.Find("counted").Text, string(hands))
		}
		require.Equal(t, "Hands up for sa'idi?", s.Find("heading-for-saidi").Name, "what stands in brackets is not asked")
	}
}

// The hands' words are told apart, and a number is said as it is.
func TestSayHands(t *testing.T) {
	w, seen := words(t), map[string]bool{}
	for _, h := range warmup.HandsWords() {
		require.False(t, seen[sayHands(w, h)], h)
		seen[sayHands(w, h)] = true
	}
	require.Equal(t, "12", sayHands(w, "12"))
	require.Empty(t, sayHands(w, ""))
	require.NotEqual(t, sayBase(w, warmup.OnBase), sayBase(w, warmup.OffBase))
}

// What the drumhead shows in a room has no figures, which would be too small; its twin in
// words has them.
func TestRoomHeadHasNoFigures(t *testing.T) {
	w := words(t)
	r := toldRoom(t, warmup.HandsUp, view.Option{Value: "saidi", Label: "sa'idi"}, view.Option{})
	require.Empty(t, r.Head().Counts)
	require.Contains(t, find(r.Screen(w), "head").Text, "4 counts go once round")
	require.Equal(t, picture.Head{Hidden: true}, (&Room{Stage: warmup.WalkIn}).Head(), "nothing plays, so nothing is shown")
}
