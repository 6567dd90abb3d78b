package rhythm

// ParsePattern reads strokes as they stand in a file, see [scanPattern].
func ParsePattern(s string) (Pattern, error) {
	if p, _, err := scanPattern(s); err == nil {
		return p, nil
	} else {
		return nil, err
	}
}
