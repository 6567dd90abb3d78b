package diaryview

import (
	"groundbeat/game/diary"
	"groundbeat/game/say"
)

// A finding is one sentence of the diary, and what it claims.
type finding struct {
	text   string
	claims []claim
}

// A claim is what a sentence says of a rhythm, in a form that can be held against what
// other sentences say. So no two sentences of one diary contradict each other.
type claim struct {
	says   says
	skill  skill
	rhythm string  // "": of all
	kind   string  // of round; saysWork, saysHeard and so on
	other  string  // saysTaken: what it is taken for
	part   float64 // right, or not missed, or taken, 0 to 1; 0 where none is said
	level  string  // saysWork, saysHeard: riff level
}

// skill is what a claim is about.
type skill uint8

const (
	skillNames skill = iota // rhythms are told by name
	skillDums               // dums are tapped
)

// says is what a claim says.
type says uint8

const (
	saysMore      says = iota // better than at first
	saysLess                  // not as well as at first
	saysMost                  // best of all
	saysLeast                 // least well of all
	saysAlike                 // all alike
	saysWell                  // done well
	saysTaken                 // often taken for another
	saysNoneTaken             // none is, beyond doubt
	saysAhead                 // taps come ahead
	saysBehind                // taps come behind
	saysNoLean                // neither
	saysNew                   // not met yet
	saysWork                  // where the ear has to work
	saysHeard                 // heard through
	saysHeardMore             // through more than at first
	saysHeardLess
)

// sentences are all sentences of a diary that tell what the rounds come to, in the order
// of their matters. None says what one before it rules out.
type sentences struct{ named, tapped, fingers, round, mixed, reach finding }

func (d *Diary) find(w say.Words) sentences {
	f := sentences{named: d.findRight(w, false), tapped: d.findRight(w, true), fingers: d.findFingers(w), round: d.findRound(w), reach: d.findReach(w)}
	f.mixed = d.findMixed(w, f.named.claims)
	return f
}

// claims are those of all findings.
func (f *sentences) claims() (all []claim) {
	for _, one := range []finding{f.named, f.tapped, f.fingers, f.round, f.mixed, f.reach} {
		all = append(all, one.claims...)
	}
	return all
}

// weak reports whether a sentence says that a rhythm goes badly, in whatever respect:
// then no other says that it goes well.
func weak(all []claim, rhythm string) bool {
	for _, c := range all {
		if c.rhythm == rhythm && (c.says == saysLeast || c.says == saysLess || c.says == saysTaken) {
			return true
		}
	}
	return false
}

// doubted reports whether a mix-up cannot be told beside what is claimed: more of a
// rhythm's rounds would be taken for another than are not right, or it is the surest.
func doubted(all []claim, m diary.MixUp) bool {
	for _, c := range all {
		if c.skill != skillNames || c.rhythm != m.Played {
			continue
		}
		if c.says == saysMost || c.says == saysMore && ofHundred(c.part)+ofHundred(m.Share.Value) > 100 {
			return true
		}
	}
	return false
}
