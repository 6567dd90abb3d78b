package clock_test

import (
	"bufio"
	"fmt"
	"os"
	"strings"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/audio/clock"
)

// recorded are stamps as a browser gave them; the files say which, and where.
func recorded(t *testing.T, name string) (stamps []clock.Stamp) {
	t.Helper()
	f, err := os.Open("testdata/" + name + ".txt")
	require.NoError(t, err)
	defer f.Close()
	for lines := bufio.NewScanner(f); lines.Scan(); {
		if strings.HasPrefix(lines.Text(), "#") {
			continue
		}
		s := clock.Stamp{Reading: clock.Reading{Running: true}}
		_, err := fmt.Sscan(lines.Text(), &s.Context, &s.Performance, &s.Current, &s.Now, &s.Output, &s.Base)
		require.NoError(t, err)
		stamps = append(stamps, s)
	}
	return stamps
}

// What browsers really said, on a busy machine. What is heard is known here only as far
// as they state their latency: the context's current time less that, in the mean. It
// falls behind between one update and the next, by up to 43 ms in WebKitGTK.
func TestRecordedStamps(t *testing.T) {
	for name, tc := range map[string]struct {
		mean   float64 // ms
		coarse bool
	}{
		"chromium":  {8, false}, // whose latency is that of whole buffers of 10 ms
		"firefox":   {5, false},
		"webkitgtk": {5, true},
	} {
		t.Run(name, func(t *testing.T) {
			c := clock.New(rate)
			place(c, 1, 0, 60)
			stamps := recorded(t, name)
			ahead, n := 0.0, 0
			for _, s := range stamps {
				c.Stamp(s)
				if s.Now < stamps[0].Now+500 {
					continue
				}
				p, err := c.Heard(s.Now)
				require.NoError(t, err, "at %v", s.Now)
				require.Equal(t, tc.coarse, p.Coarse)
				ahead, n = ahead+p.Frame/rate*1000-(s.Current-s.Output-s.Base)*1000, n+1
			}
			t.Logf("%d stamps; heard ahead of the current time less the latency by %.2f ms", n, ahead/float64(n))
			require.InDelta(t, 0, ahead/float64(n), tc.mean)
			require.Zero(t, c.Diagnostics().Interruptions)
			require.True(t, c.Whole(1, rate, 2*rate))
		})
	}
}
