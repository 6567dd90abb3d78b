//go:build js

package store

import (
	"fmt"
	"strings"
	"syscall/js"
	"time"

	"groundbeat/game/host"
	"groundbeat/wasm/idb"
	"groundbeat/wasm/memo"
)

// The things are small texts by key: the outputs, what belongs to classes, and what is
// remembered of settings. They belong to the database, one record a thing, where those of
// all windows are put together (package memo). Each also lies in the browser's local
// storage, so that they are there before the first frame, for which the database is not
// waited, and so that none is lost with a page that is left at once. A window that writes
// one tells the others.
//
// Earlier programs kept them in the local storage alone, several in one text: see
// earlier.go.
const thingKey = "groundbeat.thing." // followed by the thing's key

// The keys. Those that end in a slash are followed by a name.
const (
	outputThing  = "output/"
	chosenThing  = "output-chosen"
	begunThing   = "begun"
	classThing   = "class/"
	settingThing = "setting/"
)

// things are those of this window.
type things struct {
	memo.Notes
	timer *time.Timer // when they are put together with the database's next
	radio js.Value    // tells the other windows; undefined where the browser has none
}

// lull is how long nothing must be written before the database is written to: a slider
// that is drawn writes many times a second.
const lull = 300 * time.Millisecond

// loadThings reads what lies in the local storage.
func (s *Store) loadThings() {
	s.things.Notes = memo.Notes{}
	for _, key := range idb.ItemKeys(s.local, thingKey) {
		if n, err := memo.Parse(strings.TrimPrefix(key, thingKey), idb.Item(s.local, key)); err == nil {
			s.things.Take(n)
		}
	}
	s.takeEarlier()
}

// write writes a thing, or removes it if the text is "". The error tells that it holds
// for this visit only.
func (s *Store) write(key, text string) error {
	n, changed := s.things.Write(key, text, time.Now().UnixMilli())
	if !changed {
		return nil
	}
	s.broadcast(map[string]any{"key": n.Key, "text": n.Text, "when": float64(n.When)})
	err := s.lay(n)
	if s.things.timer != nil {
		s.things.timer.Stop()
	}
	wait := lull
	if err != nil { // then it is nowhere yet
		wait = 0
	}
	s.things.timer = time.AfterFunc(wait, s.put)
	if s.err == nil {
		return nil
	}
	return err
}

// lay lays a thing into the local storage.
func (s *Store) lay(n memo.Note) error { return idb.SetItem(s.local, thingKey+n.Key, n.Format()) }

// put puts the things together with those of the database, once it is opened.
func (s *Store) put() {
	<-s.opened
	s.join()
}

// join puts the things together with those of the database. Where that cannot be, they
// are put together when something is written next, or at the next start.
func (s *Store) join() {
	if s.err != nil {
		return
	}
	news, err := s.database.putTogether(s.things.Notes)
	if err != nil {
		fmt.Println("things:", err) // for whoever looks into the console
		return
	}
	for _, n := range news {
		if s.things.Take(n) {
			_ = s.lay(n) // the database has it
		}
	}
	if len(news) > 0 {
		s.Told(host.Things)
	}
}

// putTogether writes those things that the database has not, or not as late, and returns
// those of its own that are later.
func (d *database) putTogether(all memo.Notes) (news []memo.Note, err error) {
	err = d.write(func(t idb.Transaction) error {
		values, err := t.Await(t.Stores[thingsStore].Call("getAll"))
		if err != nil {
			return err
		}
		theirs := memo.Notes{}
		for i := range values.Length() {
			n := readThing(values.Index(i))
			theirs.Take(n)
			if mine, there := all[n.Key]; (!there || mine != n) && theirs[n.Key] == n {
				news = append(news, n)
			}
		}
		for _, n := range all {
			if theirs.Take(n) {
				if err := t.Put(thingsStore, thingValue(n)); err != nil {
					return err
				}
			}
		}
		return nil
	})
	return news, err
}

func thingValue(n memo.Note) map[string]any {
	return map[string]any{"key": n.Key, "text": n.Text, "when": float64(n.When)}
}

func readThing(v js.Value) memo.Note {
	return memo.Note{Key: v.Get("key").String(), Text: v.Get("text").String(), When: int64(v.Get("when").Float())}
}

// channelName is under what the windows of a browser tell one another.
const channelName = "groundbeat"

// tune listens to what the other windows tell.
func (s *Store) tune() {
	var err error
	defer idb.Recovered(&err)
	s.things.radio = js.Global().Get("BroadcastChannel").New(channelName)
	s.things.radio.Set("onmessage", js.FuncOf(func(_ js.Value, args []js.Value) any {
		s.hear(args[0].Get("data"))
		return nil
	}))
}

// hear takes what another window tells: a thing, or that rounds were kept.
func (s *Store) hear(data js.Value) {
	var err error
	defer idb.Recovered(&err)
	if data.Get("rounds").Truthy() {
		if len(s.memory.rounds) > 0 {
			go s.try()
		}
		s.Told(host.Rounds)
		return
	}
	if s.things.Take(readThing(data)) {
		s.Told(host.Things)
	}
}

func (s *Store) broadcast(message map[string]any) {
	var err error
	defer idb.Recovered(&err)
	if s.things.radio.Truthy() {
		s.things.radio.Call("postMessage", message)
	}
}

// Remembered implements [host.Store].
func (s *Store) Remembered(name string) string { return s.things.Text(settingThing + name) }

// Remember implements [host.Store].
func (s *Store) Remember(name, text string) { _ = s.write(settingThing+name, text) } // or it holds for this visit

// Begun implements [host.Store].
func (s *Store) Begun() bool { return s.things.Text(begunThing) != "" }

// KeepBegun implements [host.Store].
func (s *Store) KeepBegun() { _ = s.write(begunThing, "yes") } // where it can be kept
