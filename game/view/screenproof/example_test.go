package screenproof_test

import (
	"fmt"
	"groundbeat/assets"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view"
	"groundbeat/game/view/roundview"
	"groundbeat/game/view/screenproof"
	"os"
)

func ExampleDump() {
	w, _ := say.Load(assets.Words)
	d := roundview.Dums{Phase: view.Voided, Why: view.WhyHidden, Base: rhythm.Pattern("DT-TD-T-"), Rhythm: view.RhythmName{ID: "maqsum", Name: "maqsum"}}
	if err := screenproof.Dump(os.Stdout, d.Screen(w)); err != nil {
		fmt.Println(err)
	}
	// Output:
	// screen dums "This round does not count – Groundbeat" lang=en dir=ltr focus=heading escape=change
	//   heading #heading h1 "This round does not count"
	//   text #why text="The page was out of sight, and the browser may have held the sound back." look=warning
	//   text #kept text="Nothing of it is kept."
	//   picture #head "The drumhead" text="The drum seen from above, with nothing on it: listen." look=stage place=head aspect=1
	//   group #bar look=bar
	//     button #home "Home" do=home look=quiet
	//     button #once "Once more" do=once look=primary
	//   group #again look=row
	//     button #change "Change the round" do=change look=quiet
}
