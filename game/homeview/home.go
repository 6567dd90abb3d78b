package homeview

import (
	"groundbeat/game/diaryview"
	"groundbeat/game/link"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
)

// Home is what the home screen is made from: the doors, and before them, the
// first time, what this is, how loud it is, and a first round at one press.
type Home struct {
	First  bool               // no round was finished here yet
	Rhythm *rhythm.Cycle      // whose drumhead is the mark of the product
	Volume int                // 0 to 100; below 0: there is no sound to set
	Silent bool               // nothing came of what was to be played
	People []diaryview.Person // who practises here, as far as that is known
	Who    string             // ID of the one who is chosen
	Theme  string             // which palette is used: ThemeSystem and so on
	Notes  []view.Note
}

// Screen returns the screen.
func (h *Home) Screen(w say.Words) view.Screen {
	items := []view.Item{view.Heading("heading", w.Say("product"))}
	if h.First {
		items = append(items, view.Item{ID: "what", Role: view.RoleText, Text: w.Say("home-what")}, h.head(w))
		items = append(items, h.level(w)...)
		items = append(items,
			view.Item{ID: "first", Role: view.RoleButton, Name: w.Say("home-first"), Action: view.ActFirst, Look: view.LookPrimary},
			view.Item{ID: "how", Role: view.RoleText, Text: w.Say("home-first-how"), Look: view.LookNote})
	} else {
		items = append(items, h.head(w), h.practice(w))
	}
	for _, d := range view.Doors(w) {
		items = append(items, d.Item(w))
	}
	if !h.First {
		items = append(items, h.level(w)...)
	}
	items = append(items, link.ThemeChoice(w, h.Theme))
	items = append(items, view.NotesWithout(w, h.Notes, w.Say("home-no-sound"))...)
	items = append(items, view.Item{ID: "care", Role: view.RoleText, Text: w.Say("home-care"), Look: view.LookNote})
	return view.Page(w, view.ScreenHome, "", items)
}

// practice is ten minutes of it at one press, and whose, where several practise here.
func (h *Home) practice(w say.Words) view.Item {
	if h.Volume < 0 {
		return view.Item{ID: "practice", Role: view.RoleGroup, Look: view.LookRow, Children: diaryview.Who(w, h.People, h.Who)}
	}
	return view.Item{ID: "practice", Role: view.RoleGroup, Look: view.LookRow, Children: append(diaryview.Who(w, h.People, h.Who),
		view.Item{ID: "practise-now", Role: view.RoleButton, Name: diaryview.SayPractise(w, 10), Action: view.ActDiaryPractise, Value: "10", Look: view.LookPrimary})}
}

// Head returns what the drumhead shows; the painter adds the sweep.
func (h *Home) Head() picture.Head {
	return picture.Head{Base: h.Rhythm.Skeleton, Counts: picture.CountsOf(h.Rhythm.Base())}
}

func (h *Home) head(w say.Words) view.Item {
	head := h.Head()
	return view.Stage(w, head.Twin(w))
}

// level is where one hears how loud it is and sets it, with the caution the first
// time; nothing without sound.
func (h *Home) level(w say.Words) []view.Item {
	if h.Volume < 0 {
		return nil
	}
	items := []view.Item{{ID: "level", Role: view.RoleGroup, Look: view.LookRow, Children: []view.Item{
		{ID: "strike", Role: view.RoleButton, Name: w.Say("home-strike"), Action: view.ActStrike},
		view.Volume(w, h.Volume),
	}}}
	if h.Silent {
		items = append(items, view.Item{ID: "silent", Role: view.RoleText, Text: w.Say("void-silent"), Look: view.LookWarning})
	}
	if h.First {
		items = append(items, view.Item{ID: "loud", Role: view.RoleText, Text: w.Say("home-loud"), Look: view.LookNote})
	}
	return items
}
