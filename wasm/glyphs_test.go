//go:build !js

package main

import (
	"io/fs"
	"path"
	"regexp"
	"slices"
	"strings"
	"testing"
	"unicode"

	"github.com/stretchr/testify/require"

	"groundbeat/assets"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
)

// written are characters that no text of ours holds today and a player may write,
// in the name of an output, of a rhythm of her own, of a dance: the letters of the
// Latin languages of Europe and of Turkish (Unicode blocks Latin-1 Supplement and
// Latin Extended-A), and of Arabic with its vowel signs, digits and punctuation
// (Unicode 16.0, chapter 9.2). Readex Pro has no letters of Persian and Urdu.
func written() (all []rune) {
	for c := rune('!'); c < 0x17f; c++ {
		if unicode.IsLetter(c) || c < 0x7f {
			all = append(all, c)
		}
	}
	for c := rune(0x621); c <= 0x652; c++ {
		if unicode.Is(unicode.Arabic, c) && (c < 0x63b || c > 0x640) || unicode.IsMark(c) {
			all = append(all, c)
		}
	}
	return append(all, []rune("٠١٢٣٤٥٦٧٨٩،؛؟–—’‘“”«»…·°×−")...)
}

// drawn are the characters of a picture's texts.
func drawn(p *picture.Picture) (all []rune) {
	for i := range p.Shapes {
		all = append(all, []rune(p.Shapes[i].Text)...)
	}
	return all
}

// texts are the characters that stand in a file: of a picture as SVG, in its texts.
func texts(t *testing.T, name string) []rune {
	t.Helper()
	content, err := fs.ReadFile(root, name)
	require.NoError(t, err)
	if path.Ext(name) != ".svg" {
		return []rune(string(content))
	}
	var all []rune
	for _, m := range regexp.MustCompile(`>([^<>]+)<`).FindAllSubmatch(content, -1) {
		all = append(all, []rune(strings.ReplaceAll(string(m[1]), "&amp;", "&"))...)
	}
	return all
}

func glob(t *testing.T, pattern string) []string {
	t.Helper()
	names, err := fs.Glob(root, pattern)
	require.NoError(t, err)
	require.NotEmpty(t, names, pattern)
	return names
}

// Every character that the page or its pictures write has a glyph in our own
// typeface: a word in two typefaces looks broken, and a picture leaves it out.
// Readex Pro has no Greek: the one Greek spelling, a whole word, is set in the
// system's typeface.
func TestEveryGlyphIsThere(t *testing.T) {
	onPage := written()
	for _, pattern := range []string{"assets/words.txt", "assets/rhythms/*.txt", "game/*/testdata/*", "wasm/page/index.html"} {
		for _, name := range glob(t, pattern) {
			onPage = append(onPage, texts(t, name)...)
		}
	}
	var inPictures []rune
	for _, name := range glob(t, "game/picture/testdata/head-*.svg") {
		inPictures = append(inPictures, texts(t, name)...)
	}
	all, err := rhythm.Load(assets.Rhythms)
	require.NoError(t, err)
	for _, id := range all.IDs() {
		c, _ := all.Get(id)
		for _, form := range []rhythm.Pattern{c.Skeleton, c.Filled} {
			if len(form) > 0 {
				h := picture.Head{Base: form, Counts: picture.CountsOf(c.Form(form)), Centre: "5678"}
				var p picture.Picture
				h.Draw(&p)
				inPictures = append(inPictures, drawn(&p)...)
			}
		}
	}
	for pattern, needed := range map[string][]rune{"wasm/page/fonts/*.woff2": onPage, "assets/fonts/*.ttf": inPictures} {
		for _, name := range glob(t, pattern) {
			font, err := fs.ReadFile(root, name)
			require.NoError(t, err)
			has, err := covers(font)
			require.NoError(t, err, name)
			var missing []string
			for _, c := range slices.Compact(slices.Sorted(slices.Values(needed))) {
				if c >= ' ' && !has[c] && !unicode.Is(unicode.Greek, c) {
					missing = append(missing, string(c))
				}
			}
			require.Empty(t, missing, "%s has %d characters, and lacks some", name, len(has))
		}
	}
}
