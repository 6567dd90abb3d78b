package history

import (
	"strings"
	"testing"

	"github.com/stretchr/testify/require"
)

// What a round may have besides is written only where it tells something, read
// back, and rounded.
func TestExtras(t *testing.T) {
	plain, err := Format(record(t))
	require.NoError(t, err)
	require.NotContains(t, string(plain), "helps")
	for _, c := range []struct {
		extend func(r *Round)
		text   string
	}{
		{func(r *Round) { r.RiffVersion, r.HideAsked = 1, 60 }, `"riffVersion":1,"hideAsked":60`},
		{func(r *Round) { r.Hide = new(0.58349) }, `"hide":0.583`},
		{func(r *Round) { r.Hide = new(0.0) }, `"hide":0`},
		{func(r *Round) { r.Helps.Balance = -40 }, `"helps":{"balance":-40}`},
		{func(r *Round) { r.Helps = Helps{Bass: 2, Hands: true} }, `"helps":{"bass":2,"hands":true}`},
		{func(r *Round) { r.Player = "Amira <3" }, `"player":"Amira <3"`},
	} {
		r := record(t)
		c.extend(&r)
		line, err := Format(r)
		require.NoError(t, err)
		require.Equal(t, strings.TrimSuffix(string(plain), "}")+","+c.text+"}", string(line))
		got, err := Parse(line)
		require.NoError(t, err)
		again, err := Format(got)
		require.NoError(t, err)
		require.Equal(t, string(line), string(again))
	}
	answered := answered()[0]
	answered.Helps.Bass = 3
	r, err := NewAnswered(answered)
	require.NoError(t, err)
	line, err := Format(r)
	require.NoError(t, err)
	require.Contains(t, string(line), `"helps":{"bass":3}`)
}

// Of others' lines: what says nothing is dropped, what is unknown stays.
func TestExtrasOfOthers(t *testing.T) {
	line := edit(t, `"seed":7`, `"seed":7,"hide":null,"helps":{"hands":false,"mirror":1}`)
	r, err := Parse([]byte(line))
	require.NoError(t, err)
	require.Nil(t, r.Hide)
	got, err := Format(r)
	require.NoError(t, err)
	require.Contains(t, string(got), `,"helps":{"mirror":1}}`)
	require.NotContains(t, string(got), "hide")
}

func TestExtrasRefused(t *testing.T) {
	for bad, msg := range map[string]string{
		`"riffVersion":‸0`:             "riffVersion: 0 is not from 1 to 1e+09",
		`"hideAsked":‸101`:             "hideAsked: 101 is not from 1 to 100",
		`"hide":‸1.01`:                 "hide: 1.01 is not from 0 to 1",
		`"hide":‸"much"`:               `hide: "much" is not a number or null`,
		`"helps":‸[]`:                  "helps: [] is not an object",
		`"helps":{"balance":‸-101}`:    "helps.balance: -101 is not from -100 to 100",
		`"helps":{"bass":‸0}`:          "helps.bass: 0 is not from 1 to 1e+09",
		`"player":‸null`:               "player: null is not a text",
		`"helps":{"hands":‸1}`:         "helps.hands: 1 is not true or false",
		`"helps":{"bass":1,"bass":‸2}`: "helps.bass: twice",
	} {
		line := edit(t, `"seed":7`, `"seed":7,`+bad)
		column := strings.Index(line, "‸") + 1
		_, err := Parse([]byte(strings.Replace(line, "‸", "", 1)))
		var e *Error
		require.ErrorAs(t, err, &e, bad)
		require.Equal(t, msg, wrong(e.Field, "%s", e.Msg).Error())
		require.Equal(t, column, e.Column, bad)
	}
	r := record(t)
	r.Helps.Balance = 101
	_, err := Format(r)
	requireField(t, "helps.balance", err)
	r = record(t)
	r.Player = "a\xc3"
	_, err = Format(r)
	requireField(t, "player", err)
}
