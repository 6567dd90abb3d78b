package host_test

import (
	"encoding/json"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/game/host"
	"groundbeat/game/soundview"
)

var someDay = time.Date(2026, 1, 31, 18, 30, 0, 0, time.UTC)

// What is set at the sound check before there is a set-up is kept under the
// default name, goes with the name that Set-up brings, and is no set-up.
func TestOutputsCheckedThenMeasured(t *testing.T) {
	var o host.Outputs
	o.Adjust(host.Adjustment{Later: 180}, "this device")
	require.Equal(t, "this device", o.Chosen)
	require.Nil(t, o.Measured())
	o.Adjust(host.Adjustment{Later: 190, Wide: true}, "another name, which it does not need")
	require.Len(t, o.List, 1)
	require.Equal(t, host.Adjustment{Later: 190, Wide: true}, o.Adjustment())

	o.Put(host.Output{Name: "headphones", Mean: 170, When: someDay})
	require.Len(t, o.List, 1, "it has a name now")
	require.Equal(t, "headphones", o.Measured().Name)
	require.Equal(t, host.Adjustment{Later: 190, Wide: true}, o.Adjustment())

	o.Put(host.Output{Name: "loudspeaker", Mean: 20, When: someDay})
	require.Len(t, o.List, 2)
	require.Zero(t, o.Adjustment(), "another output, of which nothing is known")
	o.Put(host.Output{Name: "headphones", Mean: 160, When: someDay})
	require.Equal(t, 160., o.Measured().Mean)
	require.Equal(t, 190, o.Adjustment().Later, "measured anew, and the picture stays")

	o.Forget("headphones")
	require.Nil(t, o.InUse())
	require.Zero(t, o.Adjustment())
	o.Adjust(host.Adjustment{Bass: 20}, "loudspeaker")
	require.Len(t, o.List, 1)
	require.Equal(t, 20., o.Measured().Mean, "the name was known")
}

// A text of before the sound check is read as it was, and one of now has only
// what was set.
func TestOutputsAsText(t *testing.T) {
	const old = `{"chosen":"studio","outputs":[{"name":"studio","mean":38.5,"spread":12,"when":"2026-01-31T18:30:00Z"}]}`
	var o host.Outputs
	require.NoError(t, json.Unmarshal([]byte(old), &o))
	require.Equal(t, host.Output{Name: "studio", Mean: 38.5, Spread: 12, When: someDay}, *o.Measured())
	text, err := json.Marshal(o)
	require.NoError(t, err)
	require.Equal(t, old, string(text))

	o = host.Outputs{}
	o.Adjust(host.Adjustment{Later: -40, Bass: 60, Wide: true}, "here")
	text, err = json.Marshal(o)
	require.NoError(t, err)
	require.Equal(t, `{"chosen":"here","outputs":[{"name":"here","mean":0,"spread":0,"later":-40,"bass":60,"wide":true}]}`, string(text))
	var again host.Outputs
	require.NoError(t, json.Unmarshal(text, &again))
	require.Equal(t, o, again)
}

// What is kept may have been written by anybody.
func TestOutputsWithinBounds(t *testing.T) {
	for kept, want := range map[host.Adjustment]host.Adjustment{
		{Later: 9000, Bass: 900}:   {Later: 500, Bass: soundview.MostBass},
		{Later: -9000, Bass: -900}: {Later: -100},
	} {
		o := host.Outputs{Chosen: "x", List: []host.Output{{Name: "x", Adjustment: kept}}}
		require.Equal(t, want, o.Adjustment())
	}
}
