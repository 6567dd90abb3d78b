package roundview

import (
	"strconv"

	"groundbeat/game/quiz"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// asked is how what the screen Which asks is put in words. How a question is built is
// the same for all: quiz.Form says what there is to be shown of it.
type asked struct {
	ask     string
	how     func(w say.Words, riff bool) string            // what is to be done, over a riff or not
	say     func(w say.Words, o view.Option) string        // a choice
	finding func(q *Which, w say.Words, right bool) string // what it was
	reasons func(q *Which, w say.Words) []view.Item        // what decides it
	side    func(q *Which, w say.Words, i int) string      // what stands over a side
	hear    func(q *Which, w say.Words, i int) string      // its button
	numbers bool                                           // the choices are numbers, each its own key
}

// askedOf is how an ask is put in words; AskRhythm where it is not known.
func askedOf(ask string) asked {
	all := []asked{
		{ask: view.AskRhythm, how: howRhythm, say: byLabel, finding: (*Which).findRhythm, reasons: (*Which).onlyPlainly,
			side: (*Which).rhythmOf, hear: (*Which).hearRhythm},
		{ask: view.AskStroke, how: howStroke, say: sayDumOrTek, finding: (*Which).findStroke, reasons: (*Which).whatTells,
			side: (*Which).strokeOf, hear: (*Which).hearStroke},
		{ask: view.AskHowMany, how: howHowMany, say: byValue, finding: (*Which).findHowMany, reasons: (*Which).where, numbers: true,
			side: (*Which).rhythmOf, hear: (*Which).hearRhythm},
		{ask: view.AskSame, how: howSame, say: saySameOrNot, finding: (*Which).findSame, reasons: (*Which).onlyPlainly,
			side: (*Which).halfOf, hear: (*Which).hearHalf},
	}
	for _, a := range all {
		if a.ask == ask {
			return a
		}
	}
	return all[0]
}

// asked is how the question is put in words, and form how it is made.
func (q *Which) asked() asked    { return askedOf(q.Ask) }
func (q *Which) form() quiz.Form { return quiz.Question{Ask: quiz.Ask(q.Ask)}.Form() }

func howRhythm(w say.Words, riff bool) string {
	if riff {
		return w.Say("how-rhythm-riff")
	}
	return w.Say("how-rhythm")
}

func howStroke(w say.Words, _ bool) string { return w.Say("how-stroke") }

func howHowMany(w say.Words, riff bool) string {
	if riff {
		return w.Say("how-how-many-riff")
	}
	return w.Say("how-how-many")
}

func howSame(w say.Words, riff bool) string {
	if riff {
		return w.Say("how-same-riff")
	}
	return w.Say("how-same")
}

func byLabel(_ say.Words, o view.Option) string { return o.Label }
func byValue(_ say.Words, o view.Option) string { return o.Value }

func sayDumOrTek(w say.Words, o view.Option) string {
	if o.Value == "dum" {
		return w.Say("dum")
	}
	return w.Say("tek")
}

func saySameOrNot(w say.Words, o view.Option) string {
	if o.Value == "same" {
		return w.Say("same")
	}
	return w.Say("different")
}

func (q *Which) findRhythm(w say.Words, right bool) string {
	if right {
		return w.Say("it-was", "right", view.Plain(q.Right.Label))
	}
	return w.Say("it-was-said", "right", view.Plain(q.Right.Label), "said", view.Plain(q.Said.Label))
}

func (q *Which) findStroke(w say.Words, right bool) string {
	name := w.Say("a-tek")
	if q.Right.Value == "dum" {
		name = w.Say("a-dum")
	}
	if right {
		return w.Say("it-was", "right", name)
	}
	return w.Say("it-was-said", "right", name, "said", sayDumOrTek(w, q.Said))
}

func (q *Which) findHowMany(w say.Words, right bool) string {
	n, _ := strconv.Atoi(q.Right.Value) // 0 for what is no number: the quiz asks none such
	if right {
		return w.Say("it-has", "n", n)
	}
	return w.Say("it-has-said", "n", n, "said", q.Said.Value)
}

func (q *Which) findSame(w say.Words, right bool) string {
	switch same := q.Right.Value == "same"; {
	case same && right:
		return w.Say("they-same")
	case same:
		return w.Say("they-same-said")
	case right:
		return w.Say("they-different")
	}
	return w.Say("they-different-said")
}

// whatTells says by what a dum is told from a tek.
func (q *Which) whatTells(w say.Words) []view.Item {
	return []view.Item{Reason("why-dum", w.Say("why-dum")), Reason("why-tek", w.Say("why-tek"))}
}

// where says where the dums of the rhythm lie.
func (q *Which) where(w say.Words) []view.Item {
	if len(q.Sides) == 0 {
		return nil
	}
	c := q.Sides[0].Rhythm
	return []view.Item{Reason("where", w.Say("where-dums", "n", len(c.Dums()), "rhythm", view.Plain(c.Name),
		"counts", say.List(w, DumCounts(c))))}
}

// onlyPlainly says plainly what no line tells.
func (q *Which) onlyPlainly(w say.Words) []view.Item { return []view.Item{q.plainly(w)} }

// plainly says where no line tells it: that nothing was changed, that the metres differ,
// or the tempo alone.
func (q *Which) plainly(w say.Words) view.Item {
	switch {
	case len(q.Sides) == 1 && q.form().Halves:
		return Reason("unchanged", w.Say("unchanged", "rhythm", view.Plain(q.Sides[0].Rhythm.Name)))
	case len(q.Sides) < 2:
		return view.Item{}
	case q.MetresApart():
		a, b := q.Sides[0].Rhythm, q.Sides[1].Rhythm
		return Reason("metres", w.Say("metres-apart", "first", view.Plain(a.Name), "a", a.Metre, "second", view.Plain(b.Name), "b", b.Metre))
	case len(q.Differences) == 0:
		return Reason("same-strokes", w.Say("same-strokes"))
	}
	return view.Item{}
}

func (q *Which) rhythmOf(_ say.Words, i int) string { return q.Sides[i].Rhythm.Name }

func (q *Which) strokeOf(w say.Words, i int) string {
	if i == 0 {
		return w.Say("dum")
	}
	return w.Say("tek")
}

func (q *Which) halfOf(w say.Words, i int) string {
	switch {
	case i == 1:
		return w.Say("side-then")
	case len(q.Sides) > 1:
		return w.Say("side-first")
	}
	return q.rhythmOf(w, i)
}

func (q *Which) hearRhythm(w say.Words, i int) string {
	return w.Say("hear", "name", view.Plain(q.Sides[i].Rhythm.Name))
}

func (q *Which) hearStroke(w say.Words, i int) string {
	if i == 0 {
		return w.Say("hear-dum")
	}
	return w.Say("hear-tek")
}

func (q *Which) hearHalf(w say.Words, i int) string {
	switch {
	case i == 1:
		return w.Say("hear-then")
	case len(q.Sides) > 1:
		return w.Say("hear-first")
	}
	return q.hearRhythm(w, i)
}
