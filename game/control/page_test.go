package control_test

import (
	"fmt"
	"testing"
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/paper"
	"groundbeat/game/picture"
	"groundbeat/game/playback"
	"groundbeat/scoring/history"
)

// page is what is shared, in a browser on paper in which nothing plays.
type page struct {
	*paper.Browser
	control.Shared
	redrawn, recounted int
	finished           []history.Round
}

// still is a game of nothing.
type still struct{}

func (still) Happened(*host.Event)                {}
func (still) Tick(float64)                        {}
func (still) Picture(host.Place) *picture.Picture { return nil }

// newPage is a page at a link, on an evening.
func newPage(t *testing.T, query string) *page {
	t.Helper()
	p := &page{Browser: paper.New(paper.Ideal, 3)}
	p.Open(query, func(h *host.Host) paper.Game {
		p.Host, p.Ear = h, playback.NewEar(h.Sound)
		p.Learner = control.Learner{Host: h, Redraw: func() { p.redrawn++ }, Recount: func() { p.recounted++ }}
		p.Practice.Finished = func(r history.Round) { p.finished = append(p.finished, r) }
		p.Outputs, p.Width = h.Store.Outputs(), h.Page.Width()
		return still{}
	})
	p.Shared.Address, _ = link.Parse(query, p.Allowed)
	return p
}

// when is how noon of a day of a month is told in rounds.
func when(day int) string {
	return time.Date(2026, 2, day, 12, 0, 0, 0, time.UTC).Format(time.RFC3339)
}

// asked is a finished question on an output, on a day of a month.
func asked(n int, day int, output, rhythm string) history.Round {
	took := 900.
	return history.Round{
		Kind: history.Which, Rhythm: rhythm, BPM: 100, Riff: "bare", Eights: 4, Seed: 7, ID: fmt.Sprintf("%024x", 1000+n),
		When: when(day), Output: output, Rate: 48000, Epoch: 1, Choices: []string{"maqsum", "saidi", "malfuf"},
		Answer: rhythm, Right: true, Took: &took, Heard: 2,
	}
}
