package session

import (
	"time"

	"groundbeat/game/host"
	"groundbeat/game/playback"
	"groundbeat/game/round"
	"groundbeat/game/view"
	"groundbeat/scoring/history"
)

// tapping is the exercise Dums: a round whose low strokes are tapped.
type tapping struct {
	*desk
	track playback.Track
	taps  playback.Taps
	round *round.Round
	// measured: a set-up was kept for the output in use when the round was over.
	measured bool
	slowed   int // tempo of this round alone, where each has its own; 0: not slowed
	head     playback.Head
	gone     int // eights that are over, as far as the drumhead tells
	follower playback.Follower
	dealer

	again playback.Replay
	hears bool          // the round is heard once more in its review
	at    time.Duration // how far that is to be seen to have come
}

// A dealer is what exercises whose strokes are tapped do differently.
type dealer interface {
	deal(q round.Question) (*round.Round, error)     // makes the round of a question
	replay(q round.Question) (*round.Passage, error) // what it sounds like, without a count-in
	silent(at time.Duration) bool                    // nothing on the drumhead tells the time then
	note(r *history.Round)                           // writes into the record what only it has
}

// plainly deals the rounds of Dums.
type plainly struct{}

func (plainly) deal(q round.Question) (*round.Round, error) { return round.New(q) }

func (plainly) replay(q round.Question) (*round.Passage, error) {
	r, err := round.Riff(q.Rhythm, q.Level, q.Seed, 0, q.Hide)
	if err != nil {
		return nil, err
	}
	return round.NewPassage(q.BPM, q.Level, q.Seed, false,
		round.Section{Rhythm: q.Rhythm, Cycles: q.Rhythm.CyclesIn(q.Eights), Riff: r})
}

func (plainly) silent(time.Duration) bool { return false }
func (plainly) note(*history.Round)       {}

func newTapping(d *desk) *tapping {
	return &tapping{desk: d, track: playback.NewTrack(d.Sound, &d.outputs), dealer: plainly{}}
}

// lay lays a new round on the desk, as the address says.
func (x *tapping) lay() {
	x.slowed = 0
	x.with(x.desk.seed())
}

// with lays the round of a seed on the desk.
func (x *tapping) with(seed uint64) {
	cycle := x.chosen(seed)
	bpm := x.desk.address.BPM
	if x.desk.address.Rhythm == view.Any && x.slowed != 0 {
		bpm = x.slowed
	}
	if bpm == 0 {
		bpm = cycle.Tempo.Usual
	}
	var err error
	x.round, err = x.dealer.deal(round.Question{
		Kind: round.Dums, Rhythm: cycle, BPM: bpm, Eights: x.desk.address.Eights,
		Level: x.desk.level(), Hide: x.desk.address.Hide, Seed: seed,
	})
	if err != nil {
		panic(err) // the limits of addresses lie within those of questions; a test holds them together
	}
	x.taps.Renew()
	x.follower.Follow(x.round.Passage)
}

func (x *tapping) begin() {
	x.desk.ear.Begin()
	x.track.Play(x.round.Passage, x.desk.Wall.Now())
	x.round.Begin()
}

func (x *tapping) act(action, value string) {
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
		x.hearAgain()
	case view.ActDrums, view.ActSlowly:
		x.again.Set(action, value)
		if hears {
			x.hearAgain()
		}
	case view.ActStop:
		if hears {
			return
		}
		x.interrupted(host.WhyStop)
		x.lay()
	case view.ActOnce:
		x.with(x.round.Question.Seed)
		x.begin()
	case view.ActNext:
		x.lay()
		x.begin()
	case view.ActSlower:
		bpm := x.round.BPM()
		x.slowed = max(view.LeastBPM, bpm-max(4, bpm/slowing))
		if x.desk.address.Rhythm != view.Any { // there each rhythm has a tempo of its own
			x.desk.setTempo(x.slowed)
		}
		x.with(x.round.Question.Seed)
		x.begin()
	default:
		x.lay() // a setting was changed
	}
}

// help answers the controls of the ear, and which drums are heard in the review:
// all of them at once, whatever is heard.
func (x *tapping) help(action, value string) bool {
	if action == view.ActDrums && x.hears {
		x.again.Set(action, value)
		x.again.Apply(x.desk.Sound)
		return true
	}
	return x.desk.helped(&x.track, x.round.UnderWay(), action, value)
}

// slowing is how much slower "slower" is: a tenth, and at least 4 beats a
// minute.
const slowing = 10

func (x *tapping) tap(t *host.Tap) { x.taps.Take(&x.track, t, x.desk.setup(), x.round.Tap) }

// interrupted ends a round that is under way, without result.
func (x *tapping) interrupted(why string) {
	x.silence()
	x.desk.cut(&x.track, x.round, why)
}

// tick tells the round what is heard; it reports whether the screen is another.
func (x *tapping) tick(now float64) bool {
	before, alone := x.round.Phase(), x.desk.ear.Alone
	switch {
	case x.round.UnderWay():
		x.hear(now)
	case x.hears:
		x.followAgain(now)
	}
	return x.round.Phase() != before || x.desk.ear.Alone != alone
}

func (x *tapping) hear(now float64) {
	at, _, why := x.track.Heard(now)
	if why != "" {
		x.interrupted(why)
		return
	}
	x.desk.ear.Follow(at)
	if x.round.Over(at, x.desk.setup()) {
		if !x.track.Whole() {
			x.interrupted(host.WhyGap)
			return
		}
		x.round.Retime(func(t round.Tap) time.Duration { return x.taps.Settled(&x.track, t) })
	}
	x.measured = x.desk.outputs.Measured() != nil
	x.round.Hear(at, x.desk.setup())
	if x.round.Phase() == round.Review {
		x.desk.Sound.Stop()
		x.desk.keep(x.record())
		x.desk.ear.Back()
	}
}

// record is the round as it is kept.
func (x *tapping) record() (history.Round, error) {
	q := x.round.Question
	played := x.desk.blank(q.Kind, q.Rhythm.ID)
	played.BPM, played.Riff, played.Eights, played.Seed = q.BPM, q.Level.String(), q.Eights, q.Seed
	played.Epoch, played.Coarse = x.track.Epoch, x.taps.Coarse
	played.Window = ms(x.round.Within())
	x.desk.riffed(&played, q.Rhythm, x.round.Played(0), q.Hide)
	for _, s := range x.round.Strokes() {
		played.Strokes = append(played.Strokes, x.track.Second(s))
	}
	for _, t := range x.round.Taps() {
		played.Taps = append(played.Taps, x.taps.Recorded(t))
	}
	x.dealer.note(&played)
	return history.New(played, x.round.Result())
}
