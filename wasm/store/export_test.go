//go:build js

package store

import (
	"encoding/csv"
	"strings"
	"syscall/js"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/wasm/dom"
	"groundbeat/wasm/idb"
)

// A sheet has a row for each round, by time, under the names of its columns, and says
// who played. What cannot be read is not in it.
func TestSheet(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		all := practice(t, 0, 3, 3)
		s.keepNow(t, all[1])
		s.addNow(t, "=Amira")
		s.keepNow(t, all[2], all[0])
		if s.err == nil {
			s.change(t, func(tx idb.Transaction) error { return tx.Add(roundsStore, "cut", "{") })
		}
		parts, err := s.sheet(host.Everybody)
		require.NoError(t, err)
		text, bom := strings.CutPrefix(parts.Call("join", "").String(), "\uFEFF")
		require.True(t, bom)
		rows, err := csv.NewReader(strings.NewReader(text)).ReadAll()
		require.NoError(t, err)
		require.Len(t, rows, 4)
		players := map[string][]string{}
		for _, row := range rows[1:] {
			players[row[0]] = append(players[row[0]], row[1])
		}
		require.Equal(t, map[string][]string{"": {all[1].When}, "'=Amira": {all[0].When, all[2].When}}, players)
	})
}

// downloads catches files that are handed over: their names, and a promise of their
// texts.
func downloads(t *testing.T) js.Value {
	caught := js.Global().Call("eval", `(() => {
		const caught = { names: [], blobs: [] }, make = URL.createObjectURL, click = HTMLAnchorElement.prototype.click;
		URL.createObjectURL = (blob) => { caught.blobs.push(blob); return "#" };
		HTMLAnchorElement.prototype.click = function () { caught.names.push(this.download) };
		caught.end = () => { URL.createObjectURL = make; HTMLAnchorElement.prototype.click = click };
		return caught;
	})()`)
	t.Cleanup(func() { caught.Call("end") })
	return caught
}

// A file has the nickname in its name, as far as file names may, and its kind.
func TestFiles(t *testing.T) {
	both(t, func(t *testing.T, s *Store) {
		caught := downloads(t)
		all := practice(t, 0, 2, 2)
		s.keepNow(t, all[0])
		amira := s.addNow(t, "A/m:i*ra.")
		s.keepNow(t, all[1])
		for i, person := range []string{host.Everybody, firstPerson.Id, amira.ID} {
			require.NoError(t, done(func(done func(error)) { s.ExportLines(person, done) }))
			name := []string{"groundbeat-rounds.jsonl", "groundbeat-rounds.jsonl", "groundbeat-rounds-A-m-i-ra-.jsonl"}[i]
			require.Equal(t, name, caught.Get("names").Index(i).String())
			blob := caught.Get("blobs").Index(i)
			require.Equal(t, "application/jsonl", blob.Get("type").String())
			text, err := dom.Await(blob.Call("text"))
			require.NoError(t, err)
			hers := of(t, amira.Name, all[1])
			require.Equal(t, []string{jsonl(t, all[0]) + hers, jsonl(t, all[0]), hers}[i], text.String())
		}
		require.NoError(t, done(func(done func(error)) { s.ExportSheet(amira.ID, done) }))
		require.Equal(t, "groundbeat-rounds-A-m-i-ra-.csv", caught.Get("names").Index(3).String())
		require.Equal(t, "text/csv", caught.Get("blobs").Index(3).Get("type").String())
		js.Global().Get("URL").Set("createObjectURL", js.Undefined())
		require.Error(t, done(func(done func(error)) { s.ExportLines(amira.ID, done) }), "what cannot be handed over is told")
	})
}
