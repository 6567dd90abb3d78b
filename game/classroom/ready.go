package classroom

import (
	"slices"
	"strconv"
	"strings"

	"groundbeat/game/classview"
	"groundbeat/game/control"
	"groundbeat/game/host"
	"groundbeat/game/link"
	"groundbeat/game/rhythm"
	"groundbeat/game/riff"
	"groundbeat/game/view"
	"groundbeat/game/warmup"
)

// What is kept of classes besides, by name.
const (
	keptRun     = "run"
	keptInside  = "inside" // at which address the room's screens were shown; "": nowhere
	keptLast    = "last"   // the set that was begun last
	keptClass   = "class"
	keptLetters = "letters" // "no": letters are no keys
)

// ready is what a teacher gets ready.
type ready struct {
	s       *control.Shared
	set     warmup.Set
	linked  bool // the set came by a link, or was put together here
	class   string
	saved   []warmup.Set
	last    *warmup.Set
	letters bool
	problem string
	unkept  bool
	minute  int // wall time, to say when it would end

	seed uint64                    // of the sets that have none: the questions of what is begun next
	made map[string]*warmup.Warmup // by link: they take a while to be worked out
}

func (r *ready) open(s *control.Shared) {
	r.s = s
	r.set, _ = warmup.Preset(warmup.Presets()[0])
}

// prepare takes what the link says, and what is kept.
func (r *ready) prepare() {
	if set := r.s.Address.Set; set != "" {
		if s, err := warmup.ParseLink(set, r.s.Rhythms()); err == nil {
			r.set, r.linked = s, true
		}
	}
	r.problem, r.class = "", r.s.Classes.Kept(keptClass)
	r.letters = r.s.Classes.Kept(keptLetters) != "no"
	r.refresh()
}

// refresh reads what is kept, for other questions than before.
func (r *ready) refresh() {
	r.seed, r.made = r.s.Wall.Seed(), map[string]*warmup.Warmup{}
	r.read()
}

// read reads the sets that are kept, and which was begun last.
func (r *ready) read() {
	r.saved, r.last = nil, nil
	for _, text := range r.s.Classes.KeptUnder(host.KeptSet) {
		if sets, err := warmup.ParseSets(host.KeptSet, text, r.s.Rhythms()); err == nil {
			r.saved = append(r.saved, sets...)
		}
	}
	if s, err := warmup.ParseLink(r.s.Classes.Kept(keptLast), r.s.Rhythms()); err == nil {
		r.last = &s
	}
}

// chosen keeps a set that was begun: next time, with other questions.
func (r *ready) chosen(s warmup.Set) {
	s.Seed = 0
	r.keep(keptLast, s.Link())
}

func (r *ready) keep(name, text string) {
	if err := r.s.Classes.Keep(name, text); err != nil {
		r.unkept = true
	}
}

// address is that of what is put together; the plain one before anything is.
func (r *ready) address() link.Address {
	a := link.Default(view.ScreenClass)
	if r.linked {
		a.Set = r.set.Link()
	}
	return a
}

// tick reports whether what is said of when it ends is another, where it is said.
func (r *ready) tick(said bool) bool {
	m := r.s.Wall.Date().Minute()
	is := m != r.minute && said
	r.minute = m
	return is
}

// warmup is what a set brings if it is begun now: made once, so that what is said of it
// is what it holds.
func (r *ready) warmup(s warmup.Set) (*warmup.Warmup, error) {
	if s.Seed == 0 {
		s.Seed = r.seed
	}
	key := s.Link()
	if r.made[key] == nil {
		w, err := warmup.NewWarmup(s, r.s.Rhythms())
		if err != nil {
			return nil, err
		}
		r.made[key] = w
	}
	w := *r.made[key]
	w.Name = s.Name // two sets of the same questions may have two names
	return &w, nil
}

// length is how much a set brings, and when it ends if it is begun now.
func (r *ready) length(s warmup.Set) classview.ClassLength {
	w, err := r.warmup(s)
	if err != nil {
		return classview.ClassLength{}
	}
	return classview.LengthOf(w, r.s.Wall.Date())
}

// getReady answers the controls where it is got ready.
func (x *Class) getReady(action, value string) {
	r := &x.ready
	r.problem = ""
	switch action {
	case view.ActClassBegin:
		x.begin(r.of(value))
	case view.ActClassResume:
		x.takeUp()
	case view.ActClassName:
		r.class = strings.TrimSpace(value)
		r.keep(keptClass, r.class)
	case view.ActClassLetters:
		r.letters = value != ""
		r.keep(keptLetters, map[bool]string{true: "", false: "no"}[r.letters])
	case view.ActFile:
		r.openFile(value)
	default:
		r.change(action, value)
	}
}

// takeUp goes on with the run that was left.
func (x *Class) takeUp() {
	x.resume(true)
	if x.run == nil {
		return
	}
	x.keepRun()
	if x.run.Stage() == warmup.WalkIn {
		x.walkIn()
	}
}

// change puts into the set what a control says, or answers what becomes of the set.
func (r *ready) change(action, value string) {
	set := r.set
	switch action {
	case view.ActFrom:
		set.From = value
	case view.ActLevel:
		if level, err := riff.ParseLevel(value); err == nil {
			set.Level = level
		}
	case view.ActClassMinutes:
		set.Minutes, _ = strconv.Atoi(value)
	case view.ActClassSeed:
		n, err := strconv.ParseUint(strings.TrimSpace(value), 10, 64)
		if err != nil && strings.TrimSpace(value) != "" {
			return // being typed, or no number
		}
		set.Seed = n
	case view.ActClassSetName:
		set.Name = strings.TrimSpace(value)
	default:
		kind, isKind := strings.CutPrefix(action, view.ActClassKind)
		if !isKind {
			r.other(action)
			return
		}
		set.Kinds = with(set.Kinds, warmup.Kind(kind), value != "")
	}
	r.take(set)
}

// with are kinds with one more, or one less, in their order.
func with(kinds []warmup.Kind, k warmup.Kind, on bool) []warmup.Kind {
	return slices.DeleteFunc(warmup.Kinds(), func(one warmup.Kind) bool {
		if one == k {
			return !on
		}
		return !slices.Contains(kinds, one)
	})
}

// take takes a set that was changed, if it can be.
func (r *ready) take(s warmup.Set) {
	if err := s.Check(r.s.Rhythms()); err != nil {
		r.problem = err.Error()
		return
	}
	r.set, r.linked = s, true
}

// of is the set of what was chosen.
func (r *ready) of(id string) warmup.Set {
	if s, ok := warmup.Preset(id); ok {
		return s
	}
	if id == classview.LastSet && r.last != nil {
		return *r.last
	}
	if n, ok := strings.CutPrefix(id, savedSet); ok {
		if i, err := strconv.Atoi(n); err == nil && i >= 0 && i < len(r.saved) {
			return r.saved[i]
		}
	}
	return r.set
}

const savedSet = "saved-"

// other answers what becomes of a set.
func (r *ready) other(action string) {
	switch action {
	case view.ActClassSave:
		if r.set.Name == "" {
			r.problem = r.s.Words.Say("class-no-name")
			return
		}
		r.keep(host.KeptSet+r.set.Name, warmup.Format(r.set))
		r.read()
	case view.ActClassForget:
		r.keep(host.KeptSet+r.set.Name, "")
		r.read()
	case view.ActClassFile:
		if err := r.s.Classes.Save("groundbeat-class-set.txt", "text/plain", warmup.Format(r.set)); err != nil {
			r.unkept = true
		}
	}
}

// openFile reads a file of sets: the first is put in place, and all that have a name
// are kept.
func (r *ready) openFile(file string) {
	name, text, _ := strings.Cut(file, "\n")
	sets, err := warmup.ParseSets(name, text, r.s.Rhythms())
	if err != nil {
		r.problem = err.Error()
		return
	}
	r.set, r.linked = sets[0], true
	for _, s := range sets {
		if s.Name != "" {
			r.keep(host.KeptSet+s.Name, warmup.Format(s))
		}
	}
	r.read()
}

// pools are the families, as what a warm-up may be made from.
func (r *ready) pools() []view.Option {
	var all []view.Option
	var seen []string
	for _, c := range r.s.Rhythms().Answers(false) {
		if c.Family == "" || slices.Contains(seen, c.Family) {
			continue
		}
		seen = append(seen, c.Family)
		var ids, names []string
		for _, member := range r.s.Rhythms().Family(c.Family) {
			if member.Quiz {
				ids, names = append(ids, member.ID), append(names, plainName(member))
			}
		}
		if len(ids) > 1 {
			all = append(all, view.Option{Value: strings.Join(ids, "."), Label: strings.Join(names, ", ")})
		}
	}
	return all
}

func plainName(c *rhythm.Cycle) string {
	name, _, _ := strings.Cut(c.Name, " (")
	return name
}
