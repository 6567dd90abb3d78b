package screens

import (
	"time"

	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// tapped is a round whose strokes are tapped, from its question to its record: what the
// screens of such kinds have in common.
type tapped struct {
	s     *control.Shared
	kind  string // of its rounds
	deals dealer
	track playback.Track
	taps  playback.Taps
	round *round.Round
	// measured: a set-up was kept for the output in use when the round was over.
	measured bool
	slowed   int // tempo of this round alone, where each has its own; 0: not slowed
	head     playback.Head
	gone     int // eights that are over, as far as the drumhead tells
	follower playback.Follower

	replay playback.Replay
	hears  bool          // the round is heard once more in its review
	at     time.Duration // how far that is to be seen to have come
}

// A dealer is what screens whose strokes are tapped do differently.
type dealer interface {
	deal(q round.Setting) (*round.Round, error)     // makes the round of a question
	replay(q round.Setting) (*round.Passage, error) // what it sounds like, without a count-in
	silent(at time.Duration) bool                   // nothing on the drumhead tells the time then
	note(r *history.Round, x *tapped)               // writes into the record what only it has
}

func newTapped(s *control.Shared, kind string, deals dealer) tapped {
	return tapped{s: s, kind: kind, deals: deals, track: playback.NewTrack(s.Sound, &s.Outputs)}
}

// prepare makes ready a new round, as the address says.
func (x *tapped) prepare() {
	x.slowed = 0
	x.with(x.s.Seed())
}

// with makes ready the round of a seed.
func (x *tapped) with(seed uint64) {
	cycle := x.chosen(seed)
	bpm := x.s.Address.BPM
	if x.s.Address.Rhythm == view.Any && x.slowed != 0 {
		bpm = x.slowed
	}
	if bpm == 0 {
		bpm = cycle.Tempo.Usual
	}
	var err error
	x.round, err = x.deals.deal(round.Setting{
		Kind: x.kind, Rhythm: cycle, BPM: bpm, Eights: x.s.Address.Eights,
		Level: x.s.Level(), Hide: x.s.Address.Hide, Seed: seed,
	})
	if err != nil {
		panic(err) // the limits of addresses lie within those of questions; a test holds them together
	}
	x.taps.Renew()
	x.follower.Follow(x.round.Passage)
}

func (x *tapped) begin() {
	x.s.Ear.Begin()
	x.track.Play(x.round.Passage, x.s.Wall.Now())
	x.round.Begin()
}

func (x *tapped) act(action, value string) {
	if x.help(action, value) {
		return
	}
	hears := x.hears
	x.silence()
	switch action {
	case view.ActBegin:
		if x.round.Phase() == round.Ready {
			x.begin()
		}
	case view.ActHear:
		x.hearReplay()
	case view.ActDrums, view.ActSlowly:
		x.replay.Set(action, value)
		if hears {
			x.hearReplay()
		}
	case view.ActStop:
		if hears {
			return
		}
		x.interrupt(host.WhyStop)
		x.prepare()
	case view.ActOnce:
		x.with(x.round.Setting.Seed)
		x.begin()
	case view.ActNext:
		x.prepare()
		x.begin()
	case view.ActSlower:
		bpm := x.round.BPM()
		x.slowed = max(link.LeastBPM, bpm-max(4, bpm/slowing))
		if x.s.Address.Rhythm != view.Any { // there each rhythm has a tempo of its own
			x.s.SetTempo(x.slowed)
		}
		x.with(x.round.Setting.Seed)
		x.begin()
	default:
		x.prepare() // a setting was changed
	}
}

// help answers the controls of the ear, and which drums are heard in the review:
// all of them at once, whatever is heard.
func (x *tapped) help(action, value string) bool {
	if action == view.ActDrums && x.hears {
		x.replay.Set(action, value)
		x.replay.Apply(x.s.Sound)
		return true
	}
	return x.s.Helped(&x.track, x.round.UnderWay(), action, value)
}

// slowing is how much slower "slower" is: a tenth, and at least 4 beats a
// minute.
const slowing = 10

func (x *tapped) tap(t *host.Tap) { x.taps.Take(&x.track, t, x.s.SetUp(), x.round.Tap) }

// interrupt ends a round that is under way, without result.
func (x *tapped) interrupt(why string) {
	x.silence()
	x.s.Cut(&x.track, x.round, why)
}

// tick tells the round what is heard; it reports whether the screen is another.
func (x *tapped) tick(now float64) bool {
	before, alone := x.round.Phase(), x.s.Ear.Alone
	switch {
	case x.round.UnderWay():
		x.hear(now)
	case x.hears:
		x.followReplay(now)
	}
	return x.round.Phase() != before || x.s.Ear.Alone != alone
}

func (x *tapped) hear(now float64) {
	at, _, why := x.track.Heard(now)
	if why != "" {
		x.interrupt(why)
		return
	}
	x.s.Ear.Follow(at)
	if x.round.Over(at, x.s.SetUp()) {
		if !x.track.Whole() {
			x.interrupt(host.WhyGap)
			return
		}
		x.round.Retime(func(t round.Tap) time.Duration { return x.taps.Settled(&x.track, t) })
	}
	x.measured = x.s.Outputs.Measured() != nil
	x.round.Hear(at, x.s.SetUp())
	if x.round.Phase() == round.Review {
		x.s.Sound.Stop()
		x.s.Keep(x.record())
		x.s.Ear.Back()
	}
}

// record is the round as it is kept.
func (x *tapped) record() (history.Round, error) {
	q := x.round.Setting
	played := x.s.Blank(q.Kind, q.Rhythm.ID)
	played.BPM, played.Riff, played.Eights, played.Seed = q.BPM, q.Level.String(), q.Eights, q.Seed
	played.Epoch, played.Coarse = x.track.Epoch, x.taps.Coarse
	played.Window, played.Close = host.Milliseconds(x.round.Within()), host.Milliseconds(x.round.Close())
	x.s.Riffed(&played, q.Rhythm, x.round.Played(0), q.Hide)
	for _, s := range x.round.Strokes() {
		played.Strokes = append(played.Strokes, x.track.Second(s))
	}
	for _, t := range x.round.Taps() {
		played.Taps = append(played.Taps, x.taps.Recorded(t))
	}
	x.deals.note(&played, x)
	return history.New(played, x.round.Result())
}

func (x *tapped) phase() view.Phase { return control.PhaseOf(x.round.Phase()) }

// leave gives up the round.
func (x *tapped) leave() {
	x.interrupt(host.WhyStop)
	x.prepare()
}
