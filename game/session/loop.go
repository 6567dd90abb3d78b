package session

import (
	"time"

	"groundbeat/audio"
	"groundbeat/game/round"
)

// ahead is how far before the stream's next frame the loop keeps cycles
// scheduled, in frames: a busy page must not leave a hole.
const ahead = int64(audio.Rate) * 3 / 2

// loop plays cycle after cycle until it is stopped. What is to be played can
// change while it plays: it is heard from the next cycle on that has not been
// rendered yet.
type loop struct {
	player
	laps []lap
	past lap                        // the one before the first of laps, if there was one
	next func(n int) *round.Passage // the nth cycle from the start
	on   bool

	shows *round.Passage // the cycle that pictures show; nil: none
	at    time.Duration  // how far into it they are
	turn  float64        // the same, in turns
}

// lap is one cycle in the stream.
type lap struct {
	n       int // from the start
	base    int64
	passage *round.Passage
}

func (l *lap) end() int64 { return l.base + audio.Rate.Frame(l.passage.End()) }

// start plays from the next cycle's first step; what sounded before is cut.
func (l *loop) start(now float64) {
	l.laps, l.past, l.on = l.laps[:0], lap{}, true
	passage := l.next(0)
	l.play(passage, now)
	l.laps = append(l.laps, lap{0, l.base, passage})
	l.fill()
}

func (l *loop) halt() {
	l.on, l.shows = false, nil
	l.stop()
}

// change lets what is next be heard as soon as a cycle can begin with it.
func (l *loop) change() {
	if !l.on {
		return
	}
	for i := range l.laps {
		if base := l.laps[i].base; i > 0 && base >= l.sound.Next()+margin {
			l.sound.Drop(base)
			l.laps = l.laps[:i]
			break
		}
	}
	l.fill()
}

// fill schedules cycles until enough lie ahead.
func (l *loop) fill() {
	for {
		last := &l.laps[len(l.laps)-1]
		base, n := last.end(), last.n+1
		if base >= l.sound.Next()+ahead {
			return
		}
		// A page that was busy for longer than the loop looks ahead has left a
		// hole: go on from here.
		base = max(base, l.sound.Next()+margin)
		passage := l.next(n)
		l.laps = append(l.laps, lap{n, base, passage})
		if err := l.sound.Schedule(passage.Hits(audio.Rate, base)...); err != nil {
			panic(err) // never in the past: nothing is read meanwhile
		}
	}
}

// hear keeps the loop going, and notes which cycle is to be shown and how far it
// has come. Why says what is wrong, if anything is.
func (l *loop) hear(now float64) (why string) {
	l.shows = nil
	if !l.on {
		return ""
	}
	l.fill()
	at, _, why := l.heard(now)
	if at = l.seen(at); why != "" || at < 0 {
		return why
	}
	frame := l.base + audio.Rate.Frame(at)
	for len(l.laps) > 1 && l.laps[1].base <= frame {
		l.past, l.laps = l.laps[0], l.laps[1:]
	}
	l.shows, l.at = l.laps[0].passage, audio.Rate.Duration(frame-l.laps[0].base)
	l.turn = l.shows.TurnAt(l.at)
	return ""
}

// strikes are what the lead drummer's hands do in the cycle that pictures show, in
// the one before and in those that are scheduled after it, timed from its start.
func (l *loop) strikes() []round.Strike {
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

// move turns a drumhead with the loop.
func (l *loop) move(h *liveHead) *liveHead {
	h.turn(l.shows != nil, l.turn)
	return h
}
