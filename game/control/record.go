package control

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/scoring/history"
)

// Blank is a record with what all records share.
func (s *Shared) Blank(kind, rhythm string) history.Round {
	r := history.Round{
		Kind: kind, Rhythm: rhythm, ID: s.Wall.ID(), When: s.Wall.Date().Format(time.RFC3339), Rate: int(audio.Rate),
	}
	r.Output = s.OutputName()
	return r
}

// Keep stores the record of a finished round; if it cannot be, the screen says so for
// as long as the round waits.
func (s *Shared) Keep(r history.Round, err error) {
	if !s.Finished {
		s.Finished = true
		s.Store.KeepBegun()
	}
	if err != nil {
		s.Unsaved, s.Stale = err, true
		return
	}
	s.Practice.Finished(r)
	times := s.Learner.Times
	s.Store.Keep(r, func(error) {
		if times == s.Learner.Times { // or it is read from the store
			s.Learner.Add(r)
		}
	})
}

// Riffed writes into a record which riff was played, how far it hides the base, and
// the help for the ear.
func (s *Shared) Riffed(r *history.Round, c *rhythm.Cycle, played riff.Part, hide int) {
	r.Helps = s.Ear.Helps()
	level, err := riff.ParseLevel(r.Riff)
	if err != nil || level < riff.Filled {
		return
	}
	hides := riff.Hide(c, played, r.BPM)
	if r.Hide = &hides; level >= riff.Ornamented {
		r.RiffVersion, r.HideAsked = riff.Version, hide
	}
}
