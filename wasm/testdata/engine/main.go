//go:build js

// Command engine is the least that the engine can show: one colour. Our page's
// first frame is measured against it.
package main

import (
	"image/color"

	"github.com/hajimehoshi/ebiten/v2"
)

type bare struct{}

func (bare) Update() error                       { return nil }
func (bare) Draw(screen *ebiten.Image)           { screen.Fill(color.Gray{Y: 128}) }
func (bare) Layout(width, height int) (int, int) { return width, height }

func main() {
	if err := ebiten.RunGame(bare{}); err != nil {
		panic(err)
	}
}
