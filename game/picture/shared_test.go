package picture

import (
	"testing"

	"groundbeat/game/proof"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/say"
)

// What these tests share with others, by short names.

func words(t testing.TB) say.Words                   { return proof.Words(t) }
func cycle(t testing.TB, id string) *rhythm.Cycle    { return proof.Cycle(t, id) }
func supplied(t testing.TB, id string) *rhythm.Cycle { return proof.Supplied(t, id) }
func everyRhythm(t testing.TB) []*rhythm.Cycle       { return proof.EveryRhythm(t) }
func golden(t *testing.T, name string, got []byte)   { t.Helper(); proof.Golden(t, name, got) }

func riffed() riff.Part { return proof.Riffed() }

const levelBare, levelFilled, levelRiffing, levelSolo = "bare", "filled", "riffing", "solo"

// listened is a rhythm as one listens to it: at a level of the lead drum, on a line so
// many pixels wide.
type listened struct {
	Rhythm *rhythm.Cycle
	Level  string
	Riff   RiffCycle
	Board  float64
}

func (l *listened) Head() *Head {
	return &Head{Base: l.Rhythm.Skeleton, Riff: l.Riff, Counts: CountsOf(l.Rhythm.Base()), Groups: l.Rhythm.Grouping}
}

func (l *listened) Line(w say.Words) Line {
	if l.Level == levelBare {
		return LineOf(l.Rhythm, l.Rhythm.Base(), nil, l.Board)
	}
	form, lead := l.Rhythm.Base(), l.Rhythm.Filled
	if l.Level != levelFilled {
		form, lead = l.Rhythm.Form(make(rhythm.Pattern, min(4, 2*l.Rhythm.StepsPerBeat())*l.Rhythm.Beats())), nil
	}
	line := LineOf(l.Rhythm, form, lead, max(0, l.Board-Gutter))
	line.Wide, line.Riff, line.Names = l.Board, l.Riff, drums
	return line
}
