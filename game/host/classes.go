package host

// Classes keeps what belongs to a teacher's classes, apart from what players keep, and
// hands over files.
type Classes interface {
	// Kept is the text that is kept under a name; "" if there is none, or if it cannot
	// be read.
	Kept(name string) string
	// KeptUnder are the texts whose names begin with a text, those that were kept first
	// at first.
	KeptUnder(prefix string) []string
	// Keep keeps a text under a name, or tells why not; then it holds for this visit. A
	// text that is "" is removed.
	Keep(name, text string) error
	// Save hands over a file of a media type, or tells why not.
	Save(name, kind, text string) error
}

// What is kept of classes, by name: KeptDiary followed by the key of an entry, and KeptSet
// by the name of a set, so that what two windows keep is put together.
const (
	KeptDiary = "diary/"
	KeptSet   = "set/"
)
