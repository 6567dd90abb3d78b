package session

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

var someDay = time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC)

// What is set at the sound check before there is a set-up is kept under the
// default name, goes with the name that Set-up brings, and is no set-up.
func TestOutputsCheckedThenMeasured(t *testing.T) {
	var o Outputs
	o.set(Check{Later: 180}, "this device")
	require.Equal(t, "this device", o.Chosen)
	require.Nil(t, o.measured())
	o.set(Check{Later: 190, Wide: true}, "another name, which it does not need")
	require.Len(t, o.List, 1)
	require.Equal(t, Check{Later: 190, Wide: true}, o.check())

	o.put(Output{Name: "headphones", Mean: 170, When: someDay})
	require.Len(t, o.List, 1, "it has a name now")
	require.Equal(t, "headphones", o.measured().Name)
	require.Equal(t, Check{Later: 190, Wide: true}, o.check())

	o.put(Output{Name: "loudspeaker", Mean: 20, When: someDay})
	require.Len(t, o.List, 2)
	require.Zero(t, o.check(), "another output, of which nothing is known")
	o.put(Output{Name: "headphones", Mean: 160, When: someDay})
	require.Equal(t, 160., o.measured().Mean)
	require.Equal(t, 190, o.check().Later, "measured anew, and the picture stays")

	o.forget("headphones")
	require.Nil(t, o.in())
	require.Zero(t, o.check())
	o.set(Check{Bass: 20}, "loudspeaker")
	require.Len(t, o.List, 1)
	require.Equal(t, 20., o.measured().Mean, "the name was known")
}

// A text of before the sound check is read as it was, and one of now has only
// what was set.
func TestOutputsAsText(t *testing.T) {
	const old = `{"chosen":"studio","outputs":[{"name":"studio","mean":38.5,"spread":12,"when":"2026-01-31T18:30:00Z"}]}`
	var o Outputs
	require.NoError(t, json.Unmarshal([]byte(old), &o))
	require.Equal(t, Output{Name: "studio", Mean: 38.5, Spread: 12, When: someDay}, *o.measured())
	text, err := json.Marshal(o)
	require.NoError(t, err)
	require.Equal(t, old, string(text))

	o = Outputs{}
	o.set(Check{Later: -40, Bass: 60, Wide: true}, "here")
	text, err = json.Marshal(o)
	require.NoError(t, err)
	require.Equal(t, `{"chosen":"here","outputs":[{"name":"here","mean":0,"spread":0,"later":-40,"bass":60,"wide":true}]}`, string(text))
	var again Outputs
	require.NoError(t, json.Unmarshal(text, &again))
	require.Equal(t, o, again)
}

// What is kept may have been written by anybody.
func TestOutputsWithinBounds(t *testing.T) {
	for kept, want := range map[Check]Check{
		{Later: 9000, Bass: 900}:   {Later: 500, Bass: view.MostBass},
		{Later: -9000, Bass: -900}: {Later: -100},
	} {
		o := Outputs{Chosen: "x", List: []Output{{Name: "x", Check: kept}}}
		require.Equal(t, want, o.check())
	}
}

// A round says which output it was played on, and its mean, if that was measured;
// one that the sound check alone knows is none.
func TestRecordsOfOutputs(t *testing.T) {
	for _, c := range []struct {
		output Output
		name   string
		mean   time.Duration
	}{
		{Output{Name: "studio", Mean: 38, When: someDay, Check: Check{Later: 50}}, "studio", 38 * time.Millisecond},
		{Output{Name: "this device", Check: Check{Later: 50}}, "", 0},
	} {
		g, _, _ := newTestGame(t, readyLink)
		g.desk.outputs = Outputs{Chosen: c.output.Name, List: []Output{c.output}}
		require.Equal(t, c.name, g.desk.blank(history.Dums, "maqsum").Output)
		require.Equal(t, c.mean, g.desk.setup())
		g.desk.visit("?screen=set-up")
		s := g.desk.screen()
		require.Equal(t, c.name != "", s.Find("outputs") != nil, "Set-up lists what it measured")
	}
}
