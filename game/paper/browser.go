package paper

import (
	"errors"
	"fmt"

	"groundbeat/assets"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// A Game is what plays on the page.
type Game interface {
	Happened(e *host.Event)
	Tick(now float64)
	Picture(place host.Place) *picture.Picture
}

// A Browser is all that is outside of a game.
type Browser struct {
	Page    *Page
	Sound   *Sound
	Storage *Storage
	Wall    *Wall
	Pace    float64 // ms of a frame
	Loads   int     // how often the page was loaded
	Exports int     // how often the file of all rounds was asked for
	Reloads int     // how often the page asked to be loaded anew

	open    func(*host.Host) Game
	device  Device
	seed    uint64
	game    Game
	outside host.Host
	frames  int
	stored  view.Storage // as the page was told last
	events  []host.Event
	places  []host.Place
	hidden  bool
	words   say.Words
	all     *rhythm.Catalogue
}

// Computer is a device as most are: a loudspeaker of 30 ms, whose readings are wrong by
// up to 0.1 ms, as measured with Chromium.
var Computer = Device{Latency: 30, Wakes: 40, Scatter: 0.1}

// Ideal is a device that plays at once, for tests in which sound is beside the point.
var Ideal = Device{Ideal: true, Latency: 64. / 3} // of 1,024 frames

// New is a browser with a device, in which nothing is open yet. The seed is that of all
// chance.
func New(d Device, seed uint64) *Browser {
	wall := newWall(seed)
	b := &Browser{
		Wall: wall, Storage: newStorage(wall), Pace: 16, device: d, seed: seed,
		Page: &Page{Window: Window{Across: 800}},
	}
	var wrong error
	b.words, wrong = say.Load(assets.Words)
	all, err := rhythm.Load(assets.Rhythms)
	if err = errors.Join(wrong, err); err != nil {
		panic(err) // they are supplied
	}
	b.all = all
	return b
}

// Open opens the page at a link, with what plays on it.
func (b *Browser) Open(query string, open func(*host.Host) Game) {
	b.open = open
	b.Page.trail = newTrail(query)
	b.Load()
}

// Load loads the page anew where it is: what is kept is there, and all else gone.
func (b *Browser) Load() {
	b.Loads++
	b.Wall.origin, b.frames, b.hidden = b.Wall.passed, 0, false
	b.Storage.reload()
	b.stored = b.Storage.Storage()
	p := &Page{Window: b.Page.Window, Keeps: b.Page.Keeps, trail: b.Page.trail, Wrong: b.Page.Wrong}
	p.trail.going, p.trail.after = false, nil
	b.Page = p
	b.Sound = newSound(newDevice(b.device, b.Wall, p.tell, b.seed))
	first, _ := b.all.Get(link.FirstRound().Rhythm)
	b.outside = host.Host{
		Sound: b.Sound, Page: p, Store: b.Storage, Diary: b.Storage, Wall: b.Wall, Classes: room{b.Storage},
		Words: b.words, First: first, Rhythms: func() *rhythm.Catalogue { return b.all },
		Query:  b.Query(),
		Export: func() { b.Exports++ },
		Reload: func() { b.Reloads++ },
	}
	b.game = b.open(&b.outside)
}

// Query is the address that the browser shows.
func (b *Browser) Query() string { return b.Page.trail.here().query }

// Screen is what the page shows.
func (b *Browser) Screen() *view.Screen { return b.Page.Screen() }

// Find is an item of the screen, or nil.
func (b *Browser) Find(id string) *view.Item { return b.Page.Screen().Find(id) }

// Cycle is the rhythm of an id; it is supplied.
func (b *Browser) Cycle(id string) *rhythm.Cycle {
	c, ok := b.all.Get(id)
	if !ok {
		panic(fmt.Sprintf("paper: no rhythm %q", id))
	}
	return c
}

// Frame lets a frame pass: what happened is told, in order, and now and then the pictures
// move on. A page that is hidden has no frames.
func (b *Browser) Frame() {
	if b.hidden {
		b.Wall.passed += b.Pace
		return
	}
	b.Advance()
	b.events = b.Page.Events(b.events[:0])
	for i := range b.events {
		b.game.Happened(&b.events[i])
	}
	b.game.Tick(b.Wall.Now())
	if b.frames%drawn == 0 {
		b.places = b.Page.Places(b.places[:0])
		for _, place := range b.places {
			b.game.Picture(place)
		}
	}
}

// drawn is in which of how many frames the pictures are asked for: in each, they would
// take most of a test's time.
const drawn = 5

// Advance lets the time of a frame pass outside the game.
func (b *Browser) Advance() {
	b.Wall.passed += b.Pace
	if b.frames++; b.frames == 2 {
		b.Sound.asked = true
		if b.Sound.None {
			b.Page.Add(host.Event{Kind: host.Running})
		}
	}
	b.Sound.tick()
	b.Storage.tick()
	if is := b.Storage.Storage(); is != b.stored {
		b.stored = is
		b.Page.Add(host.Event{Kind: host.Stored})
	}
	if b.Page.trail.arrive() { // before what was pressed since the last frame
		since := b.Page.Events(nil)
		b.came()
		b.Page.Add(since...)
	}
}

// Wait lets some ms pass, frame by frame.
func (b *Browser) Wait(ms float64) {
	for until := b.Wall.passed + ms; b.Wall.passed < until; {
		b.Frame()
	}
}

// Until waits until something is so, or for a minute at the most, and reports whether
// it became so.
func (b *Browser) Until(is func() bool) bool {
	for range int(60_000 / b.Pace) {
		if is() {
			return true
		}
		b.Frame()
	}
	return is()
}

// Stall holds the page up for some ms: no frame comes, and nothing is scheduled.
func (b *Browser) Stall(ms float64) { b.Wall.passed += ms }

// Interrupt takes the sound away, as a call does; the next press asks for it again.
func (b *Browser) Interrupt() {
	b.Sound.suspend(host.WhyPaused)
	b.Frame()
}

// Hide hides the page, or shows it again.
func (b *Browser) Hide(on bool) {
	b.hidden = on
	b.Sound.wanted = !on
	if on {
		b.Sound.suspend(host.WhyHidden)
	} else {
		b.Sound.resume()
	}
	b.Frame()
}

// Gap tears the sound, as a device does that is changed for another.
func (b *Browser) Gap() {
	b.Sound.restart(host.WhyGap)
	b.Frame()
}

// Resize makes the window as wide as so many CSS pixels.
func (b *Browser) Resize(across float64) {
	b.Page.Across = across
	b.Frame()
}

// Text is what the screen shows, as text.
func (b *Browser) Text() string { return dump(b.Screen()) }
