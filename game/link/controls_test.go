package link_test

import (
	"net/url"
	"strconv"
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/link"
	"groundbeat/game/proof"
	"groundbeat/game/riff"
	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// linkable is what the product's own links may say.
func linkable(t *testing.T) func() link.Allowed {
	ids := proof.Catalogue(t).IDs()
	var levels []string
	for l := riff.Bare; l <= riff.Solo; l++ {
		levels = append(levels, l.String())
	}
	return func() link.Allowed { return link.Allowed{Rhythms: ids, Riffs: levels} }
}

// requireOpens: a link to a screen with one more word is taken as it stands.
func requireOpens(t *testing.T, query url.Values) link.Address {
	t.Helper()
	a, err := link.Parse("?"+query.Encode(), linkable(t))
	require.NoError(t, err, query.Encode())
	return a
}

// Whatever can be chosen can stand in a link, and is chosen when it is opened.
func TestChoicesAreTakenByLinks(t *testing.T) {
	w := proof.Words(t)
	levels := linkable(t)().Riffs
	for _, o := range view.LeadDrum(w, view.LevelBare, levels, view.NoHide, nil).Children[0].Options {
		require.Equal(t, o.Value, requireOpens(t, url.Values{"screen": {view.ScreenDums}, "riff": {o.Value}}).Riff)
	}
	for _, o := range view.From(w, view.FromFive, nil).Options {
		require.Equal(t, o.Value, requireOpens(t, url.Values{"screen": {view.ScreenWhich}, "from": {o.Value}}).From)
	}
	for _, o := range view.Length(w, 4, nil).Options {
		a := requireOpens(t, url.Values{"screen": {view.ScreenDums}, "eights": {o.Value}})
		require.Equal(t, o.Value, strconv.Itoa(a.Eights))
	}
	screen := view.Screen{Items: []view.Item{view.LeadDrum(w, view.LevelSolo, levels, 0, nil)}}
	for _, o := range screen.Find("hide").Options[1:] { // the first is what a link without it says
		a := requireOpens(t, url.Values{"screen": {view.ScreenDums}, "riff": {view.LevelSolo}, "hide": {o.Value}})
		require.Equal(t, o.Value, strconv.Itoa(a.Hide))
	}
}

// Every rhythm that is offered can be linked to by the value that chooses it.
func TestRhythmsAreTakenByLinks(t *testing.T) {
	for _, c := range proof.EveryRhythm(t) {
		o := view.RhythmOption(c, proof.Words(t))
		require.Equal(t, c.ID, requireOpens(t, url.Values{"screen": {view.ScreenListen}, "rhythm": {o.Value}}).Rhythm)
	}
}

// Every screen can be linked to by its id, and every question by its own.
func TestScreensAreTakenByLinks(t *testing.T) {
	for _, id := range view.Screens() {
		require.Equal(t, id, requireOpens(t, url.Values{"screen": {id}}).Screen)
	}
	for _, ask := range view.Asks() {
		require.Equal(t, ask, link.AddressOf(ask).Ask)
	}
}

// Screens made of nothing but what this package makes have all that a reader needs.
func TestControlsAreWhole(t *testing.T) {
	w, hides := proof.Words(t), 0.4
	for _, c := range proof.EveryRhythm(t) {
		option := []view.Option{view.RhythmOption(c, w)}
		help := view.Help{Alone: true}
		items := []view.Item{
			view.Title(w, c.Name, view.NameOf(c)), view.Stage(w, "a drum"),
			view.Rhythms(w, option, nil, c.ID), view.MoreRhythms(w, option, ""),
			view.Settings(view.Tempo(w, "Tempo", c.Tempo.Usual, c.Tempo.Slow, c.Tempo.Fast+1), view.Volume(w, 10),
				view.Length(w, 5, nil), view.From(w, "a.b", []string{c.Name, c.Name}), view.Balance(w, -10, 10),
				view.LeadDrum(w, view.LevelSolo, linkable(t)().Riffs, 50, &hides)),
			view.Figure("mean", "mean", view.None),
		}
		items = append(items, help.Buttons(w, 10)...)
		items = append(items, view.Notes(w, []view.Note{view.NoteQuiet, view.NoteNotExported})...)
		s := view.ReadyScreen(w, view.ScreenListen, c.Name, items)
		require.NoError(t, screenproof.Check(s), c.ID)
		require.NotContains(t, screenproof.Text(t, s), "{", c.ID)
		s = view.Tapping(s, w, "Tap", 1, view.Stage(w, "a drum"), help.Buttons(w, 10)...)
		require.NoError(t, screenproof.Check(s))
		s = view.VoidScreen(w, view.ScreenDums, view.SayWhy(w, view.WhyHidden), view.Stage(w, "a drum"), help.HandsButton(w))
		require.NoError(t, screenproof.Check(s))
	}
}
