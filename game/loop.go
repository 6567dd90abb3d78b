//go:build js

package game

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
	next func() *round.Passage // what the next cycle is
	on   bool
}

// lap is one cycle in the stream.
type lap struct {
	base    int64
	passage *round.Passage
}

func (l *lap) end() int64 { return l.base + audio.Rate.Frame(l.passage.End()) }

// start plays from the next cycle's first step; what sounded before is cut.
func (l *loop) start(now float64) {
	l.laps, l.on = l.laps[:0], true
	passage := l.next()
	l.play(passage, now)
	l.laps = append(l.laps, lap{l.base, passage})
	l.fill()
}

func (l *loop) halt() {
	l.on = false
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
		base := l.laps[len(l.laps)-1].end()
		if base >= l.sound.Next()+ahead {
			return
		}
		// A page that was busy for longer than the loop looks ahead has left a
		// hole: go on from here.
		base = max(base, l.sound.Next()+margin)
		passage := l.next()
		l.laps = append(l.laps, lap{base, passage})
		if err := l.sound.Schedule(passage.Hits(audio.Rate, base)...); err != nil {
			panic(err) // never in the past: nothing is read meanwhile
		}
	}
}

// hear keeps the loop going and tells which cycle is heard and how far it has
// come.
func (l *loop) hear(now float64) (passage *round.Passage, t time.Duration, why string) {
	if !l.on {
		return nil, 0, ""
	}
	l.fill()
	at, _, why := l.heard(now)
	if why != "" || at < 0 {
		return nil, 0, why
	}
	frame := l.base + audio.Rate.Frame(at)
	for len(l.laps) > 1 && l.laps[1].base <= frame {
		l.laps = l.laps[1:]
	}
	return l.laps[0].passage, audio.Rate.Duration(frame - l.laps[0].base), ""
}
