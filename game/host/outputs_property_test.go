package host_test

import (
	"math/rand/v2"
	"slices"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
)

// shelf is what a person knows of her outputs: what was done last with each.
type shelf struct {
	t      *testing.T
	chance *rand.Rand
	host.Outputs
}

// before is a copy, to be compared with what comes of it.
func (s *shelf) before() host.Outputs {
	return host.Outputs{Chosen: s.Chosen, List: slices.Clone(s.List)}
}

func find(o host.Outputs, name string) (host.Output, bool) {
	i := slices.IndexFunc(o.List, func(one host.Output) bool { return one.Name == name })
	if i < 0 {
		return host.Output{}, false
	}
	return o.List[i], true
}

// others are the outputs of other names, in their order.
func others(o host.Outputs, names ...string) []host.Output {
	return slices.DeleteFunc(append([]host.Output{}, o.List...), func(one host.Output) bool { return slices.Contains(names, one.Name) })
}

func (s *shelf) name() string {
	return []string{"studio", "headphones", "this device"}[s.chance.IntN(3)]
}

func (s *shelf) adjustment() host.Adjustment {
	return host.Adjustment{Later: s.chance.IntN(300), Bass: s.chance.IntN(40), Wide: s.chance.IntN(2) == 0}
}

// adjusts is the sound check: it sets the output in use, or brings one into use.
func (s *shelf) adjusts() {
	was, name, set := s.before(), s.name(), s.adjustment()
	s.Adjust(set, name)
	in, known := find(was, was.Chosen)
	if !known {
		in, _ = find(was, name)
		in.Name = name
	}
	require.Equal(s.t, in.Name, s.Chosen)
	in.Adjustment = set
	require.Equal(s.t, in, *s.InUse(), "what was measured stays")
	require.Equal(s.t, others(was, in.Name), others(s.Outputs, in.Name), "and the others are as they were")
}

// puts is Set-up: it measures an output under a name.
func (s *shelf) puts() {
	was := s.before()
	one := host.Output{Name: s.name(), Mean: s.chance.NormFloat64(), Spread: 1, When: someDay.Add(time.Duration(s.chance.IntN(1e9)))}
	from, known := find(was, one.Name)
	if in, used := find(was, was.Chosen); !known && used && in.When.IsZero() {
		from = in
	}
	s.Put(one)
	one.Adjustment = from.Adjustment
	require.Equal(s.t, one, *s.Measured())
	require.Equal(s.t, others(was, one.Name, from.Name), others(s.Outputs, one.Name))
}

// forgets drops one.
func (s *shelf) forgets() {
	was, name := s.before(), s.name()
	s.Forget(name)
	require.Equal(s.t, others(was, name), others(s.Outputs), "it, and no other")
	if was.Chosen == name {
		require.Nil(s.t, s.InUse())
	} else {
		require.Equal(s.t, was.Chosen, s.Chosen)
	}
}

// Whatever is done in whatever order, names stay apart, what is in use is there, and an
// output has what was set and measured of it last.
func TestOutputsInAnyOrder(t *testing.T) {
	for seed := range uint64(200) {
		s := &shelf{t: t, chance: rand.New(rand.NewPCG(seed, 2))}
		for range 40 {
			switch s.chance.IntN(5) {
			case 0, 1:
				s.adjusts()
			case 2, 3:
				s.puts()
			default:
				s.forgets()
			}
			names := map[string]bool{}
			for _, one := range s.List {
				require.False(t, names[one.Name], "seed %d: %s is there twice", seed, one.Name)
				names[one.Name] = true
			}
			require.Equal(t, s.Chosen != "", s.InUse() != nil, "seed %d: %q of %v", seed, s.Chosen, names)
			if in := s.InUse(); in != nil {
				require.Equal(t, in.Adjustment, s.Adjustment(), "within its bounds it is taken as it is")
				require.Equal(t, !in.When.IsZero(), s.Measured() != nil)
			}
		}
	}
}

// A name that is chosen and gone is none: nothing is measured, and nothing is set.
func TestAnOutputThatIsGone(t *testing.T) {
	o := host.Outputs{Chosen: "gone", List: []host.Output{{Name: "studio", When: someDay, Adjustment: host.Adjustment{Later: 90}}}}
	require.Nil(t, o.InUse())
	require.Nil(t, o.Measured())
	require.Zero(t, o.Adjustment())
	o.Put(host.Output{Name: "new", When: someDay})
	require.Len(t, o.List, 2, "nobody's name is taken over")
	require.Zero(t, o.Adjustment())
}
