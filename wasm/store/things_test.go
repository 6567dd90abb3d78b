//go:build js

package store

import (
	"syscall/js"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/wasm/idb"
	"groundbeat/wasm/memo"
)

// kept are the texts of the things that the database has, by key.
func (d *database) things(t *testing.T) map[string]string {
	t.Helper()
	all := memo.Notes{}
	news, err := d.putTogether(memo.Notes{})
	require.NoError(t, err)
	texts := map[string]string{}
	for _, n := range news {
		require.True(t, all.Take(n), "one record a thing")
		if n.Text != "" {
			texts[n.Key] = n.Text
		}
	}
	return texts
}

func output(name string, mean float64) host.Output {
	return host.Output{Name: name, Mean: mean, When: time.Date(2026, 1, 31, 18, int(mean), 0, 0, time.UTC)}
}

// measures adds an output to those that a window knows, as Set-up does.
func (s *Store) measures(t *testing.T, o *host.Outputs, one host.Output) {
	t.Helper()
	o.List, o.Chosen = append(o.List, one), one.Name
	require.NoError(t, s.KeepOutputs(*o))
}

// Two windows that were opened beside each other measure an output each, and one keeps a
// set: each has all of it in the end, and so has the next one.
func TestTwoWindowsKeepThings(t *testing.T) {
	local := small()
	one, other := openStore(t, t.Name(), local), openStore(t, t.Name(), local)
	one.tune()
	other.tune()
	told := make(chan string, 9)
	other.Told = func(what string) { told <- what }
	a, b := one.Outputs(), other.Outputs()
	other.measures(t, &b, output("headphones", 50))
	one.measures(t, &a, output("studio", 38))
	room := &Classroom{Store: one}
	require.NoError(t, room.Keep("set/Monday", "class set 1"))
	for range 3 { // the output, that it is chosen, and the set
		require.Equal(t, host.Things, <-told)
	}
	want := []host.Output{output("studio", 38), output("headphones", 50)}
	require.Equal(t, host.Outputs{Chosen: "studio", List: want}, other.Outputs())
	require.Equal(t, []string{"class set 1"}, (&Classroom{Store: other}).KeptUnder("set/"))
	one.join()
	other.join()
	for _, local := range []js.Value{local, js.Null()} { // by the one or by the other storage
		next := openStore(t, t.Name(), local)
		require.Equal(t, host.Outputs{Chosen: "studio", List: want}, next.Outputs())
		require.Equal(t, []string{"class set 1"}, (&Classroom{Store: next}).KeptUnder("set/"))
	}
	require.Len(t, one.database.things(t), 4)

	b = other.Outputs()
	b.List = b.List[:1] // the headphones are forgotten
	require.NoError(t, other.KeepOutputs(b))
	other.join()
	next := openStore(t, t.Name(), js.Null())
	require.Equal(t, want[:1], next.Outputs().List)
}

// A window that is told nothing, since the browser has no channel, loses nothing of the
// other's either, and finds it when it writes.
func TestTwoWindowsWithoutChannel(t *testing.T) {
	one, other := openStore(t, t.Name(), js.Null()), openStore(t, t.Name(), js.Null())
	a, b := one.Outputs(), other.Outputs()
	one.measures(t, &a, output("studio", 38))
	one.join()
	told := 0
	other.Told = func(string) { told++ }
	other.measures(t, &b, output("headphones", 50))
	other.join()
	require.Equal(t, 1, told)
	require.Len(t, other.Outputs().List, 2)
	require.Len(t, other.database.things(t), 3)
}

// What was written last before the page was left is there at the next start, before the
// database is opened, and gets into it.
func TestThingsAtTheStart(t *testing.T) {
	local := small()
	s := Make(local, js.Null())
	s.Remember("volume", "0")
	s.KeepBegun()
	s.things.timer.Stop() // the page is left
	again := Make(local, js.Null())
	require.Equal(t, "0", again.Remembered("volume"))
	require.True(t, again.Begun())
	next := openStore(t, t.Name(), local)
	require.Equal(t, map[string]string{"setting/volume": "0", "begun": "yes"}, next.database.things(t))
	require.NoError(t, done(func(done func(error)) { next.Erase("", done) }))
	require.Len(t, next.database.things(t), 2, "it is of no person")
}

// A write is put into the database after a lull, and at once where there is no local
// storage.
func TestThingsAreWritten(t *testing.T) {
	for name, local := range map[string]js.Value{"laid": small(), "not laid": js.Null()} {
		t.Run(name, func(t *testing.T) {
			s := openStore(t, t.Name(), local)
			for _, text := range []string{"1", "2", "3"} {
				s.Remember("volume", text)
			}
			require.Eventually(t, func() bool { return s.database.things(t)["setting/volume"] == "3" }, 5*time.Second, 20*time.Millisecond)
		})
	}
	s := withoutStorage()
	require.Error(t, s.write("output/x", "y"), "it holds for this visit")
	require.Equal(t, "y", s.things.Text("output/x"))
}

const (
	setA = "class set 1\nname: A\nfrom: five\nriff: bare\nkinds: which\nminutes: 10\n"
	setB = "class set 1\nname: B\nfrom: even\nriff: filled\nkinds: which\nminutes: 20\n"
)

// earlier is a local storage as earlier programs left it.
func earlier(t *testing.T) js.Value {
	t.Helper()
	local := small()
	for key, text := range map[string]string{
		"groundbeat.begun":         "yes",
		"groundbeat.outputs":       `{"v":1,"chosen":"studio","outputs":[{"name":"studio","mean":38.5,"spread":12,"when":"2026-01-31T18:30:00Z"},{"name":"here","mean":0,"spread":0,"later":40}]}`,
		"groundbeat.class.sets":    setA + "\n" + setB,
		"groundbeat.class.diary":   "one\ntwo\n",
		"groundbeat.class.run":     "a run",
		"groundbeat.class.letters": "no",
		"groundbeat.player":        "first",
	} {
		require.NoError(t, idb.SetItem(local, key, text))
	}
	return local
}

var earlierThings = map[string]string{
	"begun": "yes", "output-chosen": "studio",
	"output/studio": `{"name":"studio","mean":38.5,"spread":12,"when":"2026-01-31T18:30:00Z"}`,
	"output/here":   `{"name":"here","mean":0,"spread":0,"later":40}`,
	"class/set/A":   setA, "class/set/B": setB, "class/run": "a run", "class/letters": "no",
	"class/diary/one": "one", "class/diary/two": "two",
}

// What earlier programs kept is there at once, gets into the database, and is taken over
// once: what is removed since does not come back.
func TestEarlierThings(t *testing.T) {
	local := earlier(t)
	s := openStore(t, t.Name(), local)
	require.Equal(t, earlierThings, s.database.things(t))
	require.True(t, s.Begun())
	require.Equal(t, "studio", s.Outputs().Chosen)
	room := &Classroom{Store: s}
	require.Equal(t, []string{setA, setB}, room.KeptUnder(host.KeptSet))
	require.NoError(t, room.Keep("set/A", ""))
	again := Make(local, js.Null())
	require.Equal(t, []string{setB}, (&Classroom{Store: again}).KeptUnder(host.KeptSet))
	require.Contains(t, idb.Item(local, "groundbeat.class.sets"), "name: A", "an earlier page finds what it had")
}

// A start that is cut anywhere in the middle of it loses nothing: what was written so far
// is read by the next one, which goes on.
func TestEarlierThingsCut(t *testing.T) {
	for cut := range 25 {
		local := earlier(t)
		set := local.Get("setItem")
		local.Set("setItem", js.Global().Call("eval", `(set, left) => (k, v) => { if (left-- > 0) set(k, v) }`).Invoke(set, cut))
		Make(local, js.Null()) // and nothing of what it does from then on is kept
		local.Set("setItem", set)
		s := Make(local, js.Null())
		got := map[string]string{}
		for _, n := range s.things.Under("") {
			got[n.Key] = n.Text
		}
		require.Equal(t, earlierThings, got, "cut after %d", cut)
	}
}

// An earlier page that goes on writing where it did: what it changes is taken over, and
// what was written here meanwhile stays.
func TestEarlierPageGoesOn(t *testing.T) {
	local := earlier(t)
	s := Make(local, js.Null())
	o := s.Outputs()
	s.measures(t, &o, output("headphones", 50))
	room := &Classroom{Store: s}
	require.NoError(t, room.Keep("set/C", setA))
	s.things.timer.Stop()
	require.NoError(t, idb.SetItem(local, "groundbeat.class.sets", setB))
	require.NoError(t, idb.SetItem(local, "groundbeat.outputs", `{"v":1,"chosen":"studio","outputs":[{"name":"studio","mean":40,"spread":12,"when":"2026-02-01T18:30:00Z"}]}`))

	again := Make(local, js.Null())
	require.Equal(t, []string{setB, setA}, (&Classroom{Store: again}).KeptUnder(host.KeptSet))
	var names []string
	for _, one := range again.Outputs().List {
		names = append(names, one.Name)
	}
	require.ElementsMatch(t, []string{"headphones", "studio"}, names)
	require.Contains(t, again.things.Text("output/studio"), `"mean":40`)
}

// What cannot be read is set aside, not lost, and nothing else is touched.
func TestEarlierThingsBroken(t *testing.T) {
	local := earlier(t)
	Make(local, js.Null())
	require.NoError(t, idb.SetItem(local, "groundbeat.outputs", `{"v":2}`))
	for range 2 {
		s := Make(local, js.Null())
		require.Len(t, s.Outputs().List, 2)
		require.Equal(t, `{"v":2}`, idb.Item(local, "groundbeat.outputs.broken"))
	}
}

// Each of two windows, loaded anew, stands where it stood; a new one stands where the
// last one does.
func TestWhereAWarmUpStands(t *testing.T) {
	local := small()
	room := func(session js.Value) *Classroom { return &Classroom{Store: Make(local, session)} }
	one, other := small(), small()
	require.NoError(t, room(one).Keep("run", "task 2"))
	require.NoError(t, room(other).Keep("run", "task 5"))
	require.Equal(t, "task 2", room(one).Kept("run"))
	require.Equal(t, "task 5", room(other).Kept("run"))
	require.Equal(t, "task 5", room(small()).Kept("run"))
	require.NoError(t, room(one).Keep("run", ""))
	require.Empty(t, room(one).Kept("run"), "it was put away")
}
