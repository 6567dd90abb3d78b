// Package assets embeds what the program is supplied with: data only, no code
// that reads it.
package assets

import "embed"

// Rhythms holds the files rhythms/*.txt, in the format of package
// groundbeat/game/rhythm.
//
//go:embed rhythms/*.txt
var Rhythms embed.FS

// Regular and Bold hold the digits, letters and signs that pictures write:
// parts of the typeface Readex Pro (SIL Open Font License 1.1, beside them).
//
//go:embed fonts/regular.ttf
var Regular []byte

// Bold is the heavier of the two; see Regular.
//
//go:embed fonts/bold.ttf
var Bold []byte
