package link

import "strings"

// nearest returns the word that fewest changed letters make of value, if no more
// than a third of its letters change.
func nearest(value string, words []string) (string, bool) {
	best, least := "", len(value)/3+1
	if len(value) > 30 {
		return "", false
	}
	for _, word := range words {
		if d := changes(strings.ToLower(value), word); d < least {
			best, least = word, d
		}
	}
	return best, best != ""
}

// changes returns the edit distance of two words: V. I. Levenshtein, "Binary
// codes capable of correcting deletions, insertions, and reversals", 1966.
func changes(a, b string) int {
	row := make([]int, len(b)+1)
	for j := range row {
		row[j] = j
	}
	for i := range len(a) {
		before := row[0]
		row[0] = i + 1
		for j := range len(b) {
			put := before
			if a[i] != b[j] {
				put++
			}
			before = row[j+1]
			row[j+1] = min(put, row[j]+1, row[j+1]+1)
		}
	}
	return row[len(b)]
}
