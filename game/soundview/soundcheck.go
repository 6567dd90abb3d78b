package soundview

import (
	"fmt"
	"strconv"
	"time"

	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// SoundCheck is what the screen Sound check is made from: is the dum heard, and
// does the picture move with the sound?
type SoundCheck struct {
	Rhythm *rhythm.Cycle // what is played to see the picture move

	Volume int    // 0 to 100; below 0: there is no sound, and so nothing to check
	Hears  string // whether the dum is heard: CheckYes, CheckNo, or "" before an answer
	Silent bool   // nothing came of what was to be played

	Playing  bool
	Later    time.Duration  // how long the picture waits for the sound: + later, − earlier
	Measured *time.Duration // mean of the output in use, as Set-up measured it; nil: it was not
	Bass     int            // how far the balance lies towards the bass drum: 0, both alike, to MostBass
	Mono     bool           // both drums in the middle

	Output  string   // name of the output that this is kept for; empty: DefaultOutput
	Outputs []string // names of those that are kept; fewer than two: there is no choice

	Notes []view.Note
}

// The answers to "Can you hear the dum?".
const (
	CheckYes = "yes"
	CheckNo  = "no"
)

// How far the picture can be moved against the sound, and in what steps: from a
// browser that says more delay than there is, to slow wireless headphones (300 ms
// are reported) behind a slow television. Own choice.
const (
	EarliestPicture = -100 * time.Millisecond
	LatestPicture   = 500 * time.Millisecond
	PictureStep     = 10 * time.Millisecond
)

// How far the balance goes towards the bass drum, and by how much at a press: the
// lead drum keeps two fifths of its level (−8 dB), since it must be heard as well.
// Own choice.
const (
	MostBass = 60
	BassStep = 20
)

// AsMeasured returns where to begin with the picture, by the mean that Set-up
// measured: the nearest step within the range.
//
// It is where to begin and no more. The mean is what the output is behind and what
// the player is behind together, and people who tap along are mostly ahead of what
// they hear, by some tens of milliseconds (Aschersleben, "Temporal control of
// movements in sensorimotor synchronization", Brain and Cognition 48, 66–79, 2002;
// the figure from memory). The keyboard's or touch screen's delay is in it too. A
// picture has neither. So the eye decides.
func AsMeasured(mean time.Duration) time.Duration {
	return min(max(mean.Round(PictureStep), EarliestPicture), LatestPicture)
}

// Screen returns the screen. Whether it plays changes one button, so that the
// focus stays where it is.
func (c *SoundCheck) Screen(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", w.Say("check")), {ID: "why", Role: view.RoleText, Text: w.Say("check-why")}}
	if c.Volume >= 0 {
		items = append(items, c.hear(w)...)
		items = append(items, c.see(w)...)
	}
	items = append(items, view.NotesWithout(w, c.Notes, w.Say("check-no-sound"))...)
	s := view.ReadyScreen(w, view.ScreenCheck, w.Say("check"), items)
	if c.Playing {
		s.Escape = view.ActStop
	}
	return s
}

// Head returns what the drumhead shows; the painter adds the sweep.
func (c *SoundCheck) Head() picture.Head {
	return picture.Head{Base: c.Rhythm.Skeleton, Counts: picture.CountsOf(c.Rhythm.Base())}
}

// hear is the first half: one stroke, and whether it is heard.
func (c *SoundCheck) hear(w say.Words) []view.Item {
	strike := func(stroke, name, look string) view.Item {
		return view.Item{ID: "strike-" + stroke, Role: view.RoleButton, Name: name, Action: view.ActStrike, Value: stroke, Look: look}
	}
	items := []view.Item{
		{ID: view.BarID, Role: view.RoleGroup, Children: []view.Item{strike("tek", w.Say("check-tek"), ""), strike("dum", w.Say("check-dum"), view.LookPrimary)}},
		{ID: "strikes", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{view.Volume(w, c.Volume)}},
	}
	if c.Silent {
		items = append(items, view.Item{ID: "silent", Role: view.RoleText, Text: w.Say("void-silent"), Look: view.LookWarning})
	}
	items = append(items, view.Item{ID: "hears", Role: view.RoleChoice, Name: w.Say("check-hear"), Action: view.ActHears, Value: c.Hears,
		Options: []view.Option{{Value: CheckYes, Label: w.Say("yes")}, {Value: CheckNo, Label: w.Say("no")}}})
	switch {
	case c.Hears == CheckNo:
		return append(items, c.tips(w))
	case c.Hears == CheckYes:
		items = append(items, view.Item{ID: "heard", Role: view.RoleText, Text: w.Say("check-heard")})
	}
	if c.Bass > 0 { // else there is nothing to take back
		items = append(items, c.share(w))
	}
	return items
}

// tips is what to try, the likeliest to help first.
func (c *SoundCheck) tips(w say.Words) view.Item {
	list := view.Item{ID: "tips", Role: view.RoleList, Name: w.Say("check-try")}
	for i, tip := range []string{w.Say("check-louder"), w.Say("check-face"), w.Say("check-larger"), w.Say("check-bass")} {
		list.Children = append(list.Children, view.Item{ID: fmt.Sprintf("tip-%d", i+1), Role: view.RoleListItem, Text: tip})
	}
	last := &list.Children[len(list.Children)-1]
	last.Children = []view.Item{{ID: "bass", Role: view.RoleText, Text: last.Text}, c.share(w)}
	last.Text = ""
	return list
}

// share says how far the bass drum has more than its share, and changes it.
func (c *SoundCheck) share(w say.Words) view.Item {
	button := func(id, name string, bass int) view.Item {
		return view.Item{ID: id, Role: view.RoleButton, Name: name, Action: view.ActBass, Value: strconv.Itoa(bass)}
	}
	alike := button("alike", w.Say("check-alike"), 0)
	balance := view.Item{ID: "balance", Role: view.RoleText, Text: say.Sentence(view.SayBalance(w, c.Bass)), Look: view.LookNote}
	row := []view.Item{balance, alike}
	if c.Hears == CheckNo {
		more := button("more-bass", w.Say("check-more-bass"), min(c.Bass+BassStep, MostBass))
		alike.Pressed = c.Bass == 0
		row = []view.Item{more, alike, balance}
	}
	return view.Item{ID: "share", Role: view.RoleGroup, Look: view.LookRow, Children: row}
}

// see is the second half: the picture, how long it waits, and what else is kept
// for the output.
func (c *SoundCheck) see(w say.Words) []view.Item {
	h := c.Head()
	play := view.Item{ID: "play", Role: view.RoleButton, Name: w.Say("play"), Action: view.ActPlay}
	if c.Playing {
		play.Name, play.Action = w.Say("stop"), view.ActStop
	}
	return []view.Item{
		view.Subheading("see", w.Say("check-picture")),
		{ID: "how", Role: view.RoleText, Text: w.Say("check-how")},
		view.Stage(w, h.Twin(w)),
		{ID: "watch", Role: view.RoleGroup, Look: view.LookRow, Children: view.Present([]view.Item{play, c.later(w), c.asMeasured(w)})},
		{ID: "mono", Role: view.RoleCheckBox, Name: w.Say("check-mono"), Action: view.ActMono, Checked: c.Mono},
		c.output(w),
	}
}

func (c *SoundCheck) later(w say.Words) view.Item {
	return view.Item{ID: "later", Role: view.RoleSlider, Name: w.Say("check-later-name"), Action: view.ActLater,
		Min: InMs(EarliestPicture), Max: InMs(LatestPicture), Step: InMs(PictureStep), Num: InMs(c.Later),
		Value: sayLater(w, c.Later), Ends: [2]string{w.Say("check-earlier-end"), w.Say("check-later-end")}}
}

func InMs(d time.Duration) float64 { return float64(say.WholeMs(d)) }

func sayLater(w say.Words, d time.Duration) string {
	switch n := say.WholeMs(d); {
	case n < 0:
		return w.Say("check-earlier", "ms", -n)
	case n > 0:
		return w.Say("check-later", "ms", n)
	}
	return w.Say("check-as-it-comes")
}

// asMeasured offers the mean of the output's set-up as where to begin.
func (c *SoundCheck) asMeasured(w say.Words) view.Item {
	if c.Measured == nil {
		return view.Item{}
	}
	begin := AsMeasured(*c.Measured)
	return view.Item{ID: "measured", Role: view.RoleButton, Name: w.Say("check-measured", "later", sayLater(w, begin)),
		Action: view.ActLater, Value: strconv.Itoa(say.WholeMs(begin))}
}

// output says which output all this is kept for; where there are several, it is
// chosen here as well.
func (c *SoundCheck) output(w say.Words) view.Item {
	name := c.Output
	if name == "" {
		name = DefaultOutput(w)
	}
	setUp := view.Item{ID: "to-set-up", Role: view.RoleButton, Name: w.Say("check-set-up"), Action: view.ActGo, Value: view.ScreenSetUp, Look: view.LookQuiet}
	if len(c.Outputs) < 2 {
		kept := view.Item{ID: "kept", Role: view.RoleText, Text: w.Say("check-kept", "name", name), Look: view.LookNote}
		return view.Item{ID: "for", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{kept, setUp}}
	}
	choice := view.Item{ID: "output", Role: view.RoleChoice, Name: w.Say("check-output"), Action: view.ActSetUpUse}
	for _, o := range c.Outputs {
		choice.Options = append(choice.Options, view.Option{Value: o, Label: o})
	}
	choice.Value = view.Chosen(choice.Options, c.Output)
	return view.Item{ID: "for", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{choice, setUp}}
}
