package assets

import _ "embed" // for the directive below

// Words is every sentence and label of the program, in the format that
// LoadWords of package groundbeat/game/view reads.
//
//go:embed words.txt
var Words string
