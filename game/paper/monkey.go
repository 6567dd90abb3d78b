package paper

import (
	"fmt"
	"math/rand/v2"
	"slices"

	"groundbeat/game/view"
)

// A Monkey does anything that can be done on the page, at random.
type Monkey struct {
	Did   []string // what it did, as an aid to whoever looks for what went wrong
	Files []string // texts that it opens

	b   *Browser
	rng *rand.Rand
}

// NewMonkey sits down before a browser; its chance is the seed's.
func NewMonkey(b *Browser, seed uint64) *Monkey {
	return &Monkey{b: b, rng: rand.New(rand.NewPCG(seed, 3)), Files: []string{"", "no rhythm\n"}}
}

// Step does one thing, and lets some time pass.
func (m *Monkey) Step() error {
	err := m.one()
	wait := []float64{0, 0, 16, 100, 100, 700, 3000}[m.rng.IntN(7)]
	if m.rng.IntN(60) == 0 {
		wait = 30_000 // it looks out of the window
	}
	m.b.Wait(wait)
	return err
}

func (m *Monkey) did(format string, a ...any) { m.Did = append(m.Did, fmt.Sprintf(format, a...)) }

func (m *Monkey) one() error {
	if UnderWay(m.b.Screen()) && m.rng.IntN(3) == 0 {
		m.play()
		return nil
	}
	switch m.rng.IntN(40) {
	case 0:
		m.did("back")
		_ = m.b.Back() // it may be at the first entry
	case 1:
		m.did("forward")
		_ = m.b.Forward()
	case 2:
		m.happens()
	case 3, 4, 5:
		if s := m.b.Screen(); len(s.Keys) > 0 {
			k := s.Keys[m.rng.IntN(len(s.Keys))].Key
			m.did("key %s", k)
			return m.b.Key(k)
		}
	case 6:
		if m.b.Screen().Escape != "" {
			m.did("Escape")
			return m.b.Key("Escape")
		}
	default:
		return m.use()
	}
	return nil
}

// happens is what nobody presses.
func (m *Monkey) happens() {
	what := []struct {
		name string
		do   func()
	}{
		{"gap", m.b.Gap},
		{"interrupt", m.b.Interrupt},
		{"stall", func() { m.b.Stall(1500) }},
		{"hide", func() { m.b.Hide(true); m.b.Wait(2000); m.b.Hide(false) }},
		{"resize", func() { m.b.Resize(320 + 1000*m.rng.Float64()) }},
		{"reload", m.b.Load},
		{"full", func() { m.b.Storage.Full = !m.b.Storage.Full }},
	}[m.rng.IntN(7)]
	m.did("%s", what.name)
	what.do()
}

// use uses any control that is shown.
func (m *Monkey) use() error {
	all := controls(m.b.Screen())
	if len(all) == 0 {
		return nil
	}
	it := all[m.rng.IntN(len(all))]
	m.did("%s %s on %s", it.Role, it.ID, m.b.Screen().ID)
	switch it.Role {
	case view.RoleButton:
		if m.rng.IntN(10) == 0 {
			_ = m.b.Queue(it.ID) // in haste, twice
		}
		return m.b.Press(it.ID)
	case view.RoleChoice:
		return m.b.Choose(it.ID, it.Options[m.rng.IntN(len(it.Options))].Value)
	case view.RoleSlider:
		steps := int((it.Max - it.Min) / it.Step)
		return m.b.Slide(it.ID, it.Min+it.Step*float64(m.rng.IntN(steps+1)))
	case view.RoleField:
		return m.b.Type(it.ID, []string{"", "Mira", "Leila", "7", "a name that goes on and on and on, longer than any nickname may"}[m.rng.IntN(5)])
	case view.RoleCheckBox:
		return m.b.Tick(it.ID, !it.Checked)
	case view.RoleFile:
		return m.b.OpenFile(it.ID, "file", m.Files[m.rng.IntN(len(m.Files))])
	case view.RoleTapArea:
		return m.b.Tap(m.b.Wall.Now())
	}
	return fmt.Errorf("paper: nobody knows how to use %s", it.Role)
}

// play plays what is under way, in one manner or another, perhaps to its end.
func (m *Monkey) play() {
	p := NewPlayer(m.b, m.rng.Uint64())
	p.Manner = Manner(m.rng.IntN(3))
	m.did("play in manner %d", p.Manner)
	p.PlayFor(60_000 * m.rng.Float64())
}

// Lately is what it did last.
func (m *Monkey) Lately() []string { return slices.Clone(m.Did[max(0, len(m.Did)-25):]) }
