package link

import (
	"fmt"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/riff"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

func riffs() Allowed {
	return Allowed{Rhythms: []string{"maqsum", "saidi"}, Riffs: screenproof.AllLevels}
}

// How far the riff hides the base belongs to a link where there is a riff, on the
// screens that can ask for it; a link with a seed says for which riffs it was made.
func TestHideAndVersion(t *testing.T) {
	for _, c := range []struct{ query, again string }{
		{"screen=dums&riff=riffing&hide=60&seed=7", fmt.Sprintf("?screen=dums&rhythm=maqsum&eights=4&riff=riffing&hide=60&seed=7&v=%d", riff.Version)},
		{"screen=listen&riff=solo&hide=100", "?screen=listen&rhythm=maqsum&riff=solo&hide=100"},
		{"screen=which&riff=ornamented&hide=1", "?screen=which&ask=rhythm&answers=3&from=five&eights=4&riff=ornamented&hide=1"},
		{"screen=dums&riff=solo&seed=7&v=9", "?screen=dums&rhythm=maqsum&eights=4&riff=solo&seed=7&v=9"},
		{fmt.Sprintf("screen=dums&riff=solo&v=%d", riff.Version), "?screen=dums&rhythm=maqsum&eights=4&riff=solo"},
		{"screen=dums&riff=filled&seed=7", "?screen=dums&rhythm=maqsum&eights=4&riff=filled&seed=7"},
	} {
		a, err := Parse(c.query, riffs)
		require.NoError(t, err, c.query)
		require.Equal(t, c.again, a.String())
		b, err := Parse(a.String(), riffs)
		require.NoError(t, err)
		require.Equal(t, a, b)
	}
	for query, problem := range map[string]Problem{
		"screen=dums&hide=60":                   {Name: "hide", Value: "60", Screen: view.ScreenDums, Allowed: "screen, rhythm, bpm, eights, riff, seed"},
		"screen=dums&riff=filled&v=1":           {Name: "v", Value: "1", Screen: view.ScreenDums, Allowed: "screen, rhythm, bpm, eights, riff, seed"},
		"screen=dums&riff=riffing&hide=0":       {Name: "hide", Value: "0", Allowed: "1 to 100"},
		"screen=listen&riff=riffing&hide=101":   {Name: "hide", Value: "101", Allowed: "1 to 100"},
		"screen=listen&riff=riffing&v=x":        {Name: "v", Value: "x", Allowed: "1 to 9999"},
		"screen=stop&riff=riffing&hide=60":      {Name: "hide", Value: "60", Screen: view.ScreenStop, Allowed: "screen, rhythm, bpm, eights, riff, seed, v"},
		"screen=set-up&hide=60":                 {Name: "hide", Value: "60", Screen: view.ScreenSetUp, Allowed: "screen"},
		"screen=listen&riff=riffing&hide=much":  {Name: "hide", Value: "much", Allowed: "1 to 100"},
		"screen=listen&riff=riffing&hide=60.5":  {Name: "hide", Value: "60.5", Allowed: "1 to 100"},
		"screen=listen&riff=riffing&v=0&seed=1": {Name: "v", Value: "0", Allowed: "1 to 9999"},
	} {
		_, err := Parse(query, riffs)
		var link *Error
		require.ErrorAs(t, err, &link, query)
		require.Equal(t, []Problem{problem}, link.Problems, query)
	}
}

func TestWithLevel(t *testing.T) {
	a, err := Parse("screen=dums&riff=riffing&hide=60", riffs)
	require.NoError(t, err)
	require.Equal(t, 60, a.WithLevel(view.LevelSolo).Hide)
	require.Zero(t, a.WithLevel(view.LevelFilled).Hide)
	require.Equal(t, 60, a.To(view.ScreenListen).Hide)
	require.Zero(t, a.To(view.ScreenStop).Hide)
	require.Zero(t, a.To(view.ScreenHome).Hide)
}
