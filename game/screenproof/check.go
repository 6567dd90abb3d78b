package screenproof

import (
	"errors"
	"fmt"
	"groundbeat/game/view"
	"slices"
)

// Check reports everything about a screen that a renderer or a screen reader
// would stumble over: ids missing or used twice, a role without what it needs,
// a focus that is not there. Nil if all is well. It is for tests.
func Check(s view.Screen) error {
	c := &checker{screen: s.ID, ids: map[string]bool{}}
	c.want(s.ID != "", "", "the screen has no id")
	c.want(s.Title != "", "", "the screen has no title")
	c.want(s.Lang != "", "", "the screen has no language")
	c.want(s.Dir == "ltr" || s.Dir == "rtl", "", "direction %q", s.Dir)
	s.Each(c.item)
	c.want(s.FocusID() != "", "", "nothing to focus on arrival")
	c.want(s.FocusID() == "" || c.ids[s.FocusID()], "", "focus %q is not on the screen", s.FocusID())
	return errors.Join(c.errs...)
}

type checker struct {
	screen string
	ids    map[string]bool
	errs   []error
}

func (c *checker) want(ok bool, id, format string, args ...any) {
	if !ok {
		c.errs = append(c.errs, fmt.Errorf("screen %q, item %q: %s", c.screen, id, fmt.Sprintf(format, args...)))
	}
}

func (c *checker) item(it *view.Item) {
	c.want(it.ID != "", it.ID, "no id")
	c.want(!c.ids[it.ID], it.ID, "id used twice")
	c.ids[it.ID] = true
	c.want(slices.Contains(view.Looks, it.Look), it.ID, "look %q is not one of the documented", it.Look)
	c.want(slices.Contains([]string{"", "ltr", "rtl"}, it.Dir), it.ID, "direction %q", it.Dir)
	c.want(it.Live == "" || it.Live == view.LivePolite || it.Live == view.LiveAssertive, it.ID, "live %q", it.Live)
	c.want(it.Role > view.RoleNone && it.Role < view.Roles, it.ID, "no role")
	if f := roleChecks[it.Role%view.Roles]; f != nil {
		f(c, it)
	}
}

var roleChecks = [view.Roles]func(*checker, *view.Item){
	view.RoleHeading: func(c *checker, it *view.Item) {
		c.named(it)
		c.want(it.Level >= 1 && it.Level <= 6, it.ID, "heading of level %d", it.Level)
	},
	view.RoleText: func(c *checker, it *view.Item) {
		c.want(it.Text != "", it.ID, "text without text")
		c.want(it.Look != view.LookFigure || it.Value != "", it.ID, "figure without a value")
	},
	view.RoleButton: (*checker).acts,
	view.RoleChoice: func(c *checker, it *view.Item) {
		c.acts(it)
		is := func(o view.Option) bool { return o.Value == it.Value }
		c.want(len(it.Options) > 0, it.ID, "choice of nothing")
		c.want(it.Value == "" || slices.ContainsFunc(it.Options, is), it.ID, "value %q is none of the options", it.Value)
		unsaid := func(o view.Option) bool { return o.Label == "" }
		c.want(!slices.ContainsFunc(it.Options, unsaid), it.ID, "an option without a label")
	},
	view.RoleSlider: func(c *checker, it *view.Item) {
		c.acts(it)
		c.between(it)
		c.want(it.Step > 0, it.ID, "step %g", it.Step)
		c.want((it.Ends[0] == "") == (it.Ends[1] == ""), it.ID, "only one end has a name")
	},
	view.RoleField:    (*checker).acts,
	view.RoleCheckBox: (*checker).acts,
	view.RoleList: func(c *checker, it *view.Item) {
		other := func(child view.Item) bool { return child.Role != view.RoleListItem }
		c.want(len(it.Children) > 0, it.ID, "empty list")
		c.want(!slices.ContainsFunc(it.Children, other), it.ID, "list with something that is no list item")
	},
	view.RoleListItem: func(c *checker, it *view.Item) {
		c.want(it.Text != "" || len(it.Children) > 0, it.ID, "empty list item")
	},
	view.RoleTable: func(c *checker, it *view.Item) {
		c.named(it)
		c.want(len(it.Columns) > 0, it.ID, "table without columns")
		ragged := func(row []string) bool { return len(row) != len(it.Columns) }
		c.want(!slices.ContainsFunc(it.Rows, ragged), it.ID, "a row that is not as long as the columns")
	},
	view.RolePicture: func(c *checker, it *view.Item) {
		c.named(it)
		c.want(it.Text != "", it.ID, "picture without a text twin")
		c.want((it.Picture != nil) != (it.Place != ""), it.ID, "picture needs either shapes or a place")
		c.want(it.Aspect > 0, it.ID, "picture of aspect %g", it.Aspect)
	},
	view.RoleDialog: func(c *checker, it *view.Item) {
		c.acts(it)
		c.want(len(it.Children) > 0, it.ID, "empty dialog")
	},
	view.RoleProgress: func(c *checker, it *view.Item) {
		c.named(it)
		c.between(it)
	},
	view.RoleStatus: func(c *checker, it *view.Item) { c.want(it.Live != "", it.ID, "status that is never announced") },
	view.RoleGroup: func(c *checker, it *view.Item) {
		c.want(len(it.Children) > 0, it.ID, "empty group")
	},
	view.RoleTapArea: (*checker).acts,
	view.RoleLink: func(c *checker, it *view.Item) {
		c.named(it)
		c.want(it.Value != "", it.ID, "link to nowhere")
	},
	view.RoleDetails: func(c *checker, it *view.Item) {
		c.named(it)
		c.want(len(it.Children) > 0, it.ID, "empty details")
	},
	view.RoleFile: (*checker).acts,
}

func (c *checker) named(it *view.Item) { c.want(it.Name != "", it.ID, "%s without a name", it.Role) }

func (c *checker) acts(it *view.Item) {
	c.named(it)
	c.want(it.Action != "", it.ID, "%s without an action", it.Role)
}

func (c *checker) between(it *view.Item) {
	c.want(it.Min < it.Max, it.ID, "from %g to %g", it.Min, it.Max)
	c.want(it.Num >= it.Min && it.Num <= it.Max, it.ID, "%g is not from %g to %g", it.Num, it.Min, it.Max)
}
