package session

import (
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/audio"
	"groundbeat/audio/clock"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// Stand-ins for what is outside the game.

type testPage struct {
	shown  []view.Screen
	events []host.Event
	places []host.Place
	light  bool
	calm   bool
	theme  string
}

func (p *testPage) Show(s view.Screen) { p.shown = append(p.shown, s) }

func (p *testPage) Events(into []host.Event) []host.Event {
	into = append(into, p.events...)
	p.events = p.events[:0]
	return into
}

func (p *testPage) Places(into []host.Place) []host.Place { return append(into, p.places...) }
func (p *testPage) Canvas() bool                          { return true }
func (p *testPage) Sketch(string, *picture.Picture)       {}
func (p *testPage) Light() bool                           { return p.light }
func (p *testPage) Calm() bool                            { return p.calm }
func (p *testPage) Theme(theme string)                    { p.theme = theme }
func (p *testPage) Width() float64                        { return 800 }
func (p *testPage) TwoColumns() bool                      { return true }
func (p *testPage) Touch() bool                           { return false }
func (p *testPage) Link(string, string, bool)             {}
func (p *testPage) Back(string)                           {}

// testSound is heard as soon as it is played, by the test's own clock.
type testSound struct {
	wall  *testWall
	start float64
}

func (s *testSound) Play(int64)                   { s.start = s.wall.now }
func (s *testSound) Stop()                        {}
func (s *testSound) Next() int64                  { return 0 }
func (s *testSound) Schedule(...audio.Hit) error  { return nil }
func (s *testSound) Drop(int64)                   {}
func (s *testSound) Whole(int, int64, int64) bool { return true }
func (s *testSound) Balance(float64, float64)     {}
func (s *testSound) Stage(audio.Stage)            {}
func (s *testSound) Volume(float64)               {}
func (s *testSound) Audible() bool                { return true }

func (s *testSound) Heard(at float64) (clock.Position, error) {
	return clock.Position{Epoch: 1, Frame: (at - s.start) / 1000 * float64(audio.Rate), Rate: float64(audio.Rate), At: at}, nil
}

type testStore struct {
	kept    []history.Round
	begun   bool
	storage view.Storage
	saved   int // how often what waits was handed over
	outputs host.Outputs
	memory  map[string]string
}

func (s *testStore) Remembered(name string) string { return s.memory[name] }

func (s *testStore) Remember(name, text string) {
	if s.memory == nil {
		s.memory = map[string]string{}
	}
	s.memory[name] = text
}

func (s *testStore) Storage() view.Storage { return s.storage }
func (s *testStore) SaveWaiting() error    { s.saved++; return nil }

func (s *testStore) Outputs() host.Outputs        { return s.outputs }
func (*testStore) KeepOutputs(host.Outputs) error { return nil }
func (s *testStore) Begun() bool                  { return s.begun }
func (s *testStore) KeepBegun()                   { s.begun = true }
func (s *testStore) Keep(r history.Round, done func(error)) {
	s.kept = append(s.kept, r)
	done(nil)
}

type testWall struct{ now float64 }

func (w *testWall) Now() float64    { return w.now }
func (w *testWall) Date() time.Time { return time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC) }
func (w *testWall) Seed() uint64    { return 7 }
func (w *testWall) ID() string      { return "a1" }

// newTestGame is the session at a link, with one drumhead of 100 pixels at 10, 10.
func newTestGame(t *testing.T, query string) (*testGame, *testPage, *testWall) {
	t.Helper()
	return newTestGameOf(t, query, func(wall *testWall) host.Sound { return &testSound{wall: wall} })
}

// newTestGameOf is one with a sound of its own.
func newTestGameOf(t *testing.T, query string, sound func(*testWall) host.Sound) (*testGame, *testPage, *testWall) {
	t.Helper()
	words, err := say.Load(assets.Words)
	require.NoError(t, err)
	first, err := rhythm.Read(assets.Rhythms, link.FirstRound().Rhythm)
	require.NoError(t, err)
	rhythms, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	page := &testPage{places: []host.Place{{Picture: view.PlaceHead, X: 10, Y: 10, W: 100, H: 100}}}
	wall := &testWall{now: 1000}
	g := newGame(host.Host{
		Sound: sound(wall), Page: page, Store: &testStore{}, Diary: &testDiary{}, Wall: wall, Words: words,
		First: first, Rhythms: func() *rhythm.Catalogue { return rhythms },
		Query: query,
	})
	return g, page, wall
}

// testGame is a session with a page on which nothing is drawn.
type testGame struct {
	outside host.Host
	desk    *Session
	s       *Session
}

func newGame(o host.Host) *testGame {
	g := &testGame{outside: o}
	g.s = New(&g.outside)
	g.desk = g.s
	return g
}

// Update is a frame.
func (g *testGame) Update() error {
	for _, e := range g.outside.Page.Events(nil) {
		g.s.Happened(&e)
	}
	g.s.Tick(g.outside.Wall.Now())
	return nil
}

const readyLink = "?screen=dums&rhythm=maqsum&bpm=120&eights=1&riff=bare&seed=7"
