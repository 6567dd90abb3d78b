package view

import (
	"fmt"
	"os"

	"groundbeat/assets"
	"groundbeat/game/picture"
	"groundbeat/game/rhythm"
	"groundbeat/game/say"
	"groundbeat/game/view/roundview"
)

func ExampleDump() {
	w, _ := say.Load(assets.Words)
	d := roundview.Dums{Phase: Voided, Why: WhyHidden, Base: rhythm.Pattern("DT-TD-T-"), Rhythm: RhythmName{ID: "maqsum", Name: "maqsum"}}
	if err := Dump(os.Stdout, d.Screen(w)); err != nil {
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

func ExampleWriteSVG() {
	p := picture.Picture{Height: 0.5}
	p.Dot(picture.InkBass, 0.25, 0.25, 0.2)
	p.Text(picture.InkOnBass, 0.25, 0.25, 0.2, "D").Strong()
	if err := picture.WriteSVG(os.Stdout, &p, "A dum", "One dum."); err != nil {
		fmt.Println(err)
	}
	// Output:
	// <svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 1000 500" role="img" font-family="sans-serif">
	// <title>A dum</title>
	// <desc>One dum.</desc>
	// <circle cx="250" cy="250" r="200" class="fill-bass" fill="#7a4a0a"/>
	// <text x="250" y="322" font-size="200" text-anchor="middle" font-weight="700" class="fill-on-bass" fill="#fffaf0">D</text>
	// </svg>
}
