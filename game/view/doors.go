package view

// door leads to screens that belong together.
type door struct {
	id, name string
	ways     []way
}

// way is a screen, and in a sentence what it does for whoever goes there.
type way struct{ screen, what string }

// doors are those of Home, and of the foot of every screen, in their order. What is not
// built yet is not shown; what comes to be is one more entry here.
func doors(w Words) []door {
	return []door{
		{"practise", w.Say("home-practise"), []way{
			{ScreenListen, w.Say("home-listen")},
			{ScreenDums, w.Say("home-dums")},
			{ScreenWhich, w.Say("home-which")},
			{ScreenChange, w.Say("home-change")},
			{ScreenStop, w.Say("home-stop")},
			{ScreenCarry, w.Say("home-carry")},
			{ScreenPractice, w.Say("home-practice")},
			{ScreenDiary, w.Say("home-diary")},
		}},
		{"class", w.Say("home-teach"), []way{
			{ScreenClass, w.Say("home-class")},
		}},
		{"sound", w.Say("home-sound"), []way{
			{ScreenCheck, w.Say("home-check")},
			{ScreenSetUp, w.Say("home-set-up")},
		}},
	}
}

// Screens lists all screens: Home, then those behind its doors.
func Screens() []string {
	all := []string{ScreenHome}
	for _, d := range doors(nil) {
		for _, to := range d.ways {
			all = append(all, to.screen)
		}
	}
	return all
}

// has reports whether a screen lies behind the door.
func (d *door) has(screen string) bool {
	for _, to := range d.ways {
		if to.screen == screen {
			return true
		}
	}
	return false
}

// item is the door as Home shows it: every way with its sentence.
func (d *door) item(w Words) Item {
	list := Item{ID: d.id + "-ways", Role: RoleList, Look: LookDoors}
	for _, to := range d.ways {
		list.Children = append(list.Children, Item{ID: "way-" + to.screen, Role: RoleListItem, Children: []Item{
			{ID: "go-" + to.screen, Role: RoleButton, Name: sayScreen(w, to.screen), Text: to.what, Action: ActGo, Value: to.screen}}})
	}
	return Item{ID: "door-" + d.id, Role: RoleGroup, Children: []Item{subheading(d.id, d.name), list}}
}

// nav is the way to the other screens, at the foot of one: those behind its own door,
// and the other doors, each of which leads to its first screen.
func nav(w Words, here string) Item {
	own := Item{ID: "nav-own", Role: RoleGroup, Look: LookRow}
	others := Item{ID: "nav-doors", Role: RoleGroup, Look: LookRow}
	for _, d := range doors(w) {
		if !d.has(here) {
			others.Children = append(others.Children, goTo("nav-to-"+d.id, d.name, d.ways[0].screen))
			continue
		}
		own.Name = d.name
		own.Children = append(own.Children, Item{ID: "nav-own-name", Role: RoleText, Text: d.name, Look: LookQuiet})
		for _, to := range d.ways {
			way := goTo("nav-"+to.screen, sayScreen(w, to.screen), to.screen)
			way.Pressed = to.screen == here
			own.Children = append(own.Children, way)
		}
	}
	return Item{ID: "nav", Role: RoleGroup, Look: LookNav, Name: w.Say("nav"), Children: []Item{own, others}}
}

func goTo(id, name, screen string) Item {
	return Item{ID: id, Role: RoleButton, Name: name, Action: ActGo, Value: screen, Look: LookQuiet}
}
