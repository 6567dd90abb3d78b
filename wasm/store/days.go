//go:build js

package store

import (
	"maps"
	"slices"
	"syscall/js"

	"groundbeat/game/diary"
	"groundbeat/scoring/history"
	"groundbeat/wasm/idb"
)

// keep adds a round of a person, with its card and in the summary of its day, all or
// nothing. One that is there already, line for line, was kept by another window; another
// round with its id is refused.
func (d *database) keep(p person, r history.Round, line string) error {
	return d.write(func(t idb.Transaction) error {
		there, err := t.Get(roundsStore, r.ID)
		if err != nil || there.Type() == js.TypeString && there.String() == line {
			return err
		}
		owner, err := ownerOf(t, p)
		if err != nil {
			return err
		}
		if err := t.Add(roundsStore, r.ID, line); err != nil {
			return err
		}
		if err := t.Put(cardsStore, cardOf(r, owner, "").value()); err != nil {
			return err
		}
		return sum(t, owner, r)
	})
}

// sum adds a round to the summary of its day. One that cannot be read goes; it will be
// made anew.
func sum(t idb.Transaction, person string, r history.Round) error {
	key := []any{person, diary.Date(r)}
	value, err := t.Get(daysStore, key)
	if err != nil {
		return err
	}
	day := new(diary.Day)
	if !value.IsUndefined() {
		if day = readDay(diary.Date(r), value); day == nil {
			return t.Delete(daysStore, key)
		}
	}
	day.Add(r)
	return t.PutAt(daysStore, key, string(day.Format()))
}

// readDay reads a kept summary; nil if it is not that of the date.
func readDay(date string, value js.Value) *diary.Day {
	if value.Type() != js.TypeString {
		return nil
	}
	day, err := diary.ParseDay([]byte(value.String()))
	if err != nil || day.Date() != date {
		return nil
	}
	return day
}

// daybook is what is kept of one person's days.
type daybook struct {
	texts  map[string]js.Value // the summaries, by date
	rounds map[string]int      // how many rounds there are, by date
	fresh  int                 // rounds that have no card yet, of anybody
	aside  int
	newer  int // records of a later version, of anybody
}

// days reads a person's daybook.
func (d *database) days(person string) (b daybook, err error) {
	b = daybook{texts: map[string]js.Value{}, rounds: map[string]int{}}
	err = d.read(func(t idb.Transaction) error {
		err := t.Each(daysStore, "", idb.StartingWith(person), idb.Ascending, func(c *idb.Cursor, value js.Value) bool {
			b.texts[c.Key().Index(1).String()] = value
			return true
		})
		if err != nil {
			return err
		}
		if err := countDays(t, person, b.rounds); err != nil {
			return err
		}
		if b.fresh, err = countFresh(t); err != nil {
			return err
		}
		if b.newer, err = t.Count(cardsStore, byNewer, js.Undefined()); err != nil {
			return err
		}
		b.aside, err = countAside(t, person)
		return err
	})
	return b, err
}

// countDays counts a person's rounds by date.
func countDays(t idb.Transaction, person string, into map[string]int) error {
	dates, err := allDates(t, person)
	if err != nil {
		return err
	}
	ranges := make([]any, len(dates))
	for i, date := range dates {
		ranges[i] = idb.StartingWith(person, date)
	}
	return t.Counts(cardsStore, byDay, ranges, func(i, n int) { into[dates[i]] = n })
}

// dates are those on which a person has rounds.
func allDates(t idb.Transaction, person string) (all []string, err error) {
	err = t.Each(cardsStore, byDay, idb.StartingWith(person), idb.Ascending, func(c *idb.Cursor, value js.Value) bool {
		date := value.Get("day").String()
		all = append(all, date)
		c.Skip([]any{person, date, []any{}}) // past this date
		return true
	})
	return all, err
}

// fresh is how many rounds have no card yet.
func countFresh(t idb.Transaction) (int, error) {
	rounds, err := t.Count(roundsStore, "", js.Undefined())
	if err != nil {
		return 0, err
	}
	cards, err := t.Count(cardsStore, "", js.Undefined())
	return max(0, rounds-cards), err
}

// read takes the summaries that can be trusted, in order, and names the dates of the
// others: missing, of another number of rounds than there are, or broken.
func (b *daybook) read(w *idb.Work) (days []*diary.Day, doubtful []string) {
	dates := slices.Sorted(maps.Keys(b.rounds))
	for _, date := range dates {
		w.Rest()
		var day *diary.Day
		if text, ok := b.texts[date]; ok {
			day = readDay(date, text)
		}
		if day != nil && day.Rounds() == b.rounds[date] {
			days = append(days, day)
		} else {
			doubtful = append(doubtful, date)
		}
	}
	for date := range b.texts {
		if _, ok := b.rounds[date]; !ok {
			doubtful = append(doubtful, date)
		}
	}
	return days, doubtful
}

// recount makes a day's summary anew from its rounds, and sets aside those that cannot
// be read. The day is nil if there are no rounds.
func (d *database) recount(person, date string) (day *diary.Day, err error) {
	err = d.write(func(t idb.Transaction) error {
		day = nil
		cards, err := allCards(t, byDay, idb.StartingWith(person, date))
		if err != nil {
			return err
		}
		var odd []card // of those that do not belong to the day
		err = t.Values(roundsStore, idsOf(cards), func(i int, value js.Value) error {
			r, err := readRound(cards[i].Id, value)
			if err != nil || diary.Date(r) != date {
				odd = append(odd, cards[i])
				return nil
			}
			if day == nil {
				day = new(diary.Day)
			}
			day.Add(r)
			return nil
		})
		if err != nil {
			return err
		}
		for _, c := range odd {
			if err := amend(t, c); err != nil {
				return err
			}
		}
		if day == nil {
			return t.Delete(daysStore, []any{person, date})
		}
		return t.PutAt(daysStore, []any{person, date}, string(day.Format()))
	})
	return day, err
}

// latest reads the last n rounds of a person, the latest first, of one kind or of all.
// Those that cannot be read are passed over.
func (d *database) latest(person, kind string, n int) (rounds []history.Round, err error) {
	index, keys := byDay, idb.StartingWith(person)
	if kind != "" {
		index, keys = byKind, idb.StartingWith(person, kind)
	}
	err = d.read(func(t idb.Transaction) error {
		var ids []any
		err := t.Each(cardsStore, index, keys, idb.Descending, func(_ *idb.Cursor, v js.Value) bool {
			ids = append(ids, v.Get("id").String())
			return len(ids) < n
		})
		if err != nil || n <= 0 {
			return err
		}
		return t.Values(roundsStore, ids, func(i int, value js.Value) error {
			if r, err := readRound(ids[i].(string), value); err == nil {
				rounds = append(rounds, r)
			}
			return nil
		})
	})
	return rounds, err
}
