package view

import "groundbeat/game/picture"

// Role says what an item is to a person, however it looks.
type Role uint8

// The roles. After each: the fields that it needs besides ID.
const (
	RoleNone     Role = iota
	RoleHeading       // Name, Level 1 to 6
	RoleText          // Text
	RoleButton        // Name, Action; Text, a sentence about it; Pressed for a toggle
	RoleChoice        // Name, Action, Options, Value (one of the options; empty: none)
	RoleSlider        // Name, Action, Min < Max, Step > 0, Num, Value (Num in words); Ends
	RoleField         // Name, Action; Value is what is typed in it
	RoleCheckBox      // Name, Action, Checked
	RoleList          // Children, each a RoleListItem; Name if it has one
	RoleListItem      // Text or Children
	RoleTable         // Name (its caption), Columns, Rows
	RolePicture       // Name, Text (the text twin), Aspect, and Picture or Place
	RoleDialog        // Name, Children, Action (what Escape does)
	RoleProgress      // Name, Num between Min and Max, Value (Num in words)
	RoleStatus        // Text, Live
	RoleGroup         // Children; Name if it has one
	RoleTapArea       // Name, Action; Children lie under it
	RoleLink          // Name, Value (the address)
	RoleDetails       // Name (what is always shown), Children (shown when opened)
	RoleFile          // Name, Action; a button that lets a file be picked, its value "name\ntext"
	Roles             // how many there are
)

var roleNames = [Roles]string{"none", "heading", "text", "button", "choice", "slider", "field",
	"check", "list", "listitem", "table", "picture", "dialog", "progress", "status", "group",
	"taparea", "link", "details", "file"}

// String returns the role's name in lower case, as dumps and style sheets use it.
func (r Role) String() string {
	if r >= Roles {
		return "unknown"
	}
	return roleNames[r]
}

// The looks: the closed set of hooks that the style sheet knows. An item without
// one looks as its role does.
const (
	LookPrimary = "primary" // button: the one thing to do on this screen
	LookQuiet   = "quiet"   // button, text: there, but not asking
	LookFigure  = "figure"  // text: Value large, Text small below it
	LookNote    = "note"    // text, status: an aside; hearing, storage
	LookWarning = "warning" // text, status: something is wrong; what to do
	LookFinding = "finding" // text: the one sentence of a review
	LookScript  = "script"  // text: a name in its own script
	LookRow     = "row"     // group: children side by side, wrapping
	LookLines   = "lines"   // group: children below one another, all as wide as the widest
	LookPair    = "pair"    // group: two groups side by side, each half as wide; never wrapping
	LookNav     = "nav"     // group: the ways to the other screens, at the foot
	LookDoors   = "doors"   // list: ways to go from Home, each a large button with a sentence
	LookFigures = "figures" // group: several LookFigure texts
	LookStage   = "stage"   // group, picture, taparea: the large place for the drumhead
	LookBoard   = "board"   // picture: the wide place for the whiteboard line
	LookGrid    = "grid"    // group: pictures side by side, as many as there is room for
	LookMatter  = "matter"  // group: a heading, a finding, its pictures, one below another
	LookStrip   = "strip"   // group: where a practice stands, in one line
	LookDigit   = "digit"   // button: one of several, with the digit that chooses it where there is a keyboard
	LookPlan    = "plan"    // list: the parts of a practice
	LookBar     = "bar"     // group: the way home and the next step, at the foot of the window
)

// Looks are all of them, "" for none.
var Looks = []string{"", LookPrimary, LookQuiet, LookFigure, LookNote, LookWarning, LookFinding,
	LookScript, LookRow, LookLines, LookPair, LookNav, LookDoors, LookFigures, LookStage, LookBoard,
	LookGrid, LookMatter, LookStrip, LookBar, LookDigit, LookPlan}

// Politeness of an item whose text changes by itself; empty means not announced.
const (
	LivePolite    = "polite"    // said when the person is idle
	LiveAssertive = "assertive" // said at once
)

// Option is one value of a choice.
type Option struct {
	Value string // what the action is told
	Label string // what is shown and said
}

// Item is one thing on a screen. Which fields count depends on its role.
type Item struct {
	ID   string // unique in its screen; the renderer patches by it
	Role Role
	Name string // the accessible name, and the visible label
	Text string // running text; for a picture its text twin
	// Value is the value as text: of a choice, a field, a link's address, a figure.
	Value string

	Level               int       // of a heading, 1 to 6
	Min, Max, Step, Num float64   // of a slider or a progress, in its own unit
	Ends                [2]string // what the ends of a slider are; empty: figures, which say it
	Options             []Option
	Columns             []string   // heads of a table
	Rows                [][]string // cells of a table, each row as long as Columns

	Action   string // id of what happens when it is used
	Disabled bool
	Pressed  bool // of a button that stays down
	Checked  bool // of a check box

	Lang string // BCP 47; empty: the screen's
	Dir  string // "ltr" or "rtl"; empty: the screen's
	Look string // one of the looks above
	Live string // politeness of a status

	Picture *picture.Picture // a still picture
	Place   string           // id of a live picture that the painter draws here
	Aspect  float64          // width over height of a picture's place

	Children []Item
}

// Screen is all that is shown at one time.
type Screen struct {
	ID     string
	Title  string // of the page
	Lang   string // BCP 47
	Dir    string // "ltr" or "rtl"
	Focus  string // id of the item focused on arrival; empty: the first heading
	Escape string // action id of the Escape key; empty: none
	Keys   []Key  // what other keys do, wherever the focus is
	Room   bool   // a room sees it: the display stays awake, and the pointer hides
	Items  []Item
}

// Key is what a key does on a screen, if no control that has the focus needs it: Enter
// and the space bar belong to a button that has it, and all keys to a text field.
type Key struct {
	Key           string // as the browser names it; letters in lower case
	Action, Value string
}

// Each calls f for every item of the screen, parents before children, in order.
func (s *Screen) Each(f func(*Item)) { each(s.Items, f) }

func each(items []Item, f func(*Item)) {
	for i := range items {
		f(&items[i])
		each(items[i].Children, f)
	}
}

// Find returns the item with the id, or nil.
func (s *Screen) Find(id string) *Item {
	var found *Item
	s.Each(func(it *Item) {
		if it.ID == id {
			found = it
		}
	})
	return found
}

// FocusID returns the id of the item to focus on arrival: Focus, or else the
// first heading, or else "".
func (s *Screen) FocusID() string {
	id := s.Focus
	s.Each(func(it *Item) {
		if id == "" && it.Role == RoleHeading {
			id = it.ID
		}
	})
	return id
}
