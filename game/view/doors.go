package view

import "groundbeat/game/say"

// door leads to screens that belong together.
type Door struct {
	id, name string
	ways     []way
}

// way is a screen with its name, and in a sentence what it does for whoever goes there.
type way struct{ screen, name, what string }

// doors are those of Home, and of the foot of every screen, in their order. What is not
// built yet is not shown; what comes to be is one more entry here.
func Doors(w say.Words) []Door {
	return []Door{
		{"practise", w.Say("home-practise"), []way{
			{ScreenListen, w.Say("nav-listen"), w.Say("home-listen")},
			{ScreenDums, w.Say("nav-dums"), w.Say("home-dums")},
			{ScreenWhich, w.Say("nav-which"), w.Say("home-which")},
			{ScreenChange, w.Say("nav-change"), w.Say("home-change")},
			{ScreenStop, w.Say("nav-stop"), w.Say("home-stop")},
			{ScreenCarry, w.Say("nav-carry"), w.Say("home-carry")},
			{ScreenPractice, w.Say("practice"), w.Say("home-practice")},
			{ScreenDiary, w.Say("diary"), w.Say("home-diary")},
		}},
		{"class", w.Say("home-teach"), []way{
			{ScreenClass, w.Say("class"), w.Say("home-class")},
		}},
		{"sound", w.Say("home-sound"), []way{
			{ScreenCheck, w.Say("check"), w.Say("home-check")},
			{ScreenSetUp, w.Say("set-up"), w.Say("home-set-up")},
		}},
	}
}

// sayScreen is the name of a screen; that of Dums if it is not known.
func SayScreen(w say.Words, id string) string {
	if id == ScreenHome {
		return w.Say("home")
	}
	name := w.Say("nav-dums")
	for _, d := range Doors(w) {
		for _, to := range d.ways {
			if to.screen == id {
				name = to.name
			}
		}
	}
	return name
}

// Screens lists all screens: Home, then those behind its doors.
func Screens() []string {
	all := []string{ScreenHome}
	for _, d := range Doors(nil) {
		for _, to := range d.ways {
			all = append(all, to.screen)
		}
	}
	return all
}

// has reports whether a screen lies behind the door.
func (d *Door) has(screen string) bool {
	for _, to := range d.ways {
		if to.screen == screen {
			return true
		}
	}
	return false
}

// item is the door as Home shows it: every way with its sentence.
func (d *Door) Item(w say.Words) Item {
	list := Item{ID: d.id + "-ways", Role: RoleList, Look: LookDoors}
	for _, to := range d.ways {
		list.Children = append(list.Children, Item{ID: "way-" + to.screen, Role: RoleListItem, Children: []Item{
			{ID: "go-" + to.screen, Role: RoleButton, Name: to.name, Text: to.what, Action: ActGo, Value: to.screen}}})
	}
	return Item{ID: "door-" + d.id, Role: RoleGroup, Children: []Item{Subheading(d.id, d.name), list}}
}

// nav is the way to the other screens, at the foot of one: those behind its own door,
// and the other doors, each of which leads to its first screen.
func nav(w say.Words, here string) Item {
	own := Item{ID: "nav-own", Role: RoleGroup, Look: LookRow}
	others := Item{ID: "nav-doors", Role: RoleGroup, Look: LookRow}
	for _, d := range Doors(w) {
		if !d.has(here) {
			others.Children = append(others.Children, goTo("nav-to-"+d.id, d.name, d.ways[0].screen))
			continue
		}
		own.Name = d.name
		own.Children = append(own.Children, Item{ID: "nav-own-name", Role: RoleText, Text: d.name, Look: LookQuiet})
		for _, to := range d.ways {
			way := goTo("nav-"+to.screen, to.name, to.screen)
			way.Pressed = to.screen == here
			own.Children = append(own.Children, way)
		}
	}
	return Item{ID: "nav", Role: RoleGroup, Look: LookNav, Name: w.Say("nav"), Children: []Item{own, others}}
}

func goTo(id, name, screen string) Item {
	return Item{ID: id, Role: RoleButton, Name: name, Action: ActGo, Value: screen, Look: LookQuiet}
}
