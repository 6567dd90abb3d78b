package history

import (
	"fmt"
	"time"

	"groundbeat/scoring"
)

// Version is the version of the format that this package writes, and the
// newest that it reads.
const Version = 1

// Round is one finished round. The package comment gives the meaning, unit
// and range of every field, under its name in the text. The fields of the other
// kind of rounds, tapped or answered, are zero.
type Round struct {
	Kind   string
	Rhythm string
	BPM    int
	Riff   string
	Eights int
	Seed   uint64

	// Of tap rounds; and Window to Added.
	Strokes []float64 // s in the stream
	Taps    []Tap
	Setup   float64 // ms
	Score   float64

	ID     string
	When   string // RFC 3339
	Output string
	Epoch  int
	Rate   int // Hz
	Coarse bool

	Window  float64  // ms
	Close   float64  // ms; 0: not known
	Bias    *float64 // ms, nil where too few taps matched
	Spread  *float64 // ms, likewise
	Median  *float64 // ms, likewise
	Drift   *float64 // ms a minute, likewise
	Matched int
	Out     int
	Added   int

	// Of answered rounds.
	Choices []string
	Answer  string
	Right   bool
	Took    *float64 // ms, nil where the answer came before the first step
	Heard   float64  // cycles

	// Of rounds in which the rhythm may change, besides Strokes, Taps and Setup, and
	// Choices, Answer and Right.
	To      string
	After   int      // eights before the change, 0 where it did not change
	Changes *float64 // s in the stream, nil where it did not change

	// Of rounds with stops, besides all of tap rounds.
	Breaks []Break
	Aside  []Tap // neither scored nor counted; Offset and Stroke are nil

	// Of rounds in which the drums fall silent, besides all of tap rounds.
	Silences []Silence

	// Where they have something to tell; else zero.
	Early       int      // of rounds in which the rhythm may change: presses that heard nothing
	RiffVersion int      // of the riffs that the seed stands for; 0: bare and filled have none
	HideAsked   int      // how far the riff was asked to hide the base, of 100; 0: as it came
	Hide        *float64 // how far it did, as predicted, 0 to 1
	Helps       Helps
	Player      string // nickname of who played, in a file of several people's rounds

	rest []member // members that this program does not know
}

// New returns the record of a tap round. played holds all that is known before
// scoring: what was asked for, the strokes, and for each tap At, Frame,
// Reading and By. New fills in what follows from the scored result: setup,
// score, the figures, and each tap's offset and stroke. It rounds all numbers
// as [Format] does, and returns an *[Error] that names the field where the
// record would not be valid. A result of other strokes and taps than those of
// played is a programmer's mistake and panics.
func New(played Round, result scoring.Result) (Round, error) {
	matched := len(result.Pairs)
	if matched+len(result.Out) != len(played.Strokes) || matched+len(result.Added) != len(played.Taps) {
		panic(fmt.Sprintf("history: a result of %d strokes and %d taps for a round of %d and %d",
			matched+len(result.Out), matched+len(result.Added), len(played.Strokes), len(played.Taps)))
	}
	if played.kind().Play != Tapped {
		return Round{}, wrong("kind", "%q is not a kind of tap round", played.Kind)
	}
	r := played.clone()
	for i := range r.Taps {
		r.Taps[i].Offset, r.Taps[i].Stroke = nil, nil
	}
	for _, p := range result.Pairs {
		r.Taps[p.Tap].Offset, r.Taps[p.Tap].Stroke = new(ms(p.Offset)), new(p.Stroke)
	}
	r.Setup = ms(result.Setup)
	r.Score = result.Accuracy
	r.Bias = value(result.Timing.Bias)
	r.Spread = value(result.Timing.Spread)
	r.Median = value(result.Timing.Median)
	r.Drift = value(result.Timing.Drift)
	r.Matched, r.Out, r.Added = matched, len(result.Out), len(result.Added)
	roundAll(&r)
	if err := check(&r); err != nil {
		return Round{}, err
	}
	return r, nil
}

// NewAnswered returns the record of an answered round, of which played holds all.
// It rounds the numbers as [Format] does, and returns an *[Error] that names the
// field where the record would not be valid.
func NewAnswered(played Round) (Round, error) {
	if played.kind().Play != Answered {
		return Round{}, wrong("kind", "%q is not a kind of answered round", played.Kind)
	}
	r := played.clone()
	roundAll(&r)
	if err := check(&r); err != nil {
		return Round{}, err
	}
	return r, nil
}

func ms(d time.Duration) float64 { return float64(d) / float64(time.Millisecond) }

func value(f scoring.Figure) *float64 {
	if !f.Known {
		return nil
	}
	return new(f.Value)
}

// Time returns When as a time, the zero time if it is not RFC 3339.
func (r Round) Time() time.Time {
	var t time.Time
	if t.UnmarshalText([]byte(r.When)) != nil {
		return time.Time{}
	}
	return t
}

// clone returns a copy that shares nothing that is ever written to. Lists of the
// round's kind are lists, if empty ones; others that are empty are nil.
func (r Round) clone() Round {
	for _, f := range r.fields() {
		if l, is := f.at.(list); is {
			l.clone(true)
		}
	}
	for _, f := range r.foreign() {
		if l, is := f.at.(list); is {
			l.clone(false)
		}
	}
	return r
}
