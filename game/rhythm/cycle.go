package rhythm

import "fmt"

// The tempi that a file may name, in beats a minute.
const (
	MinBPM = 20
	MaxBPM = 400
)

// maxBeats is the longest metre, in beats of one cycle.
const maxBeats = 32

// A Cycle is one rhythm: its strokes, how it is counted and played, and where
// the facts come from. Its methods expect a cycle as [Parse] makes it, and
// leave it unchanged.
type Cycle struct {
	ID        string   // the file's name less ".txt": a–z, 0–9 and hyphens
	Name      string   // as shown
	Script    string   // the name in its own script, or ""
	Spellings []string // other ways to write the name
	Family    string   // rhythms learned side by side share it, or ""
	Core      bool     // one of the most used
	Quiz      bool     // may be the answer to a question
	Differ    bool     // the sources differ on its strokes
	Metre     Metre
	Grouping  []int     // beats of each group; they sum to Metre.Beats; or nil
	Skeleton  Pattern   // the base: D, T, S and rests
	Filled    Pattern   // the skeleton with light strokes, on 1× or 2× its steps; or nil
	Variants  []Variant // other documented forms
	Tempo     Tempo
	Role      string   // where in a show it is used, or ""
	Listen    string   // what to listen for, in counts, or ""
	Notes     []string // other facts
	Sources   []string // whose facts these are
	Memory    []string // what no source backs
}

// A Metre is the number of beats in a cycle and the note that is one beat, by
// its part of a whole note: 9/8 is nine beats of an eighth.
type Metre struct{ Beats, Unit int }

// String returns the metre as it is printed, such as "4/4".
func (m Metre) String() string { return fmt.Sprintf("%d/%d", m.Beats, m.Unit) }

// beatNames names the unit of a metre.
var beatNames = map[int]string{2: "half", 4: "quarter", 8: "eighth", 16: "sixteenth"}

// A Tempo is the range of speeds that a rhythm is played at, in beats a minute
// with 20 ≤ Slow ≤ Usual ≤ Fast ≤ 400.
type Tempo struct {
	Slow, Usual, Fast int
	Beat              string // which note is the beat: "half", "quarter", "eighth", "sixteenth"
	About             bool   // from memory, not from a source
}

// A Variant is another form of a rhythm, on 1× or 2× the steps of its skeleton.
type Variant struct {
	Name    string
	Pattern Pattern
}

// Steps returns the number of steps in a cycle.
func (c *Cycle) Steps() int { return len(c.Skeleton) }

// Beats returns the number of beats, that is of counts, in a cycle.
func (c *Cycle) Beats() int { return c.Metre.Beats }

// StepsPerBeat returns how many steps share one beat: 1, 2 or 4.
func (c *Cycle) StepsPerBeat() int { return c.Base().StepsPerBeat() }

// Dums returns the steps of a cycle, from 0, on which the skeleton has a dum.
func (c *Cycle) Dums() []int { return c.Skeleton.Dums() }

// Odd reports whether the metre is odd in the dancer's sense: its cycles do not
// go evenly into eights, nor eights into its cycles. 9/8 and 10/8 are odd;
// 2/4, 4/4 and 8/4 are not.
func (c *Cycle) Odd() bool { return c.Metre.odd() }

func (m Metre) odd() bool { return eight%m.Beats != 0 && m.Beats%eight != 0 }
