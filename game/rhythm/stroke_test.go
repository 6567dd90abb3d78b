package rhythm_test

import (
	"testing"

	"github.com/stretchr/testify/require"

	"groundbeat/game/rhythm"
)

func TestStroke(t *testing.T) {
	tests := []struct {
		stroke             rhythm.Stroke
		low, sounds, light bool
		text               string
	}{
		{rhythm.Dum, true, true, false, "D"},
		{rhythm.Tek, false, true, false, "T"},
		{rhythm.Sak, false, true, false, "S"},
		{rhythm.LightTek, false, true, true, "t"},
		{rhythm.Ka, false, true, true, "k"},
		{rhythm.Rest, false, false, false, "-"},
		{rhythm.Stroke('q'), false, false, false, "q"},
	}
	for _, tt := range tests {
		t.Run(tt.text, func(t *testing.T) {
			require.Equal(t, tt.low, tt.stroke.Low())
			require.Equal(t, tt.sounds, tt.stroke.Sounds())
			require.Equal(t, tt.light, tt.stroke.Light())
			require.Equal(t, tt.text, tt.stroke.String())
		})
	}
}

func TestParsePattern(t *testing.T) {
	tests := []struct{ name, text, want string }{
		{"every stroke", "DTStk-", "DTStk-"},
		{"blanks and bars", " D T - T | D - T - ", "DT-TD-T-"},
		{"no-break blank from a web page", "DT-T\u00a0D-T-", "DT-TD-T-"},
	}
	for _, tt := range tests {
		t.Run(tt.name, func(t *testing.T) {
			p, err := rhythm.ParsePattern(tt.text)
			require.NoError(t, err)
			require.Equal(t, tt.want, p.String())
		})
	}
}

func TestParsePatternMistakes(t *testing.T) {
	tests := []struct{ text, want string }{
		{"", "column 1: a pattern needs at least one stroke"},
		{" | ", "column 4: a pattern needs at least one stroke"},
		{"DT-q", "column 4: unknown stroke 'q'; strokes are D, T, S, t, k and - for a rest"},
		{"Dt-d", "column 4: unknown stroke 'd'; a dum is written 'D'"},
		{"DTs", "column 3: unknown stroke 's'; a slap is written 'S'"},
		{"DTK", "column 3: unknown stroke 'K'; ka is a light stroke: 'k'"},
		{"DT.TD.T.", "column 3: unknown stroke '.'; a rest is written '-', a plain hyphen"},
		{"DT–TD–T–", "column 3: unknown stroke '–'; a rest is written '-', a plain hyphen"},
		{"D T\u200e-", "column 4: unknown stroke U+200E; strokes are D, T, S, t, k and - for a rest"},
	}
	for _, tt := range tests {
		t.Run(tt.text, func(t *testing.T) {
			p, err := rhythm.ParsePattern(tt.text)
			require.EqualError(t, err, tt.want)
			require.Nil(t, p)
		})
	}
}

func TestPatternDums(t *testing.T) {
	p, err := rhythm.ParsePattern("-tDkD-SD")
	require.NoError(t, err)
	require.Equal(t, []int{2, 4, 7}, p.Dums())
	require.Empty(t, rhythm.Pattern{rhythm.Tek, rhythm.Rest}.Dums())
}
