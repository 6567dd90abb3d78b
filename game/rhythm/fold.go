package rhythm

import (
	"strings"
	"unicode"
)

// fold returns what is compared when a name is searched for: letters and digits
// in lower case, without accents, vowel signs, apostrophes, blanks and other
// marks. "Sa'idi", "saʿīdī" and "saidi" fold alike.
//
// Letters with accents are taken apart by a table for the Latin, Greek and
// Arabic letters that occur in names of rhythms and their transliterations, not
// for all of Unicode; accents written as separate marks are always dropped.
func fold(name string) string {
	var b strings.Builder
	for _, r := range name {
		r = unicode.ToLower(r)
		if plain, found := plainLetters[r]; found {
			r = plain
		}
		if (unicode.IsLetter(r) && !unicode.Is(unicode.Lm, r)) || unicode.IsDigit(r) {
			b.WriteRune(r)
		}
	}
	return b.String()
}

// plainLetters maps each lower case letter with an accent to that without.
var plainLetters = plain(map[rune]string{
	'a': "àáâãäåāăą", 'c': "çćč", 'd': "ďđḍḏ", 'e': "èéêëēĕėęě", 'g': "ğġǧḡ",
	'h': "ḥḫħẖ", 'i': "ìíîïīĭįı", 'k': "ḵķ", 'l': "łḷ", 'n': "ñńňṇ", 'o': "òóôõöøō",
	'r': "řṛ", 's': "śşšșṣ", 't': "ťţțṭṯ", 'u': "ùúûüūŭů", 'y': "ýÿ", 'z': "źżžẓẕ",
	'α': "ά", 'ε': "έ", 'η': "ή", 'ι': "ίϊΐ", 'ο': "ό", 'υ': "ύϋΰ", 'ω': "ώ", 'σ': "ς",
	'ا': "أإآٱ", 'ي': "ىئی", 'و': "ؤ", 'ه': "ة", 'ك': "ک",
})

func plain(accented map[rune]string) map[rune]rune {
	letters := map[rune]rune{}
	for letter, others := range accented {
		for _, other := range others {
			letters[other] = letter
		}
	}
	return letters
}
