package diary

import (
	"cmp"
	"maps"
	"slices"

	"groundbeat/game/rhythm"
	"groundbeat/scoring/history"
)

// Book holds days, and tells what all of them come to. It is not safe for concurrent
// use.
type Book struct {
	cycle func(id string) *rhythm.Cycle
	days  map[string]*Day
}

// New returns a book without days. cycles finds the rhythm of an id, or nil: of one that
// is not known any more, such as a file of the player's own, all is told but for what
// needs its strokes (Count, and Reach where dums were tapped).
func New(cycles func(id string) *rhythm.Cycle) *Book {
	return &Book{cycle: cycles, days: map[string]*Day{}}
}

// Put puts a day in the place of what the book has of that date; an empty one takes
// nothing's place. The day is the book's from then on.
func (b *Book) Put(d *Day) {
	if d.Rounds() > 0 {
		b.days[d.date] = d
	}
}

// Remove takes a date out of the book.
func (b *Book) Remove(date string) { delete(b.days, date) }

// Day returns the day of a date, 2006-01-02; nil if there is none.
func (b *Book) Day(date string) *Day { return b.days[date] }

// Add adds a round to its day.
func (b *Book) Add(r history.Round) {
	d := b.days[Date(r)]
	if d == nil {
		d = new(Day)
		b.days[Date(r)] = d
	}
	d.Add(r)
}

// Dates returns the dates of all days, ascending.
func (b *Book) Dates() []string { return slices.Sorted(maps.Keys(b.days)) }

// Outputs returns the outputs of all rounds, the most used first.
func (b *Book) Outputs() []string {
	rounds := map[string]int{}
	for _, d := range b.days {
		for _, o := range d.outputs {
			rounds[o.Name] += len(o.Rounds)
		}
	}
	return mostFirst(rounds)
}

// mostFirst returns names by how often they occur, then by themselves.
func mostFirst(often map[string]int) []string {
	return slices.SortedFunc(maps.Keys(often), func(x, y string) int {
		return cmp.Or(cmp.Compare(often[y], often[x]), cmp.Compare(x, y))
	})
}

// dated is an entry with its day.
type dated struct {
	*entry
	day string
}

// rounds returns all rounds on an output, in order.
func (b *Book) rounds(output string) []dated {
	var all []dated
	for _, date := range b.Dates() {
		on := b.days[date].on(output)
		for i := range on {
			all = append(all, dated{&on[i], date})
		}
	}
	return all
}

// Figures returns all that is told about one output.
func (b *Book) Figures(output string) Figures {
	var f Figures
	for _, part := range b.Parts(output) {
		part(&f)
	}
	return f
}

// Parts returns what puts the figures of an output together, where all at once would
// take too long: each puts its part into the figures, and takes a few ms at most.
func (b *Book) Parts(output string) []func(*Figures) {
	parts := []func(*Figures){
		func(f *Figures) { f.Output, f.Rounds = output, len(b.rounds(output)) },
		func(f *Figures) { f.Accuracy = b.Accuracy(output) },
		func(f *Figures) { f.Fingers = b.Fingers(output) },
		func(f *Figures) { f.Mixed = b.Mixed(output) },
		func(f *Figures) { f.Practised = practised(b.rounds(output)) },
	}
	for _, kind := range b.heardKinds(output) {
		parts = append(parts, func(f *Figures) { f.Reach = append(f.Reach, b.Reach(output, kind)...) })
	}
	return parts
}

// Practised returns the days on which something was practised on any output, the latest
// first.
func (b *Book) Practised() []Practice {
	var all []dated
	for _, date := range b.Dates() {
		for _, o := range b.days[date].outputs {
			for i := range o.Rounds {
				all = append(all, dated{&o.Rounds[i], date})
			}
		}
	}
	return practised(all)
}

// practised counts rounds, which are in the order of their days.
func practised(rounds []dated) []Practice {
	var all []Practice
	for _, r := range rounds {
		if len(all) == 0 || all[len(all)-1].Day != r.day {
			all = append(all, Practice{Day: r.day, Kinds: map[string]int{}})
		}
		p := &all[len(all)-1]
		p.Rounds++
		p.Kinds[r.Kind]++
	}
	slices.Reverse(all)
	return all
}

// Met returns what came of each rhythm at each riff level on each day, in that order but
// by day first. A round in which the rhythm changed counts for what it became; one
// in which no tap came is no meeting.
func (b *Book) Met(output string) []Met {
	type key struct{ day, rhythm, riff string }
	met := map[key]*Met{}
	for _, r := range b.rounds(output) {
		k := key{r.day, r.met(), r.Riff}
		if k.rhythm == "" || r.Untried {
			continue
		}
		if met[k] == nil {
			met[k] = &Met{Rhythm: k.rhythm, Riff: k.riff, Day: k.day}
		}
		met[k].N++
		if r.Right {
			met[k].Right++
		}
	}
	all := make([]Met, 0, len(met))
	for _, m := range met {
		all = append(all, *m)
	}
	slices.SortFunc(all, func(x, y Met) int {
		return cmp.Or(cmp.Compare(x.Day, y.Day), cmp.Compare(x.Rhythm, y.Rhythm), cmp.Compare(x.Riff, y.Riff))
	})
	return all
}
