package view

import "groundbeat/game/say"

// Help is the help for the ear that can be turned on and off at any time. The
// balance is another, and a slider.
type Help struct {
	Alone bool // the bass drum is heard alone, for one eight
	Hands bool // the drummer's hands are shown over the drumhead
}

// alone is the button that lets the bass drum be heard alone; of use while there
// is something to be heard.
func (h Help) AloneButton(w say.Words, heard bool) Item {
	it := Item{ID: "alone", Role: RoleButton, Name: w.Say("bass-alone-button"), Action: ActAlone, Value: "yes",
		Pressed: h.Alone && heard, Disabled: !heard}
	if it.Pressed {
		it.Value = ""
	}
	return it
}

// hands is the button that shows the drummer's hands, and hides them.
func (h Help) HandsButton(w say.Words) Item {
	it := Item{ID: "hands", Role: RoleButton, Name: w.Say("hands"), Action: ActHands, Value: "yes", Pressed: h.Hands}
	if h.Hands {
		it.Value = ""
	}
	return it
}

// buttons are both, while a round is played; without sound there is no bass drum
// to be heard.
func (h Help) Buttons(w say.Words, volume int) []Item {
	if volume < 0 {
		return []Item{h.HandsButton(w)}
	}
	return []Item{h.AloneButton(w, true), h.HandsButton(w)}
}

// balance is the slider of how much of each drum is heard; none without sound.
func Balance(w say.Words, n, volume int) Item {
	if volume < 0 {
		return Item{}
	}
	return Item{ID: "balance", Role: RoleSlider, Name: w.Say("balance"), Action: ActBalance,
		Min: -100, Max: 100, Step: 10, Num: float64(n), Value: SayBalance(w, n),
		Ends: [2]string{w.Say("lead-drum"), w.Say("bass-drum")}}
}

func SayBalance(w say.Words, n int) string {
	switch {
	case n <= -100:
		return w.Say("lead-alone")
	case n < 0:
		return w.Say("lead-more", "n", -n)
	case n == 0:
		return w.Say("drums-alike")
	case n < 100:
		return w.Say("bass-more", "n", n)
	}
	return w.Say("bass-alone")
}
