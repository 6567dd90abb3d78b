package paper

import (
	"errors"
	"fmt"
	"strings"

	"groundbeat/game/screenproof"
	"groundbeat/game/view"
)

// Look tells what is wrong with a screen, whichever it is: what a screen reader would
// stumble over, more or fewer than one heading of the first level, more than one filled
// button in what can be used, and no way home.
func Look(s *view.Screen) error {
	errs := []error{screenproof.Check(*s)}
	headings, filled, out := 0, 0, s.ID == view.ScreenHome || s.Escape != ""
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleHeading && it.Level == 1 {
			headings++
		}
	})
	for _, it := range controls(s) {
		if it.Look == view.LookPrimary {
			filled++
		}
		out = out || it.Action == view.ActHome
	}
	if headings != 1 {
		errs = append(errs, fmt.Errorf("screen %q has %d headings of level 1", s.ID, headings))
	}
	if filled > 1 {
		errs = append(errs, fmt.Errorf("screen %q has %d filled buttons", s.ID, filled))
	}
	if !out {
		errs = append(errs, fmt.Errorf("screen %q has no way home", s.ID))
	}
	return errors.Join(errs...)
}

// UnderWay reports whether something on a screen waits to be heard and answered: taps,
// or one of several answers.
func UnderWay(s *view.Screen) (is bool) {
	s.Each(func(it *view.Item) {
		is = is || it.Role == view.RoleTapArea || it.Role == view.RoleButton && it.Action == view.ActAnswer
	})
	return is
}

// controls are the items of a screen that can be used now: of a dialog, what is in it
// alone.
func controls(s *view.Screen) (all []*view.Item) {
	within := s.Items
	s.Each(func(it *view.Item) {
		if it.Role == view.RoleDialog {
			within = it.Children
		}
	})
	only := view.Screen{Items: within}
	only.Each(func(it *view.Item) {
		if it.Action != "" && !it.Disabled && it.Role != view.RoleDialog {
			all = append(all, it)
		}
	})
	return all
}

// dump is a screen as text.
func dump(s *view.Screen) string {
	var text strings.Builder
	_ = screenproof.Dump(&text, *s) // a builder takes all
	return text.String()
}
