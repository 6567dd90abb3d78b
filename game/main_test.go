//go:build js

package game

import (
	"os"
	"testing"

	"github.com/hajimehoshi/ebiten/v2"
)

// TestMain runs the tests inside the engine's loop, where pictures can be drawn
// and read back. The engine runs once in a program, so all tests share it.
func TestMain(m *testing.M) {
	stage := &testStage{tests: m}
	if err := ebiten.RunGame(stage); err != nil {
		panic(err)
	}
	os.Exit(stage.code)
}

type testStage struct {
	tests *testing.M
	code  int
}

func (s *testStage) Update() error {
	s.code = s.tests.Run()
	return ebiten.Termination
}

func (s *testStage) Draw(*ebiten.Image) {}

func (s *testStage) Layout(int, int) (int, int) { return 320, 240 }
