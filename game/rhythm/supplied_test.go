package rhythm_test

import (
	"os"
	"regexp"
	"strings"
	"sync"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

// supplied loads the rhythms that the program comes with.
func supplied(t testing.TB) *rhythm.Catalogue {
	t.Helper()
	c, err := loaded()
	require.NoError(t, err)
	return c
}

var loaded = sync.OnceValues(func() (*rhythm.Catalogue, error) { return rhythm.Load(os.DirFS("../../assets")) })

func get(t testing.TB, id string) *rhythm.Cycle {
	t.Helper()
	c, found := supplied(t).Get(id)
	require.True(t, found, id)
	return c
}

// said returns the counts of one kind of stroke as they are said.
func said(c *rhythm.Cycle, kind func(rhythm.Stroke) bool) []string {
	var all []string
	for _, step := range c.Skeleton.Pulses(kind).Onsets() {
		all = append(all, c.Spoken(step))
	}
	return all
}

// What holds for every rhythm that is supplied.
func TestSuppliedFacts(t *testing.T) {
	address := regexp.MustCompile(`https?://\S+$`)
	all := supplied(t)
	for _, id := range all.IDs() {
		t.Run(id, func(t *testing.T) {
			c, _ := all.Get(id)
			require.NotEmpty(t, c.Spellings)
			require.NotEmpty(t, c.Role)
			require.NotEmpty(t, c.Family)
			require.NotEmpty(t, c.Filled)
			require.NotEmpty(t, c.Sources)
			for _, source := range c.Sources {
				require.Regexp(t, address, source)
			}
			if c.Tempo.About {
				require.Contains(t, strings.Join(c.Memory, "\n"), "tempo")
			}
			if c.Differ {
				require.Contains(t, strings.Join(c.Notes, "\n"), "sources differ: ", "say in what")
			}
			found, ok := all.Find(c.Name)
			require.True(t, ok)
			require.Same(t, c, found)
		})
	}
}

// "listen" names the counts of every dum, then of every tek, and then says more:
// "dums on 1 and on 3, teks on the & of 1 and on 4; each dum stands alone".
func TestSuppliedListen(t *testing.T) {
	form := regexp.MustCompile(`^(?:dums|one dum) (on [^;]*), (?:teks|one tek) (on [^;]*); \S`)
	for _, id := range supplied(t).IDs() {
		t.Run(id, func(t *testing.T) {
			c := get(t, id)
			parts := form.FindStringSubmatch(c.Listen)
			require.NotNil(t, parts, c.Listen)
			require.Equal(t, said(c, rhythm.Stroke.Low), counted(parts[1]))
			require.Equal(t, said(c, rhythm.Stroke.High), counted(parts[2]))
		})
	}
}

// counted returns the counts that follow each "on".
func counted(text string) []string {
	var all []string
	for _, part := range strings.Split(" "+text, " on ")[1:] {
		all = append(all, strings.TrimSuffix(strings.TrimSuffix(part, " and"), ","))
	}
	return all
}
