package rhythm_test

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

const ownText = `name: my maqsum
role: practice
listen: dums on 1 and on 3
metre: 4/4
skeleton: DT-TD-T-
tempo: 80 100 120 quarter
source: own, from memory
`

func own(t *testing.T, file, text string) *rhythm.Cycle {
	t.Helper()
	c, err := rhythm.Parse(file, strings.NewReader(text))
	require.NoError(t, err)
	return c
}

func TestWithAddsARhythm(t *testing.T) {
	all := supplied(t)
	more, err := all.With(own(t, "mine.txt", ownText))
	require.NoError(t, err)
	require.Len(t, more.IDs(), len(all.IDs())+1)
	c, ok := more.Find("My Maqsum")
	require.True(t, ok)
	require.Equal(t, "mine", c.ID)
	_, ok = all.Get("mine")
	require.False(t, ok, "the catalogue before stays as it was")
}

func TestWithReplacesOnlyAnOwnRhythm(t *testing.T) {
	all := supplied(t)
	more, err := all.With(own(t, "mine.txt", ownText))
	require.NoError(t, err)
	again, err := more.With(own(t, "mine.txt", strings.Replace(ownText, "DT-TD-T-", "DD-TD-T-", 1)))
	require.NoError(t, err)
	require.Equal(t, more.IDs(), again.IDs())
	c, _ := again.Get("mine")
	require.Equal(t, "DD-TD-T-", c.Skeleton.String())

	_, err = all.With(own(t, "maqsum.txt", ownText))
	require.ErrorContains(t, err, "maqsum.txt: there is a rhythm of this name already")
	_, err = all.With(own(t, "mine.txt", strings.Replace(ownText, "my maqsum", "ayyub", 1)))
	require.ErrorContains(t, err, "'ayyub' is a name of ayyub already")
}
