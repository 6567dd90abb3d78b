package memo

import (
	"fmt"
	"math/rand/v2"
	"testing"

	"github.com/stretchr/testify/require"
)

func Example() {
	here, there := Notes{}, Notes{}
	a, _ := here.Write("output/studio", "38 ms", 1000)
	b, _ := there.Write("output/headphones", "170 ms", 1001)
	here.Take(b)
	there.Take(a)
	for _, n := range there.Under("output/") {
		fmt.Println(n.Key, n.Text)
	}
	// Output:
	// output/studio 38 ms
	// output/headphones 170 ms
}

func TestWrite(t *testing.T) {
	all := Notes{}
	n, new := all.Write("a", "one", 1000)
	require.True(t, new)
	require.Equal(t, Note{"a", "one", 1000}, n)
	_, new = all.Write("a", "one", 2000)
	require.False(t, new)
	n, _ = all.Write("a", "two", 500)
	require.Equal(t, int64(1001), n.When, "the clock was set back")
	require.Equal(t, "two", all.Text("a"))
	n, new = all.Write("a", "", 3000)
	require.True(t, new)
	require.Equal(t, Note{"a", "", 3000}, n)
	require.Empty(t, all.Text("a"))
	require.Empty(t, all.Under(""))
	_, new = all.Write("b", "", 3000)
	require.False(t, new, "there was none")
	n, _ = all.Write("b", "x", 0)
	require.Greater(t, n.When, int64(Found))
}

// What an earlier program kept never takes the place of what was written since, not even
// of the mark that it was removed.
func TestFound(t *testing.T) {
	all := Notes{}
	require.True(t, all.Take(Note{"a", "old", Found}))
	all.Write("a", "", 1000)
	require.False(t, all.Take(Note{"a", "old", Found}))
	require.Empty(t, all.Text("a"))
}

// Whatever windows write, and in whatever order they learn of it, all have the same in
// the end; and nothing that was written last under its key is lost.
func TestSameInTheEnd(t *testing.T) {
	for seed := range uint64(200) {
		chance := rand.New(rand.NewPCG(seed, 1))
		windows := []Notes{{}, {}, {}}
		var written []Note
		for i := range 40 {
			text := fmt.Sprint(chance.IntN(3))
			if text == "0" {
				text = ""
			}
			w := windows[chance.IntN(3)]
			if n, new := w.Write(fmt.Sprint("key", chance.IntN(5)), text, int64(1000+i/4)); new {
				written = append(written, n)
			}
			if len(written) > 0 {
				windows[chance.IntN(3)].Take(written[chance.IntN(len(written))])
			}
		}
		for _, w := range windows {
			for _, i := range chance.Perm(len(written)) {
				w.Take(written[i])
			}
		}
		require.Equal(t, windows[0], windows[1])
		require.Equal(t, windows[0], windows[2])
		for _, n := range written {
			require.False(t, n.later(windows[0][n.Key]))
		}
	}
}

func TestUnder(t *testing.T) {
	all := Notes{}
	all.Write("set/b", "2", 10)
	all.Write("set/a", "3", 20)
	all.Write("set/c", "gone", 5)
	all.Write("set/c", "", 30)
	all.Write("other", "x", 1)
	require.Equal(t, []Note{{"set/b", "2", 10}, {"set/a", "3", 20}}, all.Under("set/"))
	require.Empty(t, all.Under("none/"))
}

func TestFormatAndParse(t *testing.T) {
	n := Note{"a", "line\n\"two\"", 1234}
	require.Equal(t, `{"text":"line\n\"two\"","when":1234}`, n.Format())
	again, err := Parse("a", n.Format())
	require.NoError(t, err)
	require.Equal(t, n, again)
	for _, line := range []string{"", "5", "{", `{"text":5,"when":1}`, `{"text":"x"}`, `{"text":"x","when":-3}`} {
		_, err := Parse("a", line)
		require.ErrorContains(t, err, "a: ", line)
	}
}

func TestChanges(t *testing.T) {
	for _, c := range []struct{ was, is, want map[string]string }{
		{nil, nil, nil},
		{nil, map[string]string{"a": "1"}, map[string]string{"a": "1"}},
		{map[string]string{"a": "1"}, nil, map[string]string{"a": ""}},
		{map[string]string{"a": "1", "b": "2", "c": "3"}, map[string]string{"a": "1", "b": "4", "d": "5"},
			map[string]string{"b": "4", "c": "", "d": "5"}},
	} {
		require.Equal(t, c.want, Changes(c.was, c.is))
	}
	is := map[string]string{"a": "1"}
	Changes(is, is)
	require.Len(t, is, 1, "what is given stays as it is")
}
