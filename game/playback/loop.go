package playback

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/round"
)

// ahead is how far before the stream's next frame the loop keeps cycles
// scheduled, in frames: a busy page must not leave a hole.
const ahead = int64(audio.Rate) * 3 / 2

// Loop plays cycle after cycle until it is stopped. What is to be played can
// change while it plays: it is heard from the next cycle on that has not been
// rendered yet.
type Loop struct {
	Track
	laps []lap
	past lap                        // the one before the first of laps, if there was one
	next func(n int) *round.Passage // the nth cycle from the start
	On   bool

	Shows *round.Passage // the cycle that pictures show; nil: none
	At    time.Duration  // how far into it they are
	Turn  float64        // the same, in turns
}

// lap is one cycle in the stream.
type lap struct {
	n       int // from the start
	base    int64
	passage *round.Passage
}

func (l *lap) end() int64 { return l.base + audio.Rate.Frame(l.passage.End()) }

// NewLoop is a loop over a track, of the cycles that are next.
func NewLoop(t Track, next func(n int) *round.Passage) Loop {
	return Loop{Track: t, next: next}
}

// Start plays from the next cycle's first step; what sounded before is cut.
func (l *Loop) Start(now float64) {
	l.laps, l.past, l.On = l.laps[:0], lap{}, true
	passage := l.next(0)
	l.Play(passage, now)
	l.laps = append(l.laps, lap{0, l.base, passage})
	l.fill()
}

func (l *Loop) Halt() {
	l.On, l.Shows = false, nil
	l.Stop()
}

// Update lets what is next be heard as soon as a cycle can begin with it.
func (l *Loop) Update() {
	if !l.On {
		return
	}
	for i := range l.laps {
		if base := l.laps[i].base; i > 0 && base >= l.sound.Next()+Margin {
			l.sound.Drop(base)
			l.laps = l.laps[:i]
			break
		}
	}
	l.fill()
}

// fill schedules cycles until enough lie ahead.
func (l *Loop) fill() {
	for {
		last := &l.laps[len(l.laps)-1]
		base, n := last.end(), last.n+1
		if base >= l.sound.Next()+ahead {
			return
		}
		// A page that was busy for longer than the loop looks ahead has left a
		// hole: go on from here.
		base = max(base, l.sound.Next()+Margin)
		passage := l.next(n)
		l.laps = append(l.laps, lap{n, base, passage})
		if err := l.sound.Schedule(passage.Hits(audio.Rate, base)...); err != nil {
			panic(err) // never in the past: nothing is read meanwhile
		}
	}
}

// Follow keeps the loop going, and notes which cycle is to be shown and how far it
// has come. Why says what is wrong, if anything is.
func (l *Loop) Follow(now float64) (why string) {
	l.Shows = nil
	if !l.On {
		return ""
	}
	l.fill()
	at, _, why := l.Heard(now)
	if at = l.Seen(at); why != "" || at < 0 {
		return why
	}
	frame := l.base + audio.Rate.Frame(at)
	for len(l.laps) > 1 && l.laps[1].base <= frame {
		l.past, l.laps = l.laps[0], l.laps[1:]
	}
	l.Shows, l.At = l.laps[0].passage, audio.Rate.Duration(frame-l.laps[0].base)
	l.Turn = l.Shows.TurnAt(l.At)
	return ""
}

// Strikes are what the lead drummer's hands do in the cycle that pictures show, in
// the one before and in those that are scheduled after it, timed from its start.
func (l *Loop) Strikes() []round.Strike {
	var all []round.Strike
	add := func(p lap) {
		for _, s := range p.passage.Strikes() {
			s.At += audio.Rate.Duration(p.base - l.laps[0].base)
			all = append(all, s)
		}
	}
	if l.past.passage != nil {
		add(l.past)
	}
	for _, p := range l.laps {
		add(p)
	}
	return all
}

// TurnHead turns a drumhead with the loop.
func (l *Loop) TurnHead(h *Head) *Head {
	Turn(h, l.Shows != nil, l.Turn)
	return h
}
