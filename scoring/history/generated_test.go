package history

import (
	"encoding/json"
	"fmt"
	"math/rand/v2"
	"slices"
	"strings"
	"testing"
	"time"

	"github.com/stretchr/testify/require"

	"groundbeat/scoring"
)

// everyRound are rounds of all kinds, flawless and not, some with all that may be absent.
func everyRound(t testing.TB) (all []Round) {
	for _, k := range Kinds {
		right, wrong := finished[k.ID](t)
		for i, r := range []Round{right, wrong} {
			if i == 0 {
				r.RiffVersion, r.HideAsked, r.Hide = 3, 60, new(0.583)
				r.Helps, r.Player = Helps{Balance: -40, Bass: 2, Hands: true}, "Amira"
			}
			line, err := Format(r)
			require.NoError(t, err)
			r, err = Parse(line)
			require.NoError(t, err)
			all = append(all, r)
		}
	}
	return all
}

// lineOf is a round as a line, taken apart.
func lineOf(t testing.TB, r Round) map[string]json.RawMessage {
	line, err := Format(r)
	require.NoError(t, err)
	var members map[string]json.RawMessage
	require.NoError(t, json.Unmarshal(line, &members))
	return members
}

// joined is a line of members in some order.
func joined(members map[string]json.RawMessage, order []string) []byte {
	var parts []string
	for _, name := range order {
		parts = append(parts, fmt.Sprintf("%q:%s", name, members[name]))
	}
	return []byte("{" + strings.Join(parts, ",") + "}")
}

func namesOf(members map[string]json.RawMessage) (names []string) {
	for name := range members {
		names = append(names, name)
	}
	slices.Sort(names)
	return names
}

// Every round is written as one line and read as the same; written again it is the same
// text.
func TestEveryRoundIsReadAgain(t *testing.T) {
	for _, r := range everyRound(t) {
		line := thereAndBack(t, r)
		require.NotContains(t, line, "\n")
		again, err := Parse([]byte(line))
		require.NoError(t, err)
		second, err := Format(again)
		require.NoError(t, err)
		require.Equal(t, line, string(second), r.Kind)
	}
}

// The order of the members has no meaning, nor has white space between them.
func TestOrderHasNoMeaning(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 2))
	for _, r := range everyRound(t) {
		members := lineOf(t, r)
		names := namesOf(members)
		for range 5 {
			chance.Shuffle(len(names), func(i, j int) { names[i], names[j] = names[j], names[i] })
			got, err := Parse(joined(members, names))
			require.NoError(t, err)
			require.Equal(t, r, got)
			var spaced strings.Builder
			for i, c := range string(joined(members, names)) {
				if c == '{' || c == ':' && i%2 == 0 || c == '[' {
					spaced.WriteString(string(c) + " \t")
					continue
				}
				spaced.WriteRune(c)
			}
			got, err = Parse([]byte("  " + spaced.String() + "\r"))
			if err == nil { // where no colon stood within a text
				require.Equal(t, r.Kind, got.Kind)
			}
		}
	}
}

// optional are the members that may be absent, each for its reason.
var optional = []string{"riffVersion", "hideAsked", "hide", "helps", "player", "close", "early"}

// Without a member that must be there a line is refused by its name, and the line is
// handed back; without one that may be absent it is read.
func TestEveryMemberIsMissed(t *testing.T) {
	for _, r := range everyRound(t) {
		members := lineOf(t, r)
		for _, name := range namesOf(members) {
			rest := slices.DeleteFunc(namesOf(members), func(n string) bool { return n == name })
			line := joined(members, rest)
			_, err := Parse(line)
			if slices.Contains(optional, name) {
				require.NoError(t, err, "%s %s", r.Kind, name)
				continue
			}
			var bad *Error
			require.ErrorAs(t, err, &bad, "%s %s", r.Kind, name)
			require.Equal(t, name, bad.Field)
			require.Equal(t, 1, bad.Column)
			require.Equal(t, string(line), string(bad.Raw))
		}
	}
}

// A member of the wrong sort is refused at its place, whatever it is.
func TestEveryMemberHasItsSort(t *testing.T) {
	for _, r := range everyRound(t) {
		members := lineOf(t, r)
		names := namesOf(members)
		for _, name := range names {
			for _, other := range []string{`{"a":1}`, `"text"`, `true`, `[{}]`, `null`, `-0.5`} {
				changed := map[string]json.RawMessage{}
				for n, raw := range members {
					changed[n] = raw
				}
				changed[name] = json.RawMessage(other)
				line := joined(changed, names)
				_, err := Parse(line)
				if err == nil {
					continue // it is of that sort
				}
				var bad *Error
				require.ErrorAs(t, err, &bad, "%s %s: %s", r.Kind, name, other)
				require.GreaterOrEqual(t, bad.Column, 1)
				require.LessOrEqual(t, bad.Column, len(line))
				require.Equal(t, string(line), string(bad.Raw))
			}
		}
	}
}

// What is not known is kept wherever it stands, and written back as it was.
func TestUnknownIsKeptInEveryKind(t *testing.T) {
	for _, r := range everyRound(t) {
		members := lineOf(t, r)
		members["later"], members["also-later"] = json.RawMessage(`{"a":[1,{"b":null}]}`), json.RawMessage(`"\u00e9"`)
		got, err := Parse(joined(members, namesOf(members)))
		require.NoError(t, err, r.Kind)
		line, err := Format(got)
		require.NoError(t, err)
		var again map[string]json.RawMessage
		require.NoError(t, json.Unmarshal(line, &again))
		require.Equal(t, members, again)
	}
}

// A member that stands there twice is refused, also if both are alike.
func TestNoMemberTwice(t *testing.T) {
	for _, r := range everyRound(t) {
		members := lineOf(t, r)
		for _, name := range namesOf(members) {
			line := joined(members, append(namesOf(members), name))
			_, err := Parse(line)
			var bad *Error
			require.ErrorAs(t, err, &bad, name)
			require.Equal(t, [2]string{name, "twice"}, [2]string{bad.Field, bad.Msg})
		}
	}
}

// A line that is cut anywhere, or in which one letter is another, is read as a round that
// is valid or refused with its place; it never panics, and never loses the line.
func TestBrokenLinesAreHandedBack(t *testing.T) {
	chance := rand.New(rand.NewPCG(1, 3))
	for _, r := range everyRound(t) {
		line, err := Format(r)
		require.NoError(t, err)
		for range 300 {
			broken := slices.Clone(line)
			at := chance.IntN(len(broken))
			if chance.IntN(3) == 0 {
				broken = broken[:at]
			} else {
				broken[at] = "{}[],:\"0-e\\\x80\x00"[chance.IntN(13)]
			}
			got, err := Parse(broken)
			if err != nil {
				checkRefused(t, broken, err)
				continue
			}
			_, err = Format(got)
			require.NoError(t, err, "%s", broken)
		}
	}
}

// The figures of a round follow from its taps: none may say another number.
func TestCountsFollowFromTaps(t *testing.T) {
	for _, r := range everyRound(t) {
		if r.kind().Play != Tapped {
			continue
		}
		for field, change := range map[string]func(*Round){
			"matched": func(r *Round) { r.Matched++ }, "out": func(r *Round) { r.Out++ }, "added": func(r *Round) { r.Added++ },
		} {
			other := r.clone()
			change(&other)
			_, err := Format(other)
			requireField(t, field, err)
		}
	}
}

// A tap round is right from three of four strokes on, with added taps up to a quarter of
// the strokes; one of no strokes never is.
func TestRightFromThreeOfFour(t *testing.T) {
	for matched := range 17 {
		for out := range 17 - matched {
			for added := range 6 {
				dums := matched + out
				want := dums > 0 && float64(matched) >= 0.75*float64(dums) && float64(added) <= 0.25*float64(dums)
				for _, kind := range []string{Dums, Stop, Carry} {
					require.Equal(t, want, Right(Round{Kind: kind, Matched: matched, Out: out, Added: added}))
				}
			}
		}
	}
}

// Nothing is tried where no tap came; every answer is, and to keep still may be one.
func TestTried(t *testing.T) {
	for _, k := range Kinds {
		require.Equal(t, k.Play != Tapped, Tried(Round{Kind: k.ID, Out: 8}), k.ID)
		require.True(t, Tried(Round{Kind: k.ID, Matched: 1}), k.ID)
		require.True(t, Tried(Round{Kind: k.ID, Added: 1}), k.ID)
		require.True(t, Tried(Round{Kind: k.ID, Aside: []Tap{{}}}), k.ID)
	}
	require.False(t, Tried(Round{Kind: "later", Matched: 4}))
	require.False(t, Right(Round{Kind: "later", Matched: 4, Right: true}))
}

// A result of another round is a programmer's mistake, and not written down.
func TestNewRefusesAnotherRoundsResult(t *testing.T) {
	played, result := studio()
	for _, other := range []func(*Round){
		func(r *Round) { r.Strokes = r.Strokes[:len(r.Strokes)-1] },
		func(r *Round) { r.Taps = append(slices.Clone(r.Taps), r.Taps[0]) },
	} {
		changed := played
		other(&changed)
		require.Panics(t, func() { _, _ = New(changed, result) })
	}
	require.NotPanics(t, func() { _, _ = New(played, result) })
	_, err := New(Round{Kind: Which}, scoring.Result{})
	requireField(t, "kind", err)
	_, err = NewAnswered(played)
	requireField(t, "kind", err)
	_, err = NewChange(played)
	requireField(t, "kind", err)
}

// When is a time of RFC 3339; what is none is no time at all.
func TestTime(t *testing.T) {
	at := time.Date(2026, 1, 31, 16, 30, 0, 0, time.UTC)
	require.True(t, Round{When: "2026-01-31T18:30:00+02:00"}.Time().Equal(at))
	for _, no := range []string{"", "yesterday", "2026-01-31", "2026-02-30T18:30:00Z", "2026-01-31 18:30:00Z"} {
		require.True(t, Round{When: no}.Time().IsZero(), no)
	}
}
