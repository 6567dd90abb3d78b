package view

import "groundbeat/game/rhythm"

// Home is what the home screen is made from: the doors, and before them, the
// first time, what this is, how loud it is, and a first round at one press.
type Home struct {
	First  bool          // no round was finished here yet
	Rhythm *rhythm.Cycle // whose drumhead is the mark of the product
	Volume int           // 0 to 100; below 0: there is no sound to set
	Silent bool          // nothing came of what was to be played
	People []Person      // who practises here, as far as that is known
	Who    string        // ID of the one who is chosen
	Theme  string        // which palette is used: ThemeSystem and so on
	Notes  []Note
}

// FirstRound returns the round that Home begins at one press: maqsum, one of the
// five most used, whose dums come evenly, two counts apart; with nothing in its
// gaps; a little slower than it is usually played; and two eights long, so that
// eight dums, a quarter of a minute with the count-in, bring a first review. Own
// choice.
func FirstRound() Address {
	return Address{Screen: ScreenDums, Rhythm: "maqsum", BPM: 88, Eights: 2, Riff: LevelBare}
}

// Screen returns the screen.
func (h *Home) Screen(w Words) Screen {
	items := []Item{heading("heading", w.Say("product"))}
	if h.First {
		items = append(items, Item{ID: "what", Role: RoleText, Text: w.Say("home-what")}, h.head(w))
		items = append(items, h.level(w)...)
		items = append(items,
			Item{ID: "first", Role: RoleButton, Name: w.Say("home-first"), Action: ActFirst, Look: LookPrimary},
			Item{ID: "how", Role: RoleText, Text: w.Say("home-first-how"), Look: LookNote})
	} else {
		items = append(items, h.head(w), h.practice(w))
	}
	for _, d := range doors(w) {
		items = append(items, d.item(w))
	}
	if !h.First {
		items = append(items, h.level(w)...)
	}
	items = append(items, theme(w, h.Theme))
	items = append(items, notesWithout(w, h.Notes, w.Say("home-no-sound"))...)
	items = append(items, Item{ID: "care", Role: RoleText, Text: w.Say("home-care"), Look: LookNote})
	return page(w, ScreenHome, "", items)
}

// practice is ten minutes of it at one press, and whose, where several practise here.
func (h *Home) practice(w Words) Item {
	if h.Volume < 0 {
		return Item{ID: "practice", Role: RoleGroup, Look: LookRow, Children: who(w, h.People, h.Who)}
	}
	return Item{ID: "practice", Role: RoleGroup, Look: LookRow, Children: append(who(w, h.People, h.Who),
		Item{ID: "practise-now", Role: RoleButton, Name: sayPractise(w, 10), Action: ActDiaryPractise, Value: "10", Look: LookPrimary})}
}

// Head returns what the drumhead shows; the painter adds the sweep.
func (h *Home) Head() Head {
	return Head{Base: h.Rhythm.Skeleton, Counts: CountsOf(h.Rhythm.Base())}
}

func (h *Home) head(w Words) Item {
	head := h.Head()
	return stage(w, head.Twin(w))
}

// level is where one hears how loud it is and sets it, with the caution the first
// time; nothing without sound.
func (h *Home) level(w Words) []Item {
	if h.Volume < 0 {
		return nil
	}
	items := []Item{{ID: "level", Role: RoleGroup, Look: LookRow, Children: []Item{
		{ID: "strike", Role: RoleButton, Name: w.Say("home-strike"), Action: ActStrike},
		volume(w, h.Volume),
	}}}
	if h.Silent {
		items = append(items, Item{ID: "silent", Role: RoleText, Text: w.Say("void-silent"), Look: LookWarning})
	}
	if h.First {
		items = append(items, Item{ID: "loud", Role: RoleText, Text: w.Say("home-loud"), Look: LookNote})
	}
	return items
}
