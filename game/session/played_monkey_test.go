package session_test

import (
	"runtime/debug"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/paper"
	"groundbeat/game/view"
)

// Somebody presses anything that is shown, for thousands of steps, and things go wrong
// between: nothing panics, every screen is sound ([paper.Look]), and from wherever that
// led one comes home. The records that are kept can be read.
func TestMonkeys(t *testing.T) {
	const steps = 500
	screens := map[string]int{}
	kinds := map[string]int{}
	for seed := range uint64(5) {
		b := opened(t, "", seed)
		m := paper.NewMonkey(b, seed)
		m.Files = append(m.Files, "name: mine\nmetre: 4/4\nskeleton: DT-TD-T-\ntempo: 80 100 120 quarter\nsource: me\n")
		func() {
			defer func() {
				if r := recover(); r != nil {
					t.Fatalf("seed %d: %v after %q\n%s", seed, r, m.Lately(), debug.Stack())
				}
			}()
			for n := range steps {
				require.NoError(t, m.Step(), "seed %d after %q", seed, m.Lately())
				require.Empty(t, b.Page.Wrong, "seed %d after %q", seed, m.Lately())
				screens[b.Screen().ID]++
				if n%100 == 99 {
					m.Files = append(m.Files, filed(b)...)
					b.Wait(200)
					home(t, b)
				}
			}
		}()
		b.Storage.Full = false
		b.Load()
		b.Wait(200)
		for _, r := range b.Storage.Rounds() {
			kinds[r.Kind]++
		}
	}
	for _, screen := range view.Screens() {
		require.Positive(t, screens[screen], screen)
	}
	require.Greater(t, len(kinds), 2, "%v: rounds were finished by chance", kinds)
}

// filed are the files that were handed out since the last time.
func filed(b *paper.Browser) (texts []string) {
	for _, f := range b.Storage.Files {
		texts = append(texts, f.Text)
	}
	b.Storage.Files = nil
	return texts
}

// home goes home from wherever one is, in at most three presses.
func home(t *testing.T, b *paper.Browser) {
	t.Helper()
	for range 3 {
		if b.Screen().ID == view.ScreenHome {
			return
		}
		if b.Press("home") != nil {
			require.NoError(t, b.Key("Escape"), b.Text())
		}
		b.Wait(50)
	}
	require.Equal(t, view.ScreenHome, b.Screen().ID, b.Text())
}
