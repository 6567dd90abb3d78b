//go:build js

// Package game is the loop: it hands what happened to the session, frame by frame,
// draws the live pictures, and is the only importer of the engine.
package game

import (
	"github.com/hajimehoshi/ebiten/v2"

	"groundbeat/game/host"
	"groundbeat/game/picture"
	"groundbeat/game/session"
)

// Game is the running game, as the engine sees it.
type Game struct {
	page    host.Page
	wall    host.Wall
	session *session.Session
	painter *painter

	places []host.Place
	events []host.Event
	jobs   []job
	scale  float64
	size   [2]int
	light  bool
	begun  bool // the first frame has been drawn
	redraw bool
}

// New makes the game ready to run; regular and bold are the fonts of its pictures.
func New(o host.Host, regular, bold []byte) *Game {
	return &Game{
		page: o.Page, wall: o.Wall, session: session.New(&o), painter: newPainter(regular, bold), scale: 1, redraw: true,
	}
}

// Run runs the game; it returns only if the engine cannot go on.
func (g *Game) Run() error {
	ebiten.SetTPS(ebiten.SyncWithFPS)
	ebiten.SetScreenClearedEveryFrame(false)
	return ebiten.RunGameWithOptions(g, &ebiten.RunGameOptions{InitUnfocused: true})
}

// Update implements [ebiten.Game].
func (g *Game) Update() error {
	g.events = g.page.Events(g.events[:0])
	now := g.wall.Now()
	for i := range g.events {
		g.session.Happened(&g.events[i])
	}
	g.session.Tick(now)
	return nil
}

// Draw implements [ebiten.Game]. A frame in which nothing changed is left as
// it is on the screen. The first frame is the ground alone: the words of the page
// do not wait for the engine to make ready what pictures need.
func (g *Game) Draw(screen *ebiten.Image) {
	g.places = g.places[:0]
	if g.begun {
		g.places = g.page.Places(g.places)
	}
	g.begun = true
	if !g.page.Canvas() {
		for _, place := range g.places {
			g.page.Sketch(place.Picture, g.session.Picture(place))
		}
		return
	}
	g.jobs = g.jobs[:0]
	for _, place := range g.places {
		if p := g.session.Picture(place); p != nil {
			g.jobs = append(g.jobs, job{place: place, picture: p})
		}
	}
	light := g.page.Light()
	if g.painter.same(g.jobs) && light == g.light && !g.redraw {
		return
	}
	g.light, g.redraw = light, false
	palette := picture.Dark()
	if light {
		palette = picture.Light()
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
