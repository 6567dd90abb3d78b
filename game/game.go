//go:build js

// Package game is the loop: it owns the life of rounds, the live pictures and
// the sound's schedule, and is the only importer of the engine.
//
// What it needs from outside (sound, page, store, wall clock) it declares as
// small interfaces, which package wasm supplies. Words and controls are not
// here: a screen is made by package view and shown by the page.
package game

import (
	"github.com/hajimehoshi/ebiten/v2"

	"groundbeat/game/rhythm"
	"groundbeat/game/view"
)

// Outside is all that the game needs from outside.
type Outside struct {
	Sound   Sound
	Page    Page
	Store   Store
	Diary   Diary
	Wall    Wall
	Room    Room
	Words   view.Words
	First   *rhythm.Cycle            // that of Home's drumhead and of the first round
	Rhythms func() *rhythm.Catalogue // all; they need not be read before they are asked for
	Regular []byte                   // font of the pictures
	Bold    []byte
	Query   string // of the link that opened the page
	Export  func() // hands the player a file of all rounds
	Reload  func() // loads the page anew
}

// Game is the running game, as the engine sees it.
type Game struct {
	outside Outside
	desk    desk
	painter *painter

	places []Place
	events []Event
	jobs   []job
	scale  float64
	size   [2]int
	light  bool
	begun  bool // the first frame has been drawn
	redraw bool
}

// New makes the game ready to run.
func New(o Outside) *Game {
	g := &Game{outside: o, painter: newPainter(o.Regular, o.Bold), scale: 1, redraw: true}
	g.desk.open(&g.outside)
	return g
}

// Run runs the game; it returns only if the engine cannot go on.
func (g *Game) Run() error {
	ebiten.SetTPS(ebiten.SyncWithFPS)
	ebiten.SetScreenClearedEveryFrame(false)
	return ebiten.RunGameWithOptions(g, &ebiten.RunGameOptions{InitUnfocused: true})
}

// Update implements [ebiten.Game].
func (g *Game) Update() error {
	g.events = g.outside.Page.Events(g.events[:0])
	now := g.outside.Wall.Now()
	for i := range g.events {
		g.desk.happened(&g.events[i])
	}
	g.desk.tick(now)
	return nil
}

// Draw implements [ebiten.Game]. A frame in which nothing changed is left as
// it is on the screen. The first frame is the ground alone: the words of the page
// do not wait for the engine to make ready what pictures need.
func (g *Game) Draw(screen *ebiten.Image) {
	g.places = g.places[:0]
	if g.begun {
		g.places = g.outside.Page.Places(g.places)
	}
	g.begun = true
	if !g.outside.Page.Canvas() {
		for _, place := range g.places {
			g.outside.Page.Sketch(place.Picture, g.desk.picture(place))
		}
		return
	}
	g.jobs = g.jobs[:0]
	for _, place := range g.places {
		if p := g.desk.picture(place); p != nil {
			g.jobs = append(g.jobs, job{place: place, picture: p})
		}
	}
	light := g.outside.Page.Light()
	if g.painter.same(g.jobs) && light == g.light && !g.redraw {
		return
	}
	g.light, g.redraw = light, false
	palette := view.Dark()
	if light {
		palette = view.Light()
	}
	g.painter.draw(screen, g.jobs, &palette, g.scale)
}

// Layout implements [ebiten.Game]: one pixel of the game is one of the device.
func (g *Game) Layout(width, height int) (int, int) {
	g.scale = ebiten.Monitor().DeviceScaleFactor()
	size := [2]int{int(float64(width)*g.scale + 0.5), int(float64(height)*g.scale + 0.5)}
	if size != g.size {
		g.size, g.redraw = size, true
	}
	return size[0], size[1]
}
